package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.language.English;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Where contact is told beside a gap that is left, the words say that it cannot be ruled out; it touches only where
 * nothing is.
 */
class ContactReasonTest {
    private static final String REFERENCE = "down/none/3";
    private static final String TOUCHES = "it touches";

    private static boolean isNotRuledOut(String reason) {
        return reason.contains("cannot rule out contact")
                || reason.contains("too coarse to rule out contact")
                || reason.contains("contact cannot be ruled out");
    }

    /**
     * A hump that grows under the deck, surveyed to a millimeter: the rig's and its ride's uncertainty is what is left.
     */
    @Test
    void aGapBelowItsUncertaintyIsNoTouch() {
        int touching = 0;
        int notRuledOut = 0;
        for (double height = 0.20; height < 0.34; height += 0.005) {
            double top = height;
            Report report = CheckCase.check(
                    CheckCase.crossing(CheckCase.points(s -> Math.max(0, top - 0.05 * Math.abs(s))), "1 mm"),
                    Margins.defaults());
            ReportCell cell = CheckCase.cell(report, REFERENCE);
            GapFinding gap = cell.ground();
            if (cell.verdict() != Verdict.CONTACT) {
                assertTrue(gap.valueM() > gap.uncertaintyM() - 1e-3, gap.toString());
            } else if (gap.valueM() > gap.provenWithinM()) {
                assertEquals(
                        List.of("ground clearance: the gap is smaller than its uncertainty: cannot rule out contact"),
                        English.of(cell.reasons()));
                notRuledOut++;
            } else if (gap.valueM() < 0) {
                assertEquals(List.of("ground clearance: " + TOUCHES), English.of(cell.reasons()));
                touching++;
            }
        }
        assertTrue(touching >= 3 && notRuledOut >= 2, touching + " touching, " + notRuledOut + " not ruled out");
    }

    @ParameterizedTest
    @CsvSource({"alder-county, lowbed-loaded", "alder-county, lowbed-empty", "sorrel-valley, lowbed-loaded"})
    void soAtEveryPlaceOfTheSamples(String route, String rig) {
        int looked = 0;
        for (HazardFindings hazard : SampleHaul.of(route, rig).report().hazards()) {
            for (ReportCell cell : hazard.cells()) {
                looked += assertWords("ground clearance: ", cell.ground(), cell);
                looked += assertWords("overhead: ", cell.overhead(), cell);
            }
        }
        assertTrue(looked > 5, looked + " gaps with contact");
    }

    private static int assertWords(String side, GapFinding gap, ReportCell cell) {
        if (gap == null || gap.verdict() != Verdict.CONTACT) {
            return 0;
        }
        List<String> reasons = English.of(cell.reasons()).stream()
                .filter(r -> r.startsWith(side))
                .toList();
        if (gap.valueM() > gap.provenWithinM()) {
            assertTrue(reasons.stream().anyMatch(ContactReasonTest::isNotRuledOut), gap + " " + cell.reasons());
            assertTrue(reasons.stream().noneMatch(r -> r.contains(TOUCHES)), gap + " " + cell.reasons());
        } else if (gap.valueM() < 0) {
            assertTrue(reasons.contains(side + TOUCHES), gap + " " + cell.reasons());
        }
        return 1;
    }

    /** The same in corners: room that is left, but not as much as it is uncertain. */
    @ParameterizedTest
    @ValueSource(strings = {"alder-county", "sorrel-valley"})
    void soInCorners(String route) {
        Stream<ReportCell> contacts = Stream.of("lowbed-loaded", "lowbed-empty")
                .flatMap(rig -> SampleHaul.of(route, rig).report().hazards().stream())
                .flatMap(h -> h.cells().stream())
                .filter(c -> c.corner() != null
                        && c.corner().verdict() == Verdict.CONTACT
                        && !c.corner().beyondLimits());
        contacts.forEach(c -> {
            boolean over = c.reasons().stream().anyMatch(r -> r.toString().contains(" goes over "));
            boolean side = c.reasons().stream().anyMatch(r -> r.toString().contains("wrong side"));
            assertTrue(side || over == (c.corner().onLineM() < 0), c.corner().onLineM() + " " + c.reasons());
            assertTrue(
                    over || side || English.of(c.reasons()).stream().anyMatch(ContactReasonTest::isNotRuledOut),
                    c.reasons().toString());
        });
    }
}
