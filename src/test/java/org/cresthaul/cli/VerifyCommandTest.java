package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.route.RouteTexts;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A statement in JSON is made again from its files: identical, or what differs is named. */
class VerifyCommandTest {
    @TempDir
    Path folder;

    private Path route;
    private Path rig;
    private Path limits;
    private Path statement;

    private record Run(int exitCode, String out, String err) {}

    private static Run run(Object... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Cresthaul.run(
                Arrays.stream(arguments).map(Object::toString).toArray(String[]::new),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Run(exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    @BeforeEach
    void files() throws IOException {
        route = Files.writeString(folder.resolve("small.route.geojson"), RouteTexts.ROUTE);
        rig = Files.writeString(folder.resolve("small.rig.json"), WeightsTexts.RIG);
        limits = Files.writeString(folder.resolve("limits.json"), LimitsTexts.LIMITS);
        statement = folder.resolve("statement.json");
    }

    /** Every option that can be asked is in the statement: it is made again by them, and nothing differs. */
    @Test
    void everyOptionIsAskedAgain() {
        Run made = run(
                "statement",
                route,
                rig,
                "--form",
                "json",
                "--out",
                statement,
                "--units",
                "metric",
                "--limits",
                limits,
                "--ground-margin",
                "1 1/2 in",
                "--overhead-margin",
                "4 in",
                "--side-margin",
                "9 in",
                "--no-raising",
                "--fewest-conditions",
                "--least-reserve",
                "1 %",
                "--set-aside",
                "H04",
                "--forbid",
                configuration());
        assertTrue(made.exitCode() <= ExitCode.NOT_CLEAR, made.err());

        Run verified = run("verify", statement, route, rig, "--limits", limits);

        assertEquals(ExitCode.CLEAR, verified.exitCode(), verified.out() + verified.err());
        assertEquals(3, verified.out().split("as in the statement", -1).length - 1, verified.out());
        assertTrue(verified.out().contains("Identical"), verified.out());
    }

    /**
     * What somebody settled is in the statement and asked again by it; one who settles something else makes another.
     */
    @Test
    void whatWasSettledIsPartOfTheStatement() throws IOException {
        Path settled = Files.writeString(
                folder.resolve("settled.json"),
                "{\"cresthaul\":\"settled/1\",\"settled\":[{\"hazard\":"
                        + "\"H04\",\"what\":\"set aside\",\"by\":\"B. Surveyor\",\"date\":\"2026-11-27\",\"agreed\":\"driven with a template\"}]}");
        Run made = run(
                "statement",
                route,
                rig,
                "--form",
                "json",
                "--out",
                statement,
                "--set-aside",
                "H04",
                "--settled",
                settled);
        assertTrue(made.exitCode() <= ExitCode.NOT_CLEAR, made.err());
        String text = Files.readString(statement);
        assertTrue(text.contains("B. Surveyor") && text.contains("driven with a template"), text);

        Run verified = run("verify", statement, route, rig);
        assertEquals(ExitCode.CLEAR, verified.exitCode(), verified.out() + verified.err());
        assertTrue(verified.out().contains("Identical"), verified.out());

        // Put in by hand: the options alone, not what comes of them.
        Files.writeString(statement, text.replaceFirst("(\"options\":.*\"by\":\")B. Surveyor", "$1C. Somebody"));
        Run forged = run("verify", statement, route, rig);
        assertEquals(ExitCode.NOT_CLEAR, forged.exitCode(), forged.out() + forged.err());
        assertTrue(forged.out().contains("NOT identical") && forged.out().contains("C. Somebody"), forged.out());

        // A condition that the plan does not have any more.
        Files.writeString(statement, text.replaceFirst("(\"options\":.*\"settled\":\\[\\{\"hazard\":\")H04", "$1H99"));
        assertRefused(run("verify", statement, route, rig), "H99");
    }

    private String configuration() {
        String csv = run("check", route, rig, "--form", "csv").out();
        return csv.lines().skip(1).findFirst().orElseThrow().split(",")[4];
    }

    /** One verdict turned, one figure changed: both are named, with what stands there and what was made. */
    @Test
    void whatWasChangedIsNamed() throws IOException {
        run("statement", route, rig, "--form", "json", "--out", statement);
        String text = Files.readString(statement);
        String turned = text.replaceFirst("\"verdict\":\"(contact|tight|not surveyed)\"", "\"verdict\":\"clear\"")
                .replaceFirst("\"heightM\":\\d", "\"heightM\":9");
        assertTrue(!turned.equals(text));
        Files.writeString(statement, turned);

        Run verified = run("verify", statement, route, rig);

        assertEquals(ExitCode.NOT_CLEAR, verified.exitCode(), verified.err());
        assertTrue(verified.out().contains("NOT identical: 2 values differ."), verified.out());
        assertTrue(verified.out().contains("/sideViews/0/heightM"), verified.out());
        assertTrue(verified.out().contains("/verdict"), verified.out());
    }

    /** A rig file that weighs something else is not the one of the statement, by its hash and by what comes of it. */
    @Test
    void anotherFileIsNamedByItsHash() throws IOException {
        run("statement", route, rig, "--form", "json", "--out", statement);
        Files.writeString(rig, WeightsTexts.RIG + "\n");

        Run verified = run("verify", statement, route, rig);

        assertEquals(ExitCode.NOT_CLEAR, verified.exitCode(), verified.err());
        assertTrue(verified.out().contains("rig file: SHA-256 DIFFERS"), verified.out());
        assertTrue(verified.out().contains("route file: SHA-256 as in"), verified.out());
        assertTrue(verified.out().contains("/rig/sha256"), verified.out());
    }

    @Test
    void whatIsMissingIsAskedFor() throws IOException {
        run("statement", route, rig, "--form", "json", "--out", statement, "--limits", limits);
        assertRefused(run("verify", statement, route, rig), "--limits");
        run("statement", route, rig, "--form", "json", "--out", statement);
        assertRefused(run("verify", statement, route, rig, "--limits", limits), "--limits");
        assertRefused(run("verify", rig, route, rig), "no-statement");
        String text = Files.readString(statement);
        Files.writeString(statement, text.replaceFirst("\"groundM\":[0-9.]+", "\"groundM\":\"2 in\""));
        assertRefused(run("verify", statement, route, rig), "wrong-statement");
        Files.writeString(statement, text.replace("\"margins\":", "\"margin\":"));
        assertRefused(run("verify", statement, route, rig), "/margins");
    }

    private static void assertRefused(Run run, String named) {
        assertEquals(ExitCode.REFUSED, run.exitCode(), run.out());
        assertTrue(run.err().contains(named), run.err());
    }
}
