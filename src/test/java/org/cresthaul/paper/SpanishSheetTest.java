package org.cresthaul.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.cresthaul.check.SampleHaul;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.MarkedCatalog;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The run sheet in another language: every word on it comes from the catalog, or from the user's files. */
class SpanishSheetTest {
    private static final Set<String> NAMED =
            Set.of("name", "id", "landmark", "part", "source", "permit", "crossingNumber", "fitted", "attribution");

    private static String html(PaperSample sample, UnitSystem units, Catalog catalog) {
        SampleHaul haul = haul(sample);
        RunSheet sheet = RunSheet.of(sample.plan, sample.report, sample.route, haul.stance(), units, catalog);
        return new String(
                Papers.html(
                        sheet,
                        new SheetPictures(
                                sample.whole(haul),
                                Optional.of(sample.map),
                                sample.plan,
                                sample.report,
                                units,
                                catalog)),
                StandardCharsets.UTF_8);
    }

    private static SampleHaul haul(PaperSample sample) {
        return SampleHaul.of(sample == PaperSample.SORREL_VALLEY ? "sorrel-valley" : "alder-county", "lowbed-loaded");
    }

    /** With every text of the catalog in marks, no word stands outside of them that the files do not have. */
    @ParameterizedTest
    @EnumSource
    void noWordComesFromElsewhere(PaperSample sample) throws Exception {
        String text = said(html(sample, UnitSystem.US_CUSTOMARY, MarkedCatalog.SPANISH));
        assertTrue(text.length() > 2000, "there is a sheet");
        List<String> names = new ArrayList<>();
        names(new ObjectMapper().readTree(Files.readString(file(sample, "route.geojson"))), names);
        names(new ObjectMapper().readTree(Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"))), names);
        names(new ObjectMapper().readTree(Files.readString(file(sample, "basemap.geojson"))), names);
        names.add(sample.sheet.version());
        names.add(sample.route.name());
        sample.route.legs().forEach(l -> names.add(l.name()));
        names.sort(Comparator.comparingInt(String::length).reversed());
        String bare = Pattern.compile(MarkedCatalog.OPEN + "[^" + MarkedCatalog.CLOSE + "]*" + MarkedCatalog.CLOSE)
                .matcher(text)
                .replaceAll("|");
        for (String name : names) {
            bare = bare.replace(name, "|");
        }
        TreeSet<String> words = new TreeSet<>();
        Matcher word = Pattern.compile("\\p{L}[\\p{L}\\d]*").matcher(bare);
        while (word.find()) {
            words.add(word.group());
        }
        // Letters of set-ups and marks, the law as it is cited, hashes that no file of these tests has.
        words.removeIf(w -> w.length() == 1 || w.equals("CFR") || w.equals("A27"));
        assertEquals(new TreeSet<String>(), words, bare);
    }

    private static Path file(PaperSample sample, String type) {
        return Path.of(
                "sample-routes/" + (sample == PaperSample.SORREL_VALLEY ? "sorrel-valley." : "alder-county.") + type);
    }

    /** What is read or heard of a page: its text, and what stands for pictures. */
    private static String said(String html) {
        String page = html.replaceAll("(?s)<style>.*?</style>", "");
        StringBuilder said = new StringBuilder();
        Matcher alt = Pattern.compile("aria-label=\"([^\"]*)\"").matcher(page);
        while (alt.find()) {
            said.append(alt.group(1)).append('\n');
        }
        return (said + page.replaceAll("<[^>]*>", "\n"))
                .replace("&amp;", "&")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&lt;", "<")
                .replace("&gt;", ">");
    }

    /** What people named or noted in a file, and none of the file's own words. */
    private static void names(JsonNode node, List<String> names) {
        node.properties().forEach(member -> {
            if (NAMED.contains(member.getKey()) && member.getValue().isTextual()) {
                names.add(member.getValue().textValue());
            }
        });
        node.forEach(child -> names(child, names));
    }

    /** The same figures in the same places: only words change. */
    @ParameterizedTest
    @EnumSource
    void theFiguresAreTheSame(PaperSample sample) {
        SampleHaul haul = haul(sample);
        RunSheet spanish = RunSheet.of(
                sample.plan, sample.report, sample.route, haul.stance(), UnitSystem.US_CUSTOMARY, Catalog.SPANISH);
        assertEquals(numbers(sample.sheet), numbers(spanish));
        assertEquals(sample.sheet.banner().drivable(), spanish.banner().drivable());
    }

    private static List<String> numbers(RunSheet sheet) {
        return sheet.legs().stream()
                .flatMap(l -> l.entries().stream())
                .flatMap(e -> java.util.stream.Stream.of(e.comes(), e.before(), e.through(), e.after(), e.gauges()))
                .flatMap(List::stream)
                .flatMap(l -> l.figures().stream())
                .map(f -> f.value() + " " + f.from() + " " + f.text().replaceAll("[^\\d/.,-]", ""))
                .sorted()
                .toList();
    }

    @Test
    void saysInWhichLanguageItIs() throws Exception {
        PaperSample sample = PaperSample.SORREL_VALLEY;
        String html = html(sample, UnitSystem.METRIC, Catalog.SPANISH);
        assertTrue(html.contains("<html lang=\"es-US\">"));
        assertTrue(html.contains("Página de cabina") && html.contains("libre"));
        assertFalse(html.contains(" pulg"), "metric as asked for");
        assertTrue(html.contains(Catalog.SPANISH.text(Code.PAPER_TRANSLATED)), "nobody of the trade has reviewed it");
        assertFalse(
                html(sample, UnitSystem.METRIC, Catalog.ENGLISH).contains(Catalog.ENGLISH.text(Code.PAPER_TRANSLATED)));
        SampleHaul haul = haul(sample);
        byte[] pdf = Papers.pdf(
                RunSheet.of(
                        sample.plan, sample.report, sample.route, haul.stance(), UnitSystem.METRIC, Catalog.SPANISH),
                new SheetPictures(
                        sample.whole(haul),
                        Optional.of(sample.map),
                        sample.plan,
                        sample.report,
                        UnitSystem.METRIC,
                        Catalog.SPANISH),
                PaperSize.LETTER);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertEquals("es-US", document.getDocumentCatalog().getLanguage());
            assertTrue(document.getNumberOfPages() <= 14, document.getNumberOfPages() + " pages");
        }
        assertFalse(String.join("", PaperSample.pages(pdf)).contains("[U+"), "every letter is in the font");
    }
}
