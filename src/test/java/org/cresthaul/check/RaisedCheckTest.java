package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Margins;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.junit.jupiter.api.Test;

/** Raises that no report asked for, against what the report itself says of its own. */
class RaisedCheckTest {
    private static final Margins MARGINS = new Margins(0.05, 0);
    /** 0.25 m high, falling off at 5 % on both sides: drags in transport at the reference notch. */
    private static final Route HUMP =
            CheckCase.crossing(CheckCase.points(s -> Math.max(0, 0.25 - 0.05 * Math.abs(s))), "1 mm");

    private static RaisedCheck raisedCheck(Route route) {
        Rig rig = CheckCase.rig();
        return new RaisedCheck(new Haul(route, rig, rig.stances().get(0), MARGINS));
    }

    @Test
    void atNoRaiseItSaysWhatTheReportSays() {
        ReportCell cell = CheckCase.cell(CheckCase.check(HUMP, MARGINS), "down/none/3");
        RaisedCheck.Raised flat =
                raisedCheck(HUMP).at("H1", "down/none/3", 0, 0).orElseThrow();

        assertEquals(cell.verdict(), flat.verdict());
        assertEquals(cell.ground(), flat.ground());
        assertFalse(flat.isClear());
    }

    @Test
    void atTheReportsOwnRaiseItIsClearAndBelowItIsNot() {
        RaiseFinding raise =
                CheckCase.cell(CheckCase.check(HUMP, MARGINS), "down/none/3").raise();
        RaisedCheck check = raisedCheck(HUMP);

        RaisedCheck.Raised own =
                check.at("H1", "down/none/3", raise.frontM(), raise.rearM()).orElseThrow();
        assertTrue(own.isClear(), own.toString());
        assertEquals(raise.clearanceM(), own.clearanceM(), 1e-9);
        assertTrue(own.governing().valueM() >= own.governing().requiredM());
        assertFalse(check.at("H1", "down/none/3", raise.frontM() - 0.005, raise.rearM())
                .orElseThrow()
                .isClear());
    }

    /** What a driver is told to set is what was judged, in every configuration: a step of 0.1 mm, or the end. */
    @Test
    void everyRaiseIsJudgedAsItIsTold() {
        RaisedCheck check = raisedCheck(HUMP);
        int raises = 0;
        for (ReportCell cell : CheckCase.check(HUMP, MARGINS).hazards().get(0).cells()) {
            RaiseFinding raise = cell.raise();
            if (raise != null) {
                GapFinding governing = check.at("H1", cell.configuration(), raise.frontM(), raise.rearM())
                        .orElseThrow()
                        .governing();
                assertEquals(governing.valueM(), raise.clearanceM(), 1e-9, cell.configuration());
                assertEquals(governing.requiredM(), raise.requiredM(), 1e-9, cell.configuration());
                assertTrue(
                        Math.abs(raise.frontM() * 1e4 - Math.rint(raise.frontM() * 1e4)) < 1e-6
                                || raise.frontM() == raise.frontEndM(),
                        raise.toString());
                raises++;
            }
        }
        assertTrue(raises > 3, raises + " raises");
    }

    @Test
    void beyondWhatTheRigReachesThereIsNoAnswer() {
        RaisedCheck check = raisedCheck(HUMP);

        // Hydraulics reach 10 in over the reference notch, hands 3 in: RigTexts.
        assertTrue(check.at("H1", "down/none/3", 10 * 0.0254, 0).isPresent());
        assertTrue(check.at("H1", "down/none/3", 10.1 * 0.0254, 0).isEmpty());
        assertTrue(check.at("H1", "down/none/4", 10 * 0.0254, 0).isEmpty(), "3/4 in less is left from notch 4");
        assertTrue(check.at("H1", "down/none/3", 0, 3.1 * 0.0254).isEmpty());
        assertTrue(check.at("H1", "down/none/3", -0.01, 0).isEmpty());
    }

    @Test
    void whatNobodySurveyedStaysUnknown() {
        assertTrue(raisedCheck(CheckCase.route("\"hazard\": \"dip\""))
                .at("H1", "down/none/3", 0.1, 0)
                .isEmpty());
        assertThrows(UnknownNameException.class, () -> raisedCheck(HUMP).at("H2", "down/none/3", 0, 0));
        assertThrows(UnknownNameException.class, () -> raisedCheck(HUMP).at("H1", "down/none/9", 0, 0));
        assertThrows(
                UnknownNameException.class,
                () -> raisedCheck(CheckCase.route("\"hazard\": \"posted-bridge\""))
                        .at("H1", "down/none/3", 0, 0));
    }
}
