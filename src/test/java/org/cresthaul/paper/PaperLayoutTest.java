package org.cresthaul.paper;

import static org.cresthaul.paper.PaperSample.pages;
import static org.cresthaul.paper.PaperSample.solid;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.cresthaul.plan.Plan;
import org.cresthaul.route.HazardKind;
import org.cresthaul.sheet.CardKind;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.sheet.SheetLine;
import org.cresthaul.sheet.SheetTopic;
import org.cresthaul.sheet.Statement;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Run sheets and statements of both samples as their readers hold them: pages, their order, their edges. */
class PaperLayoutTest {
    /**
     * A sheet for 20 miles is one that a driver reads; a plan without a way is what blocks it and what would open it.
     */
    @ParameterizedTest
    @EnumSource
    void theSheetIsShort(PaperSample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            List<String> pages = pages(sample.sheetPdf(size));
            assertTrue(pages.size() <= (sample.drivable ? 12 : 4), size + ": " + pages.size() + " pages");
            assertTrue(solid(pages.get(0)).contains(solid(sample.drivable ? "Cab page" : "What blocks")));
            String all = solid(String.join("", pages));
            assertFalse(all.contains(solid("(" + SheetLine.PRACTICE + ")")), "a mark, and the note once");
            assertEquals(
                    sample.drivable ? 1 : 0,
                    all.split(Pattern.quote(solid("* " + SheetLine.PRACTICE)), -1).length - 1,
                    size.toString());
        }
    }

    /** One page to tape to the dash: set-ups in figures, every structure, crossing and stop, whom to call. */
    @Test
    void theFirstPageIsOneToTapeToTheDash() throws Exception {
        PaperSample sample = PaperSample.SORREL_VALLEY;
        for (PaperSize size : PaperSize.values()) {
            List<String> pages = pages(sample.sheetPdf(size));
            String first = solid(pages.get(0));
            List<String> wanted = new ArrayList<>();
            for (RunSheet.Card card : sample.sheet.setUps()) {
                wanted.add(card.title());
                wanted.addAll(card.lines().stream()
                        .filter(l -> l.code() == SheetTopic.MEASURE)
                        .map(SheetLine::text)
                        .toList());
            }
            assertTrue(wanted.size() >= 4 * 2, "length, height and gross of every set-up: " + wanted);
            List<RunSheet.Entry> entries =
                    sample.legs().stream().flatMap(l -> l.entries().stream()).toList();
            for (RunSheet.Entry entry : entries) {
                if (entry.kind() != HazardKind.LIMITS) {
                    wanted.add(entry.chainage().text());
                    wanted.add(entry.name());
                }
                entry.comes().stream()
                        .filter(l -> l.code() == SheetTopic.HEIGHTS)
                        .forEach(l -> wanted.add(l.text()));
            }
            sample.sheet.crossings().forEach(c -> wanted.add(c.number()));
            sample.sheet.cards().stream()
                    .filter(c -> c.about() == CardKind.STUCK)
                    .forEach(c -> c.lines().stream().limit(2).forEach(l -> wanted.add(l.text())));
            wanted.forEach(w -> assertTrue(first.contains(solid(w)), size + ": " + w + "\n" + pages.get(0)));
            assertTrue(solid(pages.get(1)).contains(solid("Before leaving")), "the page ends there");
        }
    }

    /** What is on a page reaches a quarter down it at least: nobody is sent overleaf for a line. */
    @ParameterizedTest
    @EnumSource
    void noPageIsNearlyEmpty(PaperSample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            for (byte[] pdf : List.of(sample.sheetPdf(size), sample.statementPdf(size))) {
                try (PDDocument document = Loader.loadPDF(pdf)) {
                    PDFRenderer renderer = new PDFRenderer(document);
                    for (int p = 0; p < document.getNumberOfPages(); p++) {
                        BufferedImage page = renderer.renderImageWithDPI(p, 50);
                        // An inch from the end, above the foot, and within the frame.
                        int lowest = page.getHeight() - 50;
                        while (!isInked(page, lowest)) {
                            lowest--;
                        }
                        assertTrue(lowest > 0.25 * page.getHeight(), size + ", page " + (p + 1) + " ends at " + lowest);
                    }
                }
            }
        }
    }

    private static boolean isInked(BufferedImage page, int y) {
        for (int x = 25; x < page.getWidth() - 25; x++) {
            if ((page.getRGB(x, y) & 0xFF) < 200) {
                return true;
            }
        }
        return false;
    }

    /**
     * A clerk decides by the first page: decision, every condition, roads, crossings, surveys, rig, load, weight, map.
     */
    @ParameterizedTest
    @EnumSource
    void theStatementBeginsWithTheClerksPage(PaperSample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            List<String> pages = pages(sample.statementPdf(size)).stream()
                    .map(PaperSample::solid)
                    .toList();
            String first = pages.get(0);
            List<String> wanted = new ArrayList<>(List.of(
                    "Decision: " + sample.statement.banner().outcome(),
                    sample.route.name(),
                    sample.route.permit().orElseThrow(),
                    "north up"));
            sample.plan.conditions().forEach(c -> wanted.addAll(List.of(c.hazard() + " " + c.name(), c.what() + ": ")));
            // How it is passed is a condition too: none is only in the evidence.
            Set<String> open = sample.plan.conditions().stream()
                    .map(c -> c.told().toString())
                    .collect(Collectors.toSet());
            int rules = 0;
            for (Statement.HazardEntry place : sample.statement.hazards()) {
                for (SheetLine condition : place.conditions()) {
                    if (!place.blocked() && !open.contains(condition.text())) {
                        String rule = Pattern.quote(solid(condition.text().replaceAll("\\.$", "") + ":"));
                        assertTrue(
                                Pattern.compile(rule + "([A-Z0-9]+,)*" + place.id() + "[,.]")
                                        .matcher(first)
                                        .find(),
                                size + ": " + place.id() + " " + condition.text() + " in " + first);
                        rules++;
                    }
                }
            }
            assertTrue(rules > 5, "" + rules);
            assertFalse(first.contains(solid("Conditions none")), "something is asked of both samples");
            sample.plan.blocking().stream()
                    .filter(b -> !b.hazard().equals(Plan.WHOLE_ROUTE))
                    .forEach(b -> wanted.add(b.hazard() + " " + b.name()));
            sample.route.legs().forEach(l -> wanted.add(l.name()));
            sample.plan.crossings().forEach(c -> wanted.add(c.crossingNumber()));
            sample.route.hazards().stream().flatMap(h -> h.survey().stream()).forEach(s -> {
                wanted.add(s.source());
                wanted.add(s.date().orElseThrow().toString());
            });
            sample.statement.identity().forEach(r -> wanted.add(r.value().text()));
            sample.statement
                    .sideViews()
                    .forEach(e -> wanted.add(new RoundedFigures(UnitSystem.US_CUSTOMARY).distance(e.lengthM())));
            wanted.forEach(w -> assertTrue(first.contains(solid(w)), size + ": " + w + " in " + first));
            assertFalse(first.contains("Evidence"), first);
            assertTrue(pages.stream().skip(1).allMatch(p -> p.contains("Evidence")));
        }
    }

    /**
     * A driver clips one page to the visor: each leg is on one, with its map. A plan without a way has no legs on
     * paper.
     */
    @ParameterizedTest
    @EnumSource
    void everyLegHasItsPage(PaperSample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            List<String> pages = pages(sample.sheetPdf(size)).stream()
                    .map(PaperSample::solid)
                    .toList();
            for (RunSheet.Leg leg : sample.legs()) {
                List<String> own = pages.stream()
                        .filter(p -> p.contains(solid("Leg " + leg.number() + ": " + leg.name()))
                                && p.contains(solid("north up")))
                        .toList();
                assertEquals(1, own.size(), leg.name());
                for (RunSheet.Entry entry : leg.entries()) {
                    assertTrue(own.get(0).contains(solid(entry.chainage().text())), leg.name() + " " + entry.name());
                    assertTrue(own.get(0).contains(solid(entry.name())), leg.name() + " " + entry.name());
                }
            }
        }
    }

    /** Printers leave about 5 mm blank; at 50 dpi that is ten pixels, of which the frame may take the innermost two. */
    @ParameterizedTest
    @EnumSource
    void nothingIsDrawnWhereAPrinterCannot(PaperSample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            assertEdgesAreBlank(sample.sheetPdf(size), size, "run sheet, " + size);
            assertEdgesAreBlank(sample.statementPdf(size), size, "statement, " + size);
        }
    }

    private static void assertEdgesAreBlank(byte[] pdf, PaperSize size, String what) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFRenderer renderer = new PDFRenderer(document);
            for (int p = 0; p < document.getNumberOfPages(); p++) {
                BufferedImage page = renderer.renderImageWithDPI(p, 50);
                // Letter is 8 1/2 in by 11 in; A4 is 210 mm by 297 mm (ISO 216).
                assertEquals(size == PaperSize.LETTER ? 8.5 : 210 / 25.4, page.getWidth() / 50.0, 0.03, what);
                assertEquals(size == PaperSize.LETTER ? 11 : 297 / 25.4, page.getHeight() / 50.0, 0.03, what);
                int dark = 0;
                int within = 0;
                for (int x = 0; x < page.getWidth(); x++) {
                    for (int y = 0; y < page.getHeight(); y++) {
                        int toEdge =
                                Math.min(Math.min(x, page.getWidth() - 1 - x), Math.min(y, page.getHeight() - 1 - y));
                        boolean inked = (page.getRGB(x, y) & 0xFF) < 200;
                        dark += inked && toEdge < 8 ? 1 : 0;
                        within += inked ? 1 : 0;
                    }
                }
                assertEquals(0, dark, what + ", page " + (p + 1));
                assertTrue(within > 500, what + ", page " + (p + 1) + " is pictured with what stands on it");
            }
        }
    }
}
