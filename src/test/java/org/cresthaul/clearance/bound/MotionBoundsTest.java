package org.cresthaul.clearance.bound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.geometry.Range;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.rig.FramePoint;
import org.junit.jupiter.api.Test;

/**
 * Exact postures in between, whose own check is {@code EngineAgainstBruteForceTest}, against the bounds on how a unit
 * moves: what anything moved from one of them to the next, divided by the way, is a mean of its rate, and so must lie
 * within the bounds.
 */
class MotionBoundsTest {
    private static final int PLACES = 5_000;
    /** What the posture solver leaves, times levers of a few times the wheelbase. */
    private static final double SOLVED_M = 1e-8;

    private final List<String> outside = new ArrayList<>();
    private long asked;
    private long known;
    private long steady;
    private double nearest = Double.POSITIVE_INFINITY;

    @Test
    void noPointOfAUnitMovesBeyondItsBounds() {
        RandomStretch.forEach(PLACES, this::check);
        System.out.printf(
                "motion, seed %d: known for %d of %d stretches, steady %d, nearest to its bound %.3g%n",
                RandomCase.SEED, known, asked, steady, nearest);
        assertEquals(List.of(), outside.subList(0, Math.min(5, outside.size())), outside.size() + " outside");
        assertTrue(asked >= 10_000 && known > asked / 2 && steady > known / 4, known + " of " + asked);
    }

    private void check(RandomStretch s) {
        asked++;
        if (!s.motion().known) {
            return;
        }
        known++;
        steady += s.motion().steady ? 1 : 0;
        for (int i = 0; i + 1 < s.positions(); i++) {
            double way = (s.shares().get(i + 1) - s.shares().get(i)) * s.lengthM();
            PlacedUnit a = s.exact().get(i);
            PlacedUnit b = s.exact().get(i + 1);
            double tolerance = SOLVED_M / way;
            within(
                    s,
                    "turn",
                    (b.pose.pitchRad() - a.pose.pitchRad()) / way,
                    s.motion().turn(),
                    tolerance);
            within(s, "pitch", b.pose.pitchRad(), s.motion().pitch, SOLVED_M);
            for (FramePoint p : s.somePoints()) {
                PointMotion moves = s.motion().at(s.on().a.pose, s.on().b.pose, p);
                within(s, "forward", (b.pose.worldXM(p) - a.pose.worldXM(p)) / way, moves.forward(), tolerance);
                within(s, "rise", (b.pose.worldZM(p) - a.pose.worldZM(p)) / way, moves.rise(), tolerance);
            }
            for (int k = 0; k < s.on().group.size(); k++) {
                double off = s.motion().speedOff;
                within(s, "wheel", (b.wheelX[k] - a.wheelX[k]) / way, Range.ONE.widened(off), tolerance);
                checkTravel(s, b, k);
            }
            if (!s.motion().mayCarry && b.fixedGap <= 0) {
                outside.add(s + " a fixed wheel stands");
            }
        }
    }

    private void checkTravel(RandomStretch s, PlacedUnit at, int k) {
        PlacedUnit a = s.on().a;
        PlacedUnit b = s.on().b;
        Range ends = Range.between(a.travel[k], b.travel[k]);
        within(s, "travel", at.travel[k], ends.widened(s.motion().travelPadM), SOLVED_M);
        int valve = s.on().group.valve;
        boolean rules = valve < 0
                ? at.travel[k] > -s.on().group.reboundM - SOLVED_M && at.travel[k] < s.on().group.jounceM + SOLVED_M
                : k == valve || at.travel[k] < s.on().group.jounceM + SOLVED_M;
        if (s.motion().steady && !rules) {
            outside.add(s + " axle " + k + " does not keep its part");
        }
    }

    private void within(RandomStretch s, String what, double value, Range bounds, double tolerance) {
        double inside = Math.min(value - bounds.lo(), bounds.hi() - value);
        if (!(inside >= -tolerance)) {
            outside.add(s + " " + what + ": " + value + " of " + bounds);
        }
        nearest = Math.min(nearest, inside);
    }
}
