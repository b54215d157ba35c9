package org.cresthaul.report;

import org.cresthaul.language.Sentence;
import org.cresthaul.units.Worded;

/** One caution of a hazard, and in which of its cells it belongs. */
public record Caution(Sentence text, When when) {
    /** What must happen for a caution to belong. */
    public enum When implements Worded {
        ALWAYS("always"),
        RAISED("raised"),
        /** The opposing lane is used. */
        ESCORTED("escorts");

        private final String word;

        When(String word) {
            this.word = word;
        }

        @Override
        public String word() {
            return word;
        }

        @Override
        public String toString() {
            return word;
        }

        public boolean happensIn(ReportCell cell) {
            return switch (this) {
                case ALWAYS -> true;
                case RAISED -> cell.raise() != null;
                case ESCORTED -> cell.corner() != null && cell.corner().escorts();
            };
        }
    }

    public static Caution always(Sentence text) {
        return new Caution(text, When.ALWAYS);
    }
}
