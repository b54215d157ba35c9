package org.cresthaul.server;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;

/** The page and its parts, read from the program's own jar. Only what a name spells out plainly is looked up. */
final class Pages {
    private static final String LEAFLET = "/META-INF/resources/webjars/leaflet/1.9.4/dist/";
    private static final Pattern PLAIN =
            Pattern.compile("(?:/[A-Za-z0-9_-]+)*/[A-Za-z0-9_-]+(?:\\.[A-Za-z0-9_-]+)*" + "\\.(?<ending>[a-z0-9]+)");
    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "css", "text/css; charset=utf-8",
            "json", "application/json",
            "webmanifest", "application/manifest+json",
            "map", "application/json",
            "svg", "image/svg+xml",
            "png", "image/png",
            "ico", "image/x-icon",
            "woff2", "font/woff2");

    /** Found once: they are in the jar and stay as they are. */
    private static final Map<String, Page> FOUND = new ConcurrentHashMap<>();

    private Pages() {}

    /**
     * A file that can be served.
     *
     * @param zipped the same by gzip, for whoever takes it so
     * @param tag of its bytes, as a header has it; weak, since it may be sent compressed or not
     */
    record Page(byte[] bytes, byte[] zipped, String type, String tag) {
        static Page of(byte[] bytes, String type) throws IOException {
            ByteArrayOutputStream zipped = new ByteArrayOutputStream();
            try (GZIPOutputStream zip = new GZIPOutputStream(zipped)) {
                zip.write(bytes);
            }
            return new Page(
                    bytes, zipped.toByteArray(), type, "W/\"" + RequestMembers.sha256(bytes, 0, bytes.length) + '"');
        }
    }

    /** The file at an address of this server, if there is one. */
    static Optional<Page> find(String path) throws IOException {
        Page known = FOUND.get(path);
        if (known != null) {
            return Optional.of(known);
        }
        String name = path.equals("/") ? "/index.html" : path;
        var plain = PLAIN.matcher(name);
        if (!plain.matches() || !TYPES.containsKey(plain.group("ending"))) {
            return Optional.empty();
        }
        String resource =
                name.startsWith("/lib/leaflet/") ? LEAFLET + name.substring("/lib/leaflet/".length()) : "/web" + name;
        try (InputStream in = Pages.class.getResourceAsStream(resource)) {
            if (in == null) {
                return Optional.empty();
            }
            Page page = Page.of(in.readAllBytes(), TYPES.get(plain.group("ending")));
            FOUND.put(path, page);
            return Optional.of(page);
        }
    }

    /** RFC 9110, 12.5.3; who gives gzip no weight does not take it. */
    static boolean takesZipped(String accepted) {
        return accepted != null
                && Stream.of(accepted.split(","))
                        .map(s -> s.replace(" ", ""))
                        .anyMatch(s -> s.equals("gzip") || s.startsWith("gzip;q=") && !s.matches("gzip;q=0(\\.0*)?"));
    }

    /** The file, or that it is still the one that the asker has. */
    static void serve(Context ctx) throws IOException {
        Page page = find(ctx.path()).orElseThrow(NotFoundResponse::new);
        ctx.header("ETag", page.tag());
        ctx.header("Vary", "Accept-Encoding");
        if (page.tag().equals(ctx.header("If-None-Match"))) {
            ctx.status(HttpStatus.NOT_MODIFIED);
        } else if (takesZipped(ctx.header("Accept-Encoding")) && page.zipped().length < page.bytes().length) {
            ctx.disableCompression();
            ctx.header("Content-Encoding", "gzip");
            ctx.contentType(page.type()).result(page.zipped());
        } else {
            ctx.disableCompression();
            ctx.contentType(page.type()).result(page.bytes());
        }
    }
}
