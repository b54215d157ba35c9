package org.cresthaul.route;

/**
 * What a height sign over a road says, against what was measured there. Signs are set low on purpose, by rules that
 * differ; a surveyed structure can so be compared with the sign a driver will see. Meters in, meters out.
 */
public final class SignedHeight {
    private static final double INCH_M = 0.0254;
    /** A measured height that is a whole step is not pushed one step down by rounding. */
    private static final double HAIR = 1e-9;

    private SignedHeight() {}

    /** United Kingdom, feet and inches: 3 in less, then down to 3 in steps (Traffic Signs Manual ch. 4, 7.11). */
    public static double britishM(double measuredM) {
        return Math.floor((measuredM / INCH_M - 3) / 3 + HAIR) * 3 * INCH_M;
    }

    /** United Kingdom, metric: 0.08 m less, then down to 0.1 m steps (Traffic Signs Manual ch. 4, 7.12). */
    public static double britishMetricM(double measuredM) {
        return Math.floor((measuredM - 0.08) / 0.1 + HAIR) / 10;
    }

    /** Texas: 3 in less (TxDOT sign manual). */
    public static double texanM(double measuredM) {
        return measuredM - 3 * INCH_M;
    }

    /**
     * Whether a low-clearance sign (W12-2) is required: less than 12 in above the statutory height of vehicles (MUTCD
     * 2009, 2C.27).
     */
    public static boolean isW12Required(double clearanceM, double statutoryHeightM) {
        return clearanceM < statutoryHeightM + 12 * INCH_M - HAIR;
    }
}
