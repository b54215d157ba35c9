package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The page on paper and in windows of any size: nothing shrinks it, its width is used, its map shows the route. */
class PrintTest {
    private static final double MM_PT = 72 / 25.4;
    private static final double MARGIN_MM = 12;

    @RegisterExtension
    static final SampleSite SITE = new SampleSite();

    private static Browser browser;

    @BeforeAll
    static void start() throws Exception {
        browser = new Browser();
        browser.open(SITE.url());
        browser.await(
                "the plan is made",
                b -> b.find("#route-plan").getDomAttribute("data-status").equals("ready"));
    }

    @AfterAll
    static void stop() throws IOException {
        browser.close();
    }

    private record Glyph(double sizePt, double rightPt, String text) {}

    /** A letter that stands upright: where it is on which sheet, and in which piece of text. */
    private record Letter(int sheet, int piece, TextPosition at) {
        boolean liesOver(Letter other) {
            return piece != other.piece
                    && Math.min(right(), other.right()) - Math.max(at.getX(), other.at.getX()) > 1
                    && Math.min(at.getY(), other.at.getY()) - Math.max(top(), other.top()) > 1;
        }

        private double right() {
            return at.getX() + at.getWidth();
        }

        /** Half of its size above the line it stands on: as high as small letters are. */
        private double top() {
            return at.getY() - at.getYScale() / 2;
        }
    }

    private static List<Glyph> glyphs(byte[] pdf) throws IOException {
        List<Glyph> glyphs = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> positions) {
                    positions.forEach(p -> glyphs.add(new Glyph(
                            p.getYScale(), p.getDir() == 0 ? p.getX() + p.getWidth() : p.getX(), p.getUnicode())));
                }
            };
            stripper.getText(document);
        }
        return glyphs;
    }

    /**
     * The sheet's body is set in 9 pt: a page that a wide table had shrunk would have smaller letters, and none would
     * be in 9 pt.
     */
    @ParameterizedTest
    @CsvSource({
        "letter, 8.5, 11",
        "letter-across, 11, 8.5",
        "a4, 8.2677, 11.6929",
        "a4-across, 11.6929, 8.2677",
        "a3, 11.6929, 16.5354",
        "a3-across, 16.5354, 11.6929"
    })
    void noSheetIsShrunkAndItsWidthIsUsed(String name, double width, double height) throws Exception {
        browser.run("document.querySelector('#comparison').scrollIntoView()");
        browser.await(
                "the comparison is there",
                b -> b.find("#comparison").getDomAttribute("data-status").equals("ready"));
        byte[] pdf = browser.printed(width, height);
        Files.write(Path.of("target", "printed-" + name + ".pdf"), pdf);
        assertFalse(PrintedPage.text(pdf).contains(PrintedPage.NOT_ON_IT), name + " says that something is missing");
        List<Glyph> glyphs = glyphs(pdf);
        assertTrue(glyphs.size() > 5000, glyphs.size() + " letters");
        assertTrue(
                glyphs.stream().filter(g -> Math.abs(g.sizePt - 9) < 0.05).count() > 500, name + ": body text in 9 pt");
        double right = glyphs.stream().mapToDouble(Glyph::rightPt).max().orElseThrow();
        double edge = width * 72 - MARGIN_MM * MM_PT;
        assertTrue(right <= edge + 0.5 && right > edge - 30, name + ": ink to " + right + " of " + edge);
        theWidestTableKeepsItsWordsWhole(name, PrintedPage.pages(pdf));
        assertEquals(List.of(), lettersOverOthers(pdf), name);
    }

    private static final List<String> HEADS = List.of(
            "Axles",
            "Booster",
            "Notch",
            "Places",
            "passages",
            "Passed",
            "Least",
            "limit",
            "weight",
            "Length",
            "transport",
            "Loads",
            "clear",
            "tight",
            "contact",
            "surveyed",
            "outside",
            "known",
            "raised");

    /** What stands in the cells of a row of the sample, beside figures. */
    private static final List<String> VALUES = List.of("no", "way", "through", "contact");

    /** Twenty columns: every sheet repeats the heads and breaks no value, and no head where the heads lie. */
    private static void theWidestTableKeepsItsWordsWhole(String name, List<String> pages) {
        int first = IntStream.range(0, pages.size())
                .filter(i -> pages.get(i).contains("Configurations side by side"))
                .findFirst()
                .orElseThrow();
        List<String> tables = pages.subList(first, pages.size()).stream()
                .filter(p -> p.contains("no way through"))
                .toList();
        assertFalse(tables.isEmpty(), name);
        for (String table : tables) {
            Set<String> words = new HashSet<>(List.of(table.split(" ")));
            assertTrue(words.containsAll(VALUES), name + ": " + table);
            assertTrue(
                    words.stream().anyMatch(List.of("trailing", "coupled", "booster")::contains), name + ": " + table);
            if (!List.of("letter", "a4").contains(name)) {
                assertEquals(
                        List.of(),
                        HEADS.stream().filter(head -> !words.contains(head)).toList(),
                        name + ": " + table);
            }
        }
    }

    /** Letters that lie over others, on all sheets but the first, which has the map. */
    private static List<String> lettersOverOthers(byte[] pdf) throws IOException {
        List<Letter> letters = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper() {
                private int piece;

                @Override
                protected void writeString(String text, List<TextPosition> positions) {
                    piece++;
                    positions.stream()
                            .filter(p -> p.getDir() == 0 && !p.getUnicode().isBlank())
                            .forEach(p -> letters.add(new Letter(getCurrentPageNo(), piece, p)));
                }
            };
            stripper.setStartPage(2);
            stripper.getText(document);
        }
        assertTrue(letters.size() > 5000, letters.size() + " letters");
        return letters.stream().collect(Collectors.groupingBy(Letter::sheet)).values().stream()
                .flatMap(sheet -> sheet.stream().filter(one -> sheet.stream().anyMatch(one::liesOver)))
                .map(one -> "sheet " + one.sheet + ": " + one.at.getUnicode())
                .toList();
    }

    @Test
    void whatStandsUnderANameIsNoLargerThanIt() throws Exception {
        browser.layOutForPrint(true);
        Object larger = browser.run("const size = e => parseFloat(getComputedStyle(e).fontSize);"
                + " const under = [...document.querySelectorAll(':is(th, td) :is(.hazard-remedy, .hazard-side, .hazard-what)')]"
                + "   .filter(e => e.getClientRects().length > 0);"
                + " return [under.length, ...under.filter(e => size(e) > size(e.closest('th, td')))"
                + "   .map(e => e.textContent)].join(', ')");
        browser.layOutForPrint(false);
        assertTrue(larger.toString().matches("[1-9][0-9]+"), larger.toString());
        String printed = String.join(" ", PrintedPage.pages(browser.printed(8.5, 11)));
        String ladder = printed.substring(printed.indexOf("To compare with; no verdict"));
        assertTrue(ladder.substring(0, 600).contains(" Notch "), ladder.substring(0, 600));
    }

    private static double number(String script) {
        return ((Number) browser.run("return " + script)).doubleValue();
    }

    /** How much of the map the route's box takes, the larger of the two ways. */
    private static final String SHARE =
            "(() => { const m = document.querySelector('#plan-map').getBoundingClientRect();"
                    + " const r = [...document.querySelectorAll('#plan-map path.route-line')].map(p => p.getBoundingClientRect());"
                    + " const w = Math.max(...r.map(b => b.right)) - Math.min(...r.map(b => b.left));"
                    + " const h = Math.max(...r.map(b => b.bottom)) - Math.min(...r.map(b => b.top));"
                    + " const inside = r.every(b => b.left >= m.left - 1 && b.right <= m.right + 1 && b.top >= m.top - 1 && b.bottom <= m.bottom + 1);"
                    + " return inside ? Math.max(w / m.width, h / m.height) : -1; })()";

    /** Fitted anew after every change of size, at most 60 % of the window high, until somebody moves it. */
    @Test
    void theMapShowsTheRouteInEveryWindowUntilItIsMoved() throws Exception {
        browser.open("about:blank");
        browser.open(SITE.url());
        browser.await(
                "the report is shown", b -> !b.list("#hazard-table tbody tr").isEmpty());
        for (int[] size : new int[][] {{1280, 900}, {1600, 1200}, {900, 500}, {400, 700}, {1900, 700}, {1280, 900}}) {
            browser.resize(size[0], size[1]);
            browser.await("the route fills the map at " + size[0] + " by " + size[1], b -> number(SHARE) > 0.35);
            assertTrue(
                    number("document.querySelector('.plan-frame').getBoundingClientRect().height") <= 0.6 * size[1] + 1,
                    size[0] + " by " + size[1]);
        }
        browser.run("document.querySelector('#plan-map').focus(); for (let i = 0; i < 1; i++) {"
                + " document.querySelector('.leaflet-control-zoom-in').click(); }");
        browser.await(
                "it counts as moved", b -> "true".equals(b.find("#plan-map").getDomAttribute("data-moved")));
        double before = number(SHARE);
        browser.resize(1300, 880);
        Thread.sleep(700);
        double after = number(SHARE);
        assertTrue(
                before == -1 ? after == -1 : after > before * 0.8,
                before + " " + after + ": it stays where it was put");
    }
}
