package org.cresthaul.language;

/** Letters for things in their order: A to Z, then AA, AB and so on, no two alike. The page letters in the same way. */
public final class Letters {
    private static final int COUNT = 26;

    private Letters() {}

    /** @param index from 0 */
    public static String of(int index) {
        if (index < 0) {
            throw new IllegalArgumentException("index " + index + " is below 0");
        }
        String last = String.valueOf((char) ('A' + index % COUNT));
        return index < COUNT ? last : of(index / COUNT - 1) + last;
    }
}
