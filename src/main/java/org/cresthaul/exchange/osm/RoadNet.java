package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.cresthaul.route.LonLat;

/**
 * The roads of a strip as a net: between two neighboring nodes of a way an edge, and each edge twice, once for each
 * direction. A directed edge's number is even along its way and odd against it; the other one is its number with the
 * last bit turned.
 */
final class RoadNet {
    private static final GlobeCells GRID = new GlobeCells(0.0005, 0.0005);
    private static final int[] NONE = {};

    private final MapStrip strip;
    private final List<MapWay> roads = new ArrayList<>();
    private int[] from = new int[1024];
    private int[] to = new int[1024];
    private int[] road = new int[1024];
    private int[] segment = new int[1024];
    private double[] lengthM = new double[1024];
    private int edges;
    private final Map<Integer, int[]> leaving = new HashMap<>();
    private final Map<Long, int[]> cells = new HashMap<>();

    RoadNet(MapStrip strip) {
        this.strip = strip;
        for (MapWay way : strip.ways()) {
            if (way.isRoad()) {
                add(way);
            }
        }
    }

    private void add(MapWay way) {
        roads.add(way);
        for (int i = 0; i + 1 < way.nodes().length; i++) {
            int a = way.nodes()[i];
            int b = way.nodes()[i + 1];
            if (a >= 0 && b >= 0 && a != b) {
                put(a, b, i);
                put(b, a, i);
                index(edges - 2);
            }
        }
    }

    private void put(int a, int b, int at) {
        if (edges == from.length) {
            from = Arrays.copyOf(from, 2 * edges);
            to = Arrays.copyOf(to, 2 * edges);
            road = Arrays.copyOf(road, 2 * edges);
            segment = Arrays.copyOf(segment, 2 * edges);
            lengthM = Arrays.copyOf(lengthM, 2 * edges);
        }
        from[edges] = a;
        to[edges] = b;
        road[edges] = roads.size() - 1;
        segment[edges] = at;
        lengthM[edges] = Flat.distanceM(strip.lonDeg(a), strip.latDeg(a), strip.lonDeg(b), strip.latDeg(b));
        leaving.merge(a, new int[] {edges}, RoadNet::joined);
        edges++;
    }

    private static int[] joined(int[] some, int[] more) {
        int[] all = Arrays.copyOf(some, some.length + more.length);
        System.arraycopy(more, 0, all, some.length, more.length);
        return all;
    }

    /** Puts an edge into the cells that its box touches. */
    private void index(int edge) {
        LonLat start = strip.at(from[edge]);
        LonLat end = strip.at(to[edge]);
        if (Math.abs(Flat.shortWay(start.lonDeg() - end.lonDeg())) > 1 || Math.abs(start.latDeg() - end.latDeg()) > 1) {
            return;
        }
        GRID.forEach(start, end, 0, key -> cells.merge(key, new int[] {edge}, RoadNet::joined));
    }

    /** Edges along their ways that may come within a distance of a place, each once. */
    int[] near(LonLat place, double withinM) {
        double dLat = withinM / 110_000;
        double dLon = dLat / Math.cos(Math.toRadians(place.latDeg()));
        IntStream.Builder found = IntStream.builder();
        GRID.forEach(
                place.lonDeg() - dLon,
                place.latDeg() - dLat,
                place.lonDeg() + dLon,
                place.latDeg() + dLat,
                0,
                key -> Arrays.stream(cells.getOrDefault(key, NONE)).forEach(found));
        return found.build().distinct().toArray();
    }

    MapStrip strip() {
        return strip;
    }

    int from(int edge) {
        return from[edge];
    }

    int to(int edge) {
        return to[edge];
    }

    double lengthM(int edge) {
        return lengthM[edge];
    }

    MapWay way(int edge) {
        return roads.get(road[edge]);
    }

    static boolean isForward(int edge) {
        return (edge & 1) == 0;
    }

    static int reverse(int edge) {
        return edge ^ 1;
    }

    /** Edges that leave a node. */
    int[] leaving(int node) {
        return leaving.getOrDefault(node, new int[0]);
    }

    /** Whether the direction of an edge is against the traffic of its road. */
    boolean isAgainstTraffic(int edge) {
        MapWay way = way(edge);
        String oneway = way.tag("oneway");
        boolean along = oneway.equals("yes")
                || oneway.equals("1")
                || oneway.equals("true")
                || oneway.isEmpty()
                        && (way.tag("junction").equals("roundabout")
                                || way.tag("junction").equals("circular"));
        boolean against = oneway.equals("-1") || oneway.equals("reverse");
        return isForward(edge) ? against : along;
    }

    /** The place a share of the way along an edge. */
    LonLat at(int edge, double share) {
        double lon = strip.lonDeg(from[edge]);
        double lat = strip.latDeg(from[edge]);
        return new LonLat(
                Flat.wrapped(lon + share * Flat.shortWay(strip.lonDeg(to[edge]) - lon)),
                lat + share * (strip.latDeg(to[edge]) - lat));
    }
}
