package org.cresthaul.server;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A tile server for the base map of the page, when one is set up.
 *
 * @param url with {z}, {x} and {y}, and {s} at the front of the host when it has several
 * @param attribution whom to thank, shown on the map
 */
public record Tiles(String url, String attribution) {
    /** No character that could end or add to a directive of the content security policy. */
    private static final Pattern ADDRESS =
            Pattern.compile("(https?://)(\\{s}\\.)?([A-Za-z0-9.-]+(?::\\d{1,5})?)(/[A-Za-z0-9._~/?&=%{}@+-]*)");

    public Tiles {
        if (!ADDRESS.matcher(url).matches() || !url.contains("{z}") || !url.contains("{x}") || !url.contains("{y}")) {
            throw new IllegalArgumentException("not a tile address: \"" + url + "\". Write it like"
                    + " https://tiles.example.org/{z}/{x}/{y}.png");
        }
        if (attribution.isBlank()) {
            throw new IllegalArgumentException("a tile address needs its attribution");
        }
    }

    /** Where images may come from, as a source of the content security policy. */
    String source() {
        Matcher address = ADDRESS.matcher(url);
        if (!address.matches()) {
            throw new IllegalStateException(url);
        }
        return address.group(1) + (address.group(2) == null ? "" : "*.") + address.group(3);
    }
}
