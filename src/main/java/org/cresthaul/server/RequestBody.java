package org.cresthaul.server;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.units.InputProblem;

/** Takes the body of a request: JSON, declared as such, and no longer than a document may be. */
final class RequestBody {
    /** Longest body taken, bytes. */
    static final int MOST_BYTES = JsonText.MOST_BYTES;
    /** A longer body is still received and thrown away up to here, so that the sender gets to read the answer. */
    static final long MOST_DISCARDED = 1L << 30;

    /** Slower than this, once the grace is over, a body is not waited for. */
    static final int LEAST_BYTES_PER_S = 4 * 1024;

    static final double GRACE_S = 5;

    private static final int BLOCK = 64 * 1024;
    private static final Set<String> JSON_TYPES = Set.of("application/json", "application/geo+json");
    private static final Set<String> CHARSETS = Set.of("utf-8", "us-ascii");

    private RequestBody() {}

    /**
     * The body, for which there is room.
     *
     * @throws Refusal with status 415, 413, 408 or 503
     */
    static byte[] json(Context ctx, BodyGate.Admitted room) throws IOException {
        requireJson(ctx.contentType(), ctx.header("Content-Encoding"));
        long declared = ctx.req().getContentLengthLong();
        if (declared <= MOST_BYTES) {
            room.require(Math.max(0, declared));
        }
        if (declared > MOST_BYTES && "100-continue".equalsIgnoreCase(ctx.header("Expect"))) {
            throw tooLarge();
        }
        // In blocks, not in one array that doubles: a body that turns out too long is let go as soon as it does.
        List<byte[]> blocks = new ArrayList<>();
        InputStream in = ctx.req().getInputStream();
        long received = 0;
        long startNanos = System.nanoTime();
        byte[] block = new byte[BLOCK];
        int filled = 0;
        // By what has come, not by whole blocks: a body that trickles in must not hold its thread for long.
        int read = in.read(block);
        while (read >= 0 && received <= MOST_DISCARDED) {
            received += read;
            filled += read;
            requirePace(received, System.nanoTime() - startNanos);
            if (declared <= MOST_BYTES && received <= MOST_BYTES) {
                room.require(received);
                if (filled == block.length) {
                    blocks.add(block);
                    block = new byte[BLOCK];
                    filled = 0;
                }
            } else {
                blocks.clear();
                filled = 0;
            }
            read = in.read(block, filled, block.length - filled);
        }
        blocks.add(Arrays.copyOf(block, filled));
        if (received > MOST_BYTES) {
            throw tooLarge();
        }
        return joined(blocks, (int) received);
    }

    static void requirePace(long received, long nanos) {
        double seconds = nanos / 1e9;
        if (seconds > GRACE_S && received < LEAST_BYTES_PER_S * seconds) {
            throw new Refusal(
                    ProblemKind.TOO_SLOW,
                    "The body came slower than " + LEAST_BYTES_PER_S / 1024 + " KiB a second.",
                    List.of(),
                    Map.of("Connection", "close"));
        }
    }

    private static byte[] joined(List<byte[]> blocks, int length) {
        byte[] body = new byte[length];
        int at = 0;
        for (byte[] block : blocks) {
            System.arraycopy(block, 0, body, at, block.length);
            at += block.length;
        }
        return body;
    }

    private static Refusal tooLarge() {
        String limit = MOST_BYTES / (1024 * 1024) + " MiB";
        return new Refusal(
                ProblemKind.TOO_LARGE,
                "The body is longer than " + limit + ".",
                List.of(new InputProblem(
                        "too-large",
                        "The body is longer than " + limit + ".",
                        "",
                        "Leave out what is not needed, or thin the route line.")),
                Map.of("Connection", "close"));
    }

    private static void requireJson(String contentType, String encoding) {
        if (encoding != null && !encoding.equalsIgnoreCase("identity")) {
            throw new Refusal(ProblemKind.MEDIA_TYPE, "Content-Encoding is not taken. Send the JSON as it is.");
        }
        String[] parts = (contentType == null ? "" : contentType)
                .toLowerCase(Locale.ROOT)
                .split(";");
        boolean json = JSON_TYPES.contains(parts[0].strip());
        for (int i = 1; i < parts.length; i++) {
            String parameter = parts[i].strip().replace("\"", "");
            json &= !parameter.startsWith("charset=") || CHARSETS.contains(parameter.substring(8));
        }
        if (!json) {
            throw new Refusal(
                    ProblemKind.MEDIA_TYPE,
                    "Send the body as JSON in UTF-8, with the header Content-Type: application/json.",
                    List.of(),
                    Map.of("Accept-Post", "application/json, application/geo+json"));
        }
    }
}
