package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import org.cresthaul.check.LimitsCoverage;
import org.cresthaul.route.Route;
import org.cresthaul.route.StoppingPlace;

/**
 * Where along the route what holds. Everything is told by where the front of the combination is: a place holds it from
 * the front reaching its beginning until the rear has left its end, with the longest configuration of the rig, so that
 * the layout does not depend on what is chosen.
 *
 * @param stops that can be used, by chainage
 * @param heldStops that cannot, because the combination is still at a place there
 * @param clusters places that are passed in one go, by chainage; each lies within one segment
 * @param segments how many there are: one more than stops
 * @param spanning places that run over stops, with the segments each touches
 */
record RouteLayout(
        List<StoppingPlace> stops,
        List<HeldStop> heldStops,
        List<Cluster> clusters,
        int segments,
        List<Spanning> spanning) {
    /**
     * Room to stop between two places, so that a raise can be let down and taken up again: 30 ft, this program's
     * choice.
     */
    static final double ROOM_BETWEEN_M = 9.144;

    /** A stop within reach of a place. */
    record HeldStop(StoppingPlace stop, String hazard) {}

    /** Point-like places so near to one another that there is no stop between; {@code places} by chainage. */
    record Cluster(List<Integer> places, double fromM, double toM, int segment) {
        Cluster {
            places = List.copyOf(places);
        }

        Cluster in(int otherSegment) {
            return new Cluster(places, fromM, toM, otherSegment);
        }
    }

    /**
     * A place that runs over stops.
     *
     * @param out segments between its first and its last on which it does not hold
     */
    record Spanning(int place, int firstSegment, int lastSegment, BitSet out) {
        Spanning {
            out = (BitSet) out.clone();
        }

        boolean holdsIn(int segment) {
            return segment >= firstSegment && segment <= lastSegment && !out.get(segment);
        }
    }

    RouteLayout {
        stops = List.copyOf(stops);
        heldStops = List.copyOf(heldStops);
        clusters = List.copyOf(clusters);
        spanning = List.copyOf(spanning);
    }

    static RouteLayout of(Route route, List<PlanPlace> places, double longestM) {
        List<Integer> points = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            if (places.get(i).pointLike()) {
                points.add(i);
            }
        }
        points.sort(Comparator.comparingDouble(i -> places.get(i).fromM()));
        List<Cluster> open = clusters(points, places, longestM);
        List<StoppingPlace> stops = new ArrayList<>();
        List<HeldStop> held = new ArrayList<>();
        List<Cluster> clusters = new ArrayList<>();
        int next = 0;
        // Both run by chainage, and clusters do not overlap.
        for (StoppingPlace stop : route.stops()) {
            double at = stop.place().chainageM();
            while (next < open.size() && open.get(next).toM < at) {
                clusters.add(open.get(next++).in(stops.size()));
            }
            if (next < open.size() && open.get(next).fromM <= at) {
                held.add(new HeldStop(stop, holder(open.get(next), places, at, longestM)));
            } else {
                stops.add(stop);
            }
        }
        while (next < open.size()) {
            clusters.add(open.get(next++).in(stops.size()));
        }
        List<Spanning> spanning = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            PlanPlace p = places.get(i);
            if (!p.pointLike()) {
                // A stop where a stretch begins is still before it; one where the rear leaves it is past it.
                int first = p.fromM() <= 0 ? 0 : notAfter(stops, p.fromM());
                int last = before(stops, p.toM() + longestM);
                spanning.add(new Spanning(
                        i,
                        Math.min(first, last),
                        last,
                        p.hazard().isEmpty() ? replaced(route, stops, longestM) : new BitSet()));
            }
        }
        return new RouteLayout(stops, held, clusters, stops.size() + 1, spanning);
    }

    /**
     * Segments on which the limits of the whole route do not hold: all of the combination is where others hold instead.
     */
    private static BitSet replaced(Route route, List<StoppingPlace> stops, double longestM) {
        LimitsCoverage coverage = new LimitsCoverage(route);
        BitSet out = new BitSet();
        for (int k = 0; k <= stops.size(); k++) {
            double fromM = k == 0 ? 0 : stops.get(k - 1).place().chainageM();
            double toM =
                    k == stops.size() ? route.lengthM() : stops.get(k).place().chainageM();
            out.set(k, coverage.replaced(fromM, toM, longestM));
        }
        return out;
    }

    private static List<Cluster> clusters(List<Integer> points, List<PlanPlace> places, double longestM) {
        List<Cluster> clusters = new ArrayList<>();
        for (int i : points) {
            double fromM = places.get(i).fromM();
            double toM = places.get(i).toM() + longestM;
            Cluster last = clusters.isEmpty() ? null : clusters.get(clusters.size() - 1);
            if (last != null && fromM <= last.toM + ROOM_BETWEEN_M) {
                List<Integer> together = new ArrayList<>(last.places);
                together.add(i);
                clusters.set(clusters.size() - 1, new Cluster(together, last.fromM, Math.max(last.toM, toM), 0));
            } else {
                clusters.add(new Cluster(List.of(i), fromM, toM, 0));
            }
        }
        return clusters;
    }

    /** Which place of a cluster holds the combination at a stop; between two of them the one before. */
    private static String holder(Cluster cluster, List<PlanPlace> places, double atM, double longestM) {
        return cluster.places.stream()
                .map(places::get)
                .filter(p -> p.fromM() <= atM)
                .max(Comparator.comparingDouble(p -> p.toM() + longestM))
                .orElseThrow()
                .id();
    }

    /** How many stops lie before a chainage. */
    private static int before(List<StoppingPlace> stops, double chainageM) {
        return (int)
                stops.stream().filter(s -> s.place().chainageM() < chainageM).count();
    }

    /** How many stops lie before a chainage or at it. */
    private static int notAfter(List<StoppingPlace> stops, double chainageM) {
        return (int)
                stops.stream().filter(s -> s.place().chainageM() <= chainageM).count();
    }

    /** Where the front is when a segment begins. */
    double startM(int segment) {
        return segment == 0 ? 0 : stops.get(segment - 1).place().chainageM();
    }

    /** Where it is when it ends. */
    double endM(int segment, double routeM) {
        return segment == stops.size() ? routeM : stops.get(segment).place().chainageM();
    }
}
