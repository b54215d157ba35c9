package org.cresthaul.units;

import java.util.List;

/**
 * A length, height or distance.
 *
 * @param meters in meters, within {@link #MOST_M} either way
 */
public record Length(double meters) {
    /** Longest length taken, meters. */
    public static final double MOST_M = 100_000;

    private static final double INCH_M = 0.0254;
    private static final double FOOT_M = 0.3048;
    private static final String KIND = "a length";
    private static final String REMEDY =
            "Write a length with its unit, such as \"13 ft 6 in\", \"3/4 in\", \"4.11 m\" or \"180 mm\".";

    public Length {
        Plausible.require("meters", -MOST_M, MOST_M, meters);
    }

    public static Length ofInches(double inches) {
        return new Length(inches * INCH_M);
    }

    /**
     * Reads a length in feet and inches (with fractions of an inch), feet, inches, meters, centimeters, millimeters or
     * kilometers: "13 ft 6 in", "13'6\"", "13' 6 1/2\"", "3/4 in", "-1 1/2 in", "4.11 m", "180 mm".
     *
     * @throws BadQuantity when the text is not such a length or beyond {@link #MOST_M}
     */
    public static Length parse(String text) throws BadQuantity {
        QuantityText quantity = QuantityText.of(text, KIND, REMEDY);
        List<QuantityText.Part> parts = quantity.parts();
        double size = parts.size() == 1 ? single(parts.get(0), text) : feetAndInches(parts.get(0), parts.get(1), text);
        return new Length(quantity.sign() * QuantityText.within(size, 0, MOST_M, text, "within 100 km either way"));
    }

    private static double single(QuantityText.Part part, String text) throws BadQuantity {
        if (isInch(part.unit())) {
            return part.value() * INCH_M;
        }
        if (isFoot(part.unit()) && !part.fraction()) {
            return part.value() * FOOT_M;
        }
        double unitM =
                switch (part.unit()) {
                    case "m" -> 1;
                    case "cm" -> 0.01;
                    case "mm" -> 0.001;
                    case "km" -> 1000;
                    default -> Double.NaN;
                };
        if (Double.isNaN(unitM) && !isFoot(part.unit())) {
            throw QuantityText.unknownUnit(part, text, "length", REMEDY);
        }
        if (part.fraction()) {
            throw new BadQuantity(
                    "not-a-quantity", QuantityText.quoted(text) + ": fractions are for inches only.", REMEDY);
        }
        QuantityText.refuseGrouping(part, text, REMEDY);
        return unitM < 1 ? part.value() / Math.rint(1 / unitM) : part.value() * unitM;
    }

    private static double feetAndInches(QuantityText.Part feet, QuantityText.Part inches, String text)
            throws BadQuantity {
        if (!isFoot(feet.unit()) || !isInch(inches.unit()) || !feet.whole()) {
            throw new BadQuantity(
                    "not-a-quantity",
                    QuantityText.quoted(text) + " is not a length: two numbers are whole feet and inches.",
                    REMEDY);
        }
        if (inches.value() >= 12) {
            throw new BadQuantity(
                    "not-a-quantity", QuantityText.quoted(text) + ": inches after feet stay below 12.", REMEDY);
        }
        return (feet.value() * 12 + inches.value()) * INCH_M;
    }

    private static boolean isFoot(String unit) {
        return unit.equals("ft") || unit.equals("'") || unit.equals("foot") || unit.equals("feet");
    }

    private static boolean isInch(String unit) {
        return unit.equals("in") || unit.equals("\"") || unit.equals("inch") || unit.equals("inches");
    }

    public double inches() {
        return meters / INCH_M;
    }

    public double feet() {
        return meters / FOOT_M;
    }

    /** For reading back without loss beyond 1 mm: feet and sixteenths of an inch, or meters with three decimals. */
    public String format(UnitSystem system) {
        return system == UnitSystem.METRIC ? inMeters(3) : inFeetAndInches(16);
    }

    /**
     * Feet, inches and a fraction in lowest terms: "13 ft 6 1/2 in", "-1 1/2 in", "3/4 in", "13 ft", "0 in".
     *
     * @param parts into how many parts an inch is divided: 1, 2, 4, 8, 16, 32 or 64; the text is within half a part
     */
    public String inFeetAndInches(int parts) {
        if (parts < 1 || parts > 64 || Integer.bitCount(parts) != 1) {
            throw new IllegalArgumentException("an inch is divided into 1, 2, 4, 8, 16, 32 or 64 parts, not " + parts);
        }
        long all = Math.round(Math.abs(inches()) * parts);
        long feet = all / (12L * parts);
        long inches = all / parts % 12;
        long over = all % parts;
        long under = parts;
        while (over > 0 && over % 2 == 0) {
            over /= 2;
            under /= 2;
        }
        StringBuilder text = new StringBuilder(meters < 0 && all > 0 ? "-" : "");
        if (feet > 0) {
            text.append(feet).append(" ft");
        }
        if (all == 0 || inches > 0 || over > 0) {
            text.append(feet > 0 ? " " : "");
            text.append(inches > 0 || over == 0 ? Long.toString(inches) : "");
            text.append(inches > 0 && over > 0 ? " " : "")
                    .append(over > 0 ? over + "/" + under : "")
                    .append(" in");
        }
        return text.toString();
    }

    /** Inches with decimals: "4.97 in". */
    public String inInches(int decimals) {
        return Decimals.fixed(inches(), decimals) + " in";
    }

    /** Meters with decimals: "4.115 m". */
    public String inMeters(int decimals) {
        return Decimals.fixed(meters, decimals) + " m";
    }

    /** Whole millimeters: "126 mm". */
    public String inMillimeters() {
        return Decimals.fixed(meters * 1000, 0) + " mm";
    }
}
