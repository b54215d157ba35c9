package org.cresthaul.units;

import org.cresthaul.geometry.Finite;

/**
 * What is plausible for one field.
 *
 * @param leastM smallest length taken, metres
 * @param mostM largest, metres
 */
public record LengthLimits(double leastM, double mostM) {
    public LengthLimits {
        Finite.require("leastM", leastM);
        Finite.requireAtLeast("mostM", leastM, mostM);
    }

    /** "between 0.2 m and 1.2 m" */
    public String inWords() {
        return "between " + shown(leastM) + " and " + shown(mostM);
    }

    private static String shown(double metres) {
        return new java.math.BigDecimal(Decimals.fixed(metres, 3)).stripTrailingZeros().toPlainString() + " m";
    }
}
