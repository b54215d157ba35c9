package org.cresthaul.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds in a route line the turns that a long combination may not get round: where the line's direction changes by 40° and
 * more within 45 m, which is a radius of 65 m or less. A turn that somebody has described is not found again.
 */
final class TightTurns {
    static final double WINDOW_M = 45;
    static final double LEAST_TURN_RAD = Math.toRadians(40);
    /** A corner somebody has described covers the turns this near to its point, metres. */
    static final double COVERED_M = 60;

    private static final double STEP_M = 3;
    /** Direction is taken over this much of the line, so that survey noise at single points does not count, metres. */
    private static final double CHORD_M = 6;

    private TightTurns() {}

    /** A turn: where its middle is, how far it turns (positive to the left) and about how tight it is. */
    record Turn(double chainageM, double turnRad, double radiusM) {}

    static List<Turn> find(RouteLine line) {
        // Only near points where the line bends can there be a turn: a straight route costs nothing.
        List<double[]> stretches = new ArrayList<>();
        for (int i = 1; i + 1 < line.size(); i++) {
            if (Math.abs(bend(line, i)) > Math.toRadians(2)) {
                double from = Math.max(0, line.chainageM(i) - WINDOW_M - CHORD_M);
                double to = Math.min(line.lengthM(), line.chainageM(i) + WINDOW_M + CHORD_M);
                if (!stretches.isEmpty() && stretches.get(stretches.size() - 1)[1] >= from) {
                    stretches.get(stretches.size() - 1)[1] = to;
                } else {
                    stretches.add(new double[] {from, to});
                }
            }
        }
        List<Turn> turns = new ArrayList<>();
        for (double[] stretch : stretches) {
            findWithin(line, stretch[0], stretch[1], turns);
        }
        return turns;
    }

    private static double bend(RouteLine line, int i) {
        return difference(azimuth(line.position(i - 1), line.position(i)), azimuth(line.position(i), line.position(i + 1)));
    }

    private static double azimuth(LonLat a, LonLat b) {
        double east = Geodesic.shortWay(b.lonDeg() - a.lonDeg()) * Math.cos(Math.toRadians(0.5 * (a.latDeg() + b.latDeg())));
        return Math.atan2(east, b.latDeg() - a.latDeg());
    }

    /** From one azimuth to the other, positive to the left. */
    private static double difference(double from, double to) {
        return -Math.IEEEremainder(to - from, 2 * Math.PI);
    }

    private static void findWithin(RouteLine line, double from, double to, List<Turn> turns) {
        int n = (int) ((to - from) / STEP_M);
        if (n < 3) {
            return;
        }
        double[] direction = new double[n];
        for (int i = 0; i < n; i++) {
            double s = from + i * STEP_M;
            direction[i] = azimuth(
                    line.frameAt(Math.max(0, s - CHORD_M / 2)).origin(),
                    line.frameAt(Math.min(line.lengthM(), s + CHORD_M / 2)).origin());
        }
        int window = (int) (WINDOW_M / STEP_M);
        Turn best = null;
        double lastM = 0;
        for (int i = 0; i < n; i++) {
            int j = Math.min(n - 1, i + window);
            double turned = 0;
            for (int k = i + 1; k <= j; k++) {
                turned += difference(direction[k - 1], direction[k]);
            }
            double middle = from + 0.5 * (i + j) * STEP_M;
            if (Math.abs(turned) >= LEAST_TURN_RAD) {
                boolean same = best != null && middle - lastM <= WINDOW_M && turned * best.turnRad > 0;
                if (best != null && !same) {
                    turns.add(best);
                    best = null;
                }
                if (best == null || Math.abs(turned) > Math.abs(best.turnRad) + 1e-9) {
                    best = new Turn(middle(direction, i, j, from), turned, WINDOW_M / Math.abs(turned));
                }
                lastM = middle;
            }
        }
        if (best != null) {
            turns.add(best);
        }
    }

    /** Where half of the turn is done. */
    private static double middle(double[] direction, int i, int j, double from) {
        double all = 0;
        for (int k = i + 1; k <= j; k++) {
            all += difference(direction[k - 1], direction[k]);
        }
        double done = 0;
        for (int k = i + 1; k <= j; k++) {
            double more = difference(direction[k - 1], direction[k]);
            if (Math.abs(done + more) >= Math.abs(all) / 2) {
                return from + (k - 0.5) * STEP_M;
            }
            done += more;
        }
        return from + 0.5 * (i + j) * STEP_M;
    }

    /** The turns of a line that no hazard describes, as hazards that are not surveyed. */
    static List<Hazard> listUnsurveyed(RouteLine line, List<Hazard> given) {
        List<Hazard> found = new ArrayList<>();
        for (Turn turn : find(line)) {
            boolean covered = given.stream()
                    .anyMatch(h -> h instanceof RouteCorner
                            && Math.abs(h.place().chainageM() - turn.chainageM) <= COVERED_M);
            if (covered) {
                continue;
            }
            String id = "turn-" + Math.round(turn.chainageM);
            while (isTaken(id, given) || isTaken(id, found)) {
                id += "x";
            }
            RoadFrame frame = line.frameAt(turn.chainageM);
            String hand = turn.turnRad > 0 ? "left" : "right";
            found.add(new RouteCorner(
                    new HazardPlace(id, "Tight " + hand + " turn in the route line", Optional.empty(), frame.origin(),
                            turn.chainageM, 0),
                    Optional.empty(),
                    Optional.empty(),
                    frame,
                    "route line",
                    Optional.of(turn.radiusM)));
        }
        return found;
    }

    private static boolean isTaken(String id, List<Hazard> hazards) {
        return hazards.stream().anyMatch(h -> h.place().id().equals(id));
    }
}
