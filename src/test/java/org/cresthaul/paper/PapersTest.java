package org.cresthaul.paper;

import static org.cresthaul.paper.PaperSample.pages;
import static org.cresthaul.paper.PaperSample.solid;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.cresthaul.language.English;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.StepKind;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.sheet.SheetLine;
import org.cresthaul.sheet.Statement;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Run sheets and statements of both samples, read back from their files: what is said stands there. */
class PapersTest {
    @ParameterizedTest
    @EnumSource
    void everyPageSaysWhetherItMayBeDrivenBy(PaperSample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            for (byte[] pdf : List.of(sample.sheetPdf(size), sample.statementPdf(size))) {
                List<String> pages = pages(pdf);
                assertTrue(!pages.isEmpty());
                for (String page : pages) {
                    assertEquals(!sample.drivable, page.contains("NOT FOR DRIVING"), page);
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void theSheetReadsBackInDrivingOrder(PaperSample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            assertReadsBack(sample, solid(String.join("", pages(sample.sheetPdf(size)))));
        }
    }

    private static void assertReadsBack(PaperSample sample, String read) {
        int at = 0;
        for (RunSheet.Leg leg : sample.legs()) {
            at = read.indexOf(solid(leg.where().text()), at);
            assertTrue(at >= 0, leg.where().text());
            for (RunSheet.Entry entry : leg.entries()) {
                at = read.indexOf(solid(entry.chainage().text()), at);
                assertTrue(at >= 0, entry.chainage().text());
                for (List<SheetLine> lines : List.of(entry.comes(), entry.before(), entry.through(), entry.after())) {
                    for (SheetLine line : lines) {
                        assertTrue(read.indexOf(solid(line.text()), at) >= 0, line.text());
                    }
                }
            }
        }
        sample.plan.conditions().forEach(c -> assertTrue(read.contains(solid(c.name())), c.name()));
        for (Plan.Block block : sample.plan.blocking()) {
            assertTrue(
                    read.contains(solid(block.why().toString().substring(1))),
                    block.why().toString());
            block.relaxations()
                    .forEach(r -> assertTrue(
                            read.contains(solid(r.text().toString())), r.text().toString()));
        }
    }

    @ParameterizedTest
    @EnumSource
    void theHtmlSaysWhatThePdfSays(PaperSample sample) {
        String sheet = text(Papers.html(sample.sheet, sample.pictures));
        sample.legs().stream().flatMap(l -> l.entries().stream()).forEach(entry -> {
            for (List<SheetLine> lines :
                    List.of(entry.comes(), entry.before(), entry.through(), entry.after(), entry.gauges())) {
                lines.forEach(line -> assertTrue(sheet.contains(solid(line.text())), line.text()));
            }
        });
        String statement = text(Papers.html(sample.statement, sample.route, Optional.empty()));
        sample.statement.hazards().forEach(h -> {
            assertTrue(statement.contains(solid(h.name())), h.name());
            h.conditions().forEach(c -> assertTrue(statement.contains(solid(c.text())), c.text()));
        });
        assertTrue(statement.contains(solid("as declared and")), "the wording");
        sample.statement.notChecked().forEach(n -> assertTrue(statement.contains(solid(n)), n));
    }

    private static String text(byte[] html) {
        return solid(new String(html, StandardCharsets.UTF_8)
                .replaceAll("(?s)<style.*?</style>", "")
                .replaceAll("<[^>]*>", "")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&"));
    }

    /** Everything that is said stands on the paper, whatever its size: places, conditions, what was not checked. */
    @ParameterizedTest
    @EnumSource
    void theStatementReadsBackOnEitherPaper(PaperSample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            // A foot and a head may stand within a list that goes on overleaf: what one page has is looked for alone.
            String read = solid(String.join("", pages(sample.statementPdf(size))));
            int lines = 0;
            for (Statement.HazardEntry place : sample.statement.hazards()) {
                assertTrue(read.contains(solid(place.name())), size + ": " + place.name());
                assertTrue(
                        read.contains(solid(place.chainage().text())),
                        size + ": " + place.chainage().text());
                for (SheetLine condition : place.conditions()) {
                    assertTrue(read.contains(solid(condition.text())), size + ": " + condition.text());
                    lines++;
                }
            }
            assertTrue(lines > 5, "" + lines);
            sample.statement.notChecked().forEach(n -> assertTrue(read.contains(solid(n)), size + ": " + n));
            assertTrue(read.contains(solid("It is not a warranty, and no survey.")), size.toString());
        }
    }

    @ParameterizedTest
    @EnumSource
    void equalPlansAreEqualBytes(PaperSample sample) {
        assertArrayEquals(sample.newSheetPdf(PaperSize.LETTER), sample.newSheetPdf(PaperSize.LETTER));
        assertArrayEquals(sample.newStatementPdf(PaperSize.A4), sample.newStatementPdf(PaperSize.A4));
    }

    /** A paper without steps cautions about none: what happens only where the plan stops to change is left out. */
    @ParameterizedTest
    @EnumSource
    void aPaperWithoutStepsCautionsAboutNoStep(PaperSample sample) throws Exception {
        String read = solid(String.join("", pages(sample.sheetPdf(PaperSize.LETTER))));
        List<String> stops = sample.sheet.legs().stream()
                .flatMap(l -> l.entries().stream())
                .filter(e -> e.step() == StepKind.CHANGE)
                .map(e -> e.id() + " " + e.name())
                .toList();
        assertFalse(stops.isEmpty());
        int ofSteps = 0;
        for (String caution : English.of(sample.sheet.cautions())) {
            boolean ofAStep = stops.stream().anyMatch(caution::contains);
            assertEquals(sample.drivable || !ofAStep, read.contains(solid(caution)), caution);
            ofSteps += ofAStep ? 1 : 0;
        }
        assertTrue(ofSteps > 0, "both samples change on the way");
    }
}
