package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RouteLine;

/**
 * The line of a route spot by spot, with the node of the map at each spot and the edge that leads to it, where there
 * are any, and its chainage on the route's line.
 */
final class DrivenPath {
    /** A place this near to a node, meters, is at the node. */
    private static final double AT_NODE_M = 1;

    private final RoadNet net;
    private final List<Spot> spots;
    private final List<List<LonLat>> legs;
    private final RouteLine line;
    private final double[] chainageM;

    /**
     * A place on the way.
     *
     * @param node of the map; -1 where there is none
     * @param edge driven to come here; -1 at the start, and off the roads
     */
    record Spot(LonLat at, int node, int edge) {}

    private DrivenPath(RoadNet net, List<List<Spot>> legSpots) {
        this.net = net;
        spots = legSpots.stream().flatMap(List::stream).toList();
        legs = legSpots.stream().map(l -> l.stream().map(Spot::at).toList()).toList();
        RouteLine.Builder builder = new RouteLine.Builder();
        chainageM = new double[spots.size()];
        for (int i = 0; i < chainageM.length; i++) {
            chainageM[i] = builder.chainageM(builder.add(spots.get(i).at()));
        }
        line = builder.build();
    }

    static DrivenPath of(RoadNet net, List<List<LonLat>> legs) {
        LineMatching matching = new LineMatching(net);
        List<List<Spot>> all = new ArrayList<>();
        for (List<LonLat> leg : legs) {
            List<Spot> spots = new ArrayList<>();
            for (LineMatching.Part part : matching.parts(leg)) {
                if (part.isOnRoads()) {
                    follow(net, part, spots);
                } else {
                    part.off().forEach(p -> spots.add(new Spot(p, -1, -1)));
                }
            }
            // Too short to be driven on the map: as it was drawn.
            boolean tooShort = lengthM(spots) < AT_NODE_M;
            all.add(tooShort ? leg.stream().map(p -> new Spot(p, -1, -1)).toList() : spots);
        }
        return new DrivenPath(net, all);
    }

    private static double lengthM(List<Spot> spots) {
        double lengthM = 0;
        for (int i = 1; i < spots.size(); i++) {
            lengthM += Flat.distanceM(spots.get(i - 1).at(), spots.get(i).at());
        }
        return lengthM;
    }

    private static void follow(RoadNet net, LineMatching.Part part, List<Spot> spots) {
        int first = part.edges().get(0);
        boolean atNode = part.first() * net.lengthM(first) < AT_NODE_M;
        spots.add(new Spot(net.at(first, part.first()), atNode ? net.from(first) : -1, -1));
        for (int k = 0; k < part.edges().size(); k++) {
            int edge = part.edges().get(k);
            boolean last = k == part.edges().size() - 1;
            boolean ends = last && (1 - part.last()) * net.lengthM(edge) >= AT_NODE_M;
            spots.add(
                    ends
                            ? new Spot(net.at(edge, part.last()), -1, edge)
                            : new Spot(net.at(edge, 1), net.to(edge), edge));
        }
    }

    RoadNet net() {
        return net;
    }

    RouteLine line() {
        return line;
    }

    /** The positions of each leg as it is to be written. */
    List<List<LonLat>> legs() {
        return legs;
    }

    int size() {
        return spots.size();
    }

    Spot spot(int i) {
        return spots.get(i);
    }

    double chainageM(int i) {
        return chainageM[i];
    }

    /** A way as long as it is driven without a break. */
    record Run(MapWay way, boolean forward, double fromM, double toM) {
        double middleM() {
            return (fromM + toM) / 2;
        }
    }

    /** The ways in the order they are driven. */
    List<Run> runs() {
        List<Run> runs = new ArrayList<>();
        for (int i = 1; i < spots.size(); i++) {
            int edge = spots.get(i).edge();
            if (edge < 0 || chainageM[i] <= chainageM[i - 1]) {
                continue;
            }
            MapWay way = net.way(edge);
            boolean forward = RoadNet.isForward(edge);
            Run before = runs.isEmpty() ? null : runs.get(runs.size() - 1);
            if (before != null
                    && before.way().equals(way)
                    && before.forward() == forward
                    && before.toM() == chainageM[i - 1]) {
                runs.set(runs.size() - 1, new Run(way, forward, before.fromM(), chainageM[i]));
            } else {
                runs.add(new Run(way, forward, chainageM[i - 1], chainageM[i]));
            }
        }
        return runs;
    }

    /** How much of the line lies on no road of the map, meters. */
    double offRoadM() {
        double offM = 0;
        for (int i = 1; i < spots.size(); i++) {
            offM += spots.get(i).edge() < 0 ? chainageM[i] - chainageM[i - 1] : 0;
        }
        return offM;
    }
}
