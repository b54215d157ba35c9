package org.cresthaul.language;

import java.util.Collection;
import java.util.List;

/** What is said, as English has it. */
public final class English {
    private English() {}

    public static List<String> of(Collection<Sentence> sentences) {
        return sentences.stream().map(Sentence::toString).toList();
    }
}
