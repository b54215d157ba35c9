package org.cresthaul.route;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.units.Worded;

/**
 * Where a hazard comes from that nobody on this haul has measured, and what became of it. While it is open, nothing at
 * its place is clear, whatever the number.
 *
 * @param source who reported it
 * @param object what it is called there: "way 55547421"
 * @param date as of when, where the source says
 * @param license under which its words may be passed on, where there is one
 * @param raw what the source says, word for word
 * @param by who dismissed it
 * @param why it was dismissed
 * @param rails what the source says of a rail crossing
 * @param sketch the road there as an elevation raster has it
 */
public record Candidate(
        Source source,
        String object,
        Optional<LocalDate> date,
        Optional<String> license,
        String raw,
        State state,
        Optional<String> by,
        Optional<String> why,
        Rails rails,
        Optional<Sketch> sketch) {
    /** What a candidate comes from that stands for what a map does not have. */
    public static final String NO_OBJECT = "nothing";

    /**
     * What a source says of a rail crossing: enough to order a survey by, and counted nowhere else.
     *
     * @param tracks how many
     * @param angleRad between road and rails, at most a right angle
     * @param lowGroundSign whether it has a sign of low ground clearance; where it has none nothing is known
     */
    public record Rails(OptionalInt tracks, OptionalDouble angleRad, boolean lowGroundSign) {
        static final Rails UNKNOWN = new Rails(OptionalInt.empty(), OptionalDouble.empty(), false);
    }

    /** Who reports. */
    public enum Source implements Worded {
        MAP("map"),
        INVENTORY("inventory"),
        RASTER("raster"),
        PERSON("person");

        private final String word;

        Source(String word) {
            this.word = word;
        }

        @Override
        public String word() {
            return word;
        }
    }

    /** What became of it. */
    public enum State implements Worded {
        OPEN("open"),
        SURVEYED("surveyed"),
        DISMISSED("dismissed");

        private final String word;

        State(String word) {
            this.word = word;
        }

        @Override
        public String word() {
            return word;
        }
    }

    public Candidate {
        if (object.isBlank() || state == State.DISMISSED && (by.isEmpty() || why.isEmpty())) {
            throw new IllegalArgumentException("a candidate needs its object, and a dismissed one by whom and why");
        }
    }

    /** One line: who reports it, as of when, in which words. */
    public Sentence told() {
        Sentence reported = Sentence.of(Code.REPORTED_BY).with("origin", origin());
        return raw.isEmpty()
                ? reported
                : Sentence.of(Code.REPORTED_RAW).with("report", reported).with("words", raw);
    }

    /** Who reports it, as of when: "a map, node 5, as of 2026-01-02". */
    public Sentence origin() {
        Sentence by = Sentence.of(
                        switch (source) {
                            case MAP -> object.equals(NO_OBJECT) ? Code.ORIGIN_NOT_IN_MAP : Code.ORIGIN_MAP;
                            case INVENTORY -> Code.ORIGIN_INVENTORY;
                            case RASTER -> Code.ORIGIN_RASTER;
                            case PERSON -> Code.ORIGIN_PERSON;
                        })
                .with("object", object);
        return date.map(d -> Sentence.of(Code.ORIGIN_AS_OF).with("origin", by).with("day", d.toString()))
                .orElse(by);
    }
}
