package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.cresthaul.turning.SteeredAxles.Castering;
import org.cresthaul.turning.SteeredAxles.Commanded;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Wheels that turn: against an independent integrator with a law of its own, and against closed forms. */
class SteeredAxlesTest {
    private static final int CASES = Integer.getInteger("steered.cases", 500);

    private static TurningUnit unit(List<Double> fixed, List<Castering> castering, List<Commanded> commanded) {
        SteeredAxles axles = new SteeredAxles(fixed, castering, commanded);
        return new TurningUnit(axles.effectiveM(), 0, Optional.of(axles));
    }

    private static TurningUnit commanded(double behindM, double ratio, double limitRad) {
        return unit(List.of(), List.of(), List.of(new Commanded(behindM, ratio, limitRad)));
    }

    @Test
    void agreesWithAHighOrderIntegratorOverRandomChainsAndPaths() {
        double worstM = 0;
        double worstOfBound = 0;
        int compared = 0;
        for (int seed = 0; seed < CASES; seed++) {
            RandomManeuver m = RandomManeuver.of(seed).steered(new SplittableRandom(seed + 5), true);
            Track track = Following.along(m.chain(), m.path());
            assertTrue(track.errorBoundM() <= Following.TOLERANCE_M, "seed " + seed + ": " + track.errorBoundM());
            double off = worstOffM(m, track, m.straightBehind(), false);
            compared += upTo(track);
            worstM = Math.max(worstM, off);
            worstOfBound = Math.max(worstOfBound, off - track.errorBoundM());
        }
        assertTrue(worstM < Following.TOLERANCE_M, "worst " + worstM);
        assertTrue(compared > 60 * CASES, "states " + compared);
        assertTrue(worstOfBound < 1e-6, "beyond the stated bound by " + worstOfBound);
    }

    @Test
    void agreesInReverseAsLongAsTheBoundIsKept() {
        double worstM = 0;
        int kept = 0;
        for (int seed = 0; seed < CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed + 77);
            LeadPath back = LeadPath.from(0, 0, Math.PI)
                    .arc(random.nextDouble(2, 8), random.nextDouble(-0.05, 0.05))
                    .line(random.nextDouble(1, 6))
                    .build();
            RandomManeuver any = new RandomManeuver(RandomManeuver.of(seed).chain(), back).steered(random, false);
            double[] headings = new double[any.chain().size()];
            for (int k = 0; k < headings.length; k++) {
                headings[k] = random.nextDouble(-0.2, 0.2);
            }
            Track track = Following.along(any.chain(), back, headings, Following.STATE_M, true);
            if (track.errorBoundM() <= Following.TOLERANCE_M) {
                kept++;
                worstM = Math.max(worstM, worstOffM(any, track, headings, true));
            }
        }
        assertTrue(kept > CASES / 2, "kept " + kept);
        assertTrue(worstM < Following.TOLERANCE_M, "worst " + worstM);
    }

    /**
     * How many states are before something is bent by a right angle or pushed: what is folded so far is on no road, and
     * which way its wheels then stand is anybody's guess.
     */
    private static int upTo(Track track) {
        for (int i = 1; i < track.size(); i++) {
            for (int k = 0; k < track.chain().size(); k++) {
                double pulled = (track.hitchXM(i, k) - track.hitchXM(i - 1, k)) * track.cos(i, k)
                        + (track.hitchYM(i, k) - track.hitchYM(i - 1, k)) * track.sin(i, k);
                double bend = k == 0 ? track.steerRad(i) : track.articulationRad(i, k - 1);
                if (Math.abs(bend) > 1.5 || Math.abs(pulled) < 0.05 * (track.stationM(i) - track.stationM(i - 1))) {
                    return i - 1;
                }
            }
        }
        return track.size();
    }

    private static double worstOffM(RandomManeuver m, Track track, double[] start, boolean reversing) {
        double[] stations = new double[track.size()];
        for (int i = 0; i < stations.length; i++) {
            stations[i] = track.stationM(i);
        }
        double[][] headings = new ReferenceFollowing(m.chain(), m.path(), 1e-12, reversing).headingsAt(stations, start);
        double worst = 0;
        int compared = upTo(track);
        for (int i = 0; i < compared; i++) {
            double x = track.leadXM(i);
            double y = track.leadYM(i);
            for (int k = 0; k < m.chain().size(); k++) {
                double reach = m.chain().get(k).hitchToAxleM();
                double c = Math.cos(headings[i][k]);
                double s = Math.sin(headings[i][k]);
                worst = Math.max(
                        worst, Math.hypot(x - reach * c - track.axleXM(i, k), y - reach * s - track.axleYM(i, k)));
                reach += m.chain().get(k).couplingBehindM();
                x -= reach * c;
                y -= reach * s;
            }
        }
        return worst;
    }

    /**
     * One axle L behind a hitch on a circle of radius R whose direction is that of the unit ahead, its wheels turned by
     * r times the bend φ: in the triangle of the circle's middle, hitch and axle R sin((1 + r) φ) = L cos(r φ), the
     * axle's radius being R cos φ / cos(r φ).
     */
    @ParameterizedTest
    @CsvSource({"0, 9, 20", "0.4, 9, 20", "0.7, 12, 18", "1, 9, 20", "1, 14, 12"})
    void settlesToTheTriangleOfASteadyTurn(double ratio, double lengthM, double radiusM) {
        Track track = onACircle(commanded(lengthM, ratio, Math.toRadians(60)), radiusM);
        int last = track.size() - 1;
        double bend = Math.IEEEremainder(
                Math.atan2(track.leadSin(last), track.leadCos(last)) - track.headingRad(last, 0), 2 * Math.PI);

        assertEquals(lengthM * Math.cos(ratio * bend), radiusM * Math.sin((1 + ratio) * bend), 1e-6);
        double axleM = Math.hypot(track.axleXM(last, 0), track.axleYM(last, 0));
        assertEquals(radiusM * Math.cos(bend) / Math.cos(ratio * bend), axleM, 1e-6);
        // Turned by as much as the unit ahead is, its axle runs where the hitch ran.
        assertTrue(ratio < 1 || Math.abs(axleM - radiusM) < 1e-6, "radius " + axleM);
    }

    private static Track onACircle(TurningUnit unit, double radiusM) {
        LeadPath circle =
                LeadPath.from(radiusM, 0, Math.PI / 2).arc(400, 1 / radiusM).build();
        return Following.along(List.of(unit), circle);
    }

    @Test
    void castersThatNeverMeetTheirStopsAreAsIfTheyWereLifted() {
        TurningUnit with = unit(List.of(10.0, 11.3), List.of(new Castering(12.6, Math.toRadians(25))), List.of());
        TurningUnit lifted = new TurningUnit((10.0 * 10 + 11.3 * 11.3) / 21.3, 0);

        assertSame(onACircle(lifted, 30), onACircle(with, 30), 1e-12);
    }

    @Test
    void wheelsThatCannotTurnAreFixed() {
        double squares = 10.0 * 10 + 11.3 * 11.3 + 12.6 * 12.6;
        Track fixed = onACircle(new TurningUnit(squares / 33.9, 0), 20);
        TurningUnit stopped = unit(List.of(10.0, 11.3), List.of(new Castering(12.6, 0)), List.of());
        TurningUnit unturned =
                unit(List.of(10.0), List.of(), List.of(new Commanded(11.3, 0, 0.5), new Commanded(12.6, 0.7, 0)));

        assertSameHeadings(fixed, onACircle(stopped, 20), 1e-6);
        assertSameHeadings(fixed, onACircle(unturned, 20), 1e-6);
    }

    /**
     * In a steady turn to the left whose caster is at its stop of 5°: the middle of the circle is X ahead of the hitch
     * and Y beside it, fixed axles 10 and 11.3 m behind, the caster 12.6 m: the moment 10 (10 − X') + 11.3 (11.3 − X')
     * + 12.6 cos 5° ((12.6 − X') cos 5° − Y sin 5°) is none, X' being how far the middle is behind the hitch, and R² =
     * X'² + Y².
     */
    @Test
    void aCasterAtItsStopHoldsAgainstTheTurn() {
        double stop = Math.toRadians(5);
        double radiusM = 16;
        Track track = onACircle(unit(List.of(10.0, 11.3), List.of(new Castering(12.6, stop)), List.of()), radiusM);
        int last = track.size() - 1;
        double bend = Math.IEEEremainder(
                Math.atan2(track.leadSin(last), track.leadCos(last)) - track.headingRad(last, 0), 2 * Math.PI);
        double behind = radiusM * Math.sin(bend);
        double beside = radiusM * Math.cos(bend);
        double moment = 10 * (10 - behind)
                + 11.3 * (11.3 - behind)
                + 12.6 * Math.cos(stop) * ((12.6 - behind) * Math.cos(stop) - beside * Math.sin(stop));

        assertTrue(Math.atan((12.6 - behind) / beside) > stop, "it is at its stop");
        assertEquals(0, moment, 1e-5);
    }

    private static void assertSame(Track wanted, Track found, double within) {
        assertSameHeadings(wanted, found, within);
        for (int i = 0; i < wanted.size(); i++) {
            assertEquals(wanted.axleXM(i, 0), found.axleXM(i, 0), within);
            assertEquals(wanted.axleYM(i, 0), found.axleYM(i, 0), within);
        }
    }

    private static void assertSameHeadings(Track wanted, Track found, double within) {
        assertEquals(wanted.size(), found.size());
        for (int i = 0; i < wanted.size(); i++) {
            double off = Math.IEEEremainder(wanted.headingRad(i, 0) - found.headingRad(i, 0), 2 * Math.PI);
            assertEquals(0, off, within, "state " + i);
        }
    }

    /** Every rectangle turned by anything up to the angle lies within what is said to be covered, and touches it. */
    @Test
    void whatTiresCoverHoldsThemHoweverTheyTurn() {
        SplittableRandom random = new SplittableRandom(3);
        for (int n = 0; n < 500; n++) {
            AxleLine tires = new AxleLine(
                    0, random.nextDouble(1.2, 1.5), random.nextDouble(0.2, 0.8), random.nextDouble(0.2, 0.4));
            double most = random.nextDouble(0.02, 1);
            AxleLine cover = tires.turned(most);
            double middle = tires.halfWidthM() - 0.5 * tires.treadM();
            double outermost = 0;
            double foremost = 0;
            for (int i = 0; i <= 2000; i++) {
                double turned = most * i / 2000;
                for (int corner = -1; corner <= 1; corner += 2) {
                    double x = 0.5 * tires.contactM();
                    double y = corner * 0.5 * tires.treadM();
                    outermost = Math.max(outermost, middle + x * Math.sin(turned) + y * Math.cos(turned));
                    foremost = Math.max(foremost, x * Math.cos(turned) - y * Math.sin(turned));
                }
            }
            assertEquals(outermost, cover.halfWidthM(), 1e-6);
            assertEquals(foremost, 0.5 * cover.contactM(), 1e-6);
            assertEquals(middle - (outermost - middle), cover.halfWidthM() - cover.treadM(), 1e-6);
            assertTrue(outermost <= cover.halfWidthM() + 1e-12 && foremost <= 0.5 * cover.contactM() + 1e-12);
        }
    }

    @Test
    void wheelsThatAllTrailGuideNothing() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new SteeredAxles(List.of(), List.of(new Castering(9, 0.3)), List.of()));
    }
}
