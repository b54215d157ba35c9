package org.cresthaul.exchange.osm;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.cresthaul.exchange.track.PlainText;

/** Tags as a person reads them. */
final class TagText {
    private static final int LONGEST = 1800;
    private static final int LONGEST_NAME = 100;

    private TagText() {}

    /** "bridge=yes; layer=1", in the order of the keys, in one line. */
    static String of(Map<String, String> tags) {
        return clipped(new TreeMap<>(tags)
                .entrySet().stream().map(t -> t.getKey() + "=" + t.getValue()).collect(Collectors.joining("; ")));
    }

    static String clipped(String text) {
        String plain = PlainText.of(text, LONGEST);
        return text.length() > LONGEST && plain.length() >= LONGEST - 1 ? plain + " ..." : plain;
    }

    /** What people call it, short enough for a name; empty where the map has none. */
    static String name(Map<String, String> tags) {
        String name = tags.getOrDefault("name", tags.getOrDefault("ref", ""));
        return PlainText.of(name, LONGEST_NAME);
    }
}
