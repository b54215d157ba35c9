package org.cresthaul.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A program that several clients save with is killed (SIGKILL) at random moments, again and again on one folder: every
 * save that it acknowledged is there with its bytes, none is there by half, and the database finds itself sound.
 * {@code -Dkills=1000} for as many; see DEVELOPERS.md.
 */
class KilledWhileSavingTest {
    private static final int KILLS = Integer.getInteger("kills", 50);
    private static final long SEED = 20261130;
    private static final int LONGEST_MS = 250;

    @TempDir
    Path folder;

    @Test
    void losesNoAcknowledgedSaveAndKeepsNoneByHalf() throws Exception {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(SEED);
        Map<String, Integer> acknowledged = new HashMap<>();
        for (int kill = 1; kill <= KILLS; kill++) {
            Process saver = start(kill);
            try (BufferedReader told = saver.inputReader(StandardCharsets.US_ASCII)) {
                // The first save has loaded what there is to load; from then on they follow each other closely.
                String first = told.readLine();
                assertTrue(first != null, "the program of kill " + kill + " begins");
                Thread.sleep(random.nextInt(LONGEST_MS));
                // By its handle: what it has told stays to be read.
                saver.toHandle().destroyForcibly();
                assertTrue(saver.waitFor(20, TimeUnit.SECONDS));
                assertEquals(128 + 9, saver.exitValue(), "it was killed, and did not end by itself");
                // A line that was cut off says nothing.
                List<String> lines = new ArrayList<>(List.of(first));
                told.lines().forEach(lines::add);
                read(lines).forEach((project, number) -> acknowledged.merge(project, number, Math::max));
            }
            check(kill, acknowledged);
        }
        int saves = acknowledged.values().stream().mapToInt(i -> i).sum();
        assertTrue(saves > 2 * KILLS, saves + " saves were acknowledged before " + KILLS + " kills");
    }

    private Process start(int kill) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx128m",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "org.cresthaul.store.SavingProgram",
                        folder.toString(),
                        Integer.toString(kill))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    /** Lines of a project's id and the number that was acknowledged, each ended by a point. */
    private static Map<String, Integer> read(List<String> told) {
        Map<String, Integer> numbers = new HashMap<>();
        for (String line : told) {
            if (line.matches("\\S+ \\d+\\.")) {
                String[] parts = line.substring(0, line.length() - 1).split(" ");
                numbers.merge(parts[0], Integer.parseInt(parts[1]), Math::max);
            }
        }
        return numbers;
    }

    private void check(int kill, Map<String, Integer> acknowledged) throws SQLException {
        try (SqliteStore store = SqliteStore.in(folder)) {
            for (Map.Entry<String, Integer> one : acknowledged.entrySet()) {
                List<Revision> revisions = store.listRevisions(one.getKey());
                assertTrue(
                        revisions.size() >= one.getValue(),
                        "kill " + kill + ": revision " + one.getValue() + " was acknowledged and " + revisions.size()
                                + " are there");
                List<Revision> unseen =
                        new ArrayList<>(revisions.subList(Math.max(0, revisions.size() - 3), revisions.size()));
                for (Revision revision : unseen) {
                    assertEquals(2, revision.files().size(), "both files or no revision");
                    assertArrayEquals(
                            SavingProgram.route(revision.reason()),
                            store.findFile(revision.files().get(0).sha256()).orElseThrow());
                }
            }
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("projects.db"));
                Statement statement = connection.createStatement()) {
            try (var rows = statement.executeQuery("PRAGMA integrity_check")) {
                assertEquals("ok", rows.getString(1), "kill " + kill);
            }
            try (var rows = statement.executeQuery("PRAGMA foreign_key_check")) {
                assertTrue(!rows.next(), "kill " + kill);
            }
        }
    }
}
