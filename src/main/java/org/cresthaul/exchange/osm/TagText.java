package org.cresthaul.exchange.osm;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Tags as a person reads them. */
final class TagText {
    private static final int LONGEST = 1800;

    private TagText() {}

    /** "bridge=yes; layer=1", in the order of the keys, in one line. */
    static String of(Map<String, String> tags) {
        return clipped(new TreeMap<>(tags)
                .entrySet().stream().map(t -> t.getKey() + "=" + t.getValue()).collect(Collectors.joining("; ")));
    }

    static String clipped(String text) {
        String plain = text.replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
        return plain.length() > LONGEST ? plain.substring(0, LONGEST) + " ..." : plain;
    }

    /** What people call it, short enough for a name; empty where the map has none. */
    static String name(Map<String, String> tags) {
        String name = tags.getOrDefault("name", tags.getOrDefault("ref", ""));
        String plain = name.replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
        return plain.length() > 100 ? plain.substring(0, 100) : plain;
    }
}
