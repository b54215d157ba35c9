package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.junit.jupiter.api.Test;

/** At what speed a place is passed: what is left is enough for a bounce, or it is a crawl. */
class PassageSpeedTest {
    private static final double INCH = 0.0254;
    private static final double MPH = 0.44704;

    private static Plan.HazardPassage passage(Hazard hazard, String verdict, Double leftM) {
        Rig rig = PlanCase.rig("none");
        List<ReportCell> cells = PlanCase.configurations(rig, List.of()).stream()
                .map(c -> leftM == null ? PlanCase.cell(c, verdict, null) : PlanCase.cell(c, verdict, null, leftM))
                .toList();
        Plan plan = new PlanCase(
                        PlanCase.routeOf(List.of(hazard), List.of()),
                        rig.stances().get(0),
                        PlanCase.report(
                                rig,
                                List.of(PlanCase.findings(
                                        hazard,
                                        hazard.kind().word().equals("stretch") ? List.of(0.0, 100.0) : List.of(),
                                        cells)),
                                List.of()),
                        PlanOptions.defaults(),
                        (h, c, f, r) -> Optional.empty())
                .plan();
        return plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(Objects::nonNull)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aClearDipHasItAndWhatIsNotKnownToBeEnoughIsCrawledOver() {
        Plan.HazardPassage fast = passage(PlanCase.dip("D", 500), "clear", 4 * INCH);
        assertEquals(20, fast.mostMps() / MPH, 0.01);
        assertTrue(!fast.crawls() && fast.seconds() == 0);
        for (Plan.HazardPassage slow : List.of(
                passage(PlanCase.dip("D", 500), "clear", 0.2 * INCH),
                passage(PlanCase.dip("D", 500), "clear", null),
                passage(PlanCase.crossing("X", 500), "clear", 4 * INCH))) {
            assertNull(slow.mostMps());
            assertTrue(slow.crawls() && slow.seconds() > 0, slow.toString());
        }
        Plan.HazardPassage stretch = passage(PlanCase.stretch("S", 500, 100), "clear", null);
        assertNull(stretch.mostMps());
        assertTrue(!stretch.crawls());
    }
}
