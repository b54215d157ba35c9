package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.language.English;
import org.cresthaul.report.ReversingReport;
import org.cresthaul.report.ReversingReport.State;
import org.cresthaul.report.ReversingReport.StraightBack;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/**
 * The backing-up part of a report on a rig whose axles are 11.6, 13 and 14.4 m behind the kingpin, which bends to 80
 * degrees.
 */
class ReversingCheckTest {
    private static final double BEND_RAD = Math.toRadians(1);

    private static ReversingReport report(String rigText) throws Exception {
        Rig rig = RigFile.parse(rigText);
        return ReversingCheck.of(rig, rig.stances().get(0));
    }

    private static State state(ReversingReport report, String lift, String booster) {
        return report.states().stream()
                .filter(s -> s.lift().word().equals(lift) && s.booster().word().equals(booster))
                .findFirst()
                .orElseThrow();
    }

    /** L ln(tan(limit/2) / tan(bend/2)) with L = Σx² / Σx, as one unit pushed straight back has it. */
    private static double closedFormM(double limitDeg, double... behindM) {
        double lengthM = DoubleStream.of(behindM).map(x -> x * x).sum()
                / DoubleStream.of(behindM).sum();
        return lengthM * Math.log(Math.tan(Math.toRadians(limitDeg) / 2) / Math.tan(BEND_RAD / 2));
    }

    private static void assertKingpin(double expectedM, StraightBack way) {
        assertEquals(expectedM, way.limitMetM(), 0.001);
        assertTrue(way.limitMetM() <= expectedM, way + " is more than " + expectedM);
        assertEquals("kingpin", way.coupling().toString());
        assertEquals(Math.toRadians(80), way.limitRad(), 1e-5);
    }

    @Test
    void goesAsFarAsTheClosedFormWhereverOneUnitIsPushed() throws Exception {
        ReversingReport report = report(RigTexts.RIG);

        assertKingpin(
                closedFormM(80, 11.6, 13, 14.4), state(report, "down", "none").free());
        assertKingpin(closedFormM(80, 11.6, 13), state(report, "up", "none").free());
        assertKingpin(
                closedFormM(80, 11.6, 13, 14.4, 15.9),
                state(report, "down", "close-coupled").free());
        assertKingpin(closedFormM(80, 11.6, 13), state(report, "up", "carried").free());
        // The hinge is 15.2 m behind the kingpin, the booster's axle 3.2 m behind that.
        assertKingpin(
                closedFormM(80, 11.6, 13, 14.4, 18.4),
                state(report, "down", "trailing").locked());
        assertKingpin(
                closedFormM(80, 11.6, 13, 18.4), state(report, "up", "trailing").locked());
        assertKingpin(
                closedFormM(80, 11.6, 13, 14.4),
                state(report, "down", "trailing").lockedLight());
        assertEquals(BEND_RAD, report.bendRad(), 1e-5);
        assertEquals(300 * 0.3048, report.mostM(), 1e-9);
    }

    @Test
    void aTrailingBoosterFoldsFirstUnlessItIsLocked() throws Exception {
        ReversingReport report = report(RigTexts.RIG);
        int trailing = 0;
        for (State s : report.states()) {
            assertNull(s.unknown());
            if (s.booster().word().equals("trailing")) {
                assertEquals("pivot", s.free().coupling().toString());
                assertEquals(Math.toRadians(35), s.free().limitRad(), 1e-5);
                assertTrue(
                        s.free().limitMetM() > 1
                                && s.free().limitMetM() < s.lockedLight().limitMetM(),
                        s.toString());
                trailing++;
            } else {
                assertNull(s.locked());
                assertNull(s.lockedLight());
            }
        }
        assertEquals(2, trailing);
    }

    @Test
    void everyConfigurationHasItsStateAndNoStateIsTwice() throws Exception {
        Rig rig = RigFile.parse(RigTexts.RIG);
        ReversingReport report = report(RigTexts.RIG);
        Set<String> states = new HashSet<>();
        report.states().forEach(s -> assertTrue(states.add(s.lift() + "/" + s.booster()), s.toString()));
        List<CheckedConfiguration> all =
                CheckedConfiguration.listOf(rig, rig.stances().get(0));

        assertEquals(8, states.size(), "two axle states, four booster states");
        for (CheckedConfiguration c : all) {
            State s = state(report, c.lift().word(), c.booster().word());
            assertEquals(c.stateLabel().toString(), s.label());
            assertEquals(c.axles(), s.axles());
        }
    }

    /** Axles on 11.6, 13, 14.4 and 40 m turn as one at 26.7 m: 122 m by the closed form. */
    @Test
    void aLimitThatIsNotMetIsNoNumber() throws Exception {
        ReversingReport report =
                report(JsonEdit.edit(RigTexts.RIG, "/stances/0/booster/closeCoupledAxle/x", "\"-40 m\""));

        assertTrue(closedFormM(80, 11.6, 13, 14.4, 40) > 120);
        assertEquals(
                new StraightBack(null, null, null),
                state(report, "down", "close-coupled").free());
    }

    @Test
    void withoutAPlanNothingIsKnown() throws Exception {
        ReversingReport report = report(JsonEdit.edit(RigTexts.RIG, "/stances/0/plan", "absent"));

        assertEquals(8, report.states().size());
        for (State s : report.states()) {
            assertTrue(
                    s.unknown().toString().endsWith("is not known"), s.unknown().toString());
            assertNull(s.free());
            assertNull(s.locked());
            assertNull(s.lockedLight());
        }
    }

    @Test
    void saysWhatItIsAndWhatToDo() throws Exception {
        String cautions = String.join(" ", English.of(report(RigTexts.RIG).cautions()));

        for (String part : List.of(
                "steering held straight",
                "faster than steering can correct",
                "Lock it",
                "spotter",
                "maker's",
                "local rules")) {
            assertTrue(cautions.contains(part), part);
        }
    }
}
