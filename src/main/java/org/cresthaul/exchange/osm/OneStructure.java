package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cresthaul.exchange.osm.WayCrossings.Crossing;
import org.cresthaul.route.LonLat;

/**
 * Tells which ways over the road are one structure, where the map proves it: they pass the road inside of the outline
 * of one bridge (a closed way, {@code man_made=bridge}) on its level, or two of them meet at a node over the road.
 * Whatever is not proved stays apart.
 */
final class OneStructure {
    /** Ways that meet over the road pass it this near to one another, meters. */
    private static final double MEET_M = 1;
    /** Farther along the road than this nothing is one structure, meters: the road may come by again. */
    private static final double WIDEST_M = 200;

    private final MapStrip strip;
    private final List<Crossing> all;
    private final int[] group;

    private OneStructure(MapStrip strip, List<Crossing> all) {
        this.strip = strip;
        this.all = all;
        group = new int[all.size()];
        Arrays.setAll(group, i -> i);
    }

    /** The crossings in groups, each one structure, in the order of travel. */
    static List<List<Crossing>> of(MapStrip strip, List<Crossing> crossings) {
        return new OneStructure(strip, crossings).groups();
    }

    private List<List<Crossing>> groups() {
        for (int i = 0; i < all.size(); i++) {
            for (int k = i + 1; k < all.size() && meet(all.get(i), all.get(k)); k++) {
                join(i, k);
            }
            if (isOutline(all.get(i).way())) {
                throughOutline(i);
            }
        }
        List<List<Crossing>> found = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (group[i] == i) {
                List<Crossing> one = new ArrayList<>();
                for (int k = i; k < all.size(); k++) {
                    if (group[k] == i) {
                        one.add(all.get(k));
                    }
                }
                found.add(one);
            }
        }
        return found;
    }

    /** Everything that passes the road inside of an outline on its level, and the other side of the outline. */
    private void throughOutline(int i) {
        Crossing edge = all.get(i);
        for (int k = 0; k < all.size(); k++) {
            Crossing other = all.get(k);
            if (k == i
                    || other.way().layer() != edge.way().layer()
                    || Math.abs(other.chainageM() - edge.chainageM()) > WIDEST_M) {
                continue;
            }
            // The other side of an outline lies on it: halfway there is inside, as far as the road runs straight.
            double share = other.way().equals(edge.way()) ? 0.5 : 1;
            if (holds(edge.way(), edge.at(), other.at(), share)) {
                join(i, k);
            }
        }
    }

    /** Whether an outline holds the place a share of the way between two others; not where a node of it is unknown. */
    private boolean holds(MapWay outline, LonLat from, LonLat to, double share) {
        Flat flat = Flat.at(from);
        double x = share * flat.x(to.lonDeg());
        double y = share * flat.y(to.latDeg());
        boolean inside = false;
        for (int i = 0; i + 1 < outline.nodes().length; i++) {
            int a = outline.nodes()[i];
            int b = outline.nodes()[i + 1];
            if (a < 0 || b < 0) {
                return false;
            }
            double ay = flat.y(strip.latDeg(a)) - y;
            double by = flat.y(strip.latDeg(b)) - y;
            if (ay > 0 != by > 0) {
                double ax = flat.x(strip.lonDeg(a)) - x;
                double bx = flat.x(strip.lonDeg(b)) - x;
                inside ^= ax + (bx - ax) * ay / (ay - by) > 0;
            }
        }
        return inside;
    }

    private static boolean isOutline(MapWay way) {
        int[] nodes = way.nodes();
        return way.tag("man_made").equals("bridge") && nodes.length > 3 && nodes[0] == nodes[nodes.length - 1];
    }

    /** Two pieces of one way, drawn one after the other, that touch over the road. */
    private static boolean meet(Crossing a, Crossing b) {
        if (b.chainageM() - a.chainageM() >= MEET_M
                || a.way().layer() != b.way().layer()) {
            return false;
        }
        int[] first = a.way().nodes();
        int[] second = b.way().nodes();
        return first[0] == second[second.length - 1]
                || first[first.length - 1] == second[0]
                || first[0] == second[0]
                || first[first.length - 1] == second[second.length - 1];
    }

    private void join(int a, int b) {
        int low = Math.min(group[a], group[b]);
        int high = Math.max(group[a], group[b]);
        for (int i = 0; i < group.length; i++) {
            group[i] = group[i] == high ? low : group[i];
        }
    }
}
