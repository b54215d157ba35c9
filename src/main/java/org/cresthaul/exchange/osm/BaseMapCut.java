package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.cresthaul.exchange.osm.BaseMap.Layer;
import org.cresthaul.exchange.osm.BaseMap.Shape;
import org.cresthaul.exchange.track.LineThinning;
import org.cresthaul.exchange.track.PlainText;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;

/**
 * Cuts a base map from extracts: lines as far as they run within about two kilometers of a route, areas that come into
 * that strip whole, settlements. The extracts are read as a stream, at most three times; what is held and what is kept
 * is bounded.
 */
public final class BaseMapCut {
    /** Places within so many degrees of latitude of the line are kept, and some farther ones: 2.2 km. */
    private static final double CELL_DEG = 0.02;

    private static final int MOST_NODES = 3_000_000;
    private static final int MOST_WAYS = 200_000;

    private static final double WITHIN_M = 5;
    private static final int LONGEST_NAME = 80;

    private final Corridor corridor;
    private final NodePlaces places = new NodePlaces(MOST_NODES);
    private final List<Shape> shapes = new ArrayList<>();
    /** By how small they are: where two names are in the way of one another, the larger place is named. */
    private final Map<Integer, List<Shape>> settlements = new TreeMap<>();

    private final List<Kept> ways = new ArrayList<>();
    private final Set<Long> taken = new HashSet<>();
    /** Ways that come into the strip, whatever they are. */
    private final NodeIndex touching = new NodeIndex();

    private final MapAreas areas = new MapAreas();
    private boolean whole = true;
    private boolean unsorted;

    private record Kept(long id, Layer layer, boolean area, long[] nodes) {}

    private BaseMapCut(List<LonLat> line) {
        corridor = new Corridor(line, CELL_DEG);
    }

    /** @param line of the route */
    public static BaseMap of(List<MapExtract> extracts, List<LonLat> line, MapProgress progress) throws InputRejected {
        BaseMapCut cut = new BaseMapCut(line);
        List<MapFile> files =
                extracts.stream().map(e -> new MapFile(e, progress)).toList();
        Everything all = cut.new Everything();
        for (MapFile file : files) {
            file.read(all);
        }
        cut.readWaysAgain(files);
        cut.placeAreas(files);
        return cut.map();
    }

    /** Places and settlements in the strip, ways that come into it, areas of several ways. */
    private final class Everything implements MapSink {
        private boolean wayBefore;
        private boolean relationBefore;

        @Override
        public boolean wantsNode(long id, double lon, double lat) {
            unsorted |= wayBefore || relationBefore;
            return NodePlaces.isPlace(lon, lat) && corridor.holds(lon, lat);
        }

        @Override
        public void node(long id, double lon, double lat, Map<String, String> tags, long timeS) {
            boolean before = places.has(id);
            whole &= places.put(id, lon, lat);
            Optional<String> name = tags.isEmpty() ? Optional.empty() : BaseMapTags.ofNode(tags);
            if (!before && name.isPresent()) {
                settlements
                        .computeIfAbsent(BaseMapTags.smallness(tags), k -> new ArrayList<>())
                        .add(new Shape(
                                Layer.PLACE,
                                false,
                                PlainText.of(name.get(), LONGEST_NAME),
                                List.of(new LonLat(lon, lat))));
            }
        }

        @Override
        public void way(long id, long[] nodes, Map<String, String> tags, long timeS) {
            wayBefore = true;
            unsorted |= relationBefore;
            take(id, nodes, tags);
        }

        @Override
        public void relation(long id, long[] members, String[] roles, Map<String, String> tags) {
            relationBefore = true;
            // A state has a hundred thousand of them; in an extract that is not in order nobody knows yet which come
            // near.
            if (Arrays.stream(members).anyMatch(w -> touching.find(w) >= 0)) {
                addArea(id, members, roles, tags);
            }
        }
    }

    private void addArea(long id, long[] members, String[] roles, Map<String, String> tags) {
        BaseMapTags.ofRelation(tags).ifPresent(l -> areas.add(id, members, roles, l));
    }

    private void take(long id, long[] nodes, Map<String, String> tags) {
        if (nodes.length < 2 || Arrays.stream(nodes).noneMatch(places::has)) {
            return;
        }
        touching.add(id);
        Optional<Layer> layer = BaseMapTags.ofWay(tags);
        if (layer.isEmpty() || !taken.add(id)) {
            return;
        }
        if (ways.size() >= MOST_WAYS) {
            whole = false;
            return;
        }
        boolean closed = nodes.length > 3 && nodes[0] == nodes[nodes.length - 1];
        ways.add(new Kept(id, layer.get(), closed && BaseMapTags.isArea(layer.get(), tags), nodes));
    }

    /** Those that stood before their nodes, and those that are the edge of an area. */
    private void readWaysAgain(List<MapFile> files) throws InputRejected {
        if (!unsorted) {
            areas.keepThoseOf(touching);
            if (areas.isEmpty()) {
                return;
            }
        }
        for (MapFile file : files) {
            file.read(new MapSink() {
                @Override
                public boolean wantsNode(long id, double lon, double lat) {
                    return false;
                }

                @Override
                public void way(long id, long[] nodes, Map<String, String> tags, long timeS) {
                    if (unsorted) {
                        take(id, nodes, tags);
                    } else {
                        areas.way(id, nodes);
                    }
                }

                @Override
                public void relation(long id, long[] members, String[] roles, Map<String, String> tags) {
                    if (unsorted) {
                        addArea(id, members, roles, tags);
                    }
                }
            });
        }
        if (unsorted) {
            unsorted = false;
            readWaysAgain(files);
        }
    }

    /** An area is drawn whole: the places of its nodes outside of the strip. */
    private void placeAreas(List<MapFile> files) throws InputRejected {
        NodeIndex missing = new NodeIndex();
        for (Kept way : ways) {
            if (way.area) {
                require(way.nodes, missing);
            }
        }
        for (MapAreas.Edges area : areas.edges()) {
            area.outer().forEach(p -> require(p, missing));
            area.inner().forEach(p -> require(p, missing));
        }
        if (missing.size() == 0) {
            return;
        }
        for (MapFile file : files) {
            file.read(new MapSink() {
                @Override
                public boolean wantsNode(long id, double lon, double lat) {
                    return missing.find(id) >= 0 && NodePlaces.isPlace(lon, lat) && !places.has(id);
                }

                @Override
                public void node(long id, double lon, double lat, Map<String, String> tags, long timeS) {
                    whole &= places.put(id, lon, lat);
                }
            });
        }
    }

    private void require(long[] nodes, NodeIndex missing) {
        for (long node : nodes) {
            if (!places.has(node) && missing.size() < MOST_NODES) {
                missing.add(node);
            }
        }
    }

    private BaseMap map() {
        settlements.values().forEach(shapes::addAll);
        List<MapAreas.Edges> edges = areas.edges();
        for (Kept way : ways) {
            if (!way.area) {
                addRuns(way);
            } else if (!areas.draws(way.id, way.layer)) {
                add(way.layer, true, places.of(way.nodes, 0, way.nodes.length));
            }
        }
        edges.forEach(this::addArea);
        // What matters most first, so that it is the least roads that go where there is too much.
        shapes.sort(Comparator.comparingInt(s -> -rank(s.layer())));
        int points = 0;
        List<Shape> drawn = new ArrayList<>();
        for (Shape shape : shapes) {
            if (points + shape.size() <= BaseMap.MOST_POINTS) {
                points += shape.size();
                drawn.add(shape);
            }
        }
        boolean all = drawn.size() == shapes.size() && whole && areas.isWhole();
        drawn.sort(Comparator.comparing(Shape::layer));
        return new BaseMap(Collections.unmodifiableList(drawn), all);
    }

    private static int rank(Layer layer) {
        return switch (layer) {
            case PLACE -> 6;
            case MAJOR_ROAD -> 5;
            case RAILWAY -> 4;
            case MIDDLE_ROAD -> 3;
            case WATER -> 2;
            case WOODS -> 1;
            case MINOR_ROAD -> 0;
        };
    }

    /** A line piece by piece, as far as its nodes are known one after the other. */
    private void addRuns(Kept way) {
        int from = 0;
        for (int i = 0; i <= way.nodes.length; i++) {
            if (i == way.nodes.length || !places.has(way.nodes[i])) {
                add(way.layer, false, places.of(way.nodes, from, i));
                from = i + 1;
            }
        }
    }

    /** Where the extract lacks some of an edge, there is no inside: of water the shore is drawn, of woods nothing. */
    private void addArea(MapAreas.Edges area) {
        List<Shape> outer = new ArrayList<>();
        for (long[] piece : area.outer()) {
            List<LonLat> points = places.of(piece, 0, piece.length);
            if (piece[0] == piece[piece.length - 1]
                    && points.size() == piece.length
                    && points.size() >= BaseMap.LEAST_IN_RING) {
                outer.add(new Shape(area.layer(), true, "", ring(points)));
            } else if (area.layer() == Layer.WATER) {
                addRuns(new Kept(0, area.layer(), false, piece));
            }
        }
        for (long[] piece : area.inner()) {
            List<LonLat> hole = places.of(piece, 0, piece.length);
            if (hole.size() >= BaseMap.LEAST_IN_RING && hole.get(0).equals(hole.get(hole.size() - 1))) {
                for (int k = 0; k < outer.size(); k++) {
                    Shape around = outer.get(k);
                    if (outer.size() == 1 || holds(around.points(), hole.get(0))) {
                        List<List<LonLat>> holes = new ArrayList<>(around.holes());
                        holes.add(ring(hole));
                        outer.set(k, new Shape(around.layer(), true, "", around.points(), holes));
                        break;
                    }
                }
            }
        }
        shapes.addAll(outer);
    }

    /** Whether a place is inside of a ring: a ray to the east leaves it an odd number of times. */
    private static boolean holds(List<LonLat> ring, LonLat place) {
        boolean inside = false;
        for (int i = 1; i < ring.size(); i++) {
            double south = ring.get(i - 1).latDeg() - place.latDeg();
            double north = ring.get(i).latDeg() - place.latDeg();
            if (south > 0 != north > 0) {
                double from = Flat.shortWay(ring.get(i - 1).lonDeg() - place.lonDeg());
                double to = Flat.shortWay(ring.get(i).lonDeg() - place.lonDeg());
                inside ^= from + (to - from) * south / (south - north) > 0;
            }
        }
        return inside;
    }

    /** A ring is thinned in two halves: first and last point of it are one. One that is no wider than that stays. */
    private static List<LonLat> ring(List<LonLat> points) {
        int middle = points.size() / 2;
        List<LonLat> thin = new ArrayList<>(LineThinning.of(points.subList(0, middle + 1), WITHIN_M));
        List<LonLat> rest = LineThinning.of(points.subList(middle, points.size()), WITHIN_M);
        thin.addAll(rest.subList(1, rest.size()));
        return thin.size() < BaseMap.LEAST_IN_RING ? points : thin;
    }

    private void add(Layer layer, boolean area, List<LonLat> points) {
        if (points.size() >= (area ? BaseMap.LEAST_IN_RING : 2)) {
            shapes.add(new Shape(layer, area, "", area ? ring(points) : LineThinning.of(points, WITHIN_M)));
        }
    }
}
