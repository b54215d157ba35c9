package org.cresthaul.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.cresthaul.language.Catalog;
import org.cresthaul.report.SketchGap;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.route.HazardKind;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;

/** What to survey first on a paper: sketches stand in a column of their own where there are any. */
class SurveyFirstTableTest {
    private static SurveyFirst.PlaceToSurvey place(int rank, SketchGap sketch) {
        return new SurveyFirst.PlaceToSurvey(
                rank,
                "X" + rank,
                "Mill",
                HazardKind.RAIL_CROSSING,
                1000,
                null,
                false,
                2,
                false,
                null,
                sketch,
                null,
                null);
    }

    private static Paper.Table table(String language, SurveyFirst.PlaceToSurvey... places) {
        List<Paper.Block> blocks = SurveyFirstTable.of(
                new SurveyFirst(List.of(places), List.of()),
                UnitSystem.METRIC,
                Catalog.find(language).orElseThrow());
        return blocks.stream()
                .filter(Paper.Table.class::isInstance)
                .map(Paper.Table.class::cast)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void everySketchIsToldAsWhatItIs() {
        Paper.Table table = table(
                "en",
                place(1, new SketchGap("land.tif", 10, null, false, -0.0376, "down/none/4")),
                place(2, new SketchGap("far.hgt", 92, null, true, null, null)),
                place(3, null));

        assertEquals(8, table.columns().size());
        assertEquals("Sketch gap", table.columns().get(5).title());
        // -37.6 mm, rounded to the worse side.
        assertTrue(
                table.rows().get(0).get(5).text().matches("[-\u2212]38 mm; 10(\\.0+)? m cells, land\\.tif"),
                table.rows().get(0).get(5).text());
        assertTrue(
                table.rows().get(1).get(5).text().startsWith("too coarse; 92"),
                table.rows().get(1).get(5).text());
        assertEquals("no sketch", table.rows().get(2).get(5).text());
        assertTrue(table("es", place(1, new SketchGap("far.hgt", 92, null, true, null, null)))
                .rows()
                .get(0)
                .get(5)
                .text()
                .startsWith("demasiado grueso"));
    }

    @Test
    void whereThereIsNoneThereIsNoColumn() {
        assertEquals(7, table("en", place(1, null)).columns().size());
    }
}
