package org.cresthaul.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.road.Corner;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.linearref.LengthIndexedLine;

/**
 * Finds in a route line the turns that a long combination may not get round: where the line's direction, as
 * {@link LineDirections} takes it, changes by {@link #LEAST_TURN_RAD} and more within {@link #WINDOW_M}, whatever the
 * spacing of its positions. Turns one after the other are told apart where the line runs straighter between them. A
 * turn that somebody has described is not found again.
 */
public final class TightTurns {
    /** Over this length turning is measured, meters: about that of the combinations the program is for. */
    static final double WINDOW_M = 45;

    /**
     * A radius of 68 m over the window. A sharp corner, spread over two legs, shows 15/16 of itself in the window: from
     * 41° on it is found. A receiver's wavering along a straight road stays below it: five standard deviations of the
     * difference of two directions.
     */
    static final double LEAST_TURN_RAD = Math.toRadians(38);

    /**
     * A corner somebody has described covers the turns this near to its point, meters: half a window, and what route
     * lines and corners' points lie apart.
     */
    static final double COVERED_M = 40;

    /** How far beyond the bent part of a described corner a turn of the line may still be its own, meters. */
    private static final double BESIDE_M = 15;

    /** Two turns are two when the line turns less than this part as sharply between them. */
    private static final double STRAIGHTER = 0.5;

    /** A step that turns less than this is straight: a radius of 570 m. */
    private static final double HARDLY_RAD = Math.toRadians(0.25);

    /** Sharpness is taken over this length, meters. */
    private static final double SHARPNESS_M = 15;

    /** The line is gone through in parts of this length, which overlap by the second. */
    private static final double PART_M = 50_000;

    private static final double OVERLAP_M = 500;
    /** Two parts put the middle of one turn nearer to each other than this, meters; two turns are farther apart. */
    private static final double SAME_M = 10;

    private TightTurns() {}

    /** A turn: where its middle is, how far it turns (positive to the left) and about how tight it is. */
    record Turn(double chainageM, double turnRad, double radiusM) {}

    /** The turns of a line in the order of travel. */
    static List<Turn> find(RouteLine line) {
        List<Turn> turns = new ArrayList<>();
        for (double from = 0; from < line.lengthM(); from += PART_M) {
            double to = from + PART_M;
            LineDirections directions =
                    LineDirections.of(line, Math.max(0, from - OVERLAP_M), Math.min(line.lengthM(), to + OVERLAP_M));
            for (Turn turn : findWithin(directions)) {
                // Where parts meet, either may find a turn: it is taken once.
                boolean fresh = turns.isEmpty() || turn.chainageM > turns.get(turns.size() - 1).chainageM + SAME_M;
                if (fresh && turn.chainageM > from - OVERLAP_M / 2 && turn.chainageM < to + OVERLAP_M / 2) {
                    turns.add(turn);
                }
            }
        }
        return turns;
    }

    private static List<Turn> findWithin(LineDirections line) {
        int window = (int) (WINDOW_M / LineDirections.STEP_M);
        int n = line.size();
        List<Turn> turns = new ArrayList<>();
        int i = 0;
        while (i < n) {
            double turned = over(line, i, window);
            if (Math.abs(turned) < LEAST_TURN_RAD) {
                i++;
                continue;
            }
            int from = i;
            while (i < n && Math.abs(over(line, i, window)) >= LEAST_TURN_RAD && over(line, i, window) * turned > 0) {
                i++;
            }
            double hand = Math.signum(turned);
            int to = Math.min(n - 1, i - 1 + window);
            addTurns(line, begin(line, from, hand), end(line, to, hand), hand, turns);
        }
        return turns;
    }

    /** How far the line turns in the window that starts at a place; a shorter one at the end. */
    private static double over(LineDirections line, int i, int window) {
        return line.headingRad(Math.min(line.size() - 1, i + window)) - line.headingRad(i);
    }

    /** Back to where the line begins to turn. */
    private static int begin(LineDirections line, int from, double hand) {
        int i = from;
        while (i > 0 && turned(line, i - 1, i, hand) > HARDLY_RAD) {
            i--;
        }
        return i;
    }

    private static int end(LineDirections line, int to, double hand) {
        int i = to;
        while (i + 1 < line.size() && turned(line, i, i + 1, hand) > HARDLY_RAD) {
            i++;
        }
        return i;
    }

    /** A stretch that turns one way, cut where it runs straighter between two turns. */
    private static void addTurns(LineDirections line, int from, int to, double hand, List<Turn> turns) {
        int half = (int) (SHARPNESS_M / LineDirections.STEP_M / 2);
        double[] sharpness = new double[to - from + 1];
        for (int i = from; i <= to; i++) {
            int a = Math.max(0, i - half);
            int b = Math.min(line.size() - 1, i + half);
            sharpness[i - from] = hand * (line.headingRad(b) - line.headingRad(a)) / Math.max(1, b - a);
        }
        int start = 0;
        int peak = 0;
        int valley = 0;
        for (int i = 1; i < sharpness.length; i++) {
            if (sharpness[i] < sharpness[valley]) {
                valley = i;
            }
            boolean risen = sharpness[valley] < STRAIGHTER * Math.min(sharpness[peak], sharpness[i]);
            boolean both = risen
                    && turned(line, from + start, from + valley, hand) >= LEAST_TURN_RAD
                    && turned(line, from + valley, to, hand) >= LEAST_TURN_RAD;
            if (both && sharpness[i] >= sharpness[peak] * STRAIGHTER) {
                turns.add(turn(line, from + start, from + valley, hand));
                start = valley;
                peak = i;
                valley = i;
            } else if (sharpness[i] > sharpness[peak]) {
                peak = i;
                valley = i;
            }
        }
        turns.add(turn(line, from + start, to, hand));
    }

    private static double turned(LineDirections line, int from, int to, double hand) {
        return hand * (line.headingRad(to) - line.headingRad(from));
    }

    private static Turn turn(LineDirections line, int from, int to, double hand) {
        int window = (int) (WINDOW_M / LineDirections.STEP_M);
        int first = from;
        int last = to;
        // Without what turns the other way at its ends.
        while (first + 1 < last && turned(line, first, first + 1, hand) <= 0) {
            first++;
        }
        while (last - 1 > first && turned(line, last - 1, last, hand) <= 0) {
            last--;
        }
        double whole = turned(line, first, last, hand);
        int middle = first;
        while (middle < last && turned(line, first, middle, hand) < whole / 2) {
            middle++;
        }
        double most = 0;
        for (int i = first; i <= last; i++) {
            most = Math.max(most, turned(line, i, Math.min(last, i + window), hand));
        }
        return new Turn(line.chainageM(middle), hand * whole, WINDOW_M / most);
    }

    /** The turns of a line that no hazard describes, as hazards that are not surveyed. */
    public static List<Hazard> listUnsurveyed(RouteLine line, List<Hazard> given) {
        List<Hazard> found = new ArrayList<>();
        for (Turn turn : find(line)) {
            if (given.stream().anyMatch(h -> h instanceof RouteCorner c && covers(c, turn.chainageM))) {
                continue;
            }
            String id = "turn-" + Math.round(turn.chainageM);
            while (isTaken(id, given) || isTaken(id, found)) {
                id += "x";
            }
            RoadFrame frame = line.frameAt(turn.chainageM);
            String hand = turn.turnRad > 0 ? "left" : "right";
            found.add(new RouteCorner(
                    new HazardPlace(
                            id,
                            "Tight " + hand + " turn in the route line",
                            Optional.empty(),
                            frame.origin(),
                            turn.chainageM,
                            0),
                    Optional.empty(),
                    Optional.empty(),
                    frame,
                    CornerSource.ROUTE_LINE,
                    Optional.of(turn.radiusM)));
        }
        return found;
    }

    /** Whether a described corner is the one a turn is found at: near its point, or where its guide is bent. */
    private static boolean covers(RouteCorner corner, double chainageM) {
        double before = COVERED_M;
        double after = COVERED_M;
        Optional<LineString> guide = corner.shape().flatMap(Corner::guide);
        if (guide.isPresent()) {
            LengthIndexedLine along = new LengthIndexedLine(guide.get());
            Coordinate[] at = guide.get().getCoordinates();
            double point = along.project(new Coordinate(0, 0));
            before = Math.max(before, point - along.project(at[1]) + BESIDE_M);
            after = Math.max(after, along.project(at[at.length - 2]) - point + BESIDE_M);
        }
        double beyond = chainageM - corner.place().chainageM();
        return beyond >= -before && beyond <= after;
    }

    private static boolean isTaken(String id, List<Hazard> hazards) {
        return hazards.stream().anyMatch(h -> h.place().id().equals(id));
    }
}
