package org.cresthaul.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What earlier versions of the database hold is there in this one; each was written out by the program of its time. */
class EarlierVersionsTest {
    private static final String ROUTE = "{\"cresthaul\":\"route/1\",\"features\":[{\"line\":[1.50,2e0]},\n"
            + "{\"id\":\"H01\",\"name\":\"as given\"}]}\n";

    @TempDir
    Path folder;

    private void restore(String script) throws Exception {
        try (InputStream in = EarlierVersionsTest.class.getResourceAsStream("/earlier/" + script);
                Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("projects.db"));
                Statement statement = connection.createStatement()) {
            statement.executeUpdate(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    @Test
    void projectsOfTheFirstVersionAreThereAndGoOn() throws Exception {
        restore("projects-1.sql");

        try (SqliteStore store = SqliteStore.in(folder)) {
            Revision latest = store.listProjects().get(0);
            assertEquals("Mill road move", latest.name());
            assertEquals(2, latest.number());
            assertEquals("B. Surveyor", latest.author());
            assertEquals("H01 surveyed", latest.reason());
            assertEquals(Instant.parse("2026-11-30T03:30:00Z"), latest.saved());
            List<Revision> all = store.listRevisions(latest.project());
            assertEquals(2, all.size());
            assertEquals("#hazard=H01", all.get(0).view());
            assertArrayEquals(
                    bytes(ROUTE),
                    store.findFile(all.get(0).files().get(0).sha256()).orElseThrow());
            assertArrayEquals(
                    bytes(ROUTE.replace("as given", "surveyed")),
                    store.findFile(latest.files().get(0).sha256()).orElseThrow());
            assertArrayEquals(
                    bytes("{\"cresthaul\":\"rig/1\"}"),
                    store.findFile(latest.files().get(1).sha256()).orElseThrow());

            Revision third = store.save(latest.project(), 2, SqliteStoreTest.draft("after the change of version"));
            assertEquals(3, third.number());
            assertEquals(List.of(), store.listPapers(latest.project()));
            IssuedPaper paper = store.keep(
                    latest.project(),
                    PaperKind.STATEMENT,
                    "application/json",
                    "0.1.0",
                    bytes("{}"),
                    bytes("{\"a\":1}"));
            assertEquals(List.of(paper), store.listPapers(latest.project()));
            assertEquals(3, paper.revision());
        }
    }

    @Test
    void papersOfTheSecondVersionAreThereAndProjectsCanBeRemoved() throws Exception {
        restore("projects-2.sql");

        try (SqliteStore store = SqliteStore.in(folder)) {
            Revision latest = store.listProjects().get(0);
            IssuedPaper paper = store.listPapers(latest.project()).get(0);
            assertEquals(PaperKind.STATEMENT, paper.kind());
            assertEquals(2, paper.revision());
            byte[] content = store.findFile(paper.contentSha256()).orElseThrow();
            assertEquals(
                    paper.contentSha256(),
                    Sha256.hex(MessageDigest.getInstance("SHA-256").digest(content)));

            store.remove(latest.project(), 2, "B. Clerk");
            assertEquals(List.of(), store.listProjects());
            assertEquals(3, store.bringBack(latest.project(), "").orElseThrow().number());
            assertEquals(List.of(paper), store.listPapers(latest.project()));
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
