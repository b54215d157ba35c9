package org.cresthaul.sheet;

import java.util.List;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;

/**
 * One thing said on a paper, with where every figure in it comes from.
 *
 * @param text ready to be read
 * @param tick whether it is something to do and to tick off
 * @param source of what is no result of this program: a rule, or "common practice"; null for results
 * @param figures in the order in which they stand in the text
 * @param code what it is about; null where nothing depends on it
 * @param to how what {@code code} names is to be set, or null
 */
public record SheetLine(String text, boolean tick, Sentence source, List<Figure> figures, SheetTopic code, String to) {
    /** The source of what has none. */
    public static final Sentence PRACTICE = Sentence.of(Code.SOURCE_PRACTICE);

    public SheetLine {
        figures = List.copyOf(figures);
    }

    SheetLine(String text, boolean tick, Sentence source, List<Figure> figures) {
        this(text, tick, source, figures, null, null);
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

    /** Something a rule asks for, to be read. */
    static SheetLine rule(String text, Sentence source) {
        return new SheetLine(text, false, source, List.of());
    }

    /** Something a rule asks for, to be done. */
    static SheetLine required(String text, Sentence source) {
        return new SheetLine(text, true, source, List.of());
    }

    /** The same line, of which a rule is about {@code code}. */
    SheetLine as(SheetTopic code) {
        return as(code, null);
    }

    /** The same line, which sets {@code code}. */
    SheetLine as(SheetTopic code, String to) {
        return new SheetLine(text, tick, source, figures, code, to);
    }

    /** A rule that is cited the same in every language. */
    static Sentence cited(String citation) {
        return Sentence.of(Code.SOURCE_CITED).with("citation", citation);
    }

    /** Whether nothing but common practice stands behind it. */
    public boolean restsOnPractice() {
        return PRACTICE.equals(source);
    }

    /** The same line as a text around it has it. */
    SheetLine within(String around) {
        return new SheetLine(around, tick, source, figures, code, to);
    }

    /** The same line from a source. */
    SheetLine from(Sentence source) {
        return new SheetLine(text, tick, source, figures, code, to);
    }

    /**
     * A figure and its origin.
     *
     * @param text as it stands in the line, rounded to the side that does not look safer
     * @param value meters, radians, kilograms, pascals, seconds or meters per second
     * @param from "plan" or "report" and a JSON pointer (RFC 6901) into it, such as "plan:/steps/3/chainageM"; "rig:"
     *     or "route:" and what of the file it is, in words, for what is declared there
     */
    public record Figure(String text, double value, String from) {}
}
