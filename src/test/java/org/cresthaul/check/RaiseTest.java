package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.cresthaul.clearance.Clearance;
import org.cresthaul.clearance.GroundClearance;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.route.Route;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The raise that is needed, against trying every raise in turn with the exact clearance. */
class RaiseTest {
    private static final double GROUND_MARGIN_M = 0.05;

    /** A hump under the deck: {@code height} at the rail, falling off at 5 % on both sides. */
    private static Route hump(double height) {
        return CheckCase.crossing(
                CheckCase.points(s -> height - 0.05 * Math.abs(s) < 1e-3 ? 0 : height - 0.05 * Math.abs(s)), "1 mm");
    }

    private static double worst(Route route, double frontM, double rearM) {
        return worst(route, new Setting(LiftState.DOWN, BoosterState.NONE, 0, frontM, rearM));
    }

    private static double worst(Route route, Setting setting) {
        LevelStance stance = CheckCase.rig().stances().get(0);
        RoadProfile line = route.hazards().get(0).lines().get(0);
        double least = Double.POSITIVE_INFINITY;
        for (Leveling leveling : setting.levelings()) {
            Clearance c = GroundClearance.least(stance, setting, leveling, line);
            assertTrue(c.proven());
            least = Math.min(least, c.valueM());
        }
        return least;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.22, 0.24, 0.26})
    void frontRaiseIsTheLeastThatTryingFinds(double height) {
        Route route = hump(height);
        ReportCell cell = CheckCase.cell(CheckCase.check(route, new Margins(GROUND_MARGIN_M, 0)), "down/none/3");
        assertTrue(
                List.of(Verdict.CONTACT, Verdict.TIGHT).contains(cell.verdict()),
                cell.verdict().word());
        assertNotNull(cell.raise(), "a front raise clears this hump");
        assertEquals(0, cell.raise().rearM());
        // rig 10 mm and ride 15 mm in quadrature; the survey of 1 mm adds less than 0.1 mm
        double required = GROUND_MARGIN_M + Math.hypot(0.010, 0.015);
        double tried = 0;
        while (worst(route, tried, 0) < required) {
            tried += 0.0005;
            assertTrue(tried < 0.254, "within the hydraulic limit of 10 in");
        }
        // The search asks for its own proof width of 0.6 mm more gap, which takes up to a few mm of raise.
        assertEquals(tried, cell.raise().frontM(), 0.004);
        assertTrue(worst(route, cell.raise().frontM(), 0) >= required);
    }

    /** However high the hump: what is told ends where the hydraulics do, 10 in over the reference notch. */
    @Test
    void noRaiseIsToldBeyondTheEndOfTheHydraulics() {
        int raised = 0;
        for (int tenths = 2400; tenths < 3600; tenths += 40) {
            double height = 1e-4 * tenths;
            Report report = CheckCase.check(hump(height), new Margins(GROUND_MARGIN_M, 0));
            for (ReportCell cell : report.hazards().get(0).cells()) {
                if (cell.raise() != null) {
                    assertTrue(
                            cell.raise().frontM() <= cell.raise().frontEndM(),
                            cell.raise().toString());
                    assertTrue(
                            cell.raise().rearM() <= cell.raise().rearEndM(),
                            cell.raise().toString());
                    raised++;
                }
            }
        }
        assertTrue(raised > 20, raised + " raised");
    }

    @Test
    void noRaiseWithinTheLimitsIsSaidSo() {
        Route peak = CheckCase.crossing(CheckCase.points(s -> Math.max(0, 1.5 - 0.1 * Math.abs(s))), "1 mm");
        ReportCell cell = CheckCase.cell(CheckCase.check(peak, Margins.defaults()), "down/none/3");
        assertEquals(Verdict.CONTACT, cell.verdict());
        assertNull(cell.raise());
        assertNotNull(cell.raiseNote());
    }

    /**
     * Axles come onto their stops here, and then a raise may open nothing until it is large enough. Where none is
     * reported, trying both raises in turn must not find one either (2 mm are left for the uncertainty's lever
     * weights).
     */
    @ParameterizedTest
    @CsvSource({"DOWN, NONE", "UP, NONE", "DOWN, CLOSE_COUPLED"})
    void whereNoRaiseIsReportedTryingFindsNone(String axle, BoosterState booster) {
        LiftState lift = axle.equals("UP") ? LiftState.UP : LiftState.DOWN;
        double required = GROUND_MARGIN_M + Math.hypot(0.010, 0.015) + 0.002;
        double mostRearM = lift.isUp() ? 0.0381 : 0.0762;
        int reported = 0;
        int none = 0;
        for (double grade = 0.050; grade < 0.0805; grade += 0.0025) {
            double fall = grade;
            Route route = CheckCase.crossing(CheckCase.points(s -> Math.max(0, 0.8 - fall * Math.abs(s))), "1 mm");
            String key = lift.word() + "/" + booster.word() + "/3";
            ReportCell cell = CheckCase.cell(CheckCase.check(route, new Margins(GROUND_MARGIN_M, 0)), key);
            if (cell.raise() != null) {
                reported++;
            } else if (cell.verdict() != Verdict.CLEAR) {
                none++;
                for (double front = 0.127; front <= 0.2541; front += 0.0127) {
                    for (double rear = 0; rear <= mostRearM + 1e-9; rear += mostRearM / 4) {
                        double gap = worst(route, new Setting(lift, booster, 0, front, rear));
                        assertTrue(gap < required, grade + ": " + front + " and " + rear + " m leave " + gap);
                    }
                }
            }
        }
        assertTrue(reported > 2 && none > 2, reported + " reported, " + none + " none");
    }

    /** The raised tire behind the axles that carry meets the rim of a dip; a higher front would only lower it. */
    @ParameterizedTest
    @ValueSource(doubles = {0.030, 0.035, 0.040, 0.045})
    void aRaiseOfTheRearAsksNothingOfTheFrontWhereTheFrontDoesNotHelp(double grade) {
        Route dip = CheckCase.crossing(CheckCase.points(s -> grade * Math.max(0, Math.abs(s) - 2)), "1 mm");
        ReportCell cell = CheckCase.cell(CheckCase.check(dip, Margins.defaults()), "up/none/3");
        assertEquals("raised tire", cell.ground().part());
        assertNotNull(cell.raise());
        assertTrue(cell.raise().rearM() > 0);
        assertEquals(0, cell.raise().frontM());
    }

    @Test
    void whereMoreMustBeKnownNoRaiseIsOffered() {
        Report report = CheckCase.check(
                CheckCase.route("\"hazard\": \"low-structure\", \"measured\": \"unknown\", \"clearance\": \"4.05 m\","
                        + " \"extent\": [\"-5 m\", \"5 m\"]"),
                Margins.defaults());
        ReportCell cell = CheckCase.cell(report, "down/none/3");
        assertNull(cell.raise());
        assertTrue(cell.raiseNote().contains("known"));
    }

    @Test
    void aRaiseNeverClosesTheGapOverhead() {
        // The hump wants the deck up, the soffit 4.2 m over it leaves 150 mm over the load on the level.
        String hump = CheckCase.points(s -> Math.max(0, 0.26 - 0.05 * Math.abs(s)));
        Report open = CheckCase.check(structureOver(hump, 6.0), new Margins(GROUND_MARGIN_M, 0.02));
        Report low = CheckCase.check(structureOver(hump, 4.25), new Margins(GROUND_MARGIN_M, 0.02));
        assertNotNull(CheckCase.cell(open, "down/none/3").raise());
        assertNull(CheckCase.cell(low, "down/none/3").raise());
    }

    private static Route structureOver(String points, double soffitM) {
        return CheckCase.route("\"hazard\": \"low-structure\", \"measured\": \"surveyed\","
                + " \"survey\": {\"accuracy\": \"1 mm\", \"source\": \"level\"},"
                + " \"profile\": [{\"line\": \"center\", \"points\": [" + points + "]}],"
                + " \"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + " \"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + " \"soffit\": [[\"-5 m\", \"" + soffitM + " m\"], [\"5 m\", \"" + soffitM + " m\"]]");
    }
}
