package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.cresthaul.rig.JeepTexts;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.server.Requests;
import org.cresthaul.server.Sample;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The plan as a planner at a shell meets it. */
class PlanCommandTest {
    /** A level road, surveyed well, with a place to stop: every setting clears it. Invented. */
    private static final String LEVEL = """
            { "type": "FeatureCollection", "cresthaul": "route/1", "name": "Level", "features": [
                { "type": "Feature", "properties": {"route": "Only leg"},
                  "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.09, 44.6]]} },
                { "type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.092, 44.6]},
                  "properties": {"stop": "set-up-area", "id": "P01", "name": "Pit", "room": "250 ft"} },
                { "type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.095, 44.6]},
                  "properties": {"hazard": "crest", "id": "H01", "name": "Rise",
                    "survey": {"accuracy": "5 mm", "source": "level"},
                    "approachBefore": {"grade": "0 %", "accuracy": "0.1 %"},
                    "approachAfter": {"grade": "0 %", "accuracy": "0.1 %"},
                    "profile": [
                      {"line": "left", "points": LEVEL_POINTS},
                      {"line": "right", "points": LEVEL_POINTS}]} } ] }
            """.replace("LEVEL_POINTS", RouteTexts.levelPoints(40));

    @TempDir
    Path folder;

    private Path route;
    private Path level;
    private Path rig;

    private record Run(int exitCode, byte[] out, String err) {
        String text() {
            return new String(out, StandardCharsets.UTF_8);
        }
    }

    @BeforeEach
    void files() throws IOException {
        route = Files.writeString(folder.resolve("small.route.geojson"), RouteTexts.ROUTE);
        level = Files.writeString(folder.resolve("level.route.geojson"), LEVEL);
        rig = Files.writeString(folder.resolve("small.rig.json"), RigTexts.RIG);
    }

    private static Run run(Object... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Cresthaul.run(
                Arrays.stream(arguments).map(Object::toString).toArray(String[]::new),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Run(exitCode, out.toByteArray(), err.toString(StandardCharsets.UTF_8));
    }

    /** Signs alone warn of nothing, which is known; devices warn for 20 s at the least (49 CFR 234.225). */
    @Test
    void howLongBeforeATrainSomethingWarnsIsNotUnknownWhereThereAreSignsAlone() throws IOException {
        String crossing = JsonEdit.edit(LEVEL, "/features/2/properties/hazard", "\"rail-crossing\"");
        String passive = JsonEdit.edit(crossing, "/features/2/properties/warning", "\"passive\"");
        String active = JsonEdit.edit(crossing, "/features/2/properties/warning", "\"active\"");
        assertEquals(
                List.of("signs only", "20.0 s", "unknown"), List.of(warned(passive), warned(active), warned(crossing)));
    }

    private String warned(String text) throws IOException {
        String plan = run("plan", Files.writeString(folder.resolve("crossing.route.geojson"), text), rig)
                .text();
        List<String> table =
                plan.substring(plan.indexOf("RAIL CROSSINGS IN TIME")).lines().toList();
        // Columns stand two blanks apart at the least: the place, its name, how long it takes, then the warning.
        return table.stream()
                .filter(line -> line.contains("H01"))
                .findFirst()
                .orElseThrow()
                .strip()
                .split(" {2,}")[3];
    }

    @Test
    void printsOneLineForEachStepInDrivingOrder() {
        Run plan = run("plan", level, rig);

        assertEquals(ExitCode.CLEAR, plan.exitCode(), plan.err());
        assertTrue(plan.text().contains("Outcome: WAY THROUGH\n"), plan.text());
        List<String> steps = plan.text()
                .lines()
                .filter(l -> l.matches("  \\d+\\.\\d\\d mi .*"))
                .toList();
        assertEquals(3, steps.size(), plan.text());
        assertTrue(steps.get(0).contains("depart"));
        assertTrue(steps.get(1).contains("H01 Rise"));
        assertTrue(steps.get(2).contains("arrive"));
    }

    @Test
    void namesWhatBlocksBeforeAnyStep() {
        Run plan = run("plan", route, rig);

        assertEquals(ExitCode.NOT_CLEAR, plan.exitCode(), plan.err());
        assertTrue(plan.text().contains("Outcome: NO WAY THROUGH\n\nBLOCKED BY\n"), plan.text());
        assertTrue(plan.text().contains("H04  Ford, dip at"), plan.text());
        assertTrue(plan.text().contains("NOT FOR DRIVING"), plan.text());
    }

    @Test
    void aWayUnderConditionsIsNotExitCodeZero() {
        Run plan = run("plan", level, rig, "--set-aside", "H01");

        assertEquals(ExitCode.NOT_CLEAR, plan.exitCode(), plan.err());
        assertTrue(plan.text().contains("WAY THROUGH UNDER CONDITIONS"), plan.text());
        assertTrue(plan.text().contains("H01  Rise (set aside): "), plan.text());
    }

    @Test
    void aReserveIsAShareAndSaidSoWhenItIsNot() {
        for (String wrong : new String[] {"abc", "-5%", "2000%", "10"}) {
            Run run = run("plan", level, rig, "--least-reserve", wrong);
            assertEquals(2, run.exitCode(), wrong);
            assertTrue(run.err().contains("\"" + wrong + "\" is no reserve to keep."), run.err());
            assertTrue(run.err().contains("0 % to 100 %") && !run.err().contains("grade"), run.err());
        }
    }

    @Test
    void tellsEveryOptionThatIsWrong() {
        Run plan =
                run("plan", level, rig, "--forbid", "x", "--keep", "y", "--accept-tight", "H01", "--set-aside", "H77");

        assertEquals(ExitCode.REFUSED, plan.exitCode());
        assertEquals(0, plan.out().length);
        for (String told :
                List.of("--forbid has", "--keep has", "--accept-tight has", "--set-aside has", "not-tight")) {
            assertTrue(plan.err().contains(told), plan.err());
        }
    }

    @Test
    void jsonIsTheBytesOfTheServerAndTextTheSameUnderEveryLocale() throws Exception {
        Run plan = run("plan", level, rig, "--form", "json", "--forbid", "down/none/1", "--no-raising");
        try (TestServer server = new TestServer(new Samples(
                List.of(new Sample("a", LEVEL.getBytes(StandardCharsets.UTF_8))),
                List.of(new Sample("b", RigTexts.RIG.getBytes(StandardCharsets.UTF_8)))))) {
            byte[] served = server.post(
                            "/api/plan",
                            Requests.check(
                                    LEVEL,
                                    RigTexts.RIG,
                                    ",\"plan\":{\"forbid\":[\"down/none/1\"],\"avoidRaising\":true}"))
                    .body()
                    .getBytes(StandardCharsets.UTF_8);
            assertArrayEquals(served, plan.out());
        }
        String text = run("plan", level, rig).text();
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertEquals(text, run("plan", level, rig).text());
        } finally {
            Locale.setDefault(before);
        }
    }

    /** A comparison says "open" of rail crossings it has not put against the trains. */
    @Test
    void comparisonSaysThatItDoesNotAskForTrains() {
        Run comparison = run("compare", level, rig);

        assertTrue(comparison.text().contains("cleared in time before a train is not asked here"), comparison.text());
    }

    @Test
    void combinationsAreTheStancesByName() throws Exception {
        String jeep = JsonEdit.edit(JeepTexts.JEEP, "/states", "[\"in\", \"out\"]");
        Path with = Files.writeString(folder.resolve("jeep.rig.json"), JeepTexts.with(jeep));
        Run both = run("compare", level, with, "--combinations");
        Run one = run("plan", level, with, "--stance", "loaded, without jeep", "--form", "json");

        String outcome = new ObjectMapper().readTree(one.text()).path("outcome").textValue();
        assertTrue(
                both.text().lines().anyMatch(l -> l.matches("  loaded, without jeep  +" + outcome + " .*")),
                both.text());
        assertTrue(both.text().contains("units: tractor, jeep, trailer, booster"), both.text());
        assertTrue(run("plan", level, with, "--stance", "without jeep")
                .err()
                .contains("it has \"loaded\", \"loaded, without jeep\""));
        Run mixed = run("compare", level, with, "--combinations", "--between", "down/none/3", "up/none/3");
        assertTrue(mixed.err().contains("--between compares configurations"), mixed.err());
    }

    /** The question of a check has one home: every command takes the same options for it, told in the same words. */
    @Test
    void everyCommandTakesTheOptionsOfTheCheck() {
        String check = question(run("check", "--help").text());
        assertTrue(check.contains("--ground-margin") && check.contains("--limits"), check);
        for (String command : List.of("plan", "compare", "runsheet", "statement")) {
            assertEquals(check, question(run(command, "--help").text()), command);
        }
    }

    /** The lines of the options that a check is asked by, of a help text. */
    private static String question(String help) {
        StringBuilder lines = new StringBuilder();
        boolean asked = false;
        for (String line : help.substring(help.indexOf("Route file")).lines().toList()) {
            if (line.matches(" +(-\\w, )?--.*| +[A-Z]+ .*")) {
                asked = line.matches(" +(--stance|--\\w+-margin|--limits|ROUTE|RIG).*");
            }
            if (asked && !line.isBlank() && !line.startsWith("Exit")) {
                lines.append(line.strip().replaceAll("\\s+", " ")).append('\n');
            }
        }
        return lines.toString();
    }

    /** The same bytes as the server's of the same request, with the map beneath and without. */
    @Test
    void aPaperIsDrawnOverABaseMapThatIsNamed() throws Exception {
        String across = Requests.BASE_MAP.replace("-93.0850", "-93.0950");
        Path map = Files.writeString(folder.resolve("level.basemap.geojson"), across);
        Run without = run("statement", level, rig, "--form", "html");
        Run with = run("statement", level, rig, "--form", "html", "--base-map", map);

        assertFalse(without.text().contains("Base map:"));
        assertTrue(with.text().contains("Base map: invented for a test."), with.err());
        try (TestServer server = new TestServer(new Samples(List.of(), List.of()))) {
            assertEquals(
                    server.post(
                                    "/api/statement",
                                    Requests.check(LEVEL, RigTexts.RIG, ",\"form\":\"html\",\"baseMap\":" + across))
                            .body(),
                    with.text());
        }

        Run route = run("runsheet", level, rig, "--base-map", level);
        assertEquals(ExitCode.REFUSED, route.exitCode());
        assertTrue(route.err().contains("level.route.geojson") && route.err().contains("no base map"), route.err());
        Run over = run("statement", level, rig, "--base-map", map, "--out", map);
        assertEquals(ExitCode.REFUSED, over.exitCode());
        assertEquals(across, Files.readString(map));
    }

    @Test
    void neverWritesOverItsInput() {
        Run plan = run("plan", level, rig, "--out", rig);

        assertEquals(ExitCode.REFUSED, plan.exitCode());
        assertTrue(plan.err().contains("names an input file"), plan.err());
    }
}
