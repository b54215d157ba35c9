package org.cresthaul.paper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.cresthaul.check.SampleHaul;
import org.cresthaul.exchange.BaseMapFile;
import org.cresthaul.exchange.BaseMapReader;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.language.Catalog;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Report;
import org.cresthaul.route.Route;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.sheet.Statement;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.CompletePlan;

/** A sample's plan, its run sheet and statement, and the papers they make: each made once for all tests of papers. */
enum PaperSample {
    SORREL_VALLEY("sorrel-valley", true),
    ALDER_COUNTY("alder-county", false);

    final boolean drivable;
    final Route route;
    final Plan plan;
    final Report report;
    final RunSheet sheet;
    final Statement statement;
    final SheetPictures pictures;
    final CreditedMap map;
    /** The same with the sample's base map beneath. */
    final SheetPictures onMap;

    private final Map<PaperSize, byte[]> sheets = new EnumMap<>(PaperSize.class);
    private final Map<PaperSize, byte[]> statements = new EnumMap<>(PaperSize.class);

    PaperSample(String name, boolean drivable) {
        this.drivable = drivable;
        SampleHaul haul = SampleHaul.of(name, "lowbed-loaded");
        route = haul.route();
        report = haul.report();
        plan = CompletePlan.of(whole(haul), report, PlanOptions.defaults());
        sheet = RunSheet.of(plan, report, route, haul.stance(), UnitSystem.US_CUSTOMARY);
        statement = Statement.of(plan, report, route, haul.rig(), haul.stance(), UnitSystem.US_CUSTOMARY);
        map = map(name);
        pictures = pictures(haul, Optional.empty());
        onMap = pictures(haul, Optional.of(map));
    }

    /** Over the route of its papers. */
    Haul whole(SampleHaul haul) {
        return new Haul(route, haul.rig(), haul.stance(), haul.margins());
    }

    private SheetPictures pictures(SampleHaul haul, Optional<CreditedMap> beneath) {
        return new SheetPictures(whole(haul), beneath, plan, report, UnitSystem.US_CUSTOMARY, Catalog.ENGLISH);
    }

    private static CreditedMap map(String name) {
        try {
            return BaseMapReader.parse(Files.readAllBytes(Path.of("sample-routes", name + BaseMapFile.ENDING)));
        } catch (IOException | InputRejected e) {
            throw new IllegalStateException(e);
        }
    }

    /** The legs that stand on its paper: none where there is no way through. */
    List<RunSheet.Leg> legs() {
        return sheet.blocking().isEmpty() ? sheet.legs() : List.of();
    }

    byte[] sheetPdf(PaperSize size) {
        return sheets.computeIfAbsent(size, this::newSheetPdf);
    }

    byte[] statementPdf(PaperSize size) {
        return statements.computeIfAbsent(size, this::newStatementPdf);
    }

    byte[] newSheetPdf(PaperSize size) {
        return Papers.pdf(sheet, pictures, size);
    }

    byte[] newStatementPdf(PaperSize size) {
        return Papers.pdf(statement, route, Optional.empty(), size);
    }

    /** Without the blanks that a line break leaves or takes, and with ligatures as the letters they stand for. */
    static String solid(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFKC).replaceAll("\\s+", "");
    }

    static List<String> pages(byte[] pdf) throws Exception {
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
}
