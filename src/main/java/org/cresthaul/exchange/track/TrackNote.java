package org.cresthaul.exchange.track;

import org.cresthaul.units.Worded;

/**
 * Something found in a track that a person has to know of before the route is kept.
 *
 * @param code short stable word: "spike", "gap"
 * @param line of the file, from 1; 0 where there is none to name
 * @param point of the file, from 1; 0 where none is meant
 */
public record TrackNote(String file, Done done, String code, int line, int point, String message) {
    /** What became of it. */
    public enum Done implements Worded {
        /** The line was changed. */
        CORRECTED("corrected"),
        /** The file's line was kept as it is; a person should look. */
        DOUBTFUL("doubtful"),
        /** Something in the file was not taken. */
        LEFT_OUT("left out");

        private final String word;

        Done(String word) {
            this.word = word;
        }

        @Override
        public String word() {
            return word;
        }
    }

    static TrackNote at(String file, Done done, String code, TrackPoint point, String message) {
        return new TrackNote(file, done, code, point.line(), point.number(), message);
    }
}
