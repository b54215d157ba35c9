package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.RoundedRecords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a check yields has the figures as they were found: what is closer to its limit than any figure is written is
 * judged and told on the right side of it. On level road the bumper is 280 mm over the ground; with a survey of 10 mm
 * its uncertainty is that of {@link VerdictTest}, by hand. The small rig weighs 83,900 lb, the sum of its parts.
 */
class UnroundedFindingsTest {
    private static final String REFERENCE = "down/none/3";
    private static final double LB = 0.45359237;
    private static final double BUMPER_M = 0.280;
    private static final double UNCERTAINTY_M =
            Math.sqrt(Math.pow(0.010, 2) * (1 + Math.pow(1 + 0.9 / 4.4, 2) + Math.pow(0.9 / 4.4, 2))
                    + 0.010 * 0.010
                    + 0.015 * 0.015);

    private static ReportCell leaving(double leftM) {
        Margins margins = new Margins(BUMPER_M - UNCERTAINTY_M - leftM, 0.0762);
        return CheckCase.cell(CheckCase.check(CheckCase.crossing(CheckCase.LEVEL_POINTS, "10 mm"), margins), REFERENCE);
    }

    /** 0.04 mm short: to the nearest 0.1 mm that would be nought, which is kept. */
    @Test
    void aGapShortByLessThanHalfAStepIsShort() {
        GapFinding gap = leaving(-0.00004).ground();
        assertEquals(Verdict.TIGHT, gap.verdict());
        assertEquals(-0.00004, gap.valueM() - gap.requiredM(), 2e-6);
    }

    /** As written the gap goes down and its need up, and neither is on the side that looks safer. */
    @Test
    void whatIsWrittenIsRoundedFromWhatWasFound() {
        GapFinding found = leaving(0.00004).ground();
        GapFinding written = RoundedRecords.of(found);
        assertTrue(written.valueM() <= found.valueM() && found.valueM() < written.valueM() + 1e-4);
        assertTrue(written.requiredM() >= found.requiredM() && found.requiredM() > written.requiredM() - 1e-4);
        assertEquals(0.0, Math.abs(written.valueM() * 1e4 - Math.rint(written.valueM() * 1e4)), 1e-9);
        assertEquals(0.0, Math.abs(written.requiredM() * 1e4 - Math.rint(written.requiredM() * 1e4)), 1e-9);
    }

    /**
     * 0.07 lb is 0.032 kg. The sum of 83,900 lb is 38,056.3998 kg; either limit is written 38,056.4 kg as the load is,
     * so that of the written figures both would be kept.
     */
    @ParameterizedTest
    @CsvSource({"83899.93, outside limits, -0.07, -0.1", "83900.07, tight, 0.07, 0"})
    void aLoadWithinHalfAStepOfItsLimitIsToldOnItsSide(String limitLb, String verdict, double leftLb, double writtenKg)
            throws Exception {
        String route = JsonEdit.edit(
                JsonEdit.edit(
                        LimitsTexts.ROUTE,
                        "/features/0/properties/limits",
                        "{\"source\":\"sign\",\"date\":\"2026-10-01\",\"gross\":\"" + limitLb + " lb\"}"),
                "/limits",
                "{\"name\":\"wide\",\"source\":\"x\",\"date\":\"2026-01-01\",\"gross\":\"300,000 lb\"}");
        Rig rig = RigFile.parse(WeightsTexts.RIG);
        Report report = RouteCheck.check(
                new Haul(RouteFile.parse(route), rig, rig.stances().get(0), Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));
        ReportCell cell = report.hazards().stream()
                .filter(h -> h.id().equals("B01"))
                .flatMap(h -> h.cells().stream())
                .filter(c -> c.configuration().equals(REFERENCE))
                .findFirst()
                .orElseThrow();
        assertEquals(verdict, cell.verdict().word());
        assertEquals(leftLb * LB, cell.load().marginKg(), 1e-6);
        assertEquals(83_900 * LB, cell.load().loadKg(), 1e-6);
        LoadFinding written = RoundedRecords.of(cell.load());
        assertEquals(38_056.4, written.loadKg(), 1e-9);
        assertEquals(38_056.4, written.limitKg(), 1e-9);
        assertEquals(writtenKg, written.marginKg(), 1e-9);
    }
}
