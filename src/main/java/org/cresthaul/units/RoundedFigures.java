package org.cresthaul.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Quantities as reports and papers print them: lengths, to 1/8 in or 1 mm, loads, places. A rounded figure never looks
 * safer than the number behind it: a clearance is rounded down along the number line (1.99 in never reads 2 in; −1.01
 * in reads −1 1/8 in), what is required or must be raised is rounded up.
 */
public class RoundedFigures {
    private static final double INCH_M = 0.0254;
    private static final double EIGHTH_M = INCH_M / 8;
    private static final int FINEST_PARTS = 64;
    private static final double MILLIMETER_M = 0.001;
    private static final double TENTH_M = 1e-4;
    private static final double FOOT_M = 0.3048;
    private static final double MILE_M = 1609.344;
    private static final double POUND_KG = 0.45359237;
    /** Counts of a step closer together than this are the same count: the noise of binary fractions. */
    private static final double NOISE = 1e-9;

    private final UnitSystem units;

    public RoundedFigures(UnitSystem units) {
        this.units = units;
    }

    /** A gap, rounded down. */
    public final String clearance(double meters) {
        return ofSteps(down(meters, stepM()));
    }

    /** A gap and what it must reach, as they are read beside each other. */
    public record GapAndNeed(String gap, String need) {}

    /**
     * A gap rounded down and its need rounded up, by one step: the usual one, unless a gap that meets its need would
     * read as if it did not. Then the step is halved down to 1/64 in, and is 0.1 mm after that.
     *
     * @param gapM to 0.1 mm, as reports have it, or it may still read below a need that it meets by less than that
     */
    public final GapAndNeed against(double gapM, double needM) {
        if (units == UnitSystem.US_CUSTOMARY) {
            for (int parts = 8; parts <= FINEST_PARTS; parts *= 2) {
                double stepM = INCH_M / parts;
                double gap = down(gapM, stepM);
                double need = up(needM, stepM);
                if (gap >= need || gapM < needM) {
                    return new GapAndNeed(
                            new Length(gap * stepM).inFeetAndInches(parts),
                            new Length(need * stepM).inFeetAndInches(parts));
                }
            }
        } else if (gapM < needM || down(gapM, MILLIMETER_M) >= up(needM, MILLIMETER_M)) {
            return new GapAndNeed(clearance(gapM), required(needM));
        }
        return new GapAndNeed(tenths(down(gapM, TENTH_M)), tenths(up(needM, TENTH_M)));
    }

    /** Whether a gap rounded down reads as less than its need rounded up. */
    public final boolean readsShort(double gapM, double needM) {
        return down(gapM, stepM()) < up(needM, stepM());
    }

    private static double down(double meters, double stepM) {
        return Math.floor(meters / stepM + NOISE);
    }

    private static double up(double meters, double stepM) {
        return Math.ceil(meters / stepM - NOISE);
    }

    private static String tenths(double count) {
        return Decimals.fixed(count / 10, 1) + " mm";
    }

    /** What a gap must reach, or how far to raise: rounded up. */
    public final String required(double meters) {
        return ofSteps(up(meters, stepM()));
    }

    /**
     * How far to raise, rounded up, but never farther than it goes: where the usual step would say more, a finer one
     * down to 1/64 in; and where that would, too, how far it goes, rounded down.
     *
     * @param endM how far it goes, meters, or null where that is not known
     */
    public final String raise(double meters, Double endM) {
        String size = raiseSize(meters, endM);
        return isAsFarAsItGoes(meters, endM) ? size + ", as far as it goes" : size;
    }

    /** The same without saying that it is as far as it goes. */
    public final String raiseSize(double meters, Double endM) {
        if (endM == null || up(meters, stepM()) * stepM() <= endM + NOISE) {
            return required(meters);
        }
        if (units == UnitSystem.METRIC) {
            return tenths(down(endM, TENTH_M));
        }
        for (int parts = 16; parts <= FINEST_PARTS; parts *= 2) {
            double stepM = INCH_M / parts;
            if (up(meters, stepM) * stepM <= endM + NOISE) {
                return new Length(up(meters, stepM) * stepM).inFeetAndInches(parts);
            }
        }
        double stepM = INCH_M / FINEST_PARTS;
        return new Length(down(endM, stepM) * stepM).inFeetAndInches(FINEST_PARTS);
    }

    /** Whether no step that raises enough ends where it goes. */
    public final boolean isAsFarAsItGoes(double meters, Double endM) {
        if (endM == null) {
            return false;
        }
        double finestM = units == UnitSystem.METRIC ? MILLIMETER_M : INCH_M / FINEST_PARTS;
        return up(meters, finestM) * finestM > endM + NOISE;
    }

    /** A dimension that decides nothing, to the nearest step. */
    public final String dimension(double meters) {
        return ofSteps(Math.rint(meters / stepM()));
    }

    /** A place along the road at a hazard: "12 ft 3 in past the point", to 1 in or 1 cm. */
    public final String alongRoad(double meters) {
        String size = alongRoadSize(meters);
        return size.isEmpty() ? "at the point" : size + (meters < 0 ? " before the point" : " past the point");
    }

    /** How far from the point, without saying to which side; empty at the point. */
    public final String alongRoadSize(double meters) {
        double step = units == UnitSystem.US_CUSTOMARY ? 0.0254 : 0.01;
        double count = Math.rint(meters / step);
        if (count == 0) {
            return "";
        }
        Length size = new Length(Math.abs(count) * step);
        return units == UnitSystem.US_CUSTOMARY ? size.inFeetAndInches(1) : size.inMeters(2);
    }

    /** A length along the road that a result leans on: to 1 in or 1 cm, rounded up. */
    public final String distance(double meters) {
        double step = units == UnitSystem.US_CUSTOMARY ? 0.0254 : 0.01;
        Length length = new Length(Math.ceil(meters / step - NOISE) * step);
        return units == UnitSystem.US_CUSTOMARY ? length.inFeetAndInches(1) : length.inMeters(2);
    }

    /** How far axles are apart: to 1 in or 1 cm, rounded down, since closer axles are allowed less. */
    public final String spacing(double meters) {
        return units == UnitSystem.US_CUSTOMARY
                ? new Length(down(meters, INCH_M) * INCH_M).inFeetAndInches(1)
                : new Length(down(meters, 0.01) * 0.01).inMeters(2);
    }

    /** How far something goes before it must stop: whole feet or 0.1 m, rounded down. */
    public final String way(double meters) {
        return units == UnitSystem.US_CUSTOMARY
                ? fixed(Math.floor(meters / FOOT_M + NOISE), 0, RoundingMode.FLOOR) + " ft"
                : fixed(Math.floor(meters * 10 + NOISE) / 10, 1, RoundingMode.FLOOR) + " m";
    }

    /** Distance from the start of the route, to the hundredth: "12.67 mi", "20.39 km". */
    public final String chainage(double meters) {
        return units == UnitSystem.US_CUSTOMARY
                ? fixed(meters / MILE_M, 2, RoundingMode.HALF_UP) + " mi"
                : fixed(meters / 1000, 2, RoundingMode.HALF_UP) + " km";
    }

    /** A load: whole pounds, or tens of kilograms; nearest. */
    public final String weight(double kilograms) {
        return (kilograms < 0 ? "-" : "") + mass(Math.rint(steps(Math.abs(kilograms))));
    }

    /** What is left to a limit, rounded down along the number line; negative where the limit is not kept. */
    public final String weightLeft(double kilograms) {
        double count = Math.floor(steps(kilograms) + NOISE);
        return (count < 0 ? "-" : "") + mass(Math.abs(count));
    }

    private double steps(double kilograms) {
        return kilograms / weightStepKg();
    }

    private double weightStepKg() {
        return units == UnitSystem.US_CUSTOMARY ? POUND_KG : 10;
    }

    private String mass(double steps) {
        return new Mass(steps * weightStepKg()).format(units);
    }

    /** A gauge pressure, to the nearest whole psi or 0.01 bar. */
    public final String pressure(double pascals) {
        return new Pressure(pascals).format(units);
    }

    /** The least pressure that may be set, to the next step up. */
    public final String pressureUp(double pascals) {
        return new Pressure(Math.ceil(pascals / Pressure.stepPa(units) - 1e-6) * Pressure.stepPa(units)).format(units);
    }

    /** The greatest pressure that may be set, to the next step down. */
    public final String pressureDown(double pascals) {
        return new Pressure(Math.floor(pascals / Pressure.stepPa(units) + 1e-6) * Pressure.stepPa(units)).format(units);
    }

    /** An angle to the tenth of a degree. */
    public final String angle(double radians) {
        return fixed(Math.toDegrees(radians), 1, RoundingMode.HALF_UP) + " deg";
    }

    /** A share in percent, rounded down to the tenth, after the noise of binary fractions is off. */
    public static String percentDown(double share) {
        return fixed(Math.floor(share * 1000 + 1e-9) / 10, 1, RoundingMode.HALF_UP) + " %";
    }

    /** A speed that must not be exceeded: whole 5 mph or 5 km/h, rounded down. */
    public final String speedDown(double metersPerSecond) {
        double unitMps = units == UnitSystem.US_CUSTOMARY ? MILE_M / 3600 : 1 / 3.6;
        return fixed(5 * Math.floor(metersPerSecond / unitMps / 5 + 1e-3), 0, RoundingMode.HALF_UP)
                + (units == UnitSystem.US_CUSTOMARY ? " mph" : " km/h");
    }

    /** A plain decimal number, the same under every locale, without a negative zero. */
    public static String fixed(double value, int decimals, RoundingMode rounding) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, rounding);
        return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
    }

    private double stepM() {
        return units == UnitSystem.US_CUSTOMARY ? EIGHTH_M : MILLIMETER_M;
    }

    private String ofSteps(double count) {
        Length length = new Length(count * stepM());
        if (units == UnitSystem.US_CUSTOMARY) {
            return length.inFeetAndInches(8);
        }
        return Math.abs(count) < 1000 ? length.inMillimeters() : length.inMeters(3);
    }
}
