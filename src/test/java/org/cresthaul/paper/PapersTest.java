package org.cresthaul.paper;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.cresthaul.check.Inputs;
import org.cresthaul.check.Margins;
import org.cresthaul.check.Report;
import org.cresthaul.check.ReversingReport;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.plan.CompletePlan;
import org.cresthaul.plan.Envelope;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RunSheet;
import org.cresthaul.plan.SheetLine;
import org.cresthaul.plan.Statement;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigFile;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteFile;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Run sheets and statements of both samples, read back from their files as text and as pictures. */
class PapersTest {
    /** A paper's plan, and its run sheet and statement. */
    enum Sample {
        SORREL_VALLEY("sorrel-valley", true),
        ALDER_COUNTY("alder-county", false);

        final boolean drivable;
        final Route route;
        final Plan plan;
        final Report report;
        final RunSheet sheet;
        final Statement statement;
        final SheetPictures pictures;

        Sample(String name, boolean drivable) {
            this.drivable = drivable;
            try {
                route = RouteFile.parse(Files.readAllBytes(Path.of("sample-routes", name + ".route.geojson")));
                Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-loaded.rig.json")));
                LevelStance stance = rig.stances().get(0);
                Margins margins = Margins.defaults();
                report = RouteCheck.check(route, rig, stance, margins, new Inputs("0a", "0b"));
                plan = CompletePlan.of(route, rig, stance, margins, report, PlanOptions.defaults());
                sheet = RunSheet.of(plan, report, route, stance, UnitSystem.US_CUSTOMARY);
                statement = Statement.of(plan, report, route, rig, stance, UnitSystem.US_CUSTOMARY);
                pictures = new SheetPictures(route, rig, stance, plan, report, UnitSystem.US_CUSTOMARY);
            } catch (Exception unreadable) {
                throw new IllegalStateException(unreadable);
            }
        }

        /** The legs that stand on its paper: none where there is no way through. */
        List<RunSheet.Leg> legs() {
            return sheet.blocking().isEmpty() ? sheet.legs() : List.of();
        }

        byte[] sheetPdf(PaperSize size) {
            return Papers.pdf(sheet, pictures, size);
        }

        byte[] statementPdf(PaperSize size) {
            return Papers.pdf(statement, route, size);
        }
    }

    /** Without the blanks that a line break leaves or takes, and with ligatures as the letters they stand for. */
    private static String solid(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFKC).replaceAll("\\s+", "");
    }

    private static List<String> pages(byte[] pdf) throws Exception {
        List<String> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (int i = 1; i <= document.getNumberOfPages(); i++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                pages.add(stripper.getText(document));
            }
        }
        return pages;
    }

    @ParameterizedTest
    @EnumSource
    void everyPageSaysWhetherItMayBeDrivenBy(Sample sample) throws Exception {
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
    void theSheetReadsBackInDrivingOrder(Sample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            assertReadsBack(sample, solid(String.join("", pages(sample.sheetPdf(size)))));
        }
    }

    private static void assertReadsBack(Sample sample, String read) {
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
            assertTrue(read.contains(solid(block.why().substring(1))), block.why());
            block.relaxations().forEach(r -> assertTrue(read.contains(solid(r.text())), r.text()));
        }
    }

    /** A sheet for 20 miles is one that a driver reads; a plan without a way is what blocks it and what would open it. */
    @ParameterizedTest
    @EnumSource
    void theSheetIsShort(Sample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            List<String> pages = pages(sample.sheetPdf(size));
            assertTrue(pages.size() <= (sample.drivable ? 12 : 4), size + ": " + pages.size() + " pages");
            assertTrue(solid(pages.get(0)).contains(solid(sample.drivable ? "Cab page" : "What blocks")));
            String all = solid(String.join("", pages));
            assertFalse(all.contains(solid("(" + SheetLine.PRACTICE + ")")), "a mark, and the note once");
        }
    }

    /** A clerk decides by the first page: decision, every condition, roads, crossings, surveys, rig, load, weight, map. */
    @ParameterizedTest
    @EnumSource
    void theStatementBeginsWithTheClerksPage(Sample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            List<String> pages = pages(sample.statementPdf(size)).stream().map(PapersTest::solid).toList();
            String first = pages.get(0);
            List<String> wanted = new ArrayList<>(List.of("Decision: " + sample.statement.banner().outcome(), sample.route.name(),
                    sample.route.permit().orElseThrow(), "north up"));
            sample.plan.conditions().forEach(c -> wanted.addAll(List.of(c.hazard() + " " + c.name(), c.what() + ": ")));
            sample.plan.blocking().stream().filter(b -> !b.hazard().equals(Plan.WHOLE_ROUTE))
                    .forEach(b -> wanted.add(b.hazard() + " " + b.name()));
            sample.route.legs().forEach(l -> wanted.add(l.name()));
            sample.plan.crossings().forEach(c -> wanted.add(c.crossingNumber()));
            sample.route.hazards().stream().flatMap(h -> h.survey().stream()).forEach(s -> {
                wanted.add(s.source());
                wanted.add(s.date().orElseThrow().toString());
            });
            sample.statement.identity().forEach(r -> wanted.add(r.value().text()));
            sample.statement.sideViews().forEach(e -> wanted.add(new RoundedFigures(UnitSystem.US_CUSTOMARY).distance(e.lengthM())));
            wanted.forEach(w -> assertTrue(first.contains(solid(w)), size + ": " + w + " in " + first));
            assertFalse(first.contains("Evidence"), first);
            assertTrue(pages.stream().skip(1).allMatch(p -> p.contains("Evidence")));
        }
    }

    /** The side view of a set-up stands on the ground, reaches its height and length, and carries the axle table's figures. */
    @ParameterizedTest
    @EnumSource
    void everySetUpHasADimensionedSideView(Sample sample) {
        assertEquals(sample.statement.axles().size(), sample.statement.sideViews().size());
        int raised = 0;
        for (int i = 0; i < sample.statement.sideViews().size(); i++) {
            Envelope e = sample.statement.sideViews().get(i);
            Statement.AxleTable table = sample.statement.axles().get(i);
            assertEquals(table.letter(), e.letter());
            List<Envelope.Wheel> down = e.wheels().stream().filter(w -> !w.lifted()).toList();
            assertEquals(table.rows().size(), down.size());
            List<String> lettering = EnvelopeDrawing.of(e, UnitSystem.US_CUSTOMARY).shapes().stream()
                    .filter(Drawing.Lettering.class::isInstance)
                    .map(s -> ((Drawing.Lettering) s).text())
                    .toList();
            for (int k = 0; k < down.size(); k++) {
                Statement.AxleRow row = table.rows().get(k);
                assertEquals(row.axle(), down.get(k).axle());
                assertTrue(lettering.contains(row.load().text()), row.load().text());
                assertTrue(row.behind() == null || lettering.contains(row.behind().text()), lettering + " " + row.behind());
                assertTrue(row.tires() != null && !row.tires().isBlank(), "the sample tells its tires");
                // A wheel that stands touches level ground: its center is a loaded radius up, but for what the air lets it move.
                assertEquals(down.get(k).radiusM(), down.get(k).hM(), 1e-3);
            }
            for (Statement.Row row : sample.statement.envelope()) {
                if (row.label().endsWith(" " + e.letter()) && !row.label().startsWith("Gross")) {
                    assertTrue(lettering.stream().anyMatch(l -> l.endsWith(" " + row.value().text())), row + " " + lettering);
                }
            }
            double top = e.outlines().stream().flatMap(o -> o.points().stream()).mapToDouble(p -> p.get(1)).max().orElseThrow();
            // Of the two levelings the higher counts.
            assertTrue(top <= e.heightM() + 1e-3 && top > e.heightM() - 0.1, top + " " + e.heightM());
            double front = e.outlines().stream().flatMap(o -> o.points().stream()).mapToDouble(p -> p.get(0)).max().orElseThrow();
            double rear = e.outlines().stream().flatMap(o -> o.points().stream()).mapToDouble(p -> p.get(0)).min().orElseThrow();
            // A notch pitches the deck: the drawing's extent is the declared length to less than anybody measures.
            assertEquals(e.lengthM(), front - rear, 0.05);
            raised += e.raisedHeightM() == null ? 0 : 1;
            assertTrue(e.raisedHeightM() == null || e.raisedHeightM() > e.heightM() - 0.02);
        }
        assertEquals(sample.plan.steps().stream().map(Plan.Step::passage).filter(p -> p != null && p.raise() != null)
                .map(p -> p.set().configuration()).distinct().count(), raised);
    }

    /** What the sheet tells to lower, the statement does too, and what stays raised stays so on both: step by step. */
    @ParameterizedTest
    @EnumSource
    void sheetAndStatementAgreeStepByStep(Sample sample) {
        List<RunSheet.Entry> entries = sample.sheet.legs().stream().flatMap(l -> l.entries().stream())
                .filter(e -> e.step().equals("passage")).toList();
        List<Statement.Place> places = sample.statement.hazards();
        assertEquals(places.size(), entries.size());
        List<Plan.Passage> passages = sample.plan.steps().stream().map(Plan.Step::passage).filter(Objects::nonNull).toList();
        int raised = 0;
        for (int i = 0; i < places.size(); i++) {
            Statement.Place place = places.get(i);
            RunSheet.Entry entry = entries.get(i);
            assertEquals(place.id(), entry.id());
            assertEquals(place.verdict(), entry.verdict());
            assertEquals(place.configuration(), entry.configuration());
            assertEquals(place.blocked(), entry.blocked());
            assertEquals(place.margins(), entry.comes().stream().filter(l -> place.margins().contains(l)).toList());
            assertEquals(passages.get(i).gaps().isEmpty() ? passages.get(i).spare() == null ? 0 : 1
                    : passages.get(i).gaps().size(), place.margins().size(), place.id());
            String to = place.conditions().stream().filter(c -> "raised".equals(c.code())).map(SheetLine::to).findFirst().orElse(null);
            boolean stays = entry.after().stream().anyMatch(l -> "stays raised".equals(l.code()));
            boolean isRaised = entry.comes().stream().anyMatch(l -> "still raised".equals(l.code()));
            assertEquals(!isRaised ? null : stays ? "stays raised" : "lowered after it", to, place.id());
            raised += isRaised ? 1 : 0;
            if (place.kind().equals("low-structure")) {
                assertTrue(entry.comes().contains(place.heights()), place.id());
            }
        }
        assertTrue(raised > 0);
    }

    /** A driver clips one page to the visor: each leg is on one, with its map. A plan without a way has no legs on paper. */
    @ParameterizedTest
    @EnumSource
    void everyLegHasItsPage(Sample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            List<String> pages = pages(sample.sheetPdf(size)).stream().map(PapersTest::solid).toList();
            for (RunSheet.Leg leg : sample.legs()) {
                List<String> own = pages.stream()
                        .filter(p -> p.contains(solid("Leg " + leg.number() + ": " + leg.name())) && p.contains(solid("north up")))
                        .toList();
                assertEquals(1, own.size(), leg.name());
                for (RunSheet.Entry entry : leg.entries()) {
                    assertTrue(own.get(0).contains(solid(entry.chainage().text())), leg.name() + " " + entry.name());
                    assertTrue(own.get(0).contains(solid(entry.name())), leg.name() + " " + entry.name());
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void theHtmlSaysWhatThePdfSays(Sample sample) {
        String sheet = text(Papers.html(sample.sheet, sample.pictures));
        sample.legs().stream().flatMap(l -> l.entries().stream()).forEach(entry -> {
            for (List<SheetLine> lines : List.of(entry.comes(), entry.before(), entry.through(), entry.after(), entry.gauges())) {
                lines.forEach(line -> assertTrue(sheet.contains(solid(line.text())), line.text()));
            }
        });
        String statement = text(Papers.html(sample.statement, sample.route));
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
                .replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&#39;", "'").replace("&amp;", "&"));
    }

    /** Printers leave about 5 mm blank; at 50 dpi that is ten pixels, of which the frame may take the innermost two. */
    @ParameterizedTest
    @EnumSource
    void nothingIsDrawnWhereAPrinterCannot(Sample sample) throws Exception {
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
                        int toEdge = Math.min(
                                Math.min(x, page.getWidth() - 1 - x), Math.min(y, page.getHeight() - 1 - y));
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

    /** Everything that is said stands on the paper, whatever its size: places, conditions, what was not checked. */
    @ParameterizedTest
    @EnumSource
    void theStatementReadsBackOnEitherPaper(Sample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            // A foot and a head may stand within a list that goes on overleaf: what one page has is looked for alone.
            String read = solid(String.join("", pages(sample.statementPdf(size))));
            int lines = 0;
            for (Statement.Place place : sample.statement.hazards()) {
                assertTrue(read.contains(solid(place.name())), size + ": " + place.name());
                assertTrue(read.contains(solid(place.chainage().text())), size + ": " + place.chainage().text());
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
    void equalPlansAreEqualBytes(Sample sample) {
        assertArrayEquals(sample.sheetPdf(PaperSize.LETTER), sample.sheetPdf(PaperSize.LETTER));
        assertArrayEquals(sample.statementPdf(PaperSize.A4), sample.statementPdf(PaperSize.A4));
    }

    /** Every figure on either paper that comes from the plan or the report stands there, at the place it names. */
    @ParameterizedTest
    @EnumSource
    void everyFigureIsTracedToAResult(Sample sample) throws Exception {
        ObjectMapper json = new ObjectMapper();
        JsonNode plan = json.readTree(JsonAnswer.bytes(sample.plan));
        JsonNode report = json.readTree(JsonAnswer.bytes(sample.report));
        int traced = 0;
        List<String> lost = new ArrayList<>();
        for (Object paper : List.of(sample.sheet, sample.statement)) {
            for (JsonNode figures : json.readTree(JsonAnswer.bytes(paper)).findValues("figures")) {
                for (JsonNode figure : figures) {
                    String from = figure.path("from").asText();
                    if (from.startsWith("plan:/") || from.startsWith("report:/")) {
                        JsonNode found = (from.startsWith("plan:") ? plan : report).at(from.substring(from.indexOf('/')));
                        if (!found.isNumber() || Math.abs(found.asDouble() - figure.path("value").asDouble()) > 1e-9) {
                            lost.add(figure + " is " + found);
                        }
                        traced++;
                    } else if (!from.startsWith("rig:") && !from.startsWith("route:") && !from.startsWith("report:difference of")) {
                        lost.add("from nowhere: " + figure);
                    }
                }
            }
        }
        assertEquals(List.of(), lost);
        assertTrue(traced > 100, traced + " figures");
    }

    /** Every set-up in use is on the card for backing up, with the ways of its own state in the report, and the cautions. */
    @ParameterizedTest
    @EnumSource
    void theCardForBackingUpTellsHowFar(Sample sample) throws Exception {
        RunSheet.Card card = sample.sheet.cards().stream().filter(c -> c.title().equals("Backing up")).findFirst().orElseThrow();
        String pdf = solid(String.join("", pages(sample.sheetPdf(PaperSize.LETTER))));
        if (sample.drivable) {
            card.lines().forEach(l -> assertTrue(pdf.contains(solid(l.text())), l.text()));
        }
        sample.report.reversing().cautions().forEach(caution ->
                assertTrue(card.lines().stream().anyMatch(l -> l.text().equals(caution)), caution));
        int told = 0;
        for (RunSheet.Card setUp : sample.sheet.setUps()) {
            String[] key = setUp.configuration().split("/");
            ReversingReport.State state = sample.report.reversing().states().stream()
                    .filter(s -> s.lift().equals(key[0]) && s.booster().equals(key[1]))
                    .findFirst()
                    .orElseThrow();
            SheetLine line = card.lines().stream()
                    .filter(l -> l.text().matches("Set-up [A-Z, ]*\\b" + setUp.letter() + "\\b.*"))
                    .findFirst()
                    .orElseThrow();
            List<Double> values = line.figures().stream().map(SheetLine.Figure::value).toList();
            for (ReversingReport.Way way : Arrays.asList(state.free(), state.locked(), state.lockedLight())) {
                if (way != null) {
                    assertTrue(values.contains(way.limitMetM()), way + " in " + line);
                    told++;
                }
            }
        }
        assertTrue(told >= sample.sheet.setUps().size(), told + " ways");
    }

    /** What is at the joint is what the rig file says is fitted, in its own words. */
    @ParameterizedTest
    @EnumSource
    void aTrailingBoostersCardTellsThePlateOfTheRigFile(Sample sample) {
        int told = 0;
        for (RunSheet.Card card : sample.sheet.setUps()) {
            Plan.SetUp set = sample.plan.steps().stream()
                    .flatMap(s -> Stream.of(s.set(), s.change() == null ? null : s.change().to()))
                    .filter(Objects::nonNull)
                    .filter(s -> s.configuration().equals(card.configuration()))
                    .findFirst()
                    .orElseThrow();
            boolean trails = set.booster().equals("trailing");
            assertEquals(trails, set.shim() != null);
            List<String> plates = card.lines().stream().map(SheetLine::text).filter(t -> t.contains("booster joint")).toList();
            assertEquals(trails ? 1 : 0, plates.size(), card.title());
            if (trails) {
                assertEquals(set.shim().hasThickness(), plates.get(0).contains(set.shim().name()), plates.toString());
                told++;
            }
        }
        assertTrue(told > 0);
    }
}
