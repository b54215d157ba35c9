package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cresthaul.check.ManyCrossings;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.CompletePlan;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Fifty crossings that nobody surveyed, as a planner reads them: one table, not fifty blocks. */
class SurveyFirstTextTest {
    private static Report report;
    private static Plan plan;

    @BeforeAll
    static void check() throws Exception {
        Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-loaded.rig.json")));
        report = RouteCheck.check(
                new Haul(ManyCrossings.route(50), rig, rig.stances().get(0), Margins.defaults()), new Inputs("0", "0"));
        plan = CompletePlan.of(
                new Haul(ManyCrossings.route(50), rig, rig.stances().get(0), Margins.defaults()),
                report,
                PlanOptions.defaults());
    }

    @Test
    void thePlanTellsWhatBlocksAlikeOnce() {
        String text = new PlanText(UnitSystem.US_CUSTOMARY).of(plan, report);

        assertEquals(51, plan.blocking().size(), "fifty crossings, and the limits of the whole route");
        assertEquals(
                1,
                text.lines()
                        .filter(l -> l.startsWith("  50 places alike: rail crossing map-n1 at "))
                        .count(),
                text);
        assertEquals(
                1,
                text.lines()
                        .filter(l -> l.contains("nobody has surveyed this place"))
                        .count());
        for (int i = 1; i <= 50; i++) {
            String blocked = text.substring(text.indexOf("BLOCKED BY"), text.indexOf("SURVEY FIRST"));
            assertTrue(blocked.replaceAll("\\s+", " ").contains("map-n" + i + " at "), "map-n" + i);
        }
        // One block for each it was 773 lines.
        assertTrue(text.lines().count() < 400, text.lines().count() + " lines");
    }

    @Test
    void eachStandsInOneLineOfTheTextAndNowhereElse() {
        String text = new ReportText(UnitSystem.US_CUSTOMARY).of(report);

        for (int i = 1; i <= 50; i++) {
            String id = "map-n" + i + " ";
            assertEquals(1, text.lines().filter(l -> l.contains(id)).count(), id);
        }
        String first = text.lines()
                .filter(l -> l.startsWith("  1 ") && l.contains("map-"))
                .findFirst()
                .orElseThrow();
        assertTrue(
                first.matches(
                        "  1 +map-n35 +Rail crossing +rail crossing +[\\d.]+ mi +2 +yes +70 deg +a map, node 35,.*"),
                first);
        assertTrue(text.contains("50 not surveyed, below"), text);
        assertTrue(text.contains("Rail crossing of 2 tracks, 10 to survey"), text);
        assertTrue(text.contains("Rail crossing of 1 track, 40 to survey"), text);
        // As fifty blocks and as many rows of the glance it had 1,508.
        assertTrue(text.lines().count() < 600, text.lines().count() + " lines");
    }

    @Test
    void everyLineOfTheTableSheetHasRankAndRung() {
        List<String> lines =
                new ReportCsv(UnitSystem.US_CUSTOMARY).of(report).lines().toList();
        List<String> names = List.of(lines.get(0).split(","));
        int rank = names.indexOf("survey_rank");
        int clear = names.indexOf("hump_clear_to_in");
        int contact = names.indexOf("hump_contact_from_in");

        assertEquals(1 + 50 * report.configurations().size(), lines.size());
        for (HazardFindings hazard : report.hazards()) {
            assertFalse(hazard.surveyed());
        }
        List<String> row = lines.stream()
                .filter(l -> l.startsWith("map-n35,"))
                .findFirst()
                .map(l -> List.of(l.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1)))
                .orElseThrow();
        assertEquals("1", row.get(rank));
        assertEquals("2", row.get(rank + 1));
        assertEquals("yes", row.get(rank + 2));
        assertEquals("70", row.get(rank + 3));
        assertTrue(Double.parseDouble(row.get(clear)) > 0
                && Double.parseDouble(row.get(clear)) < Double.parseDouble(row.get(contact)));
    }

    /** A peak between 3 % grades as a raster of 10 m cells has it, and the same from one of 90 m. */
    @Test
    void aSketchIsToldWithItsCellsAndAsNoSurvey() throws Exception {
        Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-loaded.rig.json")));
        String map = "\"candidate\": {\"source\": \"map\", \"object\": \"node 1\", \"state\": \"open\", \"sketch\":"
                + " {\"raster\": \"land.tif\", \"date\": \"2021-06-30\", \"spacing\": \"%d m\", \"points\": [[\"-%<d"
                + " m\", \"100 m\"], [\"0 m\", \"100.3 m\"], [\"%<d m\", \"100 m\"]]}}";
        Route route = RouteFile.parse("""
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Sketched", "note": "Invented.",
                 "features": [
                  {"type": "Feature", "properties": {"route": "Straight"},
                   "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}},
                  {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.09, 44.6]},
                   "properties": {"id": "H1", "name": "Fine", "hazard": "rail-crossing", %s}},
                  {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.085, 44.6]},
                   "properties": {"id": "H2", "name": "Coarse", "hazard": "rail-crossing", %s}}]}
                """.formatted(map.formatted(10), map.formatted(90)));
        Report sketched =
                RouteCheck.check(new Haul(route, rig, rig.stances().get(0), Margins.defaults()), new Inputs("0", "0"));
        double gapIn = sketched.surveyFirst().places().stream()
                        .filter(p -> p.id().equals("H1"))
                        .findFirst()
                        .orElseThrow()
                        .sketch()
                        .gapM()
                / 0.0254;

        String text = new ReportText(UnitSystem.US_CUSTOMARY).of(sketched);
        String fine = text.lines()
                .filter(l -> l.contains("Fine") && l.contains("cells"))
                .findFirst()
                .orElseThrow();
        assertTrue(fine.contains(" in, "), fine);
        assertTrue(fine.contains("sketch from land.tif, 2021-06-30"), fine);
        assertTrue(text.contains("too coarse, 295 ft 4 in cells"), text);
        assertTrue(text.replaceAll("\\s+", " ").contains("No survey and no verdict"), text);

        List<String> lines =
                new ReportCsv(UnitSystem.US_CUSTOMARY).of(sketched).lines().toList();
        List<String> names = List.of(lines.get(0).split(","));
        int at = names.indexOf("survey_sketch_gap_in");
        List<String> row = List.of(lines.get(1).split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1));
        assertEquals(names.size(), row.size());
        assertEquals(gapIn, Double.parseDouble(row.get(at)), 0.011);
        assertEquals(10 / 0.0254, Double.parseDouble(row.get(at + 1)), 0.01);
        assertEquals("land.tif", row.get(at + 2));
        List<String> coarse = List.of(lines.get(lines.size() - 1).split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1));
        assertEquals("", coarse.get(at));
        assertEquals("land.tif (too coarse)", coarse.get(at + 2));
        // Without a sketch there is no column for one.
        assertFalse(new ReportText(UnitSystem.US_CUSTOMARY).of(report).contains("sketch"));
    }
}
