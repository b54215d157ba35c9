package org.cresthaul.rig;

import org.cresthaul.units.Worded;

/**
 * A unit of a combination: what it is, and which of its kind.
 *
 * @param number the front one of its kind is 1
 */
public record UnitName(Kind kind, int number) implements Worded {
    public static final UnitName TRACTOR = new UnitName(Kind.TRACTOR, 1);
    public static final UnitName TRAILER = new UnitName(Kind.TRAILER, 1);
    public static final UnitName BOOSTER = new UnitName(Kind.BOOSTER, 1);

    /** What a unit is, front to rear. */
    public enum Kind {
        TRACTOR("tractor"),
        /** A dolly that rides on the unit ahead and carries the next kingpin on a fifth wheel of its own. */
        JEEP("jeep"),
        TRAILER("trailer"),
        BOOSTER("booster");

        private final String word;

        Kind(String word) {
            this.word = word;
        }
    }

    public UnitName {
        if (number < 1) {
            throw new IllegalArgumentException("units are counted from 1, was " + number);
        }
    }

    public static UnitName jeep(int number) {
        return new UnitName(Kind.JEEP, number);
    }

    public static UnitName booster(int number) {
        return new UnitName(Kind.BOOSTER, number);
    }

    /** The word used in files and on screens: "jeep", "jeep 2". */
    @Override
    public String word() {
        return number == 1 ? kind.word : kind.word + " " + number;
    }

    /** The same in a sentence: "the jeep", "jeep 2". */
    public String told() {
        return number == 1 ? "the " + kind.word : word();
    }

    @Override
    public String toString() {
        return word();
    }

    /** Whether no raise at the trailer moves it. */
    public boolean isAheadOfTrailer() {
        return kind == Kind.TRACTOR || kind == Kind.JEEP;
    }
}
