package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Rail crossings on the driven road just before the line begins and just behind its end. They are not on the route; but
 * a receiver that wakes up late, or the rear of a combination that starts, may well be on them.
 */
final class BeyondEnds {
    /** Looked so far along the road, meters; this program's choice. */
    private static final double LOOKED_M = 50;

    private final DrivenPath path;
    private final RailFinds rails;
    private final RoadNet net;

    BeyondEnds(DrivenPath path, RailFinds rails) {
        this.path = path;
        this.rails = rails;
        net = path.net();
    }

    /** In words. */
    List<String> told() {
        List<String> all = new ArrayList<>();
        int last = path.size() - 1;
        if (last > 0 && path.spot(1).edge() >= 0) {
            look(0, RoadNet.reverse(path.spot(1).edge()), "before the line begins", all);
        }
        if (last > 0 && path.spot(last).edge() >= 0) {
            look(last, path.spot(last).edge(), "behind the end of the line", all);
        }
        return all;
    }

    /** @param edge the one the spot is on, directed away from the line */
    private void look(int spot, int edge, String where, List<String> all) {
        MapStrip strip = net.strip();
        double atM = Flat.distanceM(path.spot(spot).at(), strip.at(net.to(edge)));
        boolean onRoute = path.spot(spot).node() >= 0;
        int away = edge;
        while (away >= 0 && atM <= LOOKED_M) {
            int node = net.to(away);
            if (!onRoute && rails.kind(node) != null) {
                all.add(String.format(
                        Locale.ROOT,
                        "%.0f m %s the road crosses rails (node %d). That is not on the route: give a longer track if"
                                + " any part of the combination comes there.",
                        atM,
                        where,
                        strip.nodeId(node)));
                return;
            }
            onRoute = false;
            away = onward(node, away);
            atM += away < 0 ? 0 : net.lengthM(away);
        }
    }

    /** The edge by which the same way goes on, or else the only one; -1 where that is open. */
    private int onward(int node, int from) {
        int same = -1;
        int others = 0;
        int other = -1;
        for (int leaving : net.leaving(node)) {
            if (leaving == RoadNet.reverse(from)) {
                continue;
            }
            if (net.way(leaving).equals(net.way(from))) {
                same = leaving;
            } else {
                others++;
                other = leaving;
            }
        }
        return same >= 0 ? same : others == 1 ? other : -1;
    }
}
