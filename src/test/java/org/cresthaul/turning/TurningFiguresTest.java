package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.geometry.WorkStopped;
import org.cresthaul.rig.UnitName;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Turns made by hand whose figures are known from closed forms of the steady circle, from turns of the same kind, or by
 * looking everywhere. Combinations are stick figures: an axle line at every effective axle.
 */
class TurningFiguresTest {
    private static final double WIDE = 1.3;

    /**
     * Units of given lengths; the couplings of the chain; one body each, from {@code rear} to the hitch and the nose.
     */
    private static TurningCombination combination(double rear, double nose, TurningUnit... chain) {
        List<PlanUnit> units = new ArrayList<>();
        List<Double> limits = new ArrayList<>();
        for (int k = 0; k < chain.length; k++) {
            double front = k == 0 ? chain[k].hitchToAxleM() + nose : chain[k].hitchToAxleM() * 0.9;
            units.add(new PlanUnit(
                    List.of(UnitName.TRACTOR, UnitName.TRAILER, UnitName.BOOSTER)
                            .get(k),
                    List.of(new AxleLine(0, WIDE, 0.6, 0.25)),
                    List.of(new Body(UnitPart.BODY.of(UnitName.TRAILER), -rear, front, WIDE))));
            if (k > 0) {
                limits.add(Math.PI / 2);
            }
        }
        return new TurningCombination(List.of(chain), units, 0.8, 6, limits);
    }

    private static TurningFigures figures(TurningCombination c, LeadPath path) {
        return TurningFigures.of(Following.along(c.chain(), path), c);
    }

    private static LeadPath turn(double before, double radius, double degrees, double after) {
        double left = Math.signum(degrees);
        return LeadPath.from(3, -2, 0.4)
                .line(before)
                .arc(Math.abs(Math.toRadians(degrees)) * radius, left / radius)
                .line(after)
                .build();
    }

    /** T16 (F), in meters as in feet: 1.172 of a tail, whatever lies before the turn, on the outside of it. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 3, 60, 200})
    void tailSwingIsThatOfTheTurnWhereverItBegins(double before) {
        TurningCombination c = combination(13, 1, new TurningUnit(20, 0));
        for (double degrees : new double[] {-90, 90, 140, -180}) {
            TurningFigures f = figures(c, turn(before, 35.4, degrees, 100));
            // The body is as wide as it likes: a wider one swings out a little less, w (1 - cos θ), here w = 1.3 for 4.
            assertEquals(1.172, f.tailSwing().valueM(), 0.14);
            assertEquals(
                    figures(c, turn(0, 35.4, -90, 100)).tailSwing().valueM(),
                    f.tailSwing().valueM(),
                    0.002);
            assertEquals(degrees > 0 ? -1 : 1, f.tailSwing().side());
            assertEquals(0, f.swings().get(0).tailInside().valueM(), 1e-6);
        }
    }

    /** Swinging away by 0.3° first changes the tail's swing by no more than that turn's own. */
    @Test
    void swingingAwayALittleFirstIsNoTailSwing() {
        TurningCombination c = combination(2.1, 1.2, new TurningUnit(5.8, -0.3), new TurningUnit(12, 0));
        for (int hand = -1; hand <= 1; hand += 2) {
            double plain = figures(c, turn(20, 14, hand * 90, 80)).tailSwing().valueM();
            LeadPath swung = LeadPath.from(0, 0, 0)
                    .line(20)
                    .arc(Math.toRadians(0.3) * 14, -hand / 14.0)
                    .line(6)
                    .arc(Math.toRadians(90.3) * 14, hand / 14.0)
                    .line(80)
                    .build();
            double with = figures(c, swung).tailSwing().valueM();
            assertTrue(plain > 0.02 && plain < 0.25, "a short tail: " + plain);
            assertEquals(plain, with, 2.1 * Math.toRadians(0.3) + 0.003);
        }
    }

    /**
     * A driver who swings away by a meter takes the whole unit along: its tail's swing stays that of the turn, about.
     */
    @Test
    void swingingAwayAMeterMovesTheUnitAndIsNotItsTail() {
        TurningCombination c = combination(2.1, 1.2, new TurningUnit(5.8, -0.3), new TurningUnit(12, 0));
        LeadPath swung = LeadPath.from(0, 0, 0)
                .line(20)
                .arc(3.5, -1 / 20.0)
                .line(3)
                .arc(3.5 + 14 * Math.PI / 2, 1 / 14.0)
                .line(80)
                .build();
        TurningFigures f = figures(c, swung);
        assertTrue(f.tailSwing().valueM() < 0.45, f.tailSwing().toString());
        assertTrue(f.offtrackingM().get(1) > 3);
    }

    /** A deck that ends ahead of the axles has no tail, on a turn that ends just short of a right angle as on any. */
    @Test
    void whatLiesAheadOfTheAxleHasNoTail() {
        for (double degrees : new double[] {-89.9, 60, 90, 140}) {
            TurningCombination c = combination(-3, 1.2, new TurningUnit(5.8, -0.3), new TurningUnit(12, 0));
            TurningFigures f = figures(c, turn(20, 14, degrees, 80));
            assertEquals(0, f.tailSwing().valueM(), 1e-9, "degrees " + degrees);
            assertTrue(
                    f.frontalSwing().valueM() > 0.2 && f.frontalSwing().valueM() < 0.6,
                    f.frontalSwing().toString());
        }
    }

    /** A driver who runs wide by 0.6 m after the turn and comes back steers that far: it is no swing of the nose. */
    @Test
    void runningWideAfterTheTurnIsNoFrontalSwing() {
        TurningCombination c = combination(2, 1.2, new TurningUnit(5.8, -0.3), new TurningUnit(12, 0));
        double plain = figures(c, turn(20, 14, 90, 80)).frontalSwing().valueM();
        double more = Math.acos(1 - 0.3 / 14);
        LeadPath wide = LeadPath.from(0, 0, 0)
                .line(20)
                .arc((Math.PI / 2 - more) * 14, 1 / 14.0)
                .line(4)
                .arc(2 * more * 14, 1 / 14.0)
                .arc(more * 14, -1 / 14.0)
                .line(80)
                .build();
        assertTrue(figures(c, wide).frontalSwing().valueM() <= plain + 0.02, "plain " + plain);
    }

    /**
     * Out of a steady circle onto the tangent: a nose at f ahead of the steer axle of wheelbase L passes the side's
     * line by √((√(R² − L²) + w)² + (L + f)²) − (R + w), as its corner runs on that radius around the middle.
     */
    @ParameterizedTest
    @ValueSource(doubles = {9, 12, 20})
    void frontalSwingIsTheCornersRadiusBeyondTheSides(double radius) {
        TurningCombination c = combination(1, 1.4, new TurningUnit(6, 0));
        double expected = Math.hypot(Math.sqrt(radius * radius - 36) + WIDE, 7.4) - (radius + WIDE);
        for (double degrees : new double[] {540, -540}) {
            TurningFigures f = figures(c, turn(10, radius, degrees, 60));
            assertEquals(expected, f.frontalSwing().valueM(), 0.002);
            // After a half turn the body has all but come to its steady angle.
            double half =
                    figures(c, turn(10, radius, degrees / 3, 60)).frontalSwing().valueM();
            assertTrue(half <= expected && half > 0.98 * expected, half + " of " + expected);
            assertEquals(degrees > 0 ? -1 : 1, f.frontalSwing().side());
        }
    }

    /** Half a second of a corner's figures is too long for somebody who has gone. */
    @Test
    void figuresThatNobodyWaitsForAreNotMade() {
        TurningCombination c = combination(1, 1, new TurningUnit(20, 0));
        StopSignal signal = new StopSignal();
        signal.give();
        assertThrows(WorkStopped.class, () -> signal.during(() -> figures(c, turn(40, 50, 180, 100))));
    }

    /** T10 (F): one unit of 20 on a circle of 50 is 4.169 inside after 180°. */
    @Test
    void offtrackingOfAHalfTurnIsTheClosedForm() {
        TurningCombination c = combination(1, 1, new TurningUnit(20, 0));
        assertEquals(4.169, figures(c, turn(40, 50, 180, 100)).offtrackingM().get(0), 0.003);
    }

    /**
     * Sharp turns of up to 180°, looked at everywhere: the least distance of an axle from any place of the path that
     * the lead point has come by, or of the straight before it.
     */
    @ParameterizedTest
    @ValueSource(doubles = {-180, -140, -100, 60, 120, 140, 160, 180})
    void offtrackingOfSharpTurnsIsTheDistanceFromThePathDriven(double degrees) {
        TurningCombination c =
                combination(1, 1, new TurningUnit(5.8, -0.3), new TurningUnit(12, 2.2), new TurningUnit(2.4, 0));
        for (double radius : new double[] {9, 13, 18}) {
            LeadPath path = turn(30, radius, degrees, 90);
            Track track = Following.along(c.chain(), path);
            List<Double> found = TurningFigures.offtrackingM(track);
            for (int k = 0; k < 3; k++) {
                double most = 0;
                for (int i = 0; i < track.size(); i++) {
                    double least = Double.POSITIVE_INFINITY;
                    for (double s = -30; s <= track.stationM(i); s += 0.05) {
                        double[] at = path.at(Math.max(0, s));
                        double x = at[0] + Math.min(0, s) * Math.cos(0.4);
                        double y = at[1] + Math.min(0, s) * Math.sin(0.4);
                        least = Math.min(least, Math.hypot(x - track.axleXM(i, k), y - track.axleYM(i, k)));
                    }
                    most = Math.max(most, least);
                }
                assertEquals(most, found.get(k), 0.03, degrees + " r" + radius + " unit " + k);
            }
            assertTrue(found.get(2) < 11, "no more than half the width of the turn, about: " + found);
        }
    }

    /**
     * On a long circle units run where the chain rule says: a short booster outside, a long one inside, every unit
     * told.
     */
    @ParameterizedTest
    @ValueSource(doubles = {25, 40})
    void trailsOfEveryUnitAreThoseOfTheSteadyTurn(double radius) {
        for (double booster : new double[] {1.5, 2.5, 8}) {
            TurningCombination c =
                    combination(1, 1, new TurningUnit(6, -0.3), new TurningUnit(11, 4), new TurningUnit(booster, 0));
            for (int hand = -1; hand <= 1; hand += 2) {
                TurningFigures f = figures(c, turn(30, radius, hand * 1800, 0));
                SteadyTurn steady = SteadyTurn.of(c.chain(), radius).orElseThrow();
                for (int k = 1; k < 3; k++) {
                    double inside = steady.axleRadiusM().get(k - 1)
                            - steady.axleRadiusM().get(k);
                    TurningFigures.UnitTrail trail = f.trails().get(k - 1);
                    assertEquals(k, trail.unit());
                    assertEquals(Math.max(0, inside), trail.inside().valueM(), 0.02, booster + " unit " + k);
                    if (inside < -0.05) {
                        // On entering it swings out farther, before the trailer has bent.
                        assertTrue(
                                trail.outside().valueM() >= -inside - 0.02,
                                booster + " unit " + k + ": " + trail + " " + inside);
                        assertEquals(-hand, trail.outside().side());
                    }
                }
                assertEquals(f.trails().get(1).outside(), f.trailsWide().orElseThrow());
            }
        }
    }

    /** The same turn driven to the other hand has the same figures. */
    @Test
    void aMirroredTurnHasTheMirroredFigures() {
        TurningCombination c =
                combination(2, 1.2, new TurningUnit(5.8, -0.3), new TurningUnit(12, 2.2), new TurningUnit(2.4, 0));
        for (double degrees : new double[] {40, 90, 140, 180}) {
            TurningFigures left = figures(c, turn(20, 14, degrees, 100));
            TurningFigures right = figures(c, turn(20, 14, -degrees, 100));
            assertEquals(left.sweptWidthM(), right.sweptWidthM(), 1e-6);
            for (int k = 0; k < 3; k++) {
                TurningFigures.UnitSwing a = left.swings().get(k);
                TurningFigures.UnitSwing b = right.swings().get(k);
                assertEquals(a.tailOutside().valueM(), b.tailOutside().valueM(), 1e-6);
                assertEquals(a.frontOutside().valueM(), b.frontOutside().valueM(), 1e-6);
                assertEquals(a.tailInside().valueM(), b.tailInside().valueM(), 1e-6);
                assertEquals(left.offtrackingM().get(k), right.offtrackingM().get(k), 1e-6);
            }
        }
    }
}
