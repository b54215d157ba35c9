package org.cresthaul.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A short run of the fuzzer, guided by coverage, on from some of what long ones have kept: inputs nobody has seen, for
 * every reader, in one process. DEVELOPERS.md has the long ones.
 */
class ShortFuzzTest {
    /** Of each reader, spread over what was kept. */
    private static final int SEEDS = 8;
    /** Longest input that is gone on from: long ones take long. */
    private static final int LONGEST = 2000;
    /** Inputs in all. */
    private static final int RUNS = 1000;
    /** What guides it: the readers, not the engines behind them. */
    private static final String READERS =
            "org.cresthaul.fuzz.**:org.cresthaul.exchange.**:org.cresthaul.rig.**:org.cresthaul.route.**:org.cresthaul.units.**";
    /** A process that takes longer than this hangs, seconds. */
    private static final int HANGS_S = 300;

    @TempDir
    private Path folder;

    /** The inputs of one reader that the fuzzer goes on from, the byte before each that chooses the reader. */
    private static List<byte[]> seeds(String name) {
        List<byte[]> kept = FuzzSeedsTest.kept(name).stream()
                .filter(k -> k.length < LONGEST)
                .toList();
        List<byte[]> some = new ArrayList<>();
        for (int i = 0; i < SEEDS; i++) {
            byte[] rest = kept.get(i * kept.size() / SEEDS);
            ByteArrayOutputStream one = new ByteArrayOutputStream();
            one.write(ReadersFuzz.names().indexOf(name));
            one.writeBytes(rest);
            some.add(one.toByteArray());
        }
        return some;
    }

    /** Runs the fuzzer; returns what it told. An input on which the target fails is told in the failure. */
    private String fuzzed(Class<?> target, List<byte[]> seeds, int runs) throws Exception {
        Path corpus = Files.createDirectory(folder.resolve("corpus"));
        for (int i = 0; i < seeds.size(); i++) {
            Files.write(corpus.resolve("kept-" + i), seeds.get(i));
        }
        Path log = folder.resolve("log");
        Process fuzzer = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:+UseSerialGC",
                        "-Xmx700m",
                        // It is over before a better compiler would pay.
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        "com.code_intelligence.jazzer.Jazzer",
                        "--target_class=" + target.getName(),
                        "--instrumentation_includes=" + READERS,
                        "-seed=1",
                        "-runs=" + runs,
                        "-timeout=100",
                        // A child's greatest size begins with what this process had when it was started, which is
                        // gigabytes after a whole build; the heap above bounds what a reader takes.
                        "-rss_limit_mb=0",
                        corpus.toString())
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        try {
            boolean ended = fuzzer.waitFor(HANGS_S, TimeUnit.SECONDS);
            String told = Files.readString(log);
            assertTrue(ended, () -> "it hangs:\n" + told);
            assertEquals(0, fuzzer.exitValue(), () -> "fails on " + failing() + "\n" + told);
            return told;
        } finally {
            fuzzer.destroyForcibly();
        }
    }

    /** What the fuzzer left behind, in hexadecimal. */
    private String failing() {
        try (Stream<Path> all = Files.list(folder)) {
            List<String> inputs = new ArrayList<>();
            for (Path file : all.filter(p -> p.getFileName().toString().matches("(crash|timeout|oom|leak)-.*"))
                    .toList()) {
                inputs.add(HexFormat.of().formatHex(Files.readAllBytes(file)));
            }
            return inputs.toString();
        } catch (IOException e) {
            return e.toString();
        }
    }

    @Test
    void noReaderFailsOnWhatNobodyHasSeen() throws Exception {
        List<byte[]> seeds =
                ReadersFuzz.names().stream().flatMap(n -> seeds(n).stream()).toList();

        String told = fuzzed(ReadersFuzz.class, seeds, RUNS);

        for (String name : ReadersFuzz.names()) {
            String line = told.lines()
                    .filter(l -> l.startsWith(ReadersFuzz.ASKED + name + " "))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError(told));
            long times = Long.parseLong(line.substring(line.lastIndexOf(' ') + 1));
            assertTrue(times > 3 * SEEDS, line);
        }
    }

    /** So a failure of a reader would show; and it is found, so that the fuzzer is guided. */
    @Test
    void aBrokenReaderIsFoundAndItsInputTold() {
        AssertionError failure = assertThrows(
                AssertionError.class, () -> fuzzed(BrokenReaderFuzz.class, List.of(new byte[] {1, 2, 3, 4}), 100_000));

        String told = failure.getMessage();
        assertTrue(told.contains("broken on purpose"), told);
        String input = told.substring(told.indexOf('[') + 1, told.indexOf(']'));
        byte[] bytes = HexFormat.of().parseHex(input);
        assertTrue(Arrays.equals(BrokenReaderFuzz.WORD, Arrays.copyOf(bytes, 3)), input);
    }
}
