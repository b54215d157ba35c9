package org.cresthaul.geometry;

/** Guards for bare numbers on their way into a value. */
public final class Finite {
    private Finite() {}

    /** Returns {@code value}, or throws with {@code name} when it is NaN or infinite. */
    public static double require(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " must be a finite number, was " + value);
        }
        return value;
    }

    /** Returns {@code value}, or throws with {@code name} when it is not a finite number of at least {@code least}. */
    public static double requireAtLeast(String name, double least, double value) {
        require(name, value);
        if (value < least) {
            throw new IllegalArgumentException(name + " must be at least " + least + ", was " + value);
        }
        return value;
    }
}
