package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cresthaul.check.Inputs;
import org.cresthaul.check.ManyCrossings;
import org.cresthaul.check.Margins;
import org.cresthaul.check.Report;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.plan.CompletePlan;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigFile;
import org.cresthaul.units.UnitSystem;
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
                ManyCrossings.route(50), rig, rig.stances().get(0), Margins.defaults(), new Inputs("0", "0"));
        plan = CompletePlan.of(
                ManyCrossings.route(50), rig, rig.stances().get(0), Margins.defaults(), report, PlanOptions.defaults());
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
        for (Report.HazardFindings hazard : report.hazards()) {
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
}
