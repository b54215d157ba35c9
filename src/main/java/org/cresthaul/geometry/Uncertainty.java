package org.cresthaul.geometry;

/**
 * Half-width of a 95 % interval, with where it comes from.
 *
 * @param valueM metres, not negative
 * @param source in words: who measured, how, or "default"
 */
public record Uncertainty(double valueM, String source) {
    public Uncertainty {
        Finite.requireAtLeast("valueM", 0, valueM);
        if (source.isBlank()) {
            throw new IllegalArgumentException("an uncertainty needs a source");
        }
    }
}
