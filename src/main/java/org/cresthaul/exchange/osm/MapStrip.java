package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;

/**
 * What extracts have along a line: ways that come into the {@link Corridor}, whole, and the tags of the nodes in it.
 * The files are gone through two or three times and never held; what is held is bounded.
 */
final class MapStrip {
    /** Most nodes along a line, and most ways. */
    private static final int MOST_NODES = 3_000_000;

    private static final int MOST_WAYS = 500_000;

    private final NodeIndex index = new NodeIndex();
    private final MapCover cover = new MapCover();
    private double[] lonDeg = new double[1024];
    private double[] latDeg = new double[1024];
    private final Map<Integer, Map<String, String>> nodeTags = new HashMap<>();
    private final Map<Integer, Long> nodeTimes = new HashMap<>();
    private final List<MapWay> ways = new ArrayList<>();
    /** Where a way stands among them; several extracts may have the same. */
    private final Map<Long, Integer> wayAt = new HashMap<>();

    private boolean unsorted;

    private MapStrip() {}

    static MapStrip of(List<MapFile> files, List<LonLat> line) throws InputRejected {
        Corridor corridor = new Corridor(line);
        MapStrip strip = new MapStrip();
        List<long[]> refs = new ArrayList<>();
        boolean[] wayBefore = {false};
        for (MapFile file : files) {
            int before = strip.cover.size();
            strip.readNodesAndWays(file, corridor, wayBefore, refs);
            if (strip.cover.size() == before) {
                strip.cover.addSilent(file.name());
            }
        }
        if (strip.unsorted) {
            strip.ways.clear();
            strip.wayAt.clear();
            refs.clear();
            for (MapFile file : files) {
                file.read(strip.new Ways(refs));
            }
        }
        strip.place(files, refs);
        return strip;
    }

    private void readNodesAndWays(MapFile file, Corridor corridor, boolean[] wayBefore, List<long[]> refs)
            throws InputRejected {
        Ways taken = new Ways(refs);
        file.read(new MapSink() {
            @Override
            public void bounds(double west, double south, double east, double north) {
                cover.add(west, south, east, north);
            }

            @Override
            public boolean wantsNode(long id, double lon, double lat) {
                unsorted |= wayBefore[0];
                return NodePlaces.isPlace(lon, lat) && corridor.holds(lon, lat);
            }

            @Override
            public void node(long id, double lon, double lat, Map<String, String> tags, long timeS)
                    throws InputRejected {
                Long before = nodeTimes.get(index.find(id));
                put(id, lon, lat);
                if (!tags.isEmpty() && (before == null || before <= timeS)) {
                    nodeTags.put(index.find(id), Map.copyOf(tags));
                    nodeTimes.put(index.find(id), timeS);
                }
            }

            @Override
            public void way(long id, long[] nodes, Map<String, String> tags, long timeS) throws InputRejected {
                wayBefore[0] = true;
                taken.way(id, nodes, tags, timeS);
            }
        });
    }

    /** Keeps the ways that come into the corridor. */
    private final class Ways implements MapSink {
        private final List<long[]> refs;

        Ways(List<long[]> refs) {
            this.refs = refs;
        }

        @Override
        public boolean wantsNode(long id, double lonDeg, double latDeg) {
            return false;
        }

        @Override
        public void way(long id, long[] nodes, Map<String, String> tags, long timeS) throws InputRejected {
            if (Arrays.stream(nodes).noneMatch(n -> index.find(n) >= 0)) {
                return;
            }
            MapWay way = new MapWay(id, new int[0], tags, timeS);
            if (!way.isKept()) {
                return;
            }
            Integer before = wayAt.get(id);
            if (before != null) {
                if (timeS > ways.get(before).timeS()) {
                    ways.set(before, way);
                    refs.set(before, nodes);
                }
                return;
            }
            if (ways.size() >= MOST_WAYS) {
                throw tooMany();
            }
            wayAt.put(id, ways.size());
            ways.add(way);
            refs.add(nodes);
        }
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
                "too-many", "The map has too many objects along this route.", "Import the route in shorter legs.");
    }

    /** Finds the places of nodes outside the corridor, and gives the ways their nodes. */
    private void place(List<MapFile> files, List<long[]> refs) throws InputRejected {
        NodeIndex missing = new NodeIndex();
        for (long[] nodes : refs) {
            for (long id : nodes) {
                if (index.find(id) < 0) {
                    missing.add(id);
                }
            }
        }
        if (missing.size() > 0) {
            MapSink places = new MapSink() {
                @Override
                public boolean wantsNode(long id, double lon, double lat) {
                    return missing.find(id) >= 0 && NodePlaces.isPlace(lon, lat);
                }

                @Override
                public void node(long id, double lon, double lat, Map<String, String> tags, long timeS)
                        throws InputRejected {
                    put(id, lon, lat);
                }

                @Override
                public void way(long id, long[] nodes, Map<String, String> tags, long timeS) {
                    // Half of an extract lies behind its last node, where it is sorted.
                    if (!unsorted) {
                        throw new EnoughRead();
                    }
                }
            };
            for (MapFile file : files) {
                file.read(places);
            }
        }
        for (int w = 0; w < ways.size(); w++) {
            int[] nodes = Arrays.stream(refs.get(w)).mapToInt(index::find).toArray();
            MapWay way = ways.get(w);
            ways.set(w, new MapWay(way.id(), nodes, way.tags(), way.timeS()));
        }
    }

    /** What the extracts say of the area they cover. */
    MapCover cover() {
        return cover;
    }

    List<MapWay> ways() {
        return ways;
    }

    int nodes() {
        return index.size();
    }

    long nodeId(int node) {
        return index.id(node);
    }

    double lonDeg(int node) {
        return lonDeg[node];
    }

    double latDeg(int node) {
        return latDeg[node];
    }

    LonLat at(int node) {
        return new LonLat(lonDeg[node], latDeg[node]);
    }

    Map<String, String> nodeTags(int node) {
        return nodeTags.getOrDefault(node, Map.of());
    }

    /** When a node with tags was last changed, seconds since 1970; 0 where the extract does not say. */
    long nodeTimeS(int node) {
        return nodeTimes.getOrDefault(node, 0L);
    }
}
