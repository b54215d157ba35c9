package org.cresthaul.server;

import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.BaseMapReader;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.language.Catalog;
import org.cresthaul.paper.PaperSize;
import org.cresthaul.paper.Papers;
import org.cresthaul.paper.SheetPictures;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.sheet.Statement;
import org.cresthaul.units.UnitSystem;

/**
 * What paper is asked for: a plan's run sheet or statement, in which form.
 *
 * @param map to draw beneath its maps, where one came with the request
 */
record PaperRequest(
        PlanRequest plan, Form form, PaperSize size, UnitSystem units, Catalog language, Optional<CreditedMap> map) {
    /** A form a paper is answered in. */
    enum Form {
        JSON("application/json"),
        HTML("text/html; charset=utf-8"),
        PDF("application/pdf");

        final String contentType;

        Form(String contentType) {
            this.contentType = contentType;
        }
    }

    /** A run sheet, in a language. */
    static PaperRequest readSheet(JsonFields fields) {
        Catalog language = chosen(fields, "language", Catalog.names(), Catalog.ALL.toArray(new Catalog[0]));
        return read(fields, language);
    }

    /** A statement, which is English. */
    static PaperRequest readStatement(JsonFields fields) {
        return read(fields, Catalog.ENGLISH);
    }

    private static PaperRequest read(JsonFields fields, Catalog language) {
        return new PaperRequest(
                PlanRequest.read(fields),
                chosen(fields, "form", List.of("json", "html", "pdf"), Form.values()),
                chosen(fields, "paper", List.of("letter", "a4"), new PaperSize[] {PaperSize.LETTER, PaperSize.A4}),
                chosen(fields, "units", List.of("us", "metric"), new UnitSystem[] {
                    UnitSystem.US_CUSTOMARY, UnitSystem.METRIC
                }),
                language,
                BaseMapReader.read(fields.find("baseMap"), fields.pointer("baseMap"), fields.problems()));
    }

    /** The first when nothing is said. */
    private static <T> T chosen(JsonFields fields, String key, List<String> words, T[] values) {
        return fields.has(key) ? values[Math.max(0, words.indexOf(fields.word(key, words)))] : values[0];
    }

    /** @throws Refusal when the options name what the report does not have */
    byte[] runSheet(CheckRequest check, CheckedReports reports) {
        PlanRequest.Planned planned = plan.of(check, reports);
        RunSheet sheet = RunSheet.of(
                planned.plan(),
                planned.report(),
                check.haul().route(),
                check.haul().stance(),
                units,
                language);
        SheetPictures pictures =
                new SheetPictures(check.haul(), map, planned.plan(), planned.report(), units, language);
        return switch (form) {
            case JSON -> JsonAnswer.bytes(sheet, language);
            case HTML -> Papers.html(sheet, pictures);
            case PDF -> Papers.pdf(sheet, pictures, size);
        };
    }

    /** @throws Refusal likewise */
    byte[] statement(CheckRequest check, CheckedReports reports) {
        PlanRequest.Planned planned = plan.of(check, reports);
        Statement statement = Statement.of(
                planned.plan(),
                planned.report(),
                check.haul().route(),
                check.haul().rig(),
                check.haul().stance(),
                units);
        return switch (form) {
            case JSON -> JsonAnswer.bytes(statement);
            case HTML -> Papers.html(statement, check.haul().route(), map);
            case PDF -> Papers.pdf(statement, check.haul().route(), map, size);
        };
    }
}
