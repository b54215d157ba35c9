package org.cresthaul.axleload;

/**
 * The federal bridge formula, W = 500 [LN / (N − 1) + 12 N + 36] pounds for N consecutive axles whose outer ones are L
 * feet apart (23 U.S.C. 127(a), 23 CFR 658.17(e)). L counts to the nearest foot; W to the nearest 500 lb, a tie down
 * (FHWA-HOP-19-028). Computed in whole numbers: nothing is lost in rounding.
 */
public final class BridgeFormula {
    static final double FOOT_M = 0.3048;
    /** Half a foot but for the noise of conversion from meters is half a foot. */
    private static final double NOISE_FT = 1e-6;

    private BridgeFormula() {}

    /**
     * Most that a run of axles may carry, pounds.
     *
     * @param feet between the outer axles, not negative
     * @param axles at least two
     */
    public static int pounds(int feet, int axles) {
        if (feet < 0 || axles < 2) {
            throw new IllegalArgumentException(
                    "a run needs two axles and a length: " + axles + " axles, " + feet + " ft");
        }
        // In steps of 500 lb the value is over / under.
        int under = axles - 1;
        int over = feet * axles + (12 * axles + 36) * under;
        return 500 * Math.floorDiv(2 * over - under + 2 * under - 1, 2 * under);
    }

    /** A length to the nearest foot; half a foot down, the side that allows less. */
    public static int feet(double lengthM) {
        return (int) Math.ceil(lengthM / FOOT_M - 0.5 - NOISE_FT);
    }
}
