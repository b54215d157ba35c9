package org.cresthaul.plan;

import java.util.List;

/**
 * One thing said on a paper, with where every figure in it comes from.
 *
 * @param text ready to be read
 * @param tick whether it is something to do and to tick off
 * @param source of what is no result of this program: a rule, or "common practice"; null for results
 * @param figures in the order in which they stand in the text
 */
public record SheetLine(String text, boolean tick, String source, List<Figure> figures) {
    public static final String PRACTICE = "common practice, no source";

    public SheetLine {
        figures = List.copyOf(figures);
    }

    static SheetLine plain(String text) {
        return new SheetLine(text, false, null, List.of());
    }

    static SheetLine toDo(String text) {
        return new SheetLine(text, true, null, List.of());
    }

    static SheetLine practice(String text) {
        return new SheetLine(text, true, PRACTICE, List.of());
    }

    static SheetLine rule(String text, String source) {
        return new SheetLine(text, false, source, List.of());
    }

    /**
     * A figure and its origin.
     *
     * @param text as it stands in the line, rounded to the side that does not look safer
     * @param value metres, radians, kilograms, pascals, seconds or metres per second
     * @param from "plan" or "report" and a JSON pointer (RFC 6901) into it, such as "plan:/steps/3/chainageM"; "rig:" and
     *     what of the rig file it is, in words, for its dimensions
     */
    public record Figure(String text, double value, String from) {}
}
