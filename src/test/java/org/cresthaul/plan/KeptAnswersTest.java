package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.check.SampleHaul;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.Route;
import org.cresthaul.whatif.CompletePlan;
import org.junit.jupiter.api.Test;

/** With answers of earlier plans a plan is what it is without, and no place that is as it was is asked about again. */
class KeptAnswersTest {
    private final SampleHaul haul = SampleHaul.of("alder-county", "lowbed-loaded");
    private final KeptAnswers kept = new KeptAnswers();

    private Plan plan(Route route, Margins margins, Report report, KeptAnswers with) {
        return CompletePlan.of(
                new Haul(route, haul.rig(), haul.stance(), margins),
                report,
                PlanOptions.defaults(),
                new PlanAid(with, PlanFollower.NONE));
    }

    private Report report(Route route, Margins margins) {
        return RouteCheck.check(new Haul(route, haul.rig(), haul.stance(), margins), new Inputs("0c", "0b"));
    }

    /** The survey of one crossing twice as coarse: some answers about it are found, and none about any other. */
    @Test
    void onlyThePlaceThatChangedIsAskedAboutAgain() {
        Plan first = plan(haul.route(), haul.margins(), haul.report(), kept);
        int all = kept.made();
        Set<Hazard> before = kept.places();
        assertEquals(first, plan(haul.route(), haul.margins(), haul.report(), kept));
        assertEquals(all, kept.made(), "the same again asks nothing");

        Hazard changed = surveyed(first);
        Route other = coarser(haul.route(), changed.place().id());
        Report report = report(other, haul.margins());
        Plan withKept = plan(other, haul.margins(), report, kept);
        int again = kept.made() - all;
        KeptAnswers fresh = new KeptAnswers();
        assertEquals(plan(other, haul.margins(), report, fresh), withKept);
        assertTrue(again > 0, "the place that changed");
        Set<Hazard> asked = new HashSet<>(kept.places());
        asked.removeAll(before);
        assertEquals(Set.of(other.findHazard(changed.place().id()).orElseThrow()), asked);
        assertTrue(fresh.made() > 5 * again, again + " of " + fresh.made());
    }

    /** Other margins are another question of every place. */
    @Test
    void otherMarginsTakeNothingFromBefore() {
        plan(haul.route(), haul.margins(), haul.report(), kept);
        int all = kept.made();
        Margins m = haul.margins();
        Margins wider = new Margins(m.groundM() + 0.01, m.overheadM(), m.sideM(), m.lineM(), m.turnInM(), m.unitM());
        Report report = report(haul.route(), wider);
        assertNotEquals(haul.margins(), wider);
        KeptAnswers fresh = new KeptAnswers();
        assertEquals(plan(haul.route(), wider, report, fresh), plan(haul.route(), wider, report, kept));
        assertEquals(fresh.made(), kept.made() - all);
    }

    private Hazard surveyed(Plan plan) {
        List<String> raised = new ArrayList<>();
        plan.steps().stream()
                .filter(s -> s.passage() != null && s.passage().raise() != null)
                .forEach(s -> raised.add(s.passage().hazard()));
        return raised.stream()
                .map(id -> haul.route().findHazard(id).orElseThrow())
                .filter(h -> h.survey().isPresent())
                .findFirst()
                .orElseThrow();
    }

    private static Route coarser(Route route, String id) {
        return route.withHazards(route.hazards().stream()
                .map(h -> h.place().id().equals(id)
                        ? h.survey()
                                .map(s -> h.withSurvey(new Uncertainty(s.valueM() * 2, s.source(), s.date())))
                                .orElseThrow()
                        : h)
                .toList());
    }
}
