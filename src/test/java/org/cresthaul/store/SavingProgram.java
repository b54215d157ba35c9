package org.cresthaul.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/** Saves with several clients at once until it is killed, and tells each save on a line once it was acknowledged. */
final class SavingProgram {
    private static final int CLIENTS = 4;

    private SavingProgram() {}

    public static void main(String[] arguments) {
        SqliteStore store = SqliteStore.in(Path.of(arguments[0]));
        for (int client = 0; client < CLIENTS; client++) {
            String name = "client " + client + " of program " + arguments[1];
            new Thread(() -> save(store, name)).start();
        }
    }

    private static void save(SqliteStore store, String name) {
        try {
            Revision revision = store.begin(draft(name, 1));
            tell(revision.project() + " 1.");
            for (int number = 2; ; number++) {
                revision = store.save(revision.project(), revision.number(), draft(name, number));
                tell(revision.project() + " " + number + ".");
            }
        } catch (SavedSinceException e) {
            throw new IllegalStateException("nobody else saves this", e);
        }
    }

    private static void tell(String line) {
        synchronized (System.out) {
            System.out.print(line + "\n");
            System.out.flush();
        }
    }

    private static Draft draft(String name, int number) {
        String reason = name + ", save " + number;
        return new Draft(
                name,
                name,
                reason,
                "",
                List.of(
                        GivenFile.of(FileKind.ROUTE, "r.route.geojson", route(reason)),
                        GivenFile.of(FileKind.RIG, "r.rig.json", "{}".getBytes(StandardCharsets.UTF_8))));
    }

    /** A route that follows from the reason alone, with a line that all share and a hazard of its own. */
    static byte[] route(String reason) {
        String line = "[0.001,44.25],".repeat(2000);
        return ("{\"features\":[{\"line\":[" + line + "0]},{\"id\":\"" + reason + "\"}]}")
                .getBytes(StandardCharsets.UTF_8);
    }
}
