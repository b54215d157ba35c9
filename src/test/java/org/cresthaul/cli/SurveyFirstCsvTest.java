package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.cresthaul.check.ManyCrossings;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.Rig;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Fifty crossings that nobody surveyed, as a spreadsheet gets them: a line each, in the order to go there. */
class SurveyFirstCsvTest {
    /** A name with everything that a table could trip over. */
    private static final String NAME = "=Mill, \"old\" crossing";

    private static Report report;

    @BeforeAll
    static void check() throws Exception {
        Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-loaded.rig.json")));
        String route = ManyCrossings.text(50)
                .replace(
                        "\"map-n7\", \"name\": \"Rail crossing\"",
                        "\"map-n7\", \"name\": \"=Mill, \\\"old\\\" crossing\"");
        report = RouteCheck.check(
                new Haul(RouteFile.parse(route), rig, rig.stances().get(0), Margins.defaults()),
                new Inputs("ab", "cd"));
    }

    /** The order by hand: signs first, then more tracks, then the sharper angle, then along the route. */
    @Test
    void hasEachPlaceOnceInTheOrderToGoThere() {
        List<List<String>> rows = CsvRows.of(new SurveyFirstCsv(UnitSystem.US_CUSTOMARY).of(report));
        List<String> head = rows.get(0);
        List<Integer> order = IntStream.rangeClosed(1, 50)
                .boxed()
                .sorted(Comparator.<Integer, Boolean>comparing(i -> i % 7 != 0)
                        .thenComparing(i -> i % 5 != 0)
                        .thenComparing(SurveyFirstCsvTest::angleDeg)
                        .thenComparing(i -> i))
                .toList();

        assertEquals(51, rows.size());
        for (int rank = 1; rank <= 50; rank++) {
            List<String> row = rows.get(rank);
            int i = order.get(rank - 1);
            assertEquals(head.size(), row.size(), row.toString());
            assertEquals("" + rank, row.get(head.indexOf("order")));
            assertEquals("map-n" + i, row.get(head.indexOf("hazard")), "rank " + rank);
            assertEquals("rail-crossing", row.get(head.indexOf("kind")));
            assertEquals(i % 5 == 0 ? "2" : "1", row.get(head.indexOf("tracks")));
            assertEquals(i % 7 == 0 ? "yes" : "none recorded", row.get(head.indexOf("low_ground_sign")));
            assertEquals("" + angleDeg(i), row.get(head.indexOf("angle_deg")));
            assertEquals(-93.1 + i * 0.0127, Double.parseDouble(row.get(head.indexOf("longitude"))), 5.1e-5);
            assertEquals(44.6, Double.parseDouble(row.get(head.indexOf("latitude"))), 1e-9);
            assertEquals("no", row.get(head.indexOf("figure_reported")));
            assertEquals("a map, node " + i + ", as of 2026-01-02", row.get(head.indexOf("known_from")));
            assertEquals("ab", row.get(head.indexOf("route_sha256")));
            assertEquals("cd", row.get(head.indexOf("rig_sha256")));
        }
    }

    private static int angleDeg(int i) {
        return 90 - (i * 7) % 45;
    }

    @Test
    void aNameComesBackAsItIsAndStartsNoFormula() {
        String text = new SurveyFirstCsv(UnitSystem.METRIC).of(report);

        assertTrue(text.contains("map-n7,\"'=Mill, \"\"old\"\" crossing\",rail-crossing,"), text);
        List<List<String>> rows = CsvRows.of(text);
        assertEquals(
                1,
                rows.stream()
                        .filter(r -> r.get(rows.get(0).indexOf("name")).equals("'" + NAME))
                        .count());
        assertTrue(rows.get(0).contains("chainage_km") && rows.get(0).contains("sketch_gap_m"), "metric as asked for");
        // 7 * 0.0127 degrees on the parallel of 44.6 degrees, 79.394 km each (WGS 84).
        assertEquals(
                7.058,
                Double.parseDouble(rows.stream()
                        .filter(r -> r.get(1).equals("map-n7"))
                        .findFirst()
                        .orElseThrow()
                        .get(rows.get(0).indexOf("chainage_km"))),
                0.001);
    }
}
