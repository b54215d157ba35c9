package org.cresthaul.exchange.osm;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads lengths and weights as tags of OpenStreetMap write them (its wiki, "Map features/Units"): meters and metric
 * tons where no unit stands, feet and inches as {@code 12'6"}. Whatever is not exactly such a quantity, or not
 * plausible, is none: its text is shown and never used.
 */
final class TagQuantity {
    private static final double INCH_M = 0.0254;
    private static final double POUND_KG = 0.45359237;
    private static final double LEAST_M = 1;
    private static final double MOST_M = 30;
    private static final double LEAST_KG = 100;
    private static final double MOST_KG = 500_000;

    private static final Pattern METRIC = Pattern.compile("(\\d{1,4}(?:\\.\\d{1,4})?)\\s*(m|met(?:er|re)s?|cm|mm)?");
    private static final Pattern FEET = Pattern.compile("(\\d{1,3}(?:\\.\\d{1,3})?)\\s*(?:'|ft|feet|foot)\\.?");
    private static final Pattern FEET_AND_INCHES = Pattern.compile(
            "(\\d{1,3})\\s*(?:'|ft|feet|foot)\\.?\\s*-?\\s*(\\d{1,2}(?:\\.\\d{1,3})?)\\s*(?:\"|''|in|inch|inches)?\\.?");
    private static final Pattern INCHES = Pattern.compile("(\\d{1,3}(?:\\.\\d{1,3})?)\\s*(?:\"|in|inch|inches)");
    private static final Pattern WEIGHT =
            Pattern.compile("(\\d{1,7}(?:\\.\\d{1,4})?)\\s*(t|tons?|tonnes?|st|lt|kg|lbs?|cwt)?");

    private TagQuantity() {}

    /** The part of a conditional value before its condition; several are none. */
    private static String value(String text) {
        String plain = text.strip()
                .replace('\u2019', '\'')
                .replace('\u2032', '\'')
                .replace('\u201d', '"')
                .replace('\u2033', '"');
        int at = plain.indexOf('@');
        if (at < 0) {
            return plain;
        }
        boolean one = plain.indexOf('@', at + 1) < 0;
        return one ? plain.substring(0, at).strip() : "";
    }

    /** Meters. */
    static OptionalDouble lengthM(String text) {
        String plain = value(text);
        Matcher metric = METRIC.matcher(plain);
        if (metric.matches()) {
            String unit = metric.group(2) == null ? "m" : metric.group(2);
            double unitM = unit.equals("cm") ? 0.01 : unit.equals("mm") ? 0.001 : 1;
            return plausible(Double.parseDouble(metric.group(1)) * unitM, LEAST_M, MOST_M);
        }
        Matcher feet = FEET.matcher(plain);
        if (feet.matches()) {
            return plausible(Double.parseDouble(feet.group(1)) * 12 * INCH_M, LEAST_M, MOST_M);
        }
        Matcher both = FEET_AND_INCHES.matcher(plain);
        if (both.matches()) {
            double inches = Double.parseDouble(both.group(2));
            return inches < 12
                    ? plausible((Double.parseDouble(both.group(1)) * 12 + inches) * INCH_M, LEAST_M, MOST_M)
                    : OptionalDouble.empty();
        }
        Matcher alone = INCHES.matcher(plain);
        return alone.matches()
                ? plausible(Double.parseDouble(alone.group(1)) * INCH_M, LEAST_M, MOST_M)
                : OptionalDouble.empty();
    }

    /** Kilograms. */
    static OptionalDouble massKg(String text) {
        Matcher weight = WEIGHT.matcher(value(text));
        if (!weight.matches()) {
            return OptionalDouble.empty();
        }
        double unitKg =
                switch (weight.group(2) == null ? "t" : weight.group(2)) {
                    case "kg" -> 1;
                    case "lb", "lbs" -> POUND_KG;
                    case "st" -> 2000 * POUND_KG;
                    case "lt" -> 2240 * POUND_KG;
                    case "cwt" -> 112 * POUND_KG;
                    default -> 1000;
                };
        return plausible(Double.parseDouble(weight.group(1)) * unitKg, LEAST_KG, MOST_KG);
    }

    private static OptionalDouble plausible(double value, double least, double most) {
        return value >= least && value <= most ? OptionalDouble.of(value) : OptionalDouble.empty();
    }
}
