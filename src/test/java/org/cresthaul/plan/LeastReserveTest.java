package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.units.RoundedRecords;
import org.junit.jupiter.api.Test;

/** One least reserve: share and length apart, and what has no figures is never taken for plenty. */
class LeastReserveTest {
    private static final Rig RIG = PlanCase.rig("none");

    private static GapFinding gap(double valueM, double requiredM) {
        return new GapFinding(
                valueM, requiredM, 0.05, 0, Verdict.CLEAR, "trailer", 0, 0, "", 0, 0, 0, "center", "held", 0, true, 0);
    }

    private static ReportCell clear(ConfigurationVerdict c, GapFinding ground, GapFinding overhead) {
        return new ReportCell(c.key(), Verdict.CLEAR, ground, overhead, null, null, List.of());
    }

    /** Dips 300 m apart, each cell made for its place and configuration. */
    private static Plan plan(int places, BiFunction<Integer, Integer, ReportCell> cells, Double asked) {
        List<ConfigurationVerdict> all = PlanCase.configurations(RIG, List.of());
        List<Hazard> hazards = new ArrayList<>();
        List<HazardFindings> findings = new ArrayList<>();
        for (int p = 0; p < places; p++) {
            Hazard dip = PlanCase.dip("D" + p, 300 + 300 * p);
            hazards.add(dip);
            List<ReportCell> row = new ArrayList<>();
            for (int c = 0; c < all.size(); c++) {
                row.add(cells.apply(p, c));
            }
            findings.add(PlanCase.findings(dip, List.of(), row));
        }
        return new PlanCase(
                        PlanCase.routeOf(hazards, List.of()),
                        RIG.stances().get(0),
                        PlanCase.report(RIG, findings, List.of()),
                        PlanOptions.defaults().with(asked, false, List.of()),
                        (h, c, f, r) -> Optional.empty())
                .plan();
    }

    private static ConfigurationVerdict c(int i) {
        return PlanCase.configurations(RIG, List.of()).get(i);
    }

    /** 4 cm of 10 left is 40 %; 1 cm beyond 2 cm is 50 %, and is the shorter. */
    @Test
    void shareAndLengthMayBeAtTwoPlaces() {
        LeastReserve least = plan(2, (p, c) -> clear(c(c), p == 0 ? gap(0.14, 0.10) : gap(0.03, 0.02), null), null)
                .least();
        assertEquals(0.4, least.share(), 1e-9);
        assertEquals("D0", least.shareAt());
        assertEquals(0.01, least.lengthM(), 1e-9);
        assertEquals("D1", least.lengthAt());
        assertTrue(least.unknownAt().isEmpty());
    }

    /** What governs by length is over the ground, what leaves the least share is under the structure. */
    @Test
    void everyKindOfGapCounts() {
        LeastReserve least = plan(1, (p, c) -> clear(c(c), gap(0.03, 0.02), gap(0.24, 0.20)), null)
                .least();
        assertEquals(0.2, least.share(), 1e-9);
        assertEquals(SpareKind.OVERHEAD, least.shareKind());
        assertEquals(0.01, least.lengthM(), 1e-9);
        assertEquals(SpareKind.GROUND, least.lengthKind());
    }

    /** Of two configurations of equal cost the first has no figures at a place where the second leaves 10 %. */
    @Test
    void whatHasNoFiguresIsNoPlenty() {
        BiFunction<Integer, Integer, ReportCell> cells = (p, c) ->
                p == 0 ? clear(c(c), gap(0.15, 0.10), null) : clear(c(c), c == 0 ? null : gap(0.11, 0.10), null);
        Plan plan = plan(2, cells, null);
        assertEquals(c(1).key(), plan.steps().get(0).set().configuration());
        assertEquals(0.1, plan.least().share(), 1e-9);
        // And where a reserve is asked for, it is none.
        assertEquals(
                Outcome.BLOCKED,
                plan(2, (p, c) -> p == 0 ? clear(c(c), gap(0.15, 0.10), null) : clear(c(c), null, null), 0.05)
                        .outcome());
    }

    @Test
    void aPlaceOfWhichNothingIsKnownIsNamedAndTellsNoWayFromAnother() {
        Plan plan = plan(
                2,
                (p, c) -> p == 0 ? clear(c(c), gap(c == 0 ? 0.11 : 0.15, 0.10), null) : clear(c(c), null, null),
                null);
        assertEquals(c(1).key(), plan.steps().get(0).set().configuration());
        assertEquals(0.5, plan.least().share(), 1e-9);
        assertEquals(List.of("D1"), plan.least().unknownAt());
        LeastReserve none = plan(1, (p, c) -> clear(c(c), null, null), null).least();
        assertNull(none.share());
        assertEquals(List.of("D0"), none.unknownAt());
    }

    /**
     * 20.04 mm are left of 100 mm required: 20.04 %. Of the figures as they are written, 0.12 m and 0.1001 m, it would
     * be 19.9 mm, and a plan that asks for 20 % would be told that there is no way.
     */
    @Test
    void aReserveIsCountedOfFiguresAsTheyWereFound() {
        Plan plan = plan(1, (p, c) -> clear(c(c), gap(0.12005, 0.10001), null), 0.2);
        assertEquals(Outcome.THROUGH, plan.outcome());
        assertEquals(0.02004 / 0.10001, plan.least().share(), 1e-9);
        assertEquals(0.02004, plan.least().lengthM(), 1e-9);
        Plan written = RoundedRecords.of(plan);
        assertEquals(0.02, written.least().lengthM(), 1e-12);
        Plan.Spare spare = written.steps().stream()
                .map(Plan.Step::passage)
                .filter(p -> p != null)
                .findFirst()
                .orElseThrow()
                .spare();
        assertEquals(0.12, spare.value(), 1e-12);
        assertEquals(0.1001, spare.required(), 1e-12);
        assertEquals(0.02, spare.left(), 1e-12);
        assertEquals(
                Outcome.BLOCKED,
                plan(1, (p, c) -> clear(c(c), gap(0.12, 0.1001), null), 0.2).outcome());
    }
}
