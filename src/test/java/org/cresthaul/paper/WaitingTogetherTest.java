package org.cresthaul.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.cresthaul.check.ManyCrossings;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.Route;
import org.cresthaul.sheet.Statement;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.CompletePlan;
import org.junit.jupiter.api.Test;

/** Fifty places that nobody surveyed are one table of the statement, and are not named over and over beside it. */
class WaitingTogetherTest {
    private static WaitingTogether of(int places) {
        return new WaitingTogether(new SurveyFirst(
                IntStream.rangeClosed(1, places)
                        .mapToObj(i -> new SurveyFirst.PlaceToSurvey(
                                i,
                                "n" + i,
                                "Mill, 1 track",
                                HazardKind.RAIL_CROSSING,
                                i,
                                null,
                                false,
                                1,
                                false,
                                null,
                                null,
                                null,
                                null))
                        .toList(),
                List.of()));
    }

    private static String listed(int from, int to, String form, String between) {
        return IntStream.rangeClosed(from, to)
                .mapToObj(i -> form.replace("#", "n" + i))
                .collect(Collectors.joining(between));
    }

    @Test
    void aLongListIsTheTable() {
        WaitingTogether fifty = of(50);
        String table = "50 places of the table \"Survey first\"";

        assertEquals("not surveyed: " + table, fifty.in("not surveyed: " + listed(1, 50, "# Mill, 1 track", "; ")));
        assertEquals(table + ".", fifty.in(listed(1, 50, "#", ", ") + "."));
        assertEquals(
                table + ", crossing numbers unknown.",
                fifty.in(listed(1, 50, "# Mill, 1 track, crossing number unknown", "; ") + "."));
        assertEquals("so: " + table + " (all blocked).", fifty.in("so: " + listed(1, 50, "# (blocked)", ", ") + "."));
        assertEquals(
                "X9 Bridge, 13 places of the table \"Survey first\", Y1 Weir",
                fifty.in("X9 Bridge, " + listed(5, 17, "# Mill, 1 track", ", ") + ", Y1 Weir"));
    }

    /** Where they are few, where others stand between, or where something is said of some alone. */
    @Test
    void otherwiseEachKeepsItsName() {
        for (String kept : List.of(
                listed(1, 12, "#", ", "),
                listed(1, 12, "#", ", ") + ", X1, " + listed(13, 24, "#", ", "),
                listed(1, 20, "# (blocked)", ", ") + ", " + listed(21, 40, "#", ", "),
                listed(1, 20, "#-b", ", "))) {
            assertEquals(kept, of(50).in(kept));
        }
        assertEquals(listed(1, 12, "#", ", "), of(12).in(listed(1, 12, "#", ", ")));
    }

    @Test
    void linesThatSayTheSameAreOne() {
        List<String> lines = List.of("first", "n1 Mill, 1 track: off", "n2 Mill, 1 track: off", "last");
        assertEquals(lines, of(50).lines(lines, ": off"));
        List<String> many = IntStream.rangeClosed(1, 13)
                .mapToObj(i -> "n" + i + " Mill, 1 track: off")
                .toList();
        assertEquals(List.of("13 places of the table \"Survey first\": off"), of(50).lines(many, ": off"));
    }

    /** Each in its row of the table, on the map by its number there; on the first page all that a clerk decides by. */
    @Test
    void aStatementOfFiftyNamesEachOnceAndNumbersItOnTheMap() throws Exception {
        Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-loaded.rig.json")));
        Route route = ManyCrossings.route(50);
        Report report =
                RouteCheck.check(new Haul(route, rig, rig.stances().get(0), Margins.defaults()), new Inputs("0", "0"));
        Plan plan = CompletePlan.of(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()), report, PlanOptions.defaults());
        Statement statement =
                Statement.of(plan, report, route, rig, rig.stances().get(0), UnitSystem.US_CUSTOMARY);

        List<String> pages = PaperSample.pages(Papers.pdf(statement, route, Optional.empty(), PaperSize.LETTER));
        String all = String.join("\n", pages);
        for (int i = 13; i <= 50; i++) {
            long named =
                    Pattern.compile("map-n" + i + "\\b").matcher(all).results().count();
            assertEquals(1, named, "map-n" + i);
        }
        assertTrue(pages.get(0).contains("north up"), pages.get(0));
        assertTrue(pages.get(0).contains("Numbers are those of the table \"Survey first\"."), pages.get(0));
        // Alone between blanks or line ends, as the map has them.
        for (int rank = 1; rank <= 50; rank++) {
            assertTrue(pages.get(0).matches("(?s).*(?<!\\S)" + rank + "(?!\\S).*"), rank + ": " + pages.get(0));
        }
        assertTrue(pages.size() <= 7, pages.size() + " pages");
    }
}
