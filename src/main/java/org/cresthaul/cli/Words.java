package org.cresthaul.cli;

/** Words of the report's keys, as people read them. */
final class Words {
    private Words() {}

    /** With a capital first letter. */
    static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** Breaks a sentence into lines of at most {@code width} characters where it has spaces. */
    static String wrapped(String text, String indent, int width) {
        StringBuilder lines = new StringBuilder();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            if (line.length() > 0 && line.length() + 1 + word.length() > width) {
                lines.append(indent).append(line).append('\n');
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        return lines.append(indent).append(line).append('\n').toString();
    }

    /** A unit, and what of it where that has a name. */
    static String part(String unit, String part) {
        return part.isEmpty() ? unit : unit + ", " + part;
    }
}
