package org.cresthaul.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.cresthaul.check.CheckCase;
import org.cresthaul.check.UnknownNameException;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.units.RoundedRecords;
import org.junit.jupiter.api.Test;

/** The drawing of a passage shows the report's own numbers. */
class PassageViewTest {
    private static final Route HUMP =
            CheckCase.crossing(CheckCase.points(s -> Math.max(0, 0.2 - 0.03 * Math.abs(s))), "5 mm");
    private static final Rig RIG = CheckCase.rig();

    private static PassageView view(Route route, String hazard, String configuration, String line) {
        return PassageView.of(
                new Haul(route, RIG, RIG.stances().get(0), Margins.defaults()),
                hazard,
                configuration,
                Optional.ofNullable(line),
                Optional.empty(),
                0,
                0);
    }

    private static PassageView raised(double frontM, double rearM) {
        return PassageView.of(
                new Haul(HUMP, RIG, RIG.stances().get(0), Margins.defaults()),
                "H1",
                "down/none/3",
                Optional.empty(),
                Optional.empty(),
                frontM,
                rearM);
    }

    @Test
    void theTightestPositionIsTheReportsClearance() {
        Report report = RoundedRecords.of(CheckCase.check(HUMP, Margins.defaults()));
        for (String key : List.of("down/none/3", "up/none/1", "down/trailing/2", "down/close-coupled/4")) {
            GapFinding gap = CheckCase.cell(report, key).ground();
            PassageView view = view(HUMP, "H1", key, null);
            PassageView.PositionView tightest = view.positions().get(view.tightest());
            assertEquals(gap.valueM(), tightest.groundM(), 1e-9, key);
            assertEquals(gap.steerM(), tightest.steerM(), 1e-9, key);
            assertEquals(gap.leveling(), view.leveling(), key);
            double least = view.positions().stream()
                    .mapToDouble(PassageView.PositionView::groundM)
                    .min()
                    .orElseThrow();
            assertTrue(least >= gap.valueM() - gap.provenWithinM() - 1e-4, key);
        }
    }

    @Test
    void whatDoesNotExistIsNamed() {
        assertEquals(
                "hazard",
                assertThrows(UnknownNameException.class, () -> view(HUMP, "H9", "down/none/3", null))
                        .field());
        assertEquals(
                "configuration",
                assertThrows(UnknownNameException.class, () -> view(HUMP, "H1", "x", null))
                        .field());
        assertEquals(
                "line",
                assertThrows(UnknownNameException.class, () -> view(HUMP, "H1", "down/none/3", "middle"))
                        .field());
        Route unknown = CheckCase.route("\"hazard\": \"crest\"");
        assertThrows(NotSurveyedException.class, () -> view(unknown, "H1", "down/none/3", null));
    }

    /** Hydraulics reach 10 in over the reference notch, hands 3 in: RigTexts. */
    @Test
    void aRaiseBeyondTheLimitsIsNoUnknownName() {
        assertEquals(
                "frontRaise",
                assertThrows(BeyondLimitsException.class, () -> raised(10.1 * 0.0254, 0))
                        .field());
        assertEquals(
                "rearRaise",
                assertThrows(BeyondLimitsException.class, () -> raised(0, 3.1 * 0.0254))
                        .field());
        assertEquals(10 * 0.0254, raised(10 * 0.0254, 0).frontRaiseM());
    }
}
