package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Following against an independent integrator, closed forms and what must hold whatever the numbers. */
class FollowingTest {
    private static final int CASES = 600;

    @Test
    void agreesWithAHighOrderIntegratorOverRandomChainsAndPaths() {
        double worstM = 0;
        double worstOfBound = 0;
        int states = 0;
        for (int seed = 0; seed < CASES; seed++) {
            RandomManeuver m = RandomManeuver.of(seed);
            Track track = Following.along(m.chain(), m.path());
            assertTrue(track.errorBoundM() <= Following.TOLERANCE_M, "seed " + seed + ": " + track.errorBoundM());
            double off = worstOffM(m, track, m.straightBehind());
            worstM = Math.max(worstM, off);
            worstOfBound = Math.max(worstOfBound, off - track.errorBoundM());
            states += track.size();
        }
        assertTrue(states > 20 * CASES, "states " + states);
        assertTrue(worstM < Following.TOLERANCE_M, "worst " + worstM);
        // The reference itself is good to its tolerance over the steps it takes.
        assertTrue(worstOfBound < 1e-7, "beyond the stated bound by " + worstOfBound);
    }

    @Test
    void agreesInReverseAsLongAsTheBoundIsKept() {
        double worstM = 0;
        int kept = 0;
        for (int seed = 0; seed < CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed + 77);
            RandomManeuver any = RandomManeuver.of(seed);
            LeadPath back = LeadPath.from(0, 0, Math.PI)
                    .arc(random.nextDouble(2, 8), random.nextDouble(-0.05, 0.05))
                    .line(random.nextDouble(1, 6))
                    .build();
            RandomManeuver m = new RandomManeuver(any.chain(), back);
            double[] headings = new double[m.chain().size()];
            for (int k = 0; k < headings.length; k++) {
                headings[k] = random.nextDouble(-0.2, 0.2);
            }
            Track track = Following.along(m.chain(), back, headings, Following.STATE_M, true);
            double off = worstOffM(m, track, headings);
            assertTrue(off <= track.errorBoundM() + 1e-6, "seed " + seed + ": " + off + " of " + track.errorBoundM());
            if (track.errorBoundM() <= Following.TOLERANCE_M) {
                kept++;
                worstM = Math.max(worstM, off);
            }
        }
        assertTrue(kept > CASES / 2, "kept " + kept);
        assertTrue(worstM < Following.TOLERANCE_M, "worst " + worstM);
    }

    private static double worstOffM(RandomManeuver m, Track track, double[] start) {
        double[] stations = new double[track.size()];
        for (int i = 0; i < stations.length; i++) {
            stations[i] = track.stationM(i);
        }
        double[][] headings = new ReferenceFollowing(m.chain(), m.path(), 1e-10).headingsAt(stations, start);
        double worst = 0;
        for (int i = 0; i < stations.length; i++) {
            double x = track.leadXM(i);
            double y = track.leadYM(i);
            for (int k = 0; k < m.chain().size(); k++) {
                TurningUnit unit = m.chain().get(k);
                double c = Math.cos(headings[i][k]);
                double s = Math.sin(headings[i][k]);
                double axleX = x - unit.hitchToAxleM() * c;
                double axleY = y - unit.hitchToAxleM() * s;
                worst = Math.max(worst, Math.hypot(axleX - track.axleXM(i, k), axleY - track.axleYM(i, k)));
                worst = Math.max(worst, Math.hypot(x - track.hitchXM(i, k), y - track.hitchYM(i, k)));
                x = axleX - unit.couplingBehindM() * c;
                y = axleY - unit.couplingBehindM() * s;
            }
        }
        return worst;
    }

    @Test
    void aStraightPullIsTheTractrixHoweverLongTheStep() {
        for (double start : new double[] {-3.1, -1.5, -0.2, 0.4, 1.6, 3.1}) {
            Track track = Following.along(
                    List.of(new TurningUnit(7, 0)),
                    LeadPath.from(0, 0, 0).line(21).build(),
                    new double[] {start},
                    5,
                    false);
            for (int i = 0; i < track.size(); i++) {
                double exact = 2 * Math.atan(Math.tan(start / 2) * Math.exp(-track.stationM(i) / 7));
                assertEquals(exact, track.headingRad(i, 0), 1e-11, "from " + start + " at " + track.stationM(i));
            }
        }
    }

    @Test
    void aUnitPushedBackStraightFoldsAtTheSameRate() {
        Track track = Following.along(
                List.of(new TurningUnit(7, 0)),
                LeadPath.from(0, 0, Math.PI).line(14).build(),
                new double[] {0.01},
                0.25,
                true);
        for (int i = 0; i < track.size(); i++) {
            double exact = 2 * Math.atan(Math.tan(0.005) * Math.exp(track.stationM(i) / 7));
            assertEquals(exact, track.headingRad(i, 0), 1e-10);
        }
    }

    @Test
    void settlesToTheSteadyTurn() {
        int settled = 0;
        for (int seed = 0; seed < 200; seed++) {
            List<TurningUnit> chain = RandomManeuver.of(seed).chain();
            double radius = 25 + seed % 40;
            SteadyTurn steady = SteadyTurn.of(chain, radius).orElse(null);
            if (steady == null) {
                continue;
            }
            Track track = Following.along(
                    chain,
                    LeadPath.from(radius, 0, Math.PI / 2).arc(400, 1 / radius).build());
            int last = track.size() - 1;
            for (int k = 0; k < chain.size(); k++) {
                double r = Math.hypot(track.axleXM(last, k), track.axleYM(last, k));
                assertEquals(steady.axleRadiusM().get(k), r, 0.002, "seed " + seed + " unit " + k);
                if (k > 0) {
                    assertEquals(steady.articulationRad().get(k - 1), track.articulationRad(last, k - 1), 0.001);
                }
            }
            settled++;
        }
        assertTrue(settled > 100, "settled " + settled);
    }

    @Test
    void aMirroredPathGivesMirroredUnits() {
        for (int seed = 0; seed < 100; seed++) {
            RandomManeuver m = RandomManeuver.of(seed);
            LeadPath.Builder mirror = LeadPath.from(
                    m.path().at(0)[0], -m.path().at(0)[1], -m.path().at(0)[2]);
            for (int i = 0; i < m.path().pieces(); i++) {
                double from = m.path().stationM(i);
                double to = m.path().stationM(i + 1);
                double[] pose = new double[4];
                m.path().locate(i, from, pose);
                mirror.kink(-Math.atan2(pose[3], pose[2]) - mirror.headingRad());
                mirror.clothoid(
                        to - from, -m.path().curvatureAt(i, from), -m.path().curvatureAt(i, to));
            }
            Track a = Following.along(m.chain(), m.path());
            Track b = Following.along(m.chain(), mirror.build());
            assertEquals(a.size(), b.size());
            for (int i = 0; i < a.size(); i += 7) {
                int last = m.chain().size() - 1;
                assertEquals(a.axleXM(i, last), b.axleXM(i, last), 1e-9);
                assertEquals(a.axleYM(i, last), -b.axleYM(i, last), 1e-9);
                assertEquals(a.steerRad(i), -b.steerRad(i), 1e-9);
            }
        }
    }

    @Test
    void aFinerPathChangesNothing() {
        for (int seed = 0; seed < 100; seed++) {
            RandomManeuver m = RandomManeuver.of(seed);
            Track coarse = Following.along(m.chain(), m.path());
            Track fine = Following.along(m.chain(), m.path(), m.straightBehind(), 0.02, false);
            int last = m.chain().size() - 1;
            assertEquals(coarse.axleXM(coarse.size() - 1, last), fine.axleXM(fine.size() - 1, last), 1e-4);
            assertEquals(coarse.axleYM(coarse.size() - 1, last), fine.axleYM(fine.size() - 1, last), 1e-4);
        }
    }

    @Test
    void aPieceShorterThanRoundingChangesNothing() {
        List<TurningUnit> chain = List.of(new TurningUnit(5.8, -0.4), new TurningUnit(11, 2), new TurningUnit(2.5, 0));
        double[] headings = new double[3];
        for (double stateM : new double[] {0.25, 1}) {
            for (double none : new double[] {1e-18, 3e-15, 1e-12, 1e-9}) {
                Track plain = Following.along(
                        chain, LeadPath.from(0, 0, 0).line(7).arc(20, 0.1).build(), headings, stateM, false);
                Track with = Following.along(
                        chain,
                        LeadPath.from(0, 0, 0)
                                .line(7)
                                .arc(none, 0.1)
                                .clothoid(none, 0, 0.1)
                                .arc(20, 0.1)
                                .build(),
                        headings,
                        stateM,
                        false);
                assertEquals(plain.axleXM(plain.size() - 1, 2), with.axleXM(with.size() - 1, 2), 1e-7);
                assertTrue(with.errorBoundM() <= Following.TOLERANCE_M, "bound " + with.errorBoundM());
                assertEquals(plain.axleYM(plain.size() - 1, 2), with.axleYM(with.size() - 1, 2), 1e-7);
            }
        }
    }

    @Test
    void statesFarApartAreTheSameStates() {
        for (int seed = 0; seed < 100; seed++) {
            RandomManeuver m = RandomManeuver.of(seed);
            Track near = Following.along(m.chain(), m.path());
            for (double stateM : new double[] {1, 40}) {
                Track far = Following.along(m.chain(), m.path(), m.straightBehind(), stateM, false);
                assertTrue(far.errorBoundM() <= Following.TOLERANCE_M, "seed " + seed + ": " + far.errorBoundM());
                for (int i = 0, j = 0; i < far.size(); i++) {
                    while (j + 1 < near.size() && near.stationM(j + 1) <= far.stationM(i) + 1e-9) {
                        j++;
                    }
                    for (int k = 0; k < m.chain().size() && Math.abs(near.stationM(j) - far.stationM(i)) < 1e-9; k++) {
                        assertEquals(near.axleXM(j, k), far.axleXM(i, k), 0.002, "seed " + seed);
                        assertEquals(near.axleYM(j, k), far.axleYM(i, k), 0.002, "seed " + seed);
                    }
                }
            }
        }
    }

    @Test
    void aPolylineOfAnArcComesCloserTheFinerItIs() {
        List<TurningUnit> chain = List.of(new TurningUnit(5.8, -0.4), new TurningUnit(11, 2), new TurningUnit(2.5, 0));
        Track arc = Following.along(chain, LeadPath.from(0, 0, 0).arc(30, 0.08).build());
        List<Double> off = new ArrayList<>();
        for (int parts : new int[] {30, 60, 120}) {
            List<double[]> points = new ArrayList<>();
            for (int i = 0; i <= parts; i++) {
                double[] at = LeadPath.from(0, 0, 0).arc(30, 0.08).build().at(30.0 * i / parts);
                points.add(at);
            }
            Track line = Following.along(chain, LeadPath.through(points), new double[3], Following.STATE_M, false);
            off.add(Math.hypot(
                    arc.axleXM(arc.size() - 1, 2) - line.axleXM(line.size() - 1, 2),
                    arc.axleYM(arc.size() - 1, 2) - line.axleYM(line.size() - 1, 2)));
        }
        assertTrue(off.get(1) < off.get(0) / 3 && off.get(2) < off.get(1) / 3, off.toString());
    }

    @Test
    void drivingAWayBackwardFromItsEndUndoesIt() {
        List<TurningUnit> chain = List.of(new TurningUnit(6, 0.5), new TurningUnit(9, 0));
        LeadPath way =
                LeadPath.from(0, 0, 0).line(3).clothoid(6, 0, 0.06).arc(6, 0.06).build();
        Track there = Following.along(chain, way);
        int last = there.size() - 1;
        double[] headings = {there.headingRad(last, 0), there.headingRad(last, 1)};
        Track back = Following.along(chain, way.reversed(), headings, 0.05, true);
        int end = back.size() - 1;
        assertEquals(there.axleXM(0, 1), back.axleXM(end, 1), 0.002);
        assertEquals(there.axleYM(0, 1), back.axleYM(end, 1), 0.002);
        assertEquals(there.steerRad(last), back.steerRad(0), 1e-9);
    }

    @Test
    void aJackknifeIsAStateLikeAnyOther() {
        List<TurningUnit> chain = new ArrayList<>(Collections.nCopies(4, new TurningUnit(9, 3)));
        assertTrue(SteadyTurn.of(chain, 6).isEmpty());
        Track track = Following.along(
                chain, LeadPath.from(6, 0, Math.PI / 2).arc(200, 1.0 / 6).build());
        for (int i = 0; i < track.size(); i++) {
            for (int k = 0; k < 4; k++) {
                assertTrue(Double.isFinite(track.axleXM(i, k)) && Double.isFinite(track.axleYM(i, k)));
                assertEquals(1, Math.hypot(track.cos(i, k), track.sin(i, k)), 1e-12);
            }
        }
        assertTrue(track.mostArticulationRad(0) > Math.PI / 2);
    }
}
