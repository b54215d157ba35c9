package org.cresthaul.units;

import java.util.Locale;
import java.util.Optional;

/** Which known word somebody may have meant. */
public final class NearestWord {
    private NearestWord() {}

    /** The nearest of the known ones, two letters off at most and fewer than it has. */
    public static Optional<String> of(String key, Iterable<String> known) {
        String best = null;
        int least = 3;
        for (String word : known) {
            int edits = edits(key.toLowerCase(Locale.ROOT), word.toLowerCase(Locale.ROOT));
            if (edits < least && edits < word.length()) {
                least = edits;
                best = word;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Letters to insert, drop or change to get from one key to the other (Levenshtein); 3 stands for more. */
    private static int edits(String a, String b) {
        if (Math.abs(a.length() - b.length()) > 2) {
            return 3;
        }
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return Math.min(3, row[b.length()]);
    }
}
