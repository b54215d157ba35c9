package org.cresthaul.units;

import java.math.BigDecimal;

/**
 * What is plausible for one field.
 *
 * @param leastM smallest length taken, meters
 * @param mostM largest, meters
 */
public record LengthLimits(double leastM, double mostM) {
    public LengthLimits {
        Plausible.require("leastM", -Length.MOST_M, Length.MOST_M, leastM);
        Plausible.require("mostM", leastM, Length.MOST_M, mostM);
    }

    /** "between 0.2 m and 1.2 m" */
    public String inWords() {
        return "between " + shown(leastM) + " and " + shown(mostM);
    }

    private static String shown(double meters) {
        return new BigDecimal(Decimals.fixed(meters, 3)).stripTrailingZeros().toPlainString() + " m";
    }
}
