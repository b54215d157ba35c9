package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cresthaul.cli.Cresthaul;
import org.cresthaul.server.OpenApi;
import org.cresthaul.server.Samples;
import org.cresthaul.server.ServerOptions;
import org.cresthaul.server.TestServer;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What README, DEVELOPERS and docs say is so: commands run, examples answer, links lead somewhere. */
class DocumentsTest {
    @TempDir
    Path folder;

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Pattern BLOCK = Pattern.compile("(?ms)^```(\\w*)\\n(.*?)^```$");
    private static final String START = "java -jar target/cresthaul.jar ";

    static Stream<Path> documents() throws IOException {
        List<Path> all = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
        try (Stream<Path> docs = Files.list(Path.of("docs"))) {
            docs.filter(f -> f.toString().endsWith(".md")).sorted().forEach(all::add);
        }
        assertTrue(all.size() > 5, all.toString());
        return all.stream();
    }

    private static String read(String file) throws IOException {
        return Files.readString(Path.of(file));
    }

    private static List<String> blocks(String document, String language) {
        return BLOCK.matcher(document)
                .results()
                .filter(m -> m.group(1).equals(language))
                .map(m -> m.group(2))
                .toList();
    }

    private record Ran(int exitCode, String out, String err) {}

    private static final Map<String, Ran> RAN = new HashMap<>();

    /** What a command prints; one that stands in several documents is run once. */
    private static String run(int exitCode, String commandLine) {
        Ran ran = RAN.computeIfAbsent(String.join(" ", commandLine.strip().split(" +")), DocumentsTest::ran);
        assertEquals(exitCode, ran.exitCode, commandLine + "\n" + ran.err);
        return ran.out;
    }

    private static Ran ran(String commandLine) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int ended = Cresthaul.run(
                commandLine.split(" "),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Ran(ended, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    @Test
    void theReadmesCommandPrintsTheReadmesAnswer() throws IOException {
        String readme = read("README.md");
        String command = blocks(readme, "sh").stream()
                .filter(b -> b.startsWith(START + "check"))
                .findFirst()
                .orElseThrow();

        String printed = run(1, command.substring(START.length()));

        String answer = blocks(readme, "text").get(0);
        String crossing = printed.substring(printed.indexOf("\nH04  Tallow branch line, rail crossing at 7.83 mi\n"));
        int from = crossing.indexOf("\n\n") + 2;
        String lines =
                crossing.substring(from).lines().limit(answer.lines().count()).collect(Collectors.joining("\n"));
        assertEquals(lines + "\n", answer, "README.md shows another answer than " + command);
        assertTrue(printed.contains("38.56 mi\n"), "the length of the sample route");
        long surveyed = printed.lines()
                .filter(l -> l.matches("H\\d\\d {2}.*, .* at .* mi"))
                .count();
        long waiting = printed.lines()
                .filter(l -> l.matches(" +\\d+ {2}H\\d\\d {2}.* mi .*"))
                .count();
        assertEquals(1, waiting, "H06 alone waits for a survey");
        assertEquals(17, surveyed + waiting);
    }

    @Test
    void theReadmesCommandsAreTheOnesThatCiRuns() throws IOException {
        List<String> commands = blocks(read("README.md"), "sh");

        assertEquals("mvn -q package -DskipTests && java -jar target/cresthaul.jar\n", commands.get(0));
        assertEquals("mvn verify\n", commands.get(1));
        assertTrue(read(".ci/run").contains("\nmvn -B -ntp verify"), "CI runs the same goal");
        assertTrue(read("pom.xml").contains("<finalName>cresthaul</finalName>"));
    }

    @Test
    void theSampleReportIsTheProgramsOwn() throws IOException {
        String command = blocks(read("DEVELOPERS.md"), "sh").stream()
                .filter(b -> b.endsWith(" --out docs/sample-report.txt\n"))
                .findFirst()
                .orElseThrow();

        String printed = run(1, command.substring(START.length()).replace("--out docs/sample-report.txt", ""));

        assertEquals(printed, read("docs/sample-report.txt"), "out of date; make it anew with:\n" + command);
    }

    @Test
    void everyCheckInTheDocumentsRuns() throws IOException {
        int ran = 0;
        for (Path document : documents().toList()) {
            for (String block : blocks(Files.readString(document), "sh")) {
                if (block.startsWith(START + "check") && !block.contains("--out docs/")
                        || List.of("plan", "compare", "runsheet", "statement", "import").stream()
                                .anyMatch(command -> block.startsWith(START + command))) {
                    Files.createDirectories(Path.of("target"));
                    // The valley has an unconditional way through, nothing else in the documents has.
                    boolean through = block.contains("sorrel-valley")
                            && !block.contains(" check ")
                            && !block.contains(" compare ");
                    run(through ? 0 : 1, block.substring(START.length()));
                    ran++;
                }
            }
        }
        assertTrue(ran >= 4, ran + " commands");
    }

    @Test
    void everyExampleOfTheHttpInterfaceAnswersAsItSays() throws Exception {
        String document = read("docs/api.md");
        Matcher example = Pattern.compile("(?ms)^```sh\\n(.*?)^```\\n.*?^Answers (\\d+), a `(\\w+)`")
                .matcher(document);
        int answered = 0;
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.remembering(new ServerOptions(
                        Optional.empty(), 0, Optional.empty(), Samples.bundled(), Optional.of(store)))) {
            while (example.find()) {
                assertFalse(example.group().substring(5).contains("```sh"), "each example says what it answers");
                String answer = shell(example.group(1).replace("127.0.0.1:8137", "127.0.0.1:" + server.port()));
                int end = answer.lastIndexOf('\n');

                assertEquals(example.group(2), answer.substring(end + 1), answer);
                OpenApi.requireValid(example.group(3), JSON.readTree(answer.substring(0, end)));
                answered++;
            }
        }
        assertEquals(blocks(document, "sh").size(), answered);
        assertTrue(answered >= 5, answered + " examples");
    }

    /** Runs an example with curl; the status stands on the last line. */
    private static String shell(String example) throws Exception {
        Path err = Files.createTempFile("curl", ".err");
        try {
            String withStatus = example.replace("curl ", "curl -s -S -w '\\n%{http_code}' ");
            Process shell = new ProcessBuilder("bash", "-c", withStatus)
                    .redirectError(err.toFile())
                    .start();
            String answer = new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertEquals(0, shell.waitFor(), "curl is needed; .ci/run installs it\n" + Files.readString(err));
            return answer;
        } finally {
            Files.delete(err);
        }
    }

    @Test
    void theHttpPageNamesEveryAddressAndStatus() throws IOException {
        String page = read("docs/api.md");
        JsonNode described =
                JSON.readTree(Path.of("src/main/resources/openapi.json").toFile());
        described
                .path("paths")
                .fieldNames()
                .forEachRemaining(p -> assertTrue(page.contains("`" + p + "`") || page.contains(" " + p + "`"), p));
        Set<String> statuses = new TreeSet<>();
        Matcher row = Pattern.compile("(?m)^\\| (\\d{3}) \\|").matcher(page);
        while (row.find()) {
            statuses.add(row.group(1));
        }
        described
                .path("paths")
                .forEach(path -> path.forEach(o -> o.path("responses")
                        .fieldNames()
                        .forEachRemaining(s -> assertTrue(s.matches("20[01]") || statuses.contains(s), s))));
    }

    @ParameterizedTest
    @MethodSource("documents")
    void linksLeadToFiles(Path document) throws IOException {
        String text = Files.readString(document);
        for (MatchResult link : Pattern.compile("\\]\\(([^)#\\s]+)(?:#[^)]*)?\\)")
                .matcher(text)
                .results()
                .toList()) {
            if (!link.group(1).matches("[a-z]+:.*")) {
                Path target = Path.of("")
                        .resolve(document)
                        .toAbsolutePath()
                        .getParent()
                        .resolve(link.group(1));
                assertTrue(Files.exists(target), document + " links to " + link.group(1));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("documents")
    void classesAndFilesThatAreNamedExist(Path document) throws IOException {
        Set<String> classes = new TreeSet<>();
        try (Stream<Path> files = Files.walk(Path.of("src"))) {
            files.map(f -> f.getFileName().toString())
                    .filter(f -> f.endsWith(".java"))
                    .forEach(f -> classes.add(f.substring(0, f.length() - 5)));
        }
        String text = Files.readString(document);
        for (MatchResult name : Pattern.compile("`([A-Z][a-z]+(?:[A-Z][a-z]+)+)(?:\\.\\w+)?`")
                .matcher(text)
                .results()
                .toList()) {
            boolean schema = JSON.readTree(
                            Path.of("src/main/resources/openapi.json").toFile())
                    .at("/components/schemas")
                    .has(name.group(1));
            assertTrue(
                    classes.contains(name.group(1)) || schema || isOfALibrary(name.group(1)),
                    document + " names " + name.group(1));
        }
        for (MatchResult name : Pattern.compile("`((?:src|docs|web|sample-routes)/[\\w./-]+)`")
                .matcher(text)
                .results()
                .toList()) {
            assertTrue(Files.exists(Path.of(name.group(1))), document + " names " + name.group(1));
        }
    }

    private static boolean isOfALibrary(String name) {
        return Set.of(
                        "IllegalArgumentException",
                        "GeodeticCalculator",
                        "FeatureCollection",
                        "LineString",
                        "MultiLineString",
                        "RandomGenerator")
                .contains(name);
    }
}
