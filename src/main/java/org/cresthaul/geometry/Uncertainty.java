package org.cresthaul.geometry;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Half-width of a 95 % interval, with where it comes from.
 *
 * @param valueM meters, not negative
 * @param source in words: who measured, how, or "default"
 * @param date when it was measured, where that is known
 */
public record Uncertainty(double valueM, String source, Optional<LocalDate> date) {
    /** Of which nobody says when it was measured. */
    public Uncertainty(double valueM, String source) {
        this(valueM, source, Optional.empty());
    }

    public Uncertainty {
        Finite.requireAtLeast("valueM", 0, valueM);
        if (source.isBlank()) {
            throw new IllegalArgumentException("an uncertainty needs a source");
        }
    }
}
