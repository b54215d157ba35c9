package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The program as a clerk at a shell meets it. */
class CommandLineTest {
    /** A level road, surveyed well: every setting clears it. Invented. */
    private static final String LEVEL_ROUTE = """
            { "type": "FeatureCollection", "cresthaul": "route/1", "name": "=Level, \\"flat\\"", "features": [
                { "type": "Feature", "properties": {"route": "Only leg"},
                  "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.09, 44.6]]} },
                { "type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.095, 44.6]},
                  "properties": {"hazard": "crest", "id": "H01", "name": "=Level, \\"flat\\"",
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
    private Path rig;

    /** What a run left behind. */
    private record Run(int exitCode, byte[] out, String err) {
        String text() {
            return new String(out, StandardCharsets.UTF_8);
        }
    }

    @BeforeEach
    void files() throws IOException {
        route = Files.writeString(folder.resolve("small.route.geojson"), RouteTexts.ROUTE);
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

    @Test
    void saysInItsExitCodeWhetherAnySettingIsClearEverywhere() throws Exception {
        Path level = Files.writeString(folder.resolve("level.route.geojson"), LEVEL_ROUTE);

        assertEquals(0, run("check", level, rig).exitCode());
        assertEquals(1, run("check", route, rig).exitCode(), "H04 is not surveyed, so nothing is clear everywhere");
    }

    @Test
    void callsNothingClearWhereNothingWasJudged() throws Exception {
        String text = LEVEL_ROUTE.substring(0, LEVEL_ROUTE.indexOf("},\n    { \"type\": \"Feature\", \"geometry\""));
        Path bare = Files.writeString(folder.resolve("bare.route.geojson"), text + "} ] }");

        Run run = run("check", bare, rig);

        assertEquals(1, run.exitCode(), run.err());
        assertTrue(run.text().contains("nothing was judged"), run.text());
        assertFalse(run.text().contains("+ clear"), run.text());
    }

    @Test
    void printsWhatTheReportIsMadeFrom() throws Exception {
        Run run = run("check", route, rig, "--ground-margin", "3 in");

        assertTrue(run.text().contains("Two legs, 2.30 mi"), run.text());
        assertTrue(run.text().contains("3 in over the ground, 3 in under a structure"), run.text());
        assertTrue(run.text().contains("file SHA-256 " + InputFile.read(route).sha256()), run.text());
        assertTrue(run.text().contains("file SHA-256 " + InputFile.read(rig).sha256()), run.text());
        assertTrue(run.text().contains(org.cresthaul.report.Version.NUMBER), run.text());
        assertEquals("", run.err());
        assertFalse(run.text().contains("\r"));
    }

    /**
     * As far as one unit on axles at 11.6, 13 and 14.4 m goes from 1 to 80 degrees: L ln(tan 40 / tan 0.5), L = Σx² /
     * Σx.
     */
    @Test
    void tellsHowFarItGoesBack() {
        double lengthM = (11.6 * 11.6 + 13 * 13 + 14.4 * 14.4) / (11.6 + 13 + 14.4);
        double wayM = lengthM * Math.log(Math.tan(Math.toRadians(40)) / Math.tan(Math.toRadians(0.5)));

        String us = backingUp(run("check", route, rig).text());
        String metric = backingUp(run("check", route, rig, "--units", "metric").text());

        assertTrue(
                us.contains("3 axles · no booster             " + (int) (wayM / 0.3048) + " ft, kingpin at 80.0 deg\n"),
                us);
        assertTrue(metric.contains((int) wayM + "." + (int) (wayM * 10) % 10 + " m, kingpin at 80.0 deg"), metric);
        assertTrue(us.matches("(?s).*3 axles · booster trailing +\\d+ ft, pivot at 35.0 deg +\\d+ ft, kingpin.*"), us);
        assertTrue(us.replaceAll("\\s+", " ").contains("from 1.0 deg at every coupling"), us);
        assertTrue(us.contains("Caution: With the steering held straight:"), us);
    }

    @Test
    void saysSoWhenNobodyKnowsHowFarItGoesBack() throws Exception {
        Path bare = Files.writeString(
                folder.resolve("bare.rig.json"), JsonEdit.edit(RigTexts.RIG, "/stances/0/plan", "absent"));

        String text = backingUp(run("check", route, bare).text());

        assertTrue(text.replaceAll("\\s+", " ").contains("how far it can be backed is not known."), text);
        assertFalse(text.matches("(?s).*\\d.*"), text);
    }

    /** A close-coupled axle at 40 m makes one unit of 26.7 m, which goes 122 m. */
    @Test
    void saysSoWhenNoLimitIsMet() throws Exception {
        Path far = Files.writeString(
                folder.resolve("far.rig.json"),
                JsonEdit.edit(RigTexts.RIG, "/stances/0/booster/closeCoupledAxle/x", "\"-40 m\""));

        String text = backingUp(run("check", route, far).text());

        assertTrue(text.contains("3 axles · booster close-coupled  no limit within 300 ft\n"), text);
    }

    private static String backingUp(String text) {
        int start = text.indexOf("\nBACKING UP\n");
        return text.substring(start, text.indexOf("\n\nH0", start) + 1);
    }

    @Test
    void neverCallsAnUnsurveyedHazardClear() {
        String text = run("check", route, rig).text();
        String waiting = text.substring(text.indexOf("\nSURVEY FIRST"), text.indexOf("\nLOADS"));

        assertTrue(waiting.contains("not surveyed, or known only by report. None is clear until it is"), waiting);
        assertTrue(waiting.lines().anyMatch(l -> l.startsWith("  1  H04  Ford   dip   2.17 mi")), waiting);
        assertTrue(
                text.lines()
                        .filter(l -> l.startsWith("H04  Ford  "))
                        .allMatch(l -> l.contains("?  ?  ?  ?") && !l.matches(".*mi.*[+~X%!].*")),
                text);
        assertTrue(text.lines().filter(l -> l.startsWith("H04  Ford  ")).count() >= 2, text);
        assertTrue(text.lines().filter(l -> l.startsWith("H04  Ford  ")).noneMatch(l -> l.contains("+")), text);
    }

    @Test
    void printsTheSameJsonAsTheServer() throws Exception {
        Run run = run("check", route, rig, "--form", "json", "--stance", "loaded");
        try (TestServer server = new TestServer(new Samples(
                List.of(new Sample("a.route.geojson", new byte[0])), List.of(new Sample("a.rig.json", new byte[0]))))) {
            String answer = server.post("/api/check", Requests.check(RouteTexts.ROUTE, RigTexts.RIG, ""))
                    .body();

            assertEquals(answer, run.text());
        }
    }

    @Test
    void printsTheSameBytesUnderEveryLocale() {
        Locale before = Locale.getDefault();
        try {
            for (String form : new String[] {"text", "json", "csv"}) {
                Locale.setDefault(Locale.US);
                byte[] first = run("check", route, rig, "--form", form).out();
                Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
                assertArrayEquals(
                        first, run("check", route, rig, "--form", form).out(), form);
                Locale.setDefault(Locale.forLanguageTag("tr-TR"));
                assertArrayEquals(
                        first, run("check", route, rig, "--form", form).out(), form);
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void printsOneTableLineForEachHazardAndConfiguration() {
        for (String units : new String[] {"us", "metric"}) {
            List<String> lines = run("check", route, rig, "--form", "csv", "--units", units)
                    .text()
                    .lines()
                    .toList();

            // 5 hazards; 4 booster states x 2 lift states x 4 notches.
            assertEquals(1 + 5 * 4 * 2 * 4, lines.size());
            assertTrue(lines.get(0).contains(units.equals("us") ? ",ground_gap_in," : ",ground_gap_m,"), lines.get(0));
            int fields = lines.get(0).split(",").length;
            for (String line : lines) {
                assertTrue(line.contains("\"") || line.split(",", -1).length == fields, line);
            }
        }
    }

    @Test
    void keepsSpreadsheetsFromRunningNames() throws Exception {
        Path level = Files.writeString(folder.resolve("level.route.geojson"), LEVEL_ROUTE);

        String line = run("check", level, rig, "--form", "csv")
                .text()
                .lines()
                .skip(1)
                .findFirst()
                .orElseThrow();

        assertTrue(line.startsWith("H01,\"'=Level, \"\"flat\"\"\",crest,"), line);
    }

    @Test
    void writesToAFileInstead() throws Exception {
        Path report = folder.resolve("report.txt");

        Run run = run("check", route, rig, "--out", report);

        assertEquals(1, run.exitCode());
        assertEquals(0, run.out().length);
        assertEquals(run("check", route, rig).text(), Files.readString(report));
    }

    @Test
    void doesNotOverwriteWhatItReads() throws Exception {
        Run run = run("check", route, rig, "--out", folder.resolve(".").resolve("small.rig.json"));

        assertEquals(2, run.exitCode());
        assertEquals(RigTexts.RIG, Files.readString(rig));
        assertTrue(run.err().contains("input file"), run.err());
    }

    @Test
    void tellsTheMistakesOfBothFilesTogether() throws Exception {
        Files.writeString(route, RouteTexts.ROUTE.replace("\"1.5 %\"", "1.5"));
        Files.writeString(rig, RigTexts.RIG.replace("\"0 in\"", "0"));

        Run run = run("check", route, rig);

        assertEquals(2, run.exitCode());
        assertEquals(0, run.out().length);
        assertTrue(run.err().contains("/features/3/properties/approachBefore/grade: "), run.err());
        assertTrue(run.err().contains("/notches/2/offset: "), run.err());
        assertTrue(run.err().contains("small.route.geojson has a mistake:\n"), run.err());
        assertTrue(run.err().contains("Nothing was checked."), run.err());
        assertNoInside(run);
    }

    static Stream<Arguments> wrongCommandLines() {
        return Stream.of(
                arguments(List.of("check"), "ROUTE"),
                arguments(List.of("check", "ROUTE"), "RIG"),
                arguments(List.of("check", "ROUTE", "RIG", "more"), "more"),
                arguments(List.of("check", "missing.geojson", "missing.json"), "missing.json has a mistake"),
                arguments(List.of("check", "FOLDER", "RIG"), "folder"),
                arguments(List.of("check", "RIG", "ROUTE"), "route/1"),
                arguments(List.of("check", "ROUTE", "RIG", "--form", "pdf"), "pdf"),
                arguments(List.of("check", "ROUTE", "RIG", "--units", "imperial"), "us or metric"),
                arguments(List.of("check", "ROUTE", "RIG", "--ground-margin", "2"), "no unit"),
                arguments(List.of("check", "ROUTE", "RIG", "--ground-margin", "-1 in"), "between 0 m and 1 m"),
                arguments(List.of("check", "ROUTE", "RIG", "--ground-margin", "NaN m"), "not a length"),
                arguments(List.of("check", "ROUTE", "RIG", "--stance", "flying"), "\"loaded\""),
                arguments(List.of("check", "ROUTE", "RIG", "--color"), "--color"),
                arguments(List.of("check", "ROUTE", "RIG", "--out", "FOLDER"), "cannot be written"),
                arguments(List.of("chekc"), "chekc"),
                arguments(List.of("serve", "ROUTE"), "at least one rig"),
                arguments(List.of("serve", "RIG", "ROUTE"), "route/1"),
                arguments(List.of("serve", "ROUTE", "RIG", "RIG"), "two files are called small"),
                arguments(List.of("serve", "--port", "many"), "many"),
                arguments(List.of("serve", "--port", "70000"), "70000"),
                arguments(List.of("serve", "--tiles", "https://tiles.example.org/{z}/{x}/{y}.png"), "attribution"),
                arguments(List.of("serve", "--tiles", "tiles", "--tiles-attribution", "me"), "not a tile address"));
    }

    @ParameterizedTest
    @MethodSource("wrongCommandLines")
    void refusesWhatItDoesNotUnderstand(List<String> arguments, String said) {
        Run run = run(arguments.stream()
                .map(a -> switch (a) {
                    case "ROUTE" -> route.toString();
                    case "RIG" -> rig.toString();
                    case "FOLDER" -> folder.toString();
                    default -> a;
                })
                .toArray());

        assertEquals(2, run.exitCode(), run.err());
        assertEquals(0, run.out().length);
        assertTrue(run.err().contains(said), run.err());
        assertNoInside(run);
    }

    @Test
    void refusesAPortThatIsTaken() throws Exception {
        try (var taken = new java.net.ServerSocket(0, 1, java.net.InetAddress.getByName("127.0.0.1"))) {
            Run run = run("serve", route, rig, "--data", "none", "--port", taken.getLocalPort());

            assertEquals(2, run.exitCode());
            assertTrue(run.err().contains("--port"), run.err());
            assertNoInside(run);
        }
    }

    @Test
    void explainsItself() {
        assertEquals(0, run("--help").exitCode());
        String help = run("check", "--help").text();
        assertTrue(help.contains("0  some configuration is clear"), help);
        assertEquals(
                "cresthaul " + org.cresthaul.report.Version.NUMBER + "\n",
                run("--version").text().replace("\r\n", "\n"));
    }

    private static void assertNoInside(Run run) {
        for (String inside : new String[] {"Exception", "\tat ", "org.cresthaul", "java."}) {
            assertFalse(run.err().contains(inside), run.err());
        }
    }
}
