package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.HazardKind;
import org.junit.jupiter.api.Test;

/**
 * What is asked of a place for its answer alone is what the whole judgment of it says, at every place that has gaps and
 * in every configuration of the sample.
 */
class PlaceCheckShortcutsTest {
    private static final double INCH_M = 0.0254;

    private final SampleHaul haul = SampleHaul.of("alder-county", "lowbed-loaded");
    private int clear;
    private int notClear;

    @Test
    void saysWhatTheReportSays() {
        PlaceCheck check = new PlaceCheck(haul.whole());
        int raised = 0;
        for (HazardFindings hazard : haul.report().hazards()) {
            if (!isOfGaps(hazard)) {
                continue;
            }
            for (ReportCell cell : hazard.cells()) {
                String where = hazard.id() + " " + cell.configuration();
                note(cell.verdict() == Verdict.CLEAR);
                assertEquals(cell.verdict() == Verdict.CLEAR, check.isClear(hazard.id(), cell.configuration()), where);
                assertEquals(
                        cell.raise(),
                        check.raise(hazard.id(), cell.configuration(), cell.verdict())
                                .orElse(null),
                        where);
                raised += cell.raise() == null ? 0 : 1;
            }
        }
        assertTrue(clear > 50 && notClear > 50 && raised > 20, clear + " " + notClear + " " + raised);
    }

    /** From a foot below the lowest notch up to it. */
    @Test
    void saysOfOtherNotchesWhatTheWholeJudgmentSays() {
        PlaceCheck whole = new PlaceCheck(haul.whole());
        PlaceCheck check = new PlaceCheck(haul.whole());
        for (HazardFindings hazard : haul.report().hazards()) {
            if (!isOfGaps(hazard) || !hazard.surveyed()) {
                continue;
            }
            double lowestM = haul.rig().notches().get(0).offsetM();
            for (CheckedConfiguration c : CheckedConfiguration.listOf(haul.rig(), haul.stance())) {
                for (int inches = 12; c.notch().offsetM() == lowestM && inches >= 0; inches -= 4) {
                    boolean isClear = whole.raised(hazard.id(), c.key(), -inches * INCH_M, 0)
                                    .verdict()
                            == Verdict.CLEAR;
                    note(isClear);
                    assertEquals(
                            isClear,
                            check.isClearAt(hazard.id(), c.key(), lowestM - inches * INCH_M),
                            hazard.id() + " " + c.key() + " " + inches);
                }
            }
        }
        assertTrue(clear > 10 && notClear > 10, clear + " " + notClear);
    }

    private static boolean isOfGaps(HazardFindings hazard) {
        return hazard.kind().judged() == HazardKind.JudgedBy.GAPS;
    }

    private void note(boolean isClear) {
        clear += isClear ? 1 : 0;
        notClear += isClear ? 0 : 1;
    }
}
