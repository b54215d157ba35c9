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
import org.cresthaul.exchange.osm.BaseMap.Layer;
import org.cresthaul.exchange.osm.BaseMap.Shape;
import org.cresthaul.exchange.track.LineThinning;
import org.cresthaul.exchange.track.PlainText;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;

/**
 * Cuts a base map from extracts: lines as far as they run within about two kilometers of a route, areas that come into
 * that strip whole, settlements. The extracts are read as a stream, three times; what is held and what is kept is
 * bounded. Areas that the map draws by relations of several ways are not in it.
 */
public final class BaseMapCut {
    /** Places within so many degrees of latitude of the line are kept, and some farther ones: 2.2 km. */
    private static final double CELL_DEG = 0.02;

    private static final int MOST_NODES = 3_000_000;
    private static final int MOST_WAYS = 200_000;
    /** Most points that are kept: what a page draws at once. */
    private static final int MOST_POINTS = 150_000;

    private static final double WITHIN_M = 5;
    private static final int LONGEST_NAME = 80;

    private final Corridor corridor;
    private final NodeIndex index = new NodeIndex();
    private double[] lonDeg = new double[1024];
    private double[] latDeg = new double[1024];
    private final List<Shape> shapes = new ArrayList<>();
    private final List<Kept> ways = new ArrayList<>();
    private final Set<Long> taken = new HashSet<>();

    private record Kept(Layer layer, boolean area, long[] nodes) {}

    private BaseMapCut(List<LonLat> line) {
        corridor = new Corridor(line, CELL_DEG);
    }

    /** @param line of the route */
    public static BaseMap of(List<MapExtract> extracts, List<LonLat> line, MapProgress progress) throws InputRejected {
        BaseMapCut cut = new BaseMapCut(line);
        List<MapFile> files =
                extracts.stream().map(e -> new MapFile(e, progress)).toList();
        for (MapFile file : files) {
            file.read(cut.new Nodes());
        }
        for (MapFile file : files) {
            file.read(cut.new Ways());
        }
        cut.placeAreas(files);
        return cut.map();
    }

    /** Places in the strip, and settlements. */
    private final class Nodes implements MapSink {
        @Override
        public void node(long id, double lon, double lat, Map<String, String> tags, long timeS) throws InputRejected {
            if (!isPlace(lon, lat) || !corridor.holds(lon, lat)) {
                return;
            }
            boolean before = index.find(id) >= 0;
            put(id, lon, lat);
            Optional<String> name = BaseMapTags.ofNode(tags);
            if (!before && name.isPresent()) {
                shapes.add(new Shape(
                        Layer.PLACE, false, PlainText.of(name.get(), LONGEST_NAME), List.of(new LonLat(lon, lat))));
            }
        }
    }

    /** Ways that come into the strip. */
    private final class Ways implements MapSink {
        @Override
        public void way(long id, long[] nodes, Map<String, String> tags, long timeS) throws InputRejected {
            Optional<Layer> layer = BaseMapTags.ofWay(tags);
            if (layer.isEmpty()
                    || nodes.length < 2
                    || Arrays.stream(nodes).noneMatch(n -> index.find(n) >= 0)
                    || !taken.add(id)) {
                return;
            }
            if (ways.size() >= MOST_WAYS) {
                throw tooMany();
            }
            boolean closed = nodes.length > 3 && nodes[0] == nodes[nodes.length - 1];
            ways.add(new Kept(layer.get(), closed && BaseMapTags.isArea(layer.get(), tags), nodes));
        }
    }

    private static boolean isPlace(double lon, double lat) {
        return Math.abs(lat) <= LonLat.MOST_LAT_DEG && Math.abs(lon) <= 180;
    }

    private void put(long id, double lon, double lat) throws InputRejected {
        int at = index.add(id);
        if (at >= MOST_NODES) {
            throw tooMany();
        }
        if (at >= lonDeg.length) {
            lonDeg = Arrays.copyOf(lonDeg, 2 * lonDeg.length);
            latDeg = Arrays.copyOf(latDeg, 2 * latDeg.length);
        }
        lonDeg[at] = lon;
        latDeg[at] = lat;
    }

    private static InputRejected tooMany() {
        return Refusals.of(
                "too-many", "The map has too many objects around this route.", "Import the route in shorter legs.");
    }

    /** An area is drawn whole: the places of its nodes outside of the strip. */
    private void placeAreas(List<MapFile> files) throws InputRejected {
        NodeIndex missing = new NodeIndex();
        for (Kept way : ways) {
            if (way.area) {
                Arrays.stream(way.nodes).filter(n -> index.find(n) < 0).forEach(missing::add);
            }
        }
        if (missing.size() == 0) {
            return;
        }
        NodeIndex inStrip = new NodeIndex();
        for (int i = 0; i < index.size(); i++) {
            inStrip.add(index.id(i));
        }
        for (MapFile file : files) {
            file.read(new MapSink() {
                @Override
                public void node(long id, double lon, double lat, Map<String, String> tags, long timeS)
                        throws InputRejected {
                    if (missing.find(id) >= 0 && inStrip.find(id) < 0 && isPlace(lon, lat)) {
                        put(id, lon, lat);
                    }
                }
            });
        }
    }

    private BaseMap map() {
        for (Kept way : ways) {
            if (way.area) {
                add(way.layer, true, nodes(way.nodes, 0, way.nodes.length));
            } else {
                addRuns(way);
            }
        }
        // What matters most first, so that it is the least roads that go where there is too much.
        shapes.sort(Comparator.comparingInt(s -> -rank(s.layer())));
        int points = 0;
        int kept = 0;
        while (kept < shapes.size() && points + shapes.get(kept).points().size() <= MOST_POINTS) {
            points += shapes.get(kept).points().size();
            kept++;
        }
        List<Shape> drawn = new ArrayList<>(shapes.subList(0, kept));
        drawn.sort(Comparator.comparing(Shape::layer));
        return new BaseMap(Collections.unmodifiableList(drawn), kept == shapes.size());
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
            if (i == way.nodes.length || index.find(way.nodes[i]) < 0) {
                add(way.layer, false, nodes(way.nodes, from, i));
                from = i + 1;
            }
        }
    }

    private List<LonLat> nodes(long[] ids, int from, int to) {
        List<LonLat> points = new ArrayList<>();
        for (int i = from; i < to; i++) {
            int at = index.find(ids[i]);
            if (at >= 0) {
                points.add(new LonLat(lonDeg[at], latDeg[at]));
            }
        }
        return points;
    }

    private void add(Layer layer, boolean area, List<LonLat> points) {
        if (points.size() < (area ? 4 : 2)) {
            return;
        }
        // A ring is thinned in two halves: first and last point of it are one.
        int middle = points.size() / 2;
        List<LonLat> thin = new ArrayList<>(
                area ? LineThinning.of(points.subList(0, middle + 1), WITHIN_M) : LineThinning.of(points, WITHIN_M));
        if (area) {
            List<LonLat> rest = LineThinning.of(points.subList(middle, points.size()), WITHIN_M);
            thin.addAll(rest.subList(1, rest.size()));
        }
        shapes.add(new Shape(layer, area, "", thin));
    }
}
