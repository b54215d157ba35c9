package org.cresthaul.plan;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.cresthaul.units.Length;
import org.cresthaul.units.Mass;
import org.cresthaul.units.UnitSystem;

/** Figures within sentences: in both systems, since a sentence is not set again for every reader. */
public final class Texts {
    private static final double TENTH_IN_M = 0.0254 / 10;
    private static final double HAIR = 1e-6;

    private Texts() {}

    /** "1.9 in (49 mm)", both rounded up: what is lacking. */
    public static String lacking(double meters) {
        double inches = Math.ceil(meters / TENTH_IN_M - HAIR) / 10;
        return number(inches) + " in (" + number(Math.ceil(meters * 1000 - HAIR)) + " mm)";
    }

    /** "1,350 kg (2,976 lb)" */
    public static String mass(double kilograms) {
        Mass mass = new Mass(kilograms);
        return mass.format(UnitSystem.METRIC) + " (" + mass.format(UnitSystem.US_CUSTOMARY) + ")";
    }

    /** "11 ft 3 in (3.43 m)" */
    public static String length(double meters) {
        Length length = new Length(meters);
        return length.inFeetAndInches(1) + " (" + length.inMeters(2) + ")";
    }

    /** "1/2 in", "0.6 in" */
    static String inches(double meters) {
        return meters == 0.0127 ? "1/2 in" : number(meters / 0.0254) + " in";
    }

    /** At most two decimals, none that say nothing. */
    static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** Where a kind of spare is looked for. */
    public static String side(SpareKind kind) {
        return switch (kind) {
            case GROUND -> "over the ground";
            case OVERHEAD -> "overhead";
            case UNITS -> "between the units";
            case CORNER -> "beside";
            case LOAD -> "axle loads";
            case RAISED -> "raised";
        };
    }
}
