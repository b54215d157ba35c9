package org.cresthaul.server;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.LongConsumer;
import org.cresthaul.exchange.ImportFiles;
import org.cresthaul.units.InputProblem;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.MultiPart;
import org.eclipse.jetty.io.Content;

/**
 * Takes the body of an import, a form of files and fields ({@code multipart/form-data}), block by block: files go to a
 * folder as they come and are never held, fields are short. Not for sharing.
 */
final class ImportBody implements MultiPart.Parser.Listener {
    /** Longest body taken, bytes: a map extract among it. */
    static final long MOST_BYTES = 1L << 30;
    /** Most files, and most fields. */
    static final int MOST_FILES = 64;

    static final int MOST_FIELDS = 16;
    private static final int LONGEST_FIELD = 1024;
    private static final int LONGEST_HEADERS = 8 * 1024;
    private static final int BLOCK = 64 * 1024;

    private final Path folder;
    private final List<ImportFiles.Given> files = new ArrayList<>();
    private final Map<String, ImportFiles.Given> named = new HashMap<>();
    private final Map<String, String> fields = new HashMap<>();
    private final Map<String, String> disposition = new HashMap<>();
    private OutputStream out;
    private ByteArrayOutputStream field;
    private boolean whole;
    /** Why it is refused; the parser goes on after what its listener throws. */
    private Refusal failed;

    private ImportBody(Path folder) {
        this.folder = folder;
    }

    /**
     * What came.
     *
     * @param files those to import, in the order they were sent
     * @param update the route file that is to be brought up to date; null when none is
     */
    record Received(List<ImportFiles.Given> files, ImportFiles.Given update, Map<String, String> fields) {}

    /**
     * Receives it whole.
     *
     * @param progress is told how many bytes have come, and may refuse to go on
     * @throws Refusal with status 400, 408, 413, 415 or 503
     */
    static Received receive(Context ctx, Path folder, LongConsumer progress) {
        String type = ctx.contentType();
        String boundary = type != null && type.toLowerCase(Locale.ROOT).startsWith("multipart/form-data")
                ? MultiPart.extractBoundary(type)
                : null;
        if (boundary == null || boundary.isEmpty()) {
            throw new Refusal(
                    ProblemKind.MEDIA_TYPE,
                    "Send the files as a form: Content-Type: multipart/form-data, a part with a file name for each.",
                    List.of(),
                    Map.of("Accept-Post", "multipart/form-data"));
        }
        if (ctx.req().getContentLengthLong() > MOST_BYTES) {
            throw tooLarge();
        }
        ImportBody body = new ImportBody(folder);
        MultiPart.Parser parser = new MultiPart.Parser(boundary, body);
        parser.setMaxParts(MOST_FILES + MOST_FIELDS);
        parser.setPartHeadersMaxLength(LONGEST_HEADERS);
        try {
            body.take(ctx, parser, progress);
        } finally {
            body.closeQuietly();
        }
        return new Received(List.copyOf(body.files), body.named.get("update"), Map.copyOf(body.fields));
    }

    private void take(Context ctx, MultiPart.Parser parser, LongConsumer progress) {
        byte[] block = new byte[BLOCK];
        long received = 0;
        long startNanos = System.nanoTime();
        try {
            InputStream in = ctx.req().getInputStream();
            for (int n = in.read(block); n >= 0; n = in.read(block)) {
                received += n;
                RequestBody.requirePace(received, System.nanoTime() - startNanos);
                progress.accept(received);
                if (received > MOST_BYTES) {
                    throw tooLarge();
                }
                parser.parse(Content.Chunk.from(ByteBuffer.wrap(block, 0, n), false));
                refuseIfFailed();
            }
        } catch (IOException e) {
            throw new Refusal(ProblemKind.BAD_REQUEST, "The body broke off before its end.");
        }
        parser.parse(Content.Chunk.from(ByteBuffer.allocate(0), true));
        refuseIfFailed();
        if (!whole) {
            throw broken();
        }
    }

    private void refuseIfFailed() {
        if (failed != null) {
            throw failed;
        }
    }

    private void fail(Refusal why) {
        failed = failed == null ? why : failed;
    }

    private static Refusal broken() {
        return new Refusal(
                ProblemKind.BAD_REQUEST,
                "The body is not a whole form of at most " + MOST_FILES + " files and " + MOST_FIELDS + " fields.");
    }

    private static Refusal tooLarge() {
        String message = "The files are longer than " + (MOST_BYTES >> 20) + " MiB together.";
        return new Refusal(
                ProblemKind.TOO_LARGE,
                message,
                List.of(new InputProblem("too-large", message, "", "Cut the map extract to the route's surroundings.")),
                Map.of("Connection", "close"));
    }

    @Override
    public void onPartHeader(String name, String value) {
        if (name.equalsIgnoreCase("Content-Disposition")) {
            disposition.clear();
            HttpField.getValueParameters(value, disposition);
        }
    }

    /** Of the part that is read; empty where it has none, or one without a value. */
    private String parameter(String name) {
        return Objects.requireNonNullElse(disposition.get(name), "");
    }

    @Override
    public void onPartHeaders() {
        String name = parameter("name");
        if (disposition.containsKey("filename")) {
            if (files.size() + named.size() >= MOST_FILES) {
                fail(broken());
                return;
            }
            // The name that somebody gave is never one on this disk.
            Path path = folder.resolve(String.valueOf(files.size() + named.size()));
            ImportFiles.Given file = new ImportFiles.Given(parameter("filename"), path);
            if (name.equals("update")) {
                named.put(name, file);
            } else {
                files.add(file);
            }
            try {
                out = Files.newOutputStream(path);
            } catch (IOException e) {
                fail(noRoom());
            }
        } else {
            field = new ByteArrayOutputStream();
        }
    }

    @Override
    public void onPartContent(Content.Chunk chunk) {
        byte[] bytes = new byte[chunk.getByteBuffer().remaining()];
        chunk.getByteBuffer().get(bytes);
        if (out != null) {
            try {
                out.write(bytes);
            } catch (IOException e) {
                fail(noRoom());
            }
        } else if (field != null) {
            if (field.size() + bytes.length > LONGEST_FIELD) {
                fail(broken());
            } else {
                field.writeBytes(bytes);
            }
        }
    }

    private static Refusal noRoom() {
        return new Refusal(
                ProblemKind.BUSY,
                "There is no room for the files on this machine's disk.",
                List.of(),
                Map.of("Retry-After", "10"));
    }

    @Override
    public void onPartEnd() {
        if (field != null) {
            if (fields.size() >= MOST_FIELDS) {
                fail(broken());
            }
            fields.put(parameter("name"), field.toString(StandardCharsets.UTF_8));
        }
        closeQuietly();
        field = null;
        disposition.clear();
    }

    @Override
    public void onComplete() {
        whole = true;
    }

    @Override
    public void onFailure(Throwable failure) {
        fail(broken());
    }

    private void closeQuietly() {
        try {
            if (out != null) {
                out.close();
            }
        } catch (IOException e) {
            fail(noRoom());
        } finally {
            out = null;
        }
    }
}
