package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.route.LonLat;

/**
 * Where ways cross the driven ones as they are drawn, on whatever level; and the line where it runs on no road of the
 * map, as it was drawn.
 */
final class WayCrossings {
    private static final GlobeCells GRID = new GlobeCells(0.001, 0.001);
    /** One way crosses once within this, meters: the road's own bends may cut it at two of its pieces. */
    private static final double SAME_M = 5;
    /** As far as two pieces on the roads may be apart without a word, meters. */
    private static final double NEAR_M = 30;

    private final DrivenPath path;
    private final MapStrip strip;
    private final Map<Long, List<int[]>> cells = new HashMap<>();
    private final List<MapWay> ways;

    /**
     * A crossing.
     *
     * @param own the driven way; {@link MapWay#NONE} where the map has none
     * @param at where, on the driven way
     * @param atSharedNode whether both have a node there: they meet, and do not pass over one another
     */
    record Crossing(MapWay way, MapWay own, double chainageM, LonLat at, boolean atSharedNode) {}

    WayCrossings(DrivenPath path, List<MapWay> ways) {
        this.path = path;
        this.ways = ways;
        strip = path.net().strip();
        for (int w = 0; w < ways.size(); w++) {
            int[] nodes = ways.get(w).nodes();
            for (int i = 0; i + 1 < nodes.length; i++) {
                if (nodes[i] >= 0 && nodes[i + 1] >= 0) {
                    index(w, i, strip.at(nodes[i]), strip.at(nodes[i + 1]));
                }
            }
        }
    }

    private void index(int way, int segment, LonLat a, LonLat b) {
        if (Math.abs(Flat.shortWay(a.lonDeg() - b.lonDeg())) > 1 || Math.abs(a.latDeg() - b.latDeg()) > 1) {
            return;
        }
        GRID.forEach(
                a,
                b,
                0,
                key -> cells.computeIfAbsent(key, k -> new ArrayList<>()).add(new int[] {way, segment}));
    }

    /** In the order of travel. */
    List<Crossing> list() {
        List<Crossing> found = new ArrayList<>();
        for (int i = 1; i < path.size(); i++) {
            int edge = path.spot(i).edge();
            MapWay own = edge < 0 ? MapWay.NONE : path.net().way(edge);
            int at = i;
            List<int[]> near = new ArrayList<>();
            GRID.forEach(
                    path.spot(i - 1).at(),
                    path.spot(i).at(),
                    0,
                    key -> near.addAll(cells.getOrDefault(key, List.of())));
            near.stream()
                    .filter(s -> !ways.get(s[0]).equals(own))
                    .forEach(s -> cross(at, own, ways.get(s[0]), s[1], found));
        }
        found.sort(Comparator.comparingDouble(Crossing::chainageM)
                .thenComparingLong(c -> c.way().id()));
        List<Crossing> once = new ArrayList<>();
        for (Crossing c : found) {
            // Where two pieces on the roads meet, the line between them may run back over what was driven.
            boolean again = c.own().equals(MapWay.NONE) && isOnRoads(found, c)
                    || once.stream().anyMatch(o -> o.way().equals(c.way()) && c.chainageM() - o.chainageM() < SAME_M);
            if (!again) {
                once.add(c);
            }
        }
        return once;
    }

    /** Whether the same way is crossed near by on a road. */
    private static boolean isOnRoads(List<Crossing> all, Crossing off) {
        return all.stream()
                .anyMatch(c -> c.way().equals(off.way())
                        && !c.own().equals(MapWay.NONE)
                        && Math.abs(c.chainageM() - off.chainageM()) <= NEAR_M);
    }

    private void cross(int spot, MapWay own, MapWay way, int segment, List<Crossing> found) {
        LonLat from = path.spot(spot - 1).at();
        Flat flat = Flat.at(from);
        double ux = flat.x(path.spot(spot).at().lonDeg());
        double uy = flat.y(path.spot(spot).at().latDeg());
        int a = way.nodes()[segment];
        int b = way.nodes()[segment + 1];
        double ax = flat.x(strip.lonDeg(a));
        double ay = flat.y(strip.latDeg(a));
        double vx = flat.x(strip.lonDeg(b)) - ax;
        double vy = flat.y(strip.latDeg(b)) - ay;
        double det = ux * vy - uy * vx;
        if (det == 0) {
            return;
        }
        double t = (ax * vy - ay * vx) / det;
        double s = (ax * uy - ay * ux) / det;
        if (t < 0 || t > 1 || s < 0 || s > 1) {
            return;
        }
        int node = t < 0.5 ? path.spot(spot - 1).node() : path.spot(spot).node();
        boolean shared = node >= 0 && (node == a || node == b);
        double chainageM = path.chainageM(spot - 1) + t * (path.chainageM(spot) - path.chainageM(spot - 1));
        LonLat to = path.spot(spot).at();
        LonLat at = new LonLat(
                Flat.wrapped(from.lonDeg() + t * Flat.shortWay(to.lonDeg() - from.lonDeg())),
                from.latDeg() + t * (to.latDeg() - from.latDeg()));
        found.add(new Crossing(way, own, chainageM, at, shared));
    }
}
