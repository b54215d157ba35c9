package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/**
 * Limits that hold instead of the route's do so for the part of the combination that is on their stretch, in the check
 * as in the plan: a bridge on it is free of the route's only where no part is off the stretch as long as any part is on
 * the bridge.
 */
class LimitsInsteadTest {
    /** The route allows 50,000 lb, bridge and stretch 300,000 lb; the small rig weighs 83,900 lb. */
    private static Report check(double beforeM, double afterM) throws Exception {
        String set = "{%s\"source\": \"%s\", \"date\": \"2026-10-01\", \"gross\": \"%s lb\"}";
        String text =
                JsonEdit.edit(LimitsTexts.ROUTE, "/limits", set.formatted("\"name\": \"road\", ", "road", "50,000"));
        text = JsonEdit.edit(text, "/features/0/properties/limits", set.formatted("", "sign", "300,000"));
        text = JsonEdit.edit(text, "/features/1/properties/limits", set.formatted("", "order", "300,000"));
        text = JsonEdit.edit(text, "/features/1/properties/extent", "[\"-" + beforeM + " m\", \"" + afterM + " m\"]");
        Rig rig = RigFile.parse(WeightsTexts.RIG);
        return RouteCheck.check(
                new Haul(RouteFile.parse(text), rig, rig.stances().get(0), Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));
    }

    private static String bridge(double beforeM, double afterM, String booster) throws Exception {
        ReportCell cell = check(beforeM, afterM).hazards().stream()
                .filter(h -> h.id().equals("B01"))
                .flatMap(h -> h.cells().stream())
                .filter(c -> c.configuration().equals("down/" + booster + "/3"))
                .findFirst()
                .orElseThrow();
        return cell.verdict() + " by " + cell.load().source();
    }

    @Test
    void theRoutesHoldAtABridgeAsLongAsAnyPartIsOffTheStretch() throws Exception {
        Rig rig = RigFile.parse(WeightsTexts.RIG);
        double noneM = CombinationLength.meters(rig.stances().get(0), BoosterState.NONE);
        double trailingM = CombinationLength.meters(rig.stances().get(0), BoosterState.TRAILING);

        assertEquals("clear", bridge(noneM + 1, noneM + 1, "none").split(" by ")[0]);
        assertEquals(
                "outside limits by road",
                bridge(noneM - 1, noneM + 1, "none"),
                "the rear is still off it when the front comes");
        assertEquals(
                "outside limits by road",
                bridge(noneM + 1, noneM - 1, "none"),
                "the front has left it before the rear is past");
        assertEquals("outside limits by road", bridge((noneM + trailingM) / 2, 100, "trailing"), "longer");
    }

    /** The stretch's own line is what holds on it; the route's own line tells the rest of the road. */
    @Test
    void theStretchItselfIsJudgedByItsOwn() throws Exception {
        Report report = check(30, 60);
        assertEquals(
                Verdict.CLEAR,
                report.hazards().stream().filter(h -> h.id().equals("S01")).findFirst().orElseThrow().cells().stream()
                        .filter(c -> c.configuration().equals("down/none/3"))
                        .findFirst()
                        .orElseThrow()
                        .verdict());
        assertEquals(
                Verdict.OUTSIDE_LIMITS,
                report.configurations().stream()
                        .filter(c -> c.key().equals("down/none/3"))
                        .findFirst()
                        .orElseThrow()
                        .loads());
    }

    /** Advice for a bridge goes by the same rule. */
    @Test
    void adviceAtABridgeCountsTheRoutesAsWell() throws Exception {
        for (double beforeM : new double[] {5, 100}) {
            LoadReport.Advice advice = check(beforeM, 100).loads().advice().stream()
                    .filter(a ->
                            a.places().contains("B01") && a.booster().word().equals("none"))
                    .findFirst()
                    .orElseThrow();
            assertEquals(
                    beforeM > 50,
                    advice.axles().stream().anyMatch(x -> x.verdict() == Verdict.CLEAR),
                    advice.toString());
        }
    }
}
