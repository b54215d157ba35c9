package org.cresthaul.exchange.track;

/** Texts of other programs' files as a route file takes them: one line, no control characters, not too long. */
public final class PlainText {
    private PlainText() {}

    /** @param longest in UTF-16 units; a character is never cut in two */
    public static String of(String text, int longest) {
        String one = text.replaceAll("[\\x00-\\x20\\x7f-\\xa0\\s\\u2028\\u2029]+", " ")
                .strip();
        if (one.length() <= longest) {
            return one;
        }
        boolean between = Character.isHighSurrogate(one.charAt(longest - 1));
        return one.substring(0, between ? longest - 1 : longest).strip();
    }
}
