package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.route.RouteTexts;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the program writes, where, and what it says when it cannot. */
class OutputTest {
    @TempDir
    Path folder;

    private Path route;
    private Path rig;
    private Path limits;
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @BeforeEach
    void files() throws IOException {
        route = Files.writeString(folder.resolve("small.route.geojson"), RouteTexts.ROUTE);
        rig = Files.writeString(folder.resolve("small.rig.json"), RigTexts.RIG);
        limits = Files.writeString(folder.resolve("permit.limits.json"), LimitsTexts.LIMITS);
    }

    private int run(OutputStream to, Object... arguments) {
        out.reset();
        err.reset();
        return Cresthaul.run(
                Stream.of(arguments).map(Object::toString).toArray(String[]::new),
                new PrintStream(to, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @ValueSource(strings = {"check", "plan", "compare", "runsheet", "statement"})
    void neverWritesOverItsLimits(String command) throws Exception {
        Path link = Files.createLink(folder.resolve("another-name.json"), limits);
        for (Path target : List.of(limits, link, rig, route)) {
            byte[] before = Files.readAllBytes(target);
            assertEquals(2, run(out, command, route, rig, "--limits", limits, "--out", target), err.toString());
            assertEquals(new String(before, StandardCharsets.UTF_8), Files.readString(target), target.toString());
            assertTrue(err.toString(StandardCharsets.UTF_8).contains("input file"), err.toString());
        }
    }

    @Test
    void theLimitsFileIsAmongTheHashes() throws Exception {
        ObjectMapper json = new ObjectMapper();
        assertEquals(1, run(out, "check", route, rig, "--form", "json", "--limits", limits), err.toString());
        JsonNode with = json.readTree(out.toByteArray());
        assertEquals(
                InputFile.read(limits).sha256(), with.at("/route/limitsSha256").textValue());
        assertEquals(1, run(out, "check", route, rig, "--form", "json"));
        assertTrue(json.readTree(out.toByteArray()).at("/route/limitsSha256").isNull());
        for (String command : new String[] {"check", "plan", "compare"}) {
            run(out, command, route, rig, "--limits", limits);
            assertTrue(
                    out.toString(StandardCharsets.UTF_8)
                            .contains(InputFile.read(limits).sha256()),
                    command);
        }
        run(out, "statement", route, rig, "--limits", limits, "--form", "json");
        assertTrue(out.toString(StandardCharsets.UTF_8)
                .contains(InputFile.read(limits).sha256()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"check", "plan", "--help", "--version"})
    void whatCannotBeWrittenIsNotDone(String command) {
        OutputStream full = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("no space left");
            }
        };
        Object[] arguments = command.startsWith("--") ? new Object[] {command} : new Object[] {command, route, rig};
        assertEquals(2, run(full, arguments));
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("could not be written"), err.toString());
        assertEquals(
                2, run(out, "check", route, rig, "--out", folder.resolve("no").resolve("report.txt")));
        assertEquals(2, run(out, "check", route, rig, "--out", folder));
    }

    @Test
    void anOldFileStaysWholeUntilTheNewOneIs() throws Exception {
        Path report = Files.writeString(folder.resolve("report.txt"), "old");
        Files.setPosixFilePermissions(report, PosixFilePermissions.fromString("rw-r-----"));
        Object before = Files.readAttributes(report, "unix:ino").get("ino");
        assertEquals(1, run(out, "check", route, rig, "--out", report), err.toString());
        assertFalse(before.equals(Files.readAttributes(report, "unix:ino").get("ino")), "written in place");
        assertEquals("rw-r-----", PosixFilePermissions.toString(Files.getPosixFilePermissions(report)));
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(4, left.count(), "nothing is left beside it");
        }
        Path link = Files.createSymbolicLink(folder.resolve("link.txt"), report);
        Files.writeString(report, "old");
        run(out, "check", route, rig, "--out", link);
        assertTrue(Files.isSymbolicLink(link));
        assertFalse(Files.readString(report).equals("old"));
    }

    @Test
    void anErrorIsNoVerdict() throws Exception {
        // Sixteen megabytes hold no such document; the program ends with an Error, not an Exception.
        String notes = "\"note\": \"" + "x".repeat(1900) + "\",";
        Path large = Files.writeString(
                folder.resolve("large.geojson"),
                "{" + ("\"k\": [" + "1,".repeat(3_000_000) + "1],") + notes + "\"x\": 1}");
        Process program = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx20m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "org.cresthaul.Main",
                        "check",
                        large.toString(),
                        rig.toString())
                .redirectError(folder.resolve("err").toFile())
                .redirectOutput(new File("/dev/null"))
                .start();
        assertTrue(program.waitFor(120, TimeUnit.SECONDS));
        String said = Files.readString(folder.resolve("err"));
        assertEquals(3, program.exitValue(), said);
        assertTrue(said.contains("memory"), said);
        assertFalse(said.contains("\tat "), said);
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-16LE", "UTF-16BE", "UTF-16", "UTF-32LE"})
    void onlyUtf8IsRead(String charset) throws Exception {
        Path other = Files.write(folder.resolve("other.json"), RigTexts.RIG.getBytes(Charset.forName(charset)));
        assertEquals(2, run(out, "check", route, other));
        assertTrue(
                err.toString(StandardCharsets.UTF_8).contains("not UTF-8 without a byte order mark"), err.toString());
        Path marked = Files.writeString(folder.resolve("marked.json"), "\uFEFF" + RigTexts.RIG);
        assertEquals(2, run(out, "check", route, marked));
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("byte order mark"), err.toString());
    }

    @Test
    void twoServersStartedAtOnceBothGetAPort() throws Exception {
        List<Process> programs = new ArrayList<>();
        try {
            for (int i = 0; i < 3; i++) {
                programs.add(new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java")
                                        .toString(),
                                "-Xmx128m",
                                "-cp",
                                System.getProperty("java.class.path"),
                                "org.cresthaul.Main",
                                "serve",
                                "--data",
                                folder.resolve("data").toString(),
                                route.toString(),
                                rig.toString())
                        .redirectError(folder.resolve("err" + i).toFile())
                        .start());
            }
            List<String> addresses = new ArrayList<>();
            for (Process program : programs) {
                String line;
                do {
                    line = program.inputReader(StandardCharsets.UTF_8).readLine();
                } while (line != null && !line.startsWith("Open "));
                assertTrue(line != null, Files.readString(folder.resolve("err" + programs.indexOf(program))));
                addresses.add(line.split(" ")[1]);
            }
            assertEquals(3, addresses.stream().distinct().count(), addresses.toString());
        } finally {
            programs.forEach(Process::destroy);
        }
    }

    @Test
    void warnsWhenOthersCanReachIt() throws Exception {
        Process program = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx128m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "org.cresthaul.Main",
                        "serve",
                        "--data",
                        "none",
                        "--host",
                        "0.0.0.0",
                        "--port",
                        "0",
                        route.toString(),
                        rig.toString())
                .redirectError(folder.resolve("err").toFile())
                .start();
        try {
            String line;
            do {
                line = program.inputReader(StandardCharsets.UTF_8).readLine();
            } while (line != null && !line.startsWith("Open "));
            String said = Files.readString(folder.resolve("err"));
            assertTrue(said.contains("no sign-in") && said.contains("TLS"), said);
        } finally {
            program.destroy();
        }
        assertEquals(2, run(out, "serve", "--data", "none", "--host", "192.0.2.1", route, rig));
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("not an address of this machine"), err.toString());
    }
}
