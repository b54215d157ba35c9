package org.cresthaul.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SqliteStoreTest {
    private static final Instant MORNING = Instant.parse("2026-11-30T06:00:00.123Z");
    private static final int FULL_AT_PAGES = 60;

    @TempDir
    Path folder;

    private SqliteStore open() {
        return SqliteStore.in(folder, Clock.fixed(MORNING, ZoneOffset.UTC), statement -> {});
    }

    static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    static Draft draft(String reason, GivenFile... files) {
        return new Draft("Elm to Oak", "A. Planner", reason, "#hazard=H01", List.of(files));
    }

    private static GivenFile route(String text) {
        return GivenFile.of(FileKind.ROUTE, "elm.route.geojson", bytes(text));
    }

    @Test
    void givesBackWhatWasGivenAfterItWasClosed() {
        byte[] odd = bytes(" {\"features\" : [ {\"a\":1} ,\t{\"b\":\"]}\\\"\"} ] }\n");
        Revision begun;
        try (SqliteStore store = open()) {
            begun = store.begin(draft(
                    "begun",
                    GivenFile.of(FileKind.ROUTE, "elm.route.geojson", odd),
                    GivenFile.of(FileKind.RIG, "r.json", bytes("{}"))));
        }
        try (SqliteStore store = open()) {
            assertEquals(List.of(begun), store.listProjects());
            assertEquals(MORNING, begun.saved());
            assertEquals(1, begun.number());
            assertEquals("A. Planner", begun.author());
            assertEquals(
                    List.of(FileKind.ROUTE, FileKind.RIG),
                    begun.files().stream().map(Revision.KeptFile::kind).toList());
            assertEquals(odd.length, begun.files().get(0).bytes());
            assertArrayEquals(odd, store.findFile(begun.files().get(0).sha256()).orElseThrow());
        }
    }

    @Test
    void addsRevisionsAndKeepsTheEarlierOnes() throws Exception {
        try (SqliteStore store = open()) {
            Revision first = store.begin(draft("begun", route("{\"v\":1}")));
            Revision second = store.save(first.project(), 1, draft("wider", route("{\"v\":2}")));

            assertEquals(2, second.number());
            assertEquals(List.of(first, second), store.listRevisions(first.project()));
            assertEquals(Optional.of(second), store.findLatest(first.project()));
            assertEquals(Optional.of(first), store.findRevision(first.project(), 1));
            assertEquals(Optional.empty(), store.findRevision(first.project(), 3));
            assertArrayEquals(
                    bytes("{\"v\":1}"),
                    store.findFile(first.files().get(0).sha256()).orElseThrow());
        }
    }

    @Test
    void whatIsRemovedIsListedNoMoreAndComesBackWhole() throws Exception {
        try (SqliteStore store = open()) {
            Revision first = store.begin(draft("begun", route("{\"v\":1}")));
            Revision other = store.begin(draft("begun", route("{\"v\":2}")));
            assertThrows(SavedSinceException.class, () -> store.remove(first.project(), 2, "B. Clerk"));
            assertThrows(IllegalArgumentException.class, () -> store.remove("none", 1, ""));
            assertEquals(Optional.empty(), store.bringBack(first.project(), "B. Clerk"), "it is not removed");

            RemovedProject removed = store.remove(first.project(), 1, "B. Clerk");
            assertEquals(new RemovedProject(first, MORNING, "B. Clerk"), removed);
            assertEquals(removed, store.remove(first.project(), 1, "C. Other"), "removed twice is removed once");
            assertEquals(List.of(other), store.listProjects());
            assertEquals(List.of(removed), store.listRemoved());
            assertEquals(Optional.of(first), store.findLatest(first.project()), "nothing of it is gone");

            Revision back = store.bringBack(first.project(), "C. Other").orElseThrow();
            assertEquals(2, back.number());
            assertEquals("brought back", back.reason());
            assertEquals(first.files(), back.files());
            assertEquals(List.of(), store.listRemoved());
            assertEquals(2, store.listProjects().size());
            assertArrayEquals(
                    bytes("{\"v\":1}"),
                    store.findFile(back.files().get(0).sha256()).orElseThrow());
        }
    }

    @Test
    void whoSavesOnWhatIsRemovedBringsItBack() throws Exception {
        try (SqliteStore store = open()) {
            Revision first = store.begin(draft("begun", route("{\"v\":1}")));
            store.remove(first.project(), 1, "");
            Revision second = store.save(first.project(), 1, draft("still at work", route("{\"v\":3}")));
            assertEquals(List.of(second), store.listProjects());
            store.remove(first.project(), 2, "");
            assertEquals(List.of(), store.listProjects());
            assertEquals(1, store.listRemoved().size());
            assertThrows(SQLException.class, () -> execute("DELETE FROM removal"));
            assertThrows(SQLException.class, () -> execute("UPDATE removal SET number = 1"));
        }
    }

    @Test
    void refusesToSaveOverWhatIsNotTheLatest() throws Exception {
        try (SqliteStore store = open()) {
            Revision first = store.begin(draft("begun", route("{}")));
            Revision second = store.save(first.project(), 1, draft("by somebody else", route("{\"v\":2}")));

            SavedSinceException since = assertThrows(
                    SavedSinceException.class, () -> store.save(first.project(), 1, draft("mine", route("{\"v\":3}"))));
            assertEquals(second, since.latest());
            assertThrows(SavedSinceException.class, () -> store.save(first.project(), 3, draft("ahead", route("{}"))));
            assertEquals(List.of(first, second), store.listRevisions(first.project()));
            assertThrows(IllegalArgumentException.class, () -> store.save("no such", 1, draft("", route("{}"))));
        }
    }

    @Test
    void takesAFileByItsHashWhenItIsThere() throws Exception {
        try (SqliteStore store = open()) {
            Revision first = store.begin(draft("begun", route("{\"v\":1}")));
            String known = first.files().get(0).sha256();
            Revision second = store.save(
                    first.project(), 1, draft("renamed", GivenFile.known(FileKind.ROUTE, "oak.route.geojson", known)));

            assertEquals(known, second.files().get(0).sha256());
            assertEquals("oak.route.geojson", second.files().get(0).name());
            String unknown = "0".repeat(64);
            UnknownFileException none = assertThrows(
                    UnknownFileException.class,
                    () -> store.save(first.project(), 2, draft("", GivenFile.known(FileKind.RIG, "r", unknown))));
            assertEquals(unknown, none.sha256());
            assertEquals(2, store.listRevisions(first.project()).size(), "nothing of it was kept");
            assertEquals(Optional.empty(), store.findFile(unknown));
            assertEquals(Optional.empty(), store.findFile("../projects.db"));
        }
    }

    @Test
    void whatWasSavedCanNotBeChanged() throws Exception {
        try (SqliteStore store = open()) {
            store.begin(draft("begun", route("{}")));
        }
        for (String change : List.of(
                "UPDATE revision SET reason = 'other'",
                "DELETE FROM revision",
                "DELETE FROM revision_file",
                "UPDATE piece SET content = x'00'",
                "UPDATE file SET bytes = 1",
                "DELETE FROM file_piece")) {
            SQLException refused = assertThrows(SQLException.class, () -> execute(change));
            assertTrue(
                    refused.getMessage().contains("kept as given")
                            || refused.getMessage().contains("only added"),
                    refused.getMessage());
        }
    }

    private void execute(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("projects.db"));
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void servesNothingThatIsNoLongerWhatWasGiven() throws Exception {
        try (SqliteStore store = open()) {
            Revision first = store.begin(draft("begun", route("{\"v\":1}")));
            execute("DROP TRIGGER piece_stays");
            execute("UPDATE piece SET content = CAST('{\"v\":7}' AS BLOB)");

            StoreFailure damaged = assertThrows(
                    StoreFailure.class,
                    () -> store.findFile(first.files().get(0).sha256()));
            assertEquals(StoreFailure.Kind.UNREADABLE, damaged.kind());
        }
    }

    @Test
    void aFullDiskRefusesWholeAndTakesTheNextWhenThereIsRoom() throws Exception {
        String project;
        String large = "{\"features\":[" + "7".repeat(300_000) + "]}";
        try (SqliteStore small = SqliteStore.in(
                folder,
                Clock.systemUTC(),
                statement -> statement.execute("PRAGMA max_page_count = " + FULL_AT_PAGES))) {
            project = small.begin(draft("begun", route("{}"))).project();
            for (int i = 0; i < 3; i++) {
                StoreFailure full =
                        assertThrows(StoreFailure.class, () -> small.save(project, 1, draft("large", route(large))));
                assertEquals(StoreFailure.Kind.FULL, full.kind());
            }
            assertEquals(1, small.listRevisions(project).size());
            assertEquals(
                    2,
                    small.save(project, 1, draft("small", route("{\"v\":2}"))).number());
        }
        try (SqliteStore store = open()) {
            assertEquals(3, store.save(project, 2, draft("large", route(large))).number());
        }
        assertSound();
    }

    @Test
    void whatCannotBeWrittenIsRefusedAndStillRead() throws Exception {
        String project;
        try (SqliteStore store = open()) {
            project = store.begin(draft("begun", route("{}"))).project();
        }
        try (SqliteStore store =
                SqliteStore.in(folder, Clock.systemUTC(), statement -> statement.execute("PRAGMA query_only = ON"))) {
            StoreFailure refused =
                    assertThrows(StoreFailure.class, () -> store.save(project, 1, draft("more", route("{\"v\":2}"))));
            assertEquals(StoreFailure.Kind.NOT_WRITABLE, refused.kind());
            assertEquals(1, store.listRevisions(project).size());
        }
    }

    @Test
    void aFolderThatCannotBeMadeAndAFileThatIsNoneAreToldApart() throws Exception {
        Path file = Files.writeString(folder.resolve("notes.txt"), "a file where a folder should be");
        assertEquals(
                StoreFailure.Kind.NOT_WRITABLE,
                assertThrows(StoreFailure.class, () -> SqliteStore.in(file.resolve("data")))
                        .kind());

        Path other = Files.createDirectory(folder.resolve("other"));
        Files.writeString(other.resolve("projects.db"), "this is no database, and long enough to be looked at");
        assertEquals(
                StoreFailure.Kind.UNREADABLE,
                assertThrows(StoreFailure.class, () -> SqliteStore.in(other)).kind());
    }

    @Test
    void whatANewerVersionHasMadeIsRefused() throws Exception {
        open().close();
        execute(
                "INSERT INTO flyway_schema_history (installed_rank, version, description, type, script, checksum,"
                        + " installed_by, execution_time, success) VALUES (99, '99', 'later', 'SQL', 'V99__later.sql', 1, '', 1, 1)");

        StoreFailure newer = assertThrows(StoreFailure.class, this::open);
        assertEquals(StoreFailure.Kind.UNREADABLE, newer.kind());
    }

    @Test
    void isForItsOwnerAlone() throws Exception {
        Path data = folder.resolve("data");
        SqliteStore.in(data).close();
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(data)));
        assertEquals(
                "rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(data.resolve("projects.db"))));
    }

    @Test
    void aBackupOpensAsAStoreAndNeverReplacesAFile() throws Exception {
        Path copy = Files.createDirectory(folder.resolve("copy"));
        try (SqliteStore store = open()) {
            Revision first = store.begin(draft("begun", route("{\"v\":1}")));
            store.backUp(copy.resolve("projects.db"));
            store.save(first.project(), 1, draft("later", route("{\"v\":2}")));
            assertThrows(StoreFailure.class, () -> store.backUp(copy.resolve("projects.db")));
            try (SqliteStore backup = SqliteStore.in(copy)) {
                assertEquals(List.of(first), backup.listProjects());
                assertArrayEquals(
                        bytes("{\"v\":1}"),
                        backup.findFile(first.files().get(0).sha256()).orElseThrow());
            }
        }
        assertSound();
    }

    private void assertSound() throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("projects.db"));
                Statement statement = connection.createStatement();
                var rows = statement.executeQuery("PRAGMA integrity_check")) {
            assertEquals("ok", rows.getString(1));
        }
    }

    /** 50,000 points and 200 hazards; what one save adds to the write-ahead log is counted by the file system. */
    @Test
    void aChangeOfOneHazardInALongRouteWritesKilobytes() throws Exception {
        StringBuilder line = new StringBuilder(
                "{\"cresthaul\":\"route/1\",\"features\":[{\"type\":\"Feature\",\"geometry\":{\"coordinates\":[");
        for (int i = 0; i < 50_000; i++) {
            line.append(i == 0 ? "" : ",")
                    .append("[-93.")
                    .append(1_000_000 + i)
                    .append(",44.")
                    .append(2_000_000 + i)
                    .append(']');
        }
        line.append("]}}");
        for (int i = 0; i < 200; i++) {
            line.append(",\n{\"type\":\"Feature\",\"properties\":{\"id\":\"H")
                    .append(i)
                    .append("\",\"name\":\"as given\"}}");
        }
        String before = line.append("]}\n").toString();
        String after = before.replace("\"H77\",\"name\":\"as given\"", "\"H77\",\"name\":\"surveyed again\"");
        assertNotEquals(before, after);
        Path log = folder.resolve("projects.db-wal");
        try (SqliteStore store = open()) {
            Revision first = store.begin(draft("begun", route(before)));
            long whole = Files.size(log);
            assertTrue(whole > before.length(), "the line is written once");
            // A log that was written into the database is begun anew, and then grows by what is written.
            execute("PRAGMA wal_checkpoint(TRUNCATE)");
            assertEquals(0, Files.size(log));

            store.save(first.project(), 1, draft("H77 surveyed again", route(after)));

            long written = Files.size(log);
            assertTrue(
                    written > 4096 && written < 100_000,
                    written + " bytes for one hazard of a route of " + before.length());
            Revision second = store.findLatest(first.project()).orElseThrow();
            assertArrayEquals(
                    bytes(after), store.findFile(second.files().get(0).sha256()).orElseThrow());
        }
    }

    @Test
    void anEngineThatMayLoseACommitIsTooOld() {
        assertTrue(Connections.isRecent("3.51.3") && Connections.isRecent("3.54.1") && Connections.isRecent("4.0.0"));
        assertTrue(!Connections.isRecent("3.51.2") && !Connections.isRecent("3.50.9") && !Connections.isRecent("3.7"));
    }
}
