package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.clearance.bound.MotionBounds;
import org.cresthaul.clearance.bound.PointBow;
import org.cresthaul.clearance.bound.Stretch;
import org.cresthaul.clearance.bound.UnitBow;
import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CoupledCombination;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.Pose;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.road.Approach;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.RolledProfile;
import org.cresthaul.road.SurveyedPoint;
import org.junit.jupiter.api.Test;

/**
 * The bounds on how far points stray from even motion, held against exact postures in between (whose own check is
 * {@link EngineAgainstBruteForceTest}): no position may leave them, and they must be known, and narrow, often enough to
 * be of use.
 */
class UnitBowTest {
    private static final int CASES = 400;
    private static final int HALVINGS = 3;
    private static final int POSITIONS = 13;
    /** What the posture solver leaves, times levers of a few times the wheelbase. */
    private static final double SOLVED_M = 1e-8;

    private long known;
    private long asked;
    private double widest;
    private final List<String> failures = new ArrayList<>();

    @Test
    void noPointOfTractorOrTrailerLeavesItsBow() {
        for (int i = 0; i < CASES; i++) {
            RandomCase c = RandomCase.of(RandomCase.SEED + i);
            Passage passage = new Passage(c.stance(), c.profile());
            CombinationShape shape =
                    passage.shape(c.setting().lift(), c.setting().booster());
            CoupledCombination combination = new CoupledCombination(shape, c.setting(), c.leveling());
            PostureSolver solver = new PostureSolver(combination, passage.ground());
            for (Passage.Span whole : passage.spans()) {
                descend(c, whole, combination, solver, HALVINGS);
            }
        }
        System.out.printf(
                "bow, seed %d: known for %d of %d stretches, widest %.1f mm%n",
                RandomCase.SEED, known, asked, widest * 1000);
        assertEquals(List.of(), failures.subList(0, Math.min(5, failures.size())), failures.size() + " outside");
        assertTrue(known > asked / 4 && known > 5_000, "too seldom known: " + known + " of " + asked);
    }

    private void descend(
            RandomCase c, Passage.Span span, CoupledCombination combination, PostureSolver solver, int more) {
        check(c, span, combination, solver);
        if (more > 0) {
            descend(c, span.halves().first(), combination, solver, more - 1);
            descend(c, span.halves().second(), combination, solver, more - 1);
        }
    }

    private void check(RandomCase c, Passage.Span span, CoupledCombination combination, PostureSolver solver) {
        PlacedUnit trailerA =
                solver.behind(span.start, 1, span.start.pose.pitchRad()).unit();
        PlacedUnit trailerB =
                solver.behind(span.end, 1, span.end.pose.pitchRad()).unit();
        UnitBow bow = UnitBow.unknown();
        if (span.motion.known && span.bow.known) {
            Stretch on = new Stretch(combination.groups().get(1), solver.paths(1), trailerA, trailerB, span.lengthM());
            bow = UnitBow.of(on, MotionBounds.of(on, span.kingpin), span.kingpinBow);
        }
        asked++;
        known += bow.known ? 1 : 0;
        for (int k = 1; k + 1 < POSITIONS; k++) {
            double t = k / (POSITIONS - 1.0);
            PlacedUnit tractor = solver.tractorAt(span.startM + t * span.lengthM(), 0);
            if (span.bow.known) {
                compare(
                        c,
                        span.bow,
                        span.start.pose,
                        span.end.pose,
                        tractor.pose,
                        t,
                        c.stance().tractor().underside().points());
            }
            if (bow.known) {
                PlacedUnit trailer =
                        solver.behind(tractor, 1, tractor.pose.pitchRad()).unit();
                compare(
                        c,
                        bow,
                        trailerA.pose,
                        trailerB.pose,
                        trailer.pose,
                        t,
                        c.stance().trailer().topside().points());
            }
        }
    }

    private void compare(RandomCase c, UnitBow bow, Pose a, Pose b, Pose at, double t, List<FramePoint> points) {
        for (FramePoint p : points) {
            PointBow of = bow.at(p.xM(), p.hM());
            Bow full = of.parabola();
            widest = Math.max(widest, full.whole.width());
            double rise = at.worldZM(p) - (1 - t) * a.worldZM(p) - t * b.worldZM(p);
            double forward = at.worldXM(p) - (1 - t) * a.worldXM(p) - t * b.worldXM(p);
            double off = rise - 4 * full.peak * t * (1 - t);
            if (isOutside(rise, full.whole)
                    || rise < of.rise().lo() - SOLVED_M
                    || rise > of.rise().hi() + SOLVED_M
                    || isOutside(off, full.rest)
                    || Math.abs(forward) > of.forward() + SOLVED_M) {
                failures.add(c + " " + p + ": " + rise + " of [" + full.whole.lo + ", " + full.whole.hi + "], " + off
                        + " of [" + full.rest.lo + ", " + full.rest.hi + "], " + forward + " of " + of.forward());
            }
        }
        double turned = at.pitchRad() - (1 - t) * a.pitchRad() - t * b.pitchRad();
        if (turned < bow.pitch().lo() - SOLVED_M || turned > bow.pitch().hi() + SOLVED_M) {
            failures.add(c + " pitch " + turned + " of " + bow.pitch());
        }
        // The slope of any line fixed to the unit; 20 degrees is one of them.
        double leaning = Math.toRadians(20);
        double most = Math.max(
                Math.abs(Math.tan(leaning + at.pitchRad())),
                Math.max(Math.abs(Math.tan(leaning + a.pitchRad())), Math.abs(Math.tan(leaning + b.pitchRad()))));
        double slope = Math.tan(leaning + at.pitchRad())
                - (1 - t) * Math.tan(leaning + a.pitchRad())
                - t * Math.tan(leaning + b.pitchRad());
        double parabola = 4 * t * (1 - t) * bow.peakOfSlope(most);
        if (Math.abs(slope) > Math.min(bow.ofSlope(most), parabola + bow.restOfSlope(most)) + SOLVED_M) {
            failures.add(c + " slope " + slope + " of " + bow.ofSlope(most));
        }
    }

    private static boolean isOutside(double value, Interval bounds) {
        return value < bounds.lo - SOLVED_M || value > bounds.hi + SOLVED_M;
    }

    /**
     * A wheel of radius 0.5 m over a ridge of ±10 %, worked out by hand: it stands an arc's sagitta under the ridge
     * line.
     */
    @Test
    void theBowOfAPathIsThatOverItsChord() {
        double top = 10 * 0.1;
        RolledProfile path = new RolledProfile(
                RoadProfile.of(
                        "ridge",
                        List.of(new SurveyedPoint(-10, 0), new SurveyedPoint(0, top), new SurveyedPoint(10, 0)),
                        Approach.declared(0.1, 0),
                        Approach.declared(-0.1, 0)),
                0.5);
        Bow bow = new Bow();
        path.bow(-4, 4, bow);
        // Ends: 4 m down the slope at 10 %, the center r √1.01 above; top: r above the ridge.
        double end = top - 0.4 + 0.5 * Math.sqrt(1.01);
        assertEquals(0, bow.whole.lo, 1e-15);
        assertEquals(top + 0.5 - end, bow.whole.hi, 1e-12);
        Bow straight = new Bow();
        path.bow(-8, -3, straight);
        assertEquals(0, straight.whole.width(), 1e-12);
        Bow line = new Bow();
        RoadProfile.of(
                        "valley",
                        List.of(new SurveyedPoint(-10, 0), new SurveyedPoint(2, -0.3), new SurveyedPoint(10, 0)),
                        Approach.declared(-0.025, 0),
                        Approach.declared(0.0375, 0))
                .bow(-10, 10, line);
        assertEquals(-0.3, line.whole.lo, 1e-15);
        assertEquals(0, line.whole.hi, 1e-15);
    }
}
