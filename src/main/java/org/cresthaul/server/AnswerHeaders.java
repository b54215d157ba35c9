package org.cresthaul.server;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.paper.PaperStyle;

/** The headers that every answer carries, problem or not. */
final class AnswerHeaders {
    private final Map<String, String> headers = new LinkedHashMap<>();

    AnswerHeaders(Optional<Tiles> tiles) {
        String images = tiles.map(t -> " " + t.source()).orElse("");
        headers.put(
                "Content-Security-Policy",
                // A paper opened from the page is a blob under the page's policy: its one style sheet is let in by its
                // hash.
                "default-src 'self'; style-src 'self' " + PaperStyle.source() + "; img-src 'self' data:" + images
                        + "; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'");
        headers.put("X-Content-Type-Options", "nosniff");
        headers.put("Referrer-Policy", "no-referrer");
        headers.put("Cross-Origin-Resource-Policy", "same-origin");
        headers.put("Cache-Control", "no-cache");
    }

    Map<String, String> all() {
        return headers;
    }
}
