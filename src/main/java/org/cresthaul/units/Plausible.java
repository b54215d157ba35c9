package org.cresthaul.units;

/** Guards the numbers inside a quantity. This package stands on no other, hence its own guard. */
final class Plausible {
    private Plausible() {}

    /** Throws with {@code name} when {@code value} is NaN or not between {@code least} and {@code most}. */
    static void require(String name, double least, double most, double value) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(name + " must be between " + least + " and " + most + ", was " + value);
        }
    }
}
