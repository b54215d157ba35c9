package org.cresthaul.units;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The text form that all quantities share:
 *
 * <pre>
 * quantity := [sign] part [part]        sign applies to the whole: "-1 1/2 in", "-13 ft 6 in"
 * part     := number unit
 * number   := digits ["." digits] | grouped ["." digits] | [digits " "] digits "/" digits
 * grouped  := "19,000"
 * </pre>
 *
 * No exponents, so 1e308 is not a number here; no locale, so a comma is only ever the mark between thousands.
 */
final class QuantityText {
    private static final int LONGEST = 40;
    private static final Pattern PART = Pattern.compile(
            "(?<grouped>\\d{1,3}(?:,\\d{3})+(?:\\.\\d+)?)|(?:(?<whole>\\d+) )?(?<over>\\d+) ?/ ?(?<under>\\d+)|(?<plain>\\d+(?:\\.\\d+)?)");
    private static final Pattern UNIT = Pattern.compile("[\\p{L}'\"%°]+");

    /** A number with its unit; {@code fraction} and {@code grouped} tell how it was written. */
    record Part(double value, String unit, boolean whole, boolean fraction, boolean grouped) {}

    private final boolean negative;
    private final List<Part> parts;

    private QuantityText(boolean negative, List<Part> parts) {
        this.negative = negative;
        this.parts = parts;
    }

    double sign() {
        return negative ? -1 : 1;
    }

    List<Part> parts() {
        return parts;
    }

    /**
     * Takes the text apart.
     *
     * @param kind what is asked for, with its article: "a length"
     * @param remedy what to write instead, with an example
     */
    static QuantityText of(String text, String kind, String remedy) throws BadQuantity {
        String plain = plain(text);
        if (plain.isEmpty() || text.length() > LONGEST) {
            throw new BadQuantity("not-a-quantity", quoted(text) + " is not " + kind + ".", remedy);
        }
        int at = 0;
        boolean negative = plain.charAt(0) == '-';
        if (negative || plain.charAt(0) == '+') {
            at = 1;
        }
        List<Part> parts = new ArrayList<>();
        Matcher number = PART.matcher(plain);
        Matcher unit = UNIT.matcher(plain);
        while (at < plain.length()) {
            at = skipSpace(plain, at);
            if (!number.region(at, plain.length()).lookingAt()) {
                throw new BadQuantity("not-a-quantity", quoted(text) + " is not " + kind + ".", remedy);
            }
            at = skipSpace(plain, number.end());
            if (at == plain.length()) {
                throw new BadQuantity("unit-missing", quoted(text) + " has no unit.", remedy);
            }
            if (!unit.region(at, plain.length()).lookingAt()) {
                throw new BadQuantity("not-a-quantity", quoted(text) + " is not " + kind + ".", remedy);
            }
            at = skipSpace(plain, unit.end());
            parts.add(part(number, unit.group(), text, kind, remedy));
        }
        if (parts.isEmpty() || parts.size() > 2) {
            throw new BadQuantity("not-a-quantity", quoted(text) + " is not " + kind + ".", remedy);
        }
        return new QuantityText(negative, parts);
    }

    private static Part part(Matcher number, String unit, String text, String kind, String remedy) throws BadQuantity {
        if (number.group("over") == null) {
            boolean grouped = number.group("grouped") != null;
            String digits = grouped ? number.group("grouped").replace(",", "") : number.group("plain");
            return new Part(Double.parseDouble(digits), unit, digits.indexOf('.') < 0, false, grouped);
        }
        double over = Double.parseDouble(number.group("over"));
        double under = Double.parseDouble(number.group("under"));
        boolean mixed = number.group("whole") != null;
        if (under < 2 || under > 64 || over >= under) {
            throw new BadQuantity(
                    "not-a-quantity", quoted(text) + " is not " + kind + ": the fraction is not a proper one.", remedy);
        }
        double whole = mixed ? Double.parseDouble(number.group("whole")) : 0;
        return new Part(whole + over / under, unit, false, true, false);
    }

    /** The only part, in a quantity that is written as one number. */
    Part single(String text, String kind, String remedy) throws BadQuantity {
        Part part = parts.get(0);
        if (parts.size() > 1 || part.fraction()) {
            throw new BadQuantity("not-a-quantity", quoted(text) + " is not " + kind + ".", remedy);
        }
        return part;
    }

    /** A comma between thousands is common in US figures; in metric ones it may as well mark the decimals. */
    static void refuseGrouping(Part part, String text, String remedy) throws BadQuantity {
        if (part.grouped()) {
            throw new BadQuantity(
                    "not-a-quantity",
                    quoted(text) + " can be read in two ways: the comma may mark thousands or decimals.",
                    remedy);
        }
    }

    static BadQuantity unknownUnit(Part part, String text, String kind, String remedy) {
        return new BadQuantity(
                "unit-unknown", quoted(text) + ": \"" + part.unit() + "\" is not a unit of " + kind + ".", remedy);
    }

    /** Returns the value, or refuses one that is beyond what this program takes for {@code kind}. */
    static double within(double value, double least, double most, String text, String limits) throws BadQuantity {
        if (!(value >= least && value <= most)) {
            throw new BadQuantity(
                    "out-of-range", quoted(text) + " is beyond what is plausible.", "It must be " + limits + ".");
        }
        return value;
    }

    static String quoted(String text) {
        return '"' + (text.length() > LONGEST ? text.substring(0, LONGEST) + "..." : text) + '"';
    }

    private static int skipSpace(String text, int at) {
        int i = at;
        while (i < text.length() && text.charAt(i) == ' ') {
            i++;
        }
        return i;
    }

    /** Typographic signs, primes, fractions and spaces in their plain form. */
    private static String plain(String text) {
        StringBuilder plain = new StringBuilder(text.length() + 8);
        for (int i = 0; i < text.length() && i <= LONGEST; i++) {
            char c = text.charAt(i);
            switch (c) {
                case '\u2212', '\u2013' -> plain.append('-');
                case '\u2032', '\u2019' -> plain.append('\'');
                case '\u2033', '\u201d' -> plain.append('"');
                case '\u00a0', '\u202f', '\u2009' -> plain.append(' ');
                case '\u00bd' -> plain.append(" 1/2");
                case '\u00bc' -> plain.append(" 1/4");
                case '\u00be' -> plain.append(" 3/4");
                case '\u215b' -> plain.append(" 1/8");
                case '\u215c' -> plain.append(" 3/8");
                case '\u215d' -> plain.append(" 5/8");
                case '\u215e' -> plain.append(" 7/8");
                default -> plain.append(c);
            }
        }
        return plain.toString().strip().replaceAll(" {2,}", " ");
    }
}
