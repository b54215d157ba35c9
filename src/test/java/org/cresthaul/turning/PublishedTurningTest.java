package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Values from outside the project. P: read in the source named; M: the value or an input is from memory of that source;
 * F: a published formula, its value computed independently. Lengths are those of the sources, feet unless said; the
 * model has no scale. R is the radius of the path of the steer axle's center.
 */
class PublishedTurningTest {
    private static double steadyInside(double radius, double wheelbase, double width) {
        return SteadyTurn.of(List.of(new TurningUnit(wheelbase, 0)), radius)
                        .orElseThrow()
                        .axleRadiusM()
                        .get(0)
                - width / 2;
    }

    /** T1: AASHTO design vehicles via TxDOT RDW 4.3.3 (P; wheelbases of P and SU-40 M). */
    @Test
    void t1InsideRadiiOfSingleUnits() {
        assertEquals(14.4, steadyInside(21.0, 11, 7), 0.15);
        assertEquals(28.4, steadyInside(38, 20, 8), 0.15);
        assertEquals(36.4, steadyInside(47.4, 25, 8), 0.15);
    }

    /** Least distance from the arc's center to the rear effective axle over straight, 180° arc and exit tangent. */
    private static double leastRearRadius(double radius, List<TurningUnit> chain) {
        LeadPath path = LeadPath.from(0, 0, 0)
                .line(50)
                .arc(Math.PI * radius, 1 / radius)
                .line(120)
                .build();
        Track track = Following.along(chain, path);
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < track.size(); i++) {
            int last = chain.size() - 1;
            least = Math.min(least, Math.hypot(track.axleXM(i, last) - 50, track.axleYM(i, last) - radius));
        }
        return least;
    }

    /** T2: WB-40, TxDOT RDW 4.3.3 and SDDC-TEA (P; wheelbases M). */
    @Test
    void t2SemitrailerWb40() {
        assertEquals(19.3, leastRearRadius(36, List.of(new TurningUnit(12.5, 0), new TurningUnit(25.5, 0))) - 4, 0.1);
    }

    /** T3: WB-62, SDDC-TEA (P; CTR and wheelbases M). */
    @Test
    void t3SemitrailerWb62() {
        assertEquals(7.4, leastRearRadius(41, List.of(new TurningUnit(19.5, 0), new TurningUnit(41.0, 0))) - 4.25, 0.1);
    }

    /** T4: WB-67D, a hitch behind the axle, AASHTO (M); width 8.5 as for every WB vehicle of that table. */
    @Test
    void t4DoubleWithAHitchBehindTheAxle() {
        List<TurningUnit> chain =
                List.of(new TurningUnit(11, 0), new TurningUnit(23, 3), new TurningUnit(7, 0), new TurningUnit(23, 0));
        assertEquals(19.1, leastRearRadius(40.9, chain) - 4.25, 0.15);
    }

    /** T5: WB-62's steer angle and outer front tire, WB-19 data sheet, SDDC-TEA (P). */
    @Test
    void t5SteerAngleAndOuterFrontTire() {
        List<TurningUnit> tractor = List.of(new TurningUnit(19.5, 0));
        Track track = Following.along(
                tractor, LeadPath.from(41, 0, Math.PI / 2).arc(400, 1 / 41.0).build());
        assertEquals(28.4, Math.toDegrees(track.steerRad(track.size() - 1)), 0.1);
        double rear = SteadyTurn.of(tractor, 41).orElseThrow().axleRadiusM().get(0);
        assertEquals(44.8, Math.hypot(rear + 4.25, 19.5), 0.1);
    }

    /** T6: the corridor of Directive 97/27/EC Annex I 7.6.1.2 (P), meters. */
    @Test
    void t6LongestWheelbaseInTheCorridor() {
        double lo = 1;
        double hi = 10;
        for (int i = 0; i < 60; i++) {
            double mid = 0.5 * (lo + hi);
            boolean fits = steadyInside(12.5 - 2.04, mid, 2.55) >= 5.3;
            lo = fits ? mid : lo;
            hi = fits ? hi : mid;
        }
        assertEquals(8.135, lo, 0.001);
    }

    /** T7: steady form as printed in a Roseville MN design file (P; values F). */
    @Test
    void t7HandbookSteadyForm() {
        double[][] rows = {{50, 19, 4.918}, {100, 19, 2.282}, {50, 21, 5.883}, {100, 21, 2.706}};
        for (double[] row : rows) {
            double drive = Math.sqrt(row[0] * row[0] - 8.75 * 8.75) - 3.21;
            double lead = Math.hypot(drive, 8.75);
            SteadyTurn steady = SteadyTurn.of(List.of(new TurningUnit(8.75, -1), new TurningUnit(row[1], 0)), lead)
                    .orElseThrow();
            assertEquals(row[2], steady.offtrackingM(1, lead), 0.002);
        }
    }

    /** T8: chain rule (F). */
    @Test
    void t8ChainOfftracking() {
        for (double[] row : new double[][] {{3, 6.293}, {0, 6.341}}) {
            SteadyTurn steady = SteadyTurn.of(
                            List.of(
                                    new TurningUnit(11, 0),
                                    new TurningUnit(23, row[0]),
                                    new TurningUnit(7, 0),
                                    new TurningUnit(23, 0)),
                            100)
                    .orElseThrow();
            assertEquals(row[1], steady.offtrackingM(3, 100), 0.002);
        }
    }

    /** T9: Σx²/Σx (F); raised axles are not counted, NZ Transport Agency rule (P). */
    @Test
    void t9EffectiveAxleOfAGroup() {
        assertEquals(36.375, EffectiveAxle.behindHitchM(List.of(31.5, 36.0, 40.5)), 0.001);
        assertEquals(33.90, EffectiveAxle.behindHitchM(List.of(31.5, 36.0)), 0.001);
        // The same with the mean and the offsets from it.
        assertEquals(36 + (4.5 * 4.5 * 2 / 3) / 36, EffectiveAxle.behindHitchM(List.of(31.5, 36.0, 40.5)), 1e-12);
    }

    private static Track onArc(double length, double radius, double degrees) {
        return Following.along(
                List.of(new TurningUnit(length, 0)),
                LeadPath.from(radius, 0, Math.PI / 2)
                        .arc(Math.toRadians(degrees) * radius, 1 / radius)
                        .build());
    }

    private static double offtracking(Track track, double radius) {
        int last = track.size() - 1;
        return radius - Math.hypot(track.axleXM(last, 0), track.axleYM(last, 0));
    }

    /** T10: closed form of dα/ds = 1/R − sin α / L (F). */
    @Test
    void t10TransientOfOneUnit() {
        assertEquals(1.818, offtracking(onArc(20, 50, 30), 50), 0.002);
        assertEquals(3.475, offtracking(onArc(20, 50, 60), 50), 0.002);
        assertEquals(3.965, offtracking(onArc(20, 50, 90), 50), 0.002);
        assertEquals(4.169, offtracking(onArc(20, 50, 180), 50), 0.002);
        assertEquals(
                4.174,
                SteadyTurn.of(List.of(new TurningUnit(20, 0)), 50).orElseThrow().offtrackingM(0, 50),
                0.002);
        Track quarter = onArc(20, 50, 90);
        assertEquals(22.977, Math.toDegrees(quarter.steerRad(quarter.size() - 1)), 0.002);
    }

    /** T11: where there is no steady state (F). */
    @Test
    void t11NoSteadyState() {
        for (double[] row : new double[][] {{36, 47.489, 9.898}, {30, 52.550, 8.064}}) {
            assertTrue(SteadyTurn.of(List.of(new TurningUnit(36, 0)), row[0]).isEmpty());
            Track track = onArc(36, row[0], 90);
            assertEquals(row[1], Math.toDegrees(track.steerRad(track.size() - 1)), 0.01);
            assertEquals(row[2], offtracking(track, row[0]), 0.01);
        }
    }

    /** T12: tan(α/2) decays as e^(−s/L) (F). */
    @Test
    void t12StraightPullOut() {
        Track track = Following.along(
                List.of(new TurningUnit(30, 0)),
                LeadPath.from(0, 0, 0).line(30).build(),
                new double[] {-Math.toRadians(30)},
                0.25,
                false);
        assertEquals(11.26, Math.toDegrees(track.steerRad(track.size() - 1)), 0.01);
    }

    /** T13: WB-62 through 90°, no-slip model (F). */
    @Test
    void t13LargestOfftrackingThroughARightAngle() {
        for (double[] row : new double[][] {{50, 16.90, 29.05}, {100, 10.22, 10.90}}) {
            List<TurningUnit> chain = List.of(new TurningUnit(19.5, 0), new TurningUnit(41.0, 0));
            LeadPath path = LeadPath.from(0, 0, 0)
                    .line(10)
                    .arc(Math.PI / 2 * row[0], 1 / row[0])
                    .line(150)
                    .build();
            List<Double> most = TurningFigures.offtrackingM(Following.along(chain, path));
            assertEquals(row[1], most.get(1), 0.03);
            assertEquals(row[2], SteadyTurn.of(chain, row[0]).orElseThrow().offtrackingM(1, row[0]), 0.03);
        }
    }

    /** T14: a booster on a pivot behind the axle: chain rule (F). */
    @Test
    void t14SteadyTurnWithABooster() {
        SteadyTurn steady = SteadyTurn.of(
                        List.of(new TurningUnit(20, -1), new TurningUnit(38, 7), new TurningUnit(8, 0)), 100)
                .orElseThrow();
        assertEquals(97.980, steady.axleRadiusM().get(0), 0.002);
        assertEquals(90.316, steady.axleRadiusM().get(1), 0.002);
        assertEquals(90.587, steady.couplingRadiusM().get(1), 0.002);
        assertEquals(90.233, steady.axleRadiusM().get(2), 0.002);
        assertEquals(9.50, Math.toDegrees(steady.articulationRad().get(1)), 0.005);
    }

    /** T15: pivot overhang equal to the booster's length: both track together; shorter outside, longer inside (F). */
    @Test
    void t15BoosterTracksWithTheGroup() {
        assertEquals(90.3161, boosterRadius(8), 1e-4);
        assertTrue(boosterRadius(7) > 90.3161 + 0.01);
        assertTrue(boosterRadius(9) < 90.3161 - 0.01);
    }

    private static double boosterRadius(double length) {
        return SteadyTurn.of(List.of(new TurningUnit(20, -1), new TurningUnit(38, 8), new TurningUnit(length, 0)), 100)
                .orElseThrow()
                .axleRadiusM()
                .get(2);
    }

    /** T16: tail swing entering a circle (F). */
    @Test
    void t16TailSwing() {
        Track track = Following.along(
                List.of(new TurningUnit(20, 0)),
                LeadPath.from(0, 0, 0).arc(Math.PI / 2 * 35.4, 1 / 35.4).build());
        double most = 0;
        for (int i = 0; i < track.size(); i++) {
            double y = track.axleYM(i, 0) - 13 * track.sin(i, 0) - 4 * track.cos(i, 0);
            most = Math.max(most, -4 - y);
        }
        assertEquals(1.172, most, 0.005);
    }
}
