package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Runs the page's own tests, which need no browser, under Node.js. Without Node.js this fails. */
class ScriptTest {
    private static final Path TESTS = Path.of("src/test/web");

    @Test
    void everyScriptTestPasses() throws Exception {
        List<String> command = new ArrayList<>(List.of("node", "--test", "--test-reporter=tap"));
        try (Stream<Path> files = Files.walk(TESTS)) {
            files.map(Path::toString)
                    .filter(f -> f.endsWith(".test.js"))
                    .sorted()
                    .forEach(command::add);
        }
        assertTrue(command.size() > 3, "there are script tests in " + TESTS);

        Path log = Files.createTempFile("script-tests", ".tap");
        try {
            Process node = start(command, log);
            assertTrue(node.waitFor(5, TimeUnit.MINUTES), "the script tests come to an end");
            String output = Files.readString(log, StandardCharsets.UTF_8);
            assertEquals(0, node.exitValue(), output);
            Matcher passed = Pattern.compile("(?m)^# pass (\\d+)$").matcher(output);
            assertTrue(passed.find() && Integer.parseInt(passed.group(1)) > 0, output);
            assertTrue(output.contains("\n# skipped 0\n") && output.contains("\n# todo 0\n"), output);
        } finally {
            Files.delete(log);
        }
    }

    private static Process start(List<String> command, Path log) {
        try {
            return new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(log.toFile())
                    .start();
        } catch (IOException e) {
            throw new AssertionError("Node.js is needed for these tests; .ci/run installs Debian's nodejs", e);
        }
    }
}
