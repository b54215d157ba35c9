package org.cresthaul.store;

import java.util.Arrays;
import java.util.List;
import org.cresthaul.units.Worded;

/** What a file of a project is. */
public enum FileKind implements Worded {
    ROUTE("route"),
    RIG("rig"),
    LIMITS("limits"),
    BASE_MAP("basemap");

    private final String word;

    FileKind(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }

    public static List<String> words() {
        return Arrays.stream(values()).map(FileKind::word).toList();
    }

    /** @throws IllegalArgumentException when there is no such kind */
    public static FileKind of(String word) {
        return Arrays.stream(values())
                .filter(k -> k.word.equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no kind of file: " + word));
    }
}
