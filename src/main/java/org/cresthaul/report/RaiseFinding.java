package org.cresthaul.report;

import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * Raise above the notch at the deck front, and of the rear by hand.
 *
 * @param clearanceM the gap that governs then
 * @param requiredM margin and uncertainty of that gap, where it is then
 * @param frontEndM how far over this notch the hydraulics raise the deck front at most, or null where nobody says
 * @param rearEndM how far the rear can be raised by hand at most, likewise
 */
public record RaiseFinding(
        double frontM,
        double rearM,
        @Rounded(Rounding.LENGTH_DOWN) double clearanceM,
        @Rounded(Rounding.LENGTH_UP) double requiredM,
        @Rounded(Rounding.LIMIT_NEAR) Double frontEndM,
        @Rounded(Rounding.LIMIT_NEAR) Double rearEndM) {
    /** One whose ends are not known. */
    public RaiseFinding(double frontM, double rearM, double clearanceM, double requiredM) {
        this(frontM, rearM, clearanceM, requiredM, null, null);
    }

    /** A raise that was found to leave this gap. */
    public static RaiseFinding leaving(double frontM, double rearM, GapFinding governing) {
        return new RaiseFinding(frontM, rearM, governing.valueM(), governing.requiredM());
    }

    /** What governs then leaves, as a share of its need. */
    public double share() {
        return Finding.shareOfLength(clearanceM - requiredM, requiredM);
    }

    public RaiseFinding endingAt(Double frontEnd, Double rearEnd) {
        return new RaiseFinding(frontM, rearM, clearanceM, requiredM, frontEnd, rearEnd);
    }
}
