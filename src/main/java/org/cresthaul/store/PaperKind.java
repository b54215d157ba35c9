package org.cresthaul.store;

import java.util.Arrays;
import org.cresthaul.units.Worded;

/** What paper was issued. */
public enum PaperKind implements Worded {
    RUN_SHEET("runsheet"),
    STATEMENT("statement");

    private final String word;

    PaperKind(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }

    /** @throws IllegalArgumentException when there is no such kind */
    public static PaperKind of(String word) {
        return Arrays.stream(values())
                .filter(k -> k.word.equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no kind of paper: " + word));
    }
}
