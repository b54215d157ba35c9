package org.cresthaul.server;

import io.javalin.http.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.stream.Stream;
import org.cresthaul.exchange.ImportPreview;
import org.cresthaul.view.RouteView;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Makes routes of tracks and maps over HTTP. Files are on disk, in a folder of the request's own, only until it is
 * answered; what came of them is in the answer and nowhere else.
 */
final class ImportDesk {
    /** Imports at a time, from their first byte to their answer: each may have a large file on disk. */
    static final int MOST_AT_A_TIME = 2;

    private static final Logger LOG = LoggerFactory.getLogger(ImportDesk.class);

    private final WorkGate gate;
    private final BodyGate bodies;
    private final Semaphore places = new Semaphore(MOST_AT_A_TIME);
    private final Underway<ImportUnderway> underway = new Underway<>();

    ImportDesk(WorkGate gate, BodyGate bodies) {
        this.gate = gate;
        this.bodies = bodies;
    }

    /**
     * What an import answers.
     *
     * @param line for drawing
     * @param route the route file, byte for byte as it is to be saved
     * @param baseMap the base map file, likewise; null where no map was given
     */
    record Answer(ImportPreview preview, RouteView line, String route, String baseMap) {
        static Answer of(ImportRequest.Made made) {
            return new Answer(
                    made.imported().preview(),
                    RouteView.of(made.imported().route()),
                    new String(made.imported().document(), StandardCharsets.UTF_8),
                    made.baseMap()
                            .map(b -> new String(b, StandardCharsets.UTF_8))
                            .orElse(null));
        }
    }

    /** @param stopped whether there was anything to stop */
    private record Stopped(boolean stopped) {}

    void make(Context ctx) throws Exception {
        if (!places.tryAcquire()) {
            throw new Refusal(
                    ProblemKind.BUSY, "As many imports run already as may.", List.of(), Map.of("Retry-After", "10"));
        }
        ImportUnderway one = new ImportUnderway();
        try {
            underway.during(ctx.queryParam("id"), one, () -> {
                try (BodyGate.Admitted room = bodies.admit()) {
                    answer(ctx, one, room);
                }
            });
        } catch (OutOfMemoryError e) {
            throw Refusal.memoryShort();
        } finally {
            places.release();
        }
    }

    private void answer(Context ctx, ImportUnderway one, BodyGate.Admitted room) throws Exception {
        Path folder = Files.createTempDirectory("cresthaul-import");
        try {
            long declared = ctx.req().getContentLengthLong();
            ImportRequest asked =
                    ImportRequest.of(ImportBody.receive(ctx, folder, bytes -> one.received(bytes, declared)));
            room.require(asked.heldBytes());
            one.waits();
            Asker connection = Asker.of(ctx.req());
            byte[] made = gate.run(
                    one.asker(connection), WorkGate.Work.IMPORT, () -> JsonAnswer.bytes(Answer.of(asked.made(one))));
            ctx.contentType("application/json").result(made);
            if (connection instanceof Asker.Connection open && open.hasSpoken()) {
                ctx.header("Connection", "close");
            }
        } finally {
            delete(folder);
        }
    }

    private static void delete(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            LOG.warn("A file of an import could not be deleted", e);
        }
    }

    void progress(Context ctx) {
        ctx.contentType("application/json")
                .result(JsonAnswer.bytes(underway.find(ctx.pathParam("id"))
                        .map(ImportUnderway::state)
                        .orElse(ImportUnderway.State.NONE)));
    }

    void stop(Context ctx) {
        Optional<ImportUnderway> one = underway.find(ctx.pathParam("id"));
        one.ifPresent(ImportUnderway::stop);
        ctx.contentType("application/json").result(JsonAnswer.bytes(new Stopped(one.isPresent())));
    }
}
