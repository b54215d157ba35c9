package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/** What the booster's chart may be off, and what its plate is made for, are part of the verdict. */
class PlateAndChartTest {
    private static final double LB = 0.45359237;
    /** 7,045 lb at 100 psi on springs 27.2 in from the pivot, the axle at 20 in, 800 lb unsprung, two springs. */
    private static final double BOOSTER_LB = 2 * 7_045 * 0.35 * 27.2 / 20 + 800;

    private static Report check(String route, String rig) throws Exception {
        Rig parsed = RigFile.parse(rig);
        return RouteCheck.check(
                new Haul(RouteFile.parse(route), parsed, parsed.stances().get(0), Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));
    }

    private static String wide(String sign) {
        String route = JsonEdit.edit(
                LimitsTexts.ROUTE,
                "/limits",
                "{\"name\":\"wide\",\"source\":\"x\",\"date\":\"2026-01-01\",\"gross\":\"300,000 lb\"}");
        return JsonEdit.edit(route, "/features/0/properties/limits", sign);
    }

    private static ReportCell trailing(String route, String rig) throws Exception {
        return check(route, rig).hazards().stream()
                .filter(h -> h.id().equals("B01"))
                .flatMap(h -> h.cells().stream())
                .filter(c -> c.configuration().equals("down/trailing/3"))
                .findFirst()
                .orElseThrow();
    }

    private static String plate(String least, String most) {
        return JsonEdit.edit(
                JsonEdit.edit(WeightsTexts.RIG, "/stances/0/weights/shims/plates/2/least", "\"" + least + "\""),
                "/stances/0/weights/shims/plates/2/most",
                "\"" + most + "\"");
    }

    @Test
    void aPlateOutsideItsRangeIsAVerdict() throws Exception {
        String route = wide("{\"source\":\"sign\",\"date\":\"2026-10-01\",\"gross\":\"200,000 lb\"}");
        // About 7,506 lb stand on the booster, 5 % of chart and 2 % of weights.
        assertEquals(
                Verdict.CLEAR, trailing(route, plate("6,000 lb", "22,000 lb")).verdict());
        ReportCell heavy = trailing(route, plate("1,000 lb", Math.round(BOOSTER_LB) - 10 + " lb"));
        assertEquals(Verdict.OUTSIDE_LIMITS, heavy.verdict());
        assertEquals("fitted plate, 3/8 in plate", heavy.load().rule().toString());
        assertEquals(BOOSTER_LB * LB, heavy.load().loadKg(), 1);
        ReportCell light = trailing(route, plate(Math.round(BOOSTER_LB) + 10 + " lb", "22,000 lb"));
        assertEquals(Verdict.OUTSIDE_LIMITS, light.verdict());
        assertTrue(light.load().least());
        assertEquals(
                Verdict.TIGHT,
                trailing(route, plate("1,000 lb", Math.round(BOOSTER_LB) + 100 + " lb"))
                        .verdict());
    }

    /**
     * A sign for single axles just above what the booster's axle carries: within it by more than the weights' 2 % is
     * not enough where its chart is 20 % off. Root of the squares, by hand.
     */
    @Test
    void theChartsAccuracyWidensTheLoadItSets() throws Exception {
        String rig = JsonEdit.edit(WeightsTexts.RIG, "/stances/0/weights/shims", "absent");
        // Within 10 % by weight, but the booster's axle may carry 20 % more.
        String exact = JsonEdit.edit(rig, "/stances/0/weights/gauges/booster/accuracy", "\"0 %\"");
        String coarse = JsonEdit.edit(rig, "/stances/0/weights/gauges/booster/accuracy", "\"20 %\"");
        String ratedAt110 = "\"" + Math.round(BOOSTER_LB * 1.10) + " lb\"";
        String route = wide("{\"source\":\"sign\",\"date\":\"2026-10-01\",\"gross\":\"200,000 lb\"}");
        assertEquals(Verdict.CLEAR, trailing(route, rated(exact, ratedAt110)).verdict());
        ReportCell off = trailing(route, rated(coarse, ratedAt110));
        assertEquals(Verdict.TIGHT, off.verdict());
        assertTrue(
                off.reasons().get(0).toString().contains("chart"), off.reasons().toString());
        double both = Math.hypot(0.20, 0.02);
        assertEquals(
                Verdict.TIGHT,
                trailing(route, rated(coarse, "\"" + Math.round(BOOSTER_LB * (1 + both) - 5) + " lb\""))
                        .verdict());
        assertEquals(
                Verdict.CLEAR,
                trailing(route, rated(coarse, "\"" + Math.round(BOOSTER_LB * (1 + both) + 5) + " lb\""))
                        .verdict());
    }

    private static String rated(String rig, String pounds) {
        return JsonEdit.edit(rig, "/stances/0/weights/ratings/axles/booster", pounds);
    }

    @Test
    void limitsByTireWidthAreNotKnownWithoutTheWidth() throws Exception {
        String route = wide(
                "{\"source\":\"sign\",\"date\":\"2026-10-01\",\"tireWidth\":{\"weight\":\"900 lb\",\"per\":\"1 in\"}}");
        assertEquals(Verdict.LOADS_NOT_KNOWN, trailing(route, WeightsTexts.RIG).verdict());
        String measured = JsonEdit.edit(
                WeightsTexts.RIG,
                "/stances/0/weights/ratings/tireWidths",
                "{\"steer\":\"25 in\",\"drive\":\"44 in\",\"trailer\":\"40 in\",\"booster\":\"40 in\"}");
        assertEquals(Verdict.CLEAR, trailing(route, measured).verdict());
        String narrow = JsonEdit.edit(measured, "/stances/0/weights/ratings/tireWidths/booster", "\"8 in\"");
        ReportCell cell = trailing(route, narrow);
        assertEquals(Verdict.OUTSIDE_LIMITS, cell.verdict());
        assertEquals("width of the tires", cell.load().rule().toString());
        assertEquals(8 * 900 * LB, cell.load().limitKg(), 0.1);
    }
}
