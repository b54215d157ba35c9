package org.cresthaul.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.cresthaul.store.Revision.KeptFile;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.jdbi.v3.core.Handle;
import org.sqlite.SQLiteDataSource;

/** Projects in one SQLite database in a folder of their own. */
public final class SqliteStore implements ProjectStore {
    private static final String REVISIONS =
            "SELECT project, number, name, author, saved, reason, view FROM revision r WHERE ";
    private static final String IS_LATEST =
            "number = (SELECT MAX(number) FROM revision l WHERE l.project = r.project) ";
    private static final String REMOVED =
            "EXISTS (SELECT 1 FROM removal m WHERE m.project = r.project AND m.number = r.number) ";

    private final Connections connections;
    private final FileShelf shelf = new FileShelf();
    private final PaperShelf papers = new PaperShelf(shelf);
    private final Clock clock;

    /** Ends a transaction on its way to the checked exception. */
    static final class SavedSince extends RuntimeException {
        private final transient Revision latest;

        private SavedSince(Revision latest) {
            super("revision " + latest.number(), null, false, false);
            this.latest = latest;
        }
    }

    private SqliteStore(Connections connections, Clock clock) {
        this.connections = connections;
        this.clock = clock;
    }

    /**
     * The store in a folder, which is made when it is not there and brought up to date when it is older.
     *
     * @throws StoreFailure when there can be none
     */
    public static SqliteStore in(Path folder) {
        return in(folder, Clock.systemUTC(), statement -> {});
    }

    static SqliteStore in(Path folder, Clock clock, Connections.SetUp setUp) {
        try {
            Path file = DataFolder.database(folder);
            DataFolder.alone(folder, () -> migrate(file));
            return new SqliteStore(new Connections(file, setUp), clock);
        } catch (IOException | UnsupportedOperationException e) {
            throw new StoreFailure(StoreFailure.Kind.NOT_WRITABLE, "the folder cannot be written", e);
        }
    }

    private static void migrate(Path file) {
        SQLiteDataSource source = new SQLiteDataSource(Connections.config(false));
        source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
        try {
            Flyway.configure(SqliteStore.class.getClassLoader())
                    .dataSource(source)
                    .locations("classpath:store")
                    .cleanDisabled(true)
                    .validateMigrationNaming(true)
                    // What a newer version has made is refused, and not guessed at.
                    .ignoreMigrationPatterns(new String[0])
                    .load()
                    .migrate();
        } catch (FlywayException e) {
            throw StoreFailure.of(e);
        }
    }

    @Override
    public List<Revision> listProjects() {
        return connections.read(
                handle -> revisions(handle, IS_LATEST + "AND NOT " + REMOVED + "ORDER BY saved DESC, project"));
    }

    @Override
    public List<Revision> listRevisions(String project) {
        return connections.read(handle -> revisions(handle, "project = ? ORDER BY number", project));
    }

    @Override
    public Optional<Revision> findLatest(String project) {
        return connections.read(handle -> latest(handle, project));
    }

    @Override
    public Optional<Revision> findRevision(String project, int number) {
        return connections.read(handle -> revisions(handle, "project = ? AND number = ?", project, number).stream()
                .findFirst());
    }

    @Override
    public Optional<byte[]> findFile(String sha256) {
        return Sha256.isHex(sha256) ? connections.read(handle -> shelf.find(handle, sha256)) : Optional.empty();
    }

    @Override
    public Revision begin(Draft draft) {
        String project = UUID.randomUUID().toString();
        return connections.write(handle -> {
            handle.execute("INSERT INTO project (id, begun) VALUES (?, ?)", project, now().toString());
            return add(handle, project, 1, draft);
        });
    }

    @Override
    public Revision save(String project, int on, Draft draft) throws SavedSinceException {
        try {
            return connections.write(handle -> {
                Revision latest = latest(handle, project)
                        .orElseThrow(() -> new IllegalArgumentException("no project " + project));
                if (latest.number() != on) {
                    throw new SavedSince(latest);
                }
                return add(handle, project, on + 1, draft);
            });
        } catch (SavedSince since) {
            throw new SavedSinceException(since.latest);
        }
    }

    @Override
    public List<RemovedProject> listRemoved() {
        return connections.read(handle -> revisions(handle, IS_LATEST + "AND " + REMOVED).stream()
                .map(latest -> removal(handle, latest).orElseThrow())
                .sorted(Comparator.comparing(RemovedProject::removed)
                        .reversed()
                        .thenComparing(r -> r.latest().project()))
                .toList());
    }

    @Override
    public RemovedProject remove(String project, int on, String author) throws SavedSinceException {
        try {
            return connections.write(handle -> {
                Revision latest = latest(handle, project)
                        .orElseThrow(() -> new IllegalArgumentException("no project " + project));
                if (latest.number() != on) {
                    throw new SavedSince(latest);
                }
                // Removed twice is removed once.
                handle.execute(
                        "INSERT INTO removal (project, number, removed, author) VALUES (?, ?, ?, ?)"
                                + " ON CONFLICT DO NOTHING",
                        project,
                        on,
                        now().toString(),
                        author);
                return removal(handle, latest).orElseThrow();
            });
        } catch (SavedSince since) {
            throw new SavedSinceException(since.latest);
        }
    }

    @Override
    public Optional<Revision> bringBack(String project, String author) {
        return connections.write(handle -> latest(handle, project)
                .filter(latest -> removal(handle, latest).isPresent())
                .map(latest -> add(
                        handle,
                        project,
                        latest.number() + 1,
                        new Draft(
                                latest.name(),
                                author,
                                "brought back",
                                latest.view(),
                                latest.files().stream()
                                        .map(f -> GivenFile.known(f.kind(), f.name(), f.sha256()))
                                        .toList()))));
    }

    private static Optional<RemovedProject> removal(Handle handle, Revision latest) {
        return handle.select(
                        "SELECT removed, author FROM removal WHERE project = ? AND number = ?",
                        latest.project(),
                        latest.number())
                .map((row, context) ->
                        new RemovedProject(latest, Instant.parse(row.getString("removed")), row.getString("author")))
                .findOne();
    }

    @Override
    public IssuedPaper keep(
            String project, PaperKind kind, String mediaType, String version, byte[] request, byte[] content) {
        return connections.write(handle -> papers.put(
                handle,
                latest(handle, project).orElseThrow(() -> new IllegalArgumentException("no project " + project)),
                new PaperShelf.Issue(kind, mediaType, version, now()),
                request,
                content));
    }

    @Override
    public List<IssuedPaper> listPapers(String project) {
        return connections.read(handle -> PaperShelf.list(handle, "p.project = ?", project));
    }

    @Override
    public Optional<IssuedPaper> findPaper(String id) {
        return connections.read(
                handle -> PaperShelf.list(handle, "p.id = ?", id).stream().findFirst());
    }

    @Override
    public void backUp(Path file) {
        if (Files.exists(file)) {
            throw new StoreFailure(StoreFailure.Kind.NOT_WRITABLE, "there is a file already", null);
        }
        connections.alone(
                handle -> handle.execute("VACUUM INTO ?", file.toAbsolutePath().toString()));
    }

    @Override
    public void close() {
        connections.close();
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }

    private Revision add(Handle handle, String project, int number, Draft draft) {
        Instant saved = now();
        handle.execute(
                "INSERT INTO revision (project, number, name, author, saved, reason, view)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?)",
                project,
                number,
                draft.name(),
                draft.author(),
                saved.toString(),
                draft.reason(),
                draft.view());
        List<KeptFile> kept = new ArrayList<>();
        for (GivenFile file : draft.files()) {
            FileShelf.ShelvedFile place = shelf.put(handle, file);
            handle.execute(
                    "INSERT INTO revision_file (project, number, place, kind, name, file) VALUES (?, ?, ?, ?, ?, ?)",
                    project,
                    number,
                    kept.size(),
                    file.kind().word(),
                    file.name(),
                    place.id());
            kept.add(new KeptFile(file.kind(), file.name(), file.sha256(), place.bytes()));
        }
        return new Revision(project, number, draft.name(), draft.author(), saved, draft.reason(), draft.view(), kept);
    }

    private static Optional<Revision> latest(Handle handle, String project) {
        return revisions(handle, "project = ? ORDER BY number DESC LIMIT 1", project).stream()
                .findFirst();
    }

    private static List<Revision> revisions(Handle handle, String where, Object... bound) {
        return handle.select(REVISIONS + where, bound)
                .map((row, context) -> revision(handle, row))
                .list();
    }

    private static Revision revision(Handle handle, ResultSet row) throws SQLException {
        String project = row.getString("project");
        int number = row.getInt("number");
        List<KeptFile> files = handle.select(
                        "SELECT kind, name, sha256, bytes FROM revision_file JOIN file ON file.id = file"
                                + " WHERE project = ? AND number = ? ORDER BY place",
                        project,
                        number)
                .map((r, context) -> new KeptFile(
                        FileKind.of(r.getString("kind")),
                        r.getString("name"),
                        Sha256.hex(r.getBytes("sha256")),
                        r.getLong("bytes")))
                .list();
        return new Revision(
                project,
                number,
                row.getString("name"),
                row.getString("author"),
                Instant.parse(row.getString("saved")),
                row.getString("reason"),
                row.getString("view"),
                files);
    }
}
