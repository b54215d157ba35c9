package org.cresthaul.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;

/**
 * One connection that writes and a few that only read. A connection on which anything failed is thrown away, so that
 * the next question finds the disk as it is then.
 */
final class Connections implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Connections.class);
    private static final int MOST_IDLE_READERS = 4;
    private static final int WAIT_MS = 10_000;
    /** Before it, a checkpoint could lose what was committed (sqlite.org, release 3.51.3). */
    private static final int[] LEAST_ENGINE = {3, 51, 3};

    /** What each connection must say of itself; 2 is FULL. */
    private static final Map<String, String> REQUIRED =
            Map.of("journal_mode", "wal", "synchronous", "2", "foreign_keys", "1", "trusted_schema", "0");

    /** Changes a new connection that writes; for tests that need a small disk. */
    interface SetUp {
        void apply(Statement statement) throws SQLException;
    }

    private final Path file;
    private final SetUp setUp;
    private final Object writing = new Object();
    private final Deque<Handle> readers = new ArrayDeque<>();
    private Handle writer;
    private boolean closed;

    Connections(Path file, SetUp setUp) {
        this.file = file;
        this.setUp = setUp;
    }

    /** Does all of it or nothing; one at a time. */
    <T> T write(Function<Handle, T> change) {
        synchronized (writing) {
            boolean done = false;
            try {
                if (writer == null) {
                    writer = open(false);
                }
                writer.begin();
                T made = change.apply(writer);
                writer.commit();
                done = true;
                return made;
            } catch (JdbiException | SQLException e) {
                throw StoreFailure.of(e);
            } finally {
                if (!done) {
                    discard(writer);
                    writer = null;
                }
            }
        }
    }

    /** Outside of any transaction. */
    void alone(Consumer<Handle> question) {
        Handle own = null;
        try {
            own = open(false);
            question.accept(own);
        } catch (JdbiException | SQLException e) {
            throw StoreFailure.of(e);
        } finally {
            discard(own);
        }
    }

    <T> T read(Function<Handle, T> question) {
        Handle handle = null;
        boolean done = false;
        try {
            handle = reader();
            handle.begin();
            T found = question.apply(handle);
            handle.commit();
            done = true;
            return found;
        } catch (JdbiException | SQLException e) {
            throw StoreFailure.of(e);
        } finally {
            if (done) {
                giveBack(handle);
            } else {
                discard(handle);
            }
        }
    }

    private Handle reader() throws SQLException {
        synchronized (readers) {
            if (!readers.isEmpty()) {
                return readers.pop();
            }
        }
        return open(true);
    }

    private void giveBack(Handle handle) {
        synchronized (readers) {
            if (!closed && readers.size() < MOST_IDLE_READERS) {
                readers.push(handle);
                return;
            }
        }
        discard(handle);
    }

    static SQLiteConfig config(boolean reads) {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        config.setBusyTimeout(WAIT_MS);
        config.setTransactionMode(
                reads ? SQLiteConfig.TransactionMode.DEFERRED : SQLiteConfig.TransactionMode.IMMEDIATE);
        return config;
    }

    private Handle open(boolean reads) throws SQLException {
        Connection connection = config(reads).createConnection("jdbc:sqlite:" + file.toAbsolutePath());
        try {
            try (Statement statement = connection.createStatement()) {
                statement.execute("PRAGMA trusted_schema = OFF");
                requireSafe(statement);
                if (reads) {
                    statement.execute("PRAGMA query_only = ON");
                } else {
                    setUp.apply(statement);
                }
            }
            return Jdbi.open(connection);
        } catch (SQLException | RuntimeException e) {
            connection.close();
            throw e;
        }
    }

    /** What was asked for is read back: an engine that keeps less must keep nothing. */
    private static void requireSafe(Statement statement) throws SQLException {
        String engine = first(statement, "SELECT sqlite_version()");
        if (!isRecent(engine)) {
            throw unsafe("the engine is " + engine + ", older than 3.51.3");
        }
        for (Map.Entry<String, String> pragma : REQUIRED.entrySet()) {
            String found = first(statement, "PRAGMA " + pragma.getKey());
            if (!pragma.getValue().equals(found)) {
                throw unsafe(pragma.getKey() + " is " + found + ", not " + pragma.getValue());
            }
        }
    }

    private static StoreFailure unsafe(String why) {
        return new StoreFailure(StoreFailure.Kind.NOT_WRITABLE, "the database would not keep safely: " + why, null);
    }

    static boolean isRecent(String engine) {
        String[] parts = engine.split("\\.");
        for (int i = 0; i < LEAST_ENGINE.length; i++) {
            int part = i < parts.length ? Integer.parseInt(parts[i]) : 0;
            if (part != LEAST_ENGINE[i]) {
                return part > LEAST_ENGINE[i];
            }
        }
        return true;
    }

    private static String first(Statement statement, String sql) throws SQLException {
        try (var rows = statement.executeQuery(sql)) {
            return rows.next() ? rows.getString(1) : "";
        }
    }

    private static void discard(Handle handle) {
        if (handle == null) {
            return;
        }
        try {
            // Whatever was begun is undone by closing.
            handle.getConnection().close();
        } catch (SQLException e) {
            LOG.warn("A connection did not close", e);
        }
    }

    @Override
    public void close() {
        synchronized (writing) {
            discard(writer);
            writer = null;
        }
        synchronized (readers) {
            closed = true;
            readers.forEach(Connections::discard);
            readers.clear();
        }
    }
}
