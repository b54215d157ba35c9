package org.cresthaul.whatif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.CellSpares;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.Robustness;
import org.cresthaul.plan.SpareKind;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.junit.jupiter.api.Test;

/** What is told where an altered check has no figure of a kind: that it is not known, and nothing better. */
class AlteredCellsTest {
    private static final List<Robustness.Assumed> ASSUMED = List.of(
            new Robustness.Assumed("survey twice as coarse", 2, "times"),
            new Robustness.Assumed("weights 2 % more", 0.02, "share"));
    private static final ReportCell NOTHING = new ReportCell(
            "down/none/3", Verdict.LOADS_NOT_KNOWN, null, null, null, null, List.of(Sentence.verbatim("nobody knows")));

    /** A load with so much left to a limit of 1000 kg. */
    private static ReportCell leaves(double kg) {
        return new ReportCell(
                "down/none/3",
                Verdict.CLEAR,
                null,
                null,
                null,
                null,
                List.of(),
                new LoadFinding(
                        Sentence.verbatim("gross"),
                        Sentence.verbatim("invented"),
                        Sentence.verbatim("all"),
                        0,
                        1,
                        1000 - kg,
                        1000,
                        kg,
                        false,
                        Verdict.CLEAR));
    }

    private static Robustness.Row row(
            String hazard, ReportCell survey, ReportCell weights, ReportCell together, ReportCell exact) {
        Plan.Spare declared = CellSpares.find(leaves(100), SpareKind.LOAD).orElseThrow();
        return new AlteredCells(Arrays.asList(survey, weights), together, exact)
                .row(hazard, declared, List.of(true, true), 0);
    }

    private static Robustness of(Robustness.Row... rows) {
        return RobustnessCheck.of(
                ASSUMED,
                Arrays.stream(rows)
                        .map(r -> new RobustnessCheck.Ranked(r, "Place " + r.hazard(), true, 1000))
                        .toList());
    }

    @Test
    void aMissingFigureIsNotZeroAndNotAsDeclared() {
        Robustness.Row row = row("H1", NOTHING, leaves(60), NOTHING, NOTHING);
        assertEquals(Arrays.asList(null, 60.0), row.left());
        assertTrue(row.isNotKnown(0) && !row.isNotKnown(1));
        assertNull(row.worst());
        assertNull(row.exact());
        assertEquals(
                "Place H1, axle loads: unknown what is left with survey twice as coarse, what is left when"
                        + " everything is off together, what an exact survey would free.",
                of(row).notKnown().get(0).text());
    }

    /** Zero left, or even short, is known; what is not known may be worse. */
    @Test
    void whatIsNotKnownIsTheWeakestPoint() {
        Robustness r = of(
                row("H1", leaves(10), leaves(10), leaves(-500), leaves(120)),
                row("H2", leaves(90), leaves(90), NOTHING, leaves(100)));
        assertEquals("H2", r.weakest().hazard());
        assertNull(r.weakest().worst());
        assertEquals(
                "Place H2, axle loads: what is left there when everything is off together is unknown; count on"
                        + " nothing.",
                r.weakest().text());
    }

    /** Whether another survey would help more cannot be said where its help is not known. */
    @Test
    void theReSurveyClaimsNoMoreThanIsKnown() {
        Robustness known = of(row("H1", leaves(10), leaves(90), leaves(10), leaves(130)));
        assertEquals(30, known.resurvey().gainM());
        assertTrue(
                known.resurvey().text().endsWith("anywhere else on this plan."),
                known.resurvey().text());
        Robustness partly = of(
                row("H1", leaves(10), leaves(90), leaves(10), leaves(130)),
                row("H2", leaves(10), leaves(90), leaves(10), NOTHING));
        assertEquals("H1", partly.resurvey().hazard());
        assertTrue(
                partly.resurvey().text().endsWith("on this plan where that is known."),
                partly.resurvey().text());
        assertNull(of(row("H2", leaves(10), leaves(90), leaves(10), NOTHING)).resurvey());
    }
}
