package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.Finding;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.junit.jupiter.api.Test;

/** What governs: the least left as a share of what is required, by hand. */
class FindingTest {
    private static GapFinding gap(double valueM, double requiredM, Verdict verdict) {
        return new GapFinding(
                valueM, requiredM, requiredM, 0, verdict, "trailer", 0, 0, "", 0, 0, 0, "center", "held", 0, true, 0);
    }

    private static GapFinding decidedBy(GapFinding told, GapFinding deciding) {
        return new GapFinding(
                told.valueM(),
                told.requiredM(),
                told.marginM(),
                0,
                told.verdict(),
                "trailer",
                0,
                0,
                "",
                0,
                0,
                0,
                "center",
                "held",
                0,
                true,
                0,
                null,
                null,
                deciding);
    }

    private static Optional<Finding> governing(GapFinding ground, GapFinding overhead, GapFinding units) {
        return new ReportCell("k", Verdict.TIGHT, ground, overhead, null, null, List.of())
                .withUnits(units)
                .governing();
    }

    /** 30 mm of 60 mm is a half, 40 mm of 160 mm a quarter: the longer gap has the smaller share. */
    @Test
    void theSmallerShareGovernsAndNotTheShorterLength() {
        GapFinding ground = gap(0.09, 0.06, Verdict.CLEAR);
        GapFinding overhead = gap(0.20, 0.16, Verdict.CLEAR);
        assertEquals(0.5, ground.share(), 1e-12);
        assertEquals(0.25, overhead.share(), 1e-12);
        assertTrue(ground.left() < overhead.left());
        assertSame(overhead, governing(ground, overhead, null).orElseThrow());
        // Short by 20 mm of 60 mm and by 30 mm of 160 mm: a third and less than a fifth.
        GapFinding low = gap(0.04, 0.06, Verdict.TIGHT);
        assertSame(low, governing(low, gap(0.13, 0.16, Verdict.TIGHT), null).orElseThrow());
    }

    @Test
    void betweenUnitsOnlyWhatIsNotClearGoverns() {
        GapFinding ground = gap(0.09, 0.06, Verdict.CLEAR);
        assertSame(
                ground,
                governing(ground, null, gap(0.026, 0.025, Verdict.CLEAR)).orElseThrow());
        GapFinding touching = gap(0.02, 0.025, Verdict.TIGHT);
        assertSame(touching, governing(ground, null, touching).orElseThrow());
        assertEquals(Optional.empty(), governing(null, null, null));
    }

    /** The least gap has its need, another place has not: that one governs. */
    @Test
    void whereAnotherPlaceDecidesItGoverns() {
        GapFinding deciding = gap(0.10, 0.12, Verdict.TIGHT);
        GapFinding ground = decidedBy(gap(0.09, 0.06, Verdict.TIGHT), deciding);
        assertSame(
                deciding,
                governing(ground, gap(0.20, 0.16, Verdict.CLEAR), null).orElseThrow());
        // One that leaves a greater share does not: 50 % told, 100 % there.
        GapFinding told = decidedBy(gap(0.09, 0.06, Verdict.TIGHT), gap(0.2, 0.1, Verdict.TIGHT));
        assertSame(told, told.decisive());
    }

    /** Loads and gaps compare: 100 kg of 1,000 kg is a tenth. */
    @Test
    void aLoadHasItsShareToo() {
        LoadFinding load = new LoadFinding(
                Sentence.verbatim("gross"),
                Sentence.verbatim("invented"),
                Sentence.verbatim("all"),
                0,
                1,
                900,
                1000,
                100,
                false,
                Verdict.CLEAR);
        assertEquals(0.1, load.share(), 1e-12);
        assertSame(
                load,
                new ReportCell("k", Verdict.CLEAR, null, null, null, null, List.of(), load)
                        .governing()
                        .orElseThrow());
    }
}
