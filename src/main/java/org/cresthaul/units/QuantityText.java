package org.cresthaul.units;

import java.util.ArrayList;
import java.util.List;

/**
 * The text form that all quantities share:
 *
 * <pre>
 * quantity := [sign] part [part]        sign applies to the whole: "-1 1/2 in", "-13 ft 6 in"
 * part     := number unit
 * number   := digits ["." digits] | grouped ["." digits] | [digits " "] digits "/" digits
 * grouped  := "18,400"
 * </pre>
 *
 * No exponents, so 1e308 is not a number here; no locale, so a comma is only ever the mark between thousands.
 */
final class QuantityText {
    private static final int LONGEST = 40;

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
        if (text.length() > LONGEST) {
            throw new BadQuantity("not-a-quantity", quoted(text) + " is not " + kind + ".", remedy);
        }
        return new Scanner(text, kind, remedy).quantity();
    }

    /** Walks through the text once. Files hold hundreds of thousands of quantities, hence no regular expressions. */
    private static final class Scanner {
        private final String text;
        private final String kind;
        private final String remedy;
        private final String plain;
        private int at;

        Scanner(String text, String kind, String remedy) {
            this.text = text;
            this.kind = kind;
            this.remedy = remedy;
            plain = plain(text);
        }

        QuantityText quantity() throws BadQuantity {
            boolean negative = is('-');
            if (negative || is('+')) {
                at++;
            }
            List<Part> parts = new ArrayList<>(2);
            do {
                skipSpaces();
                parts.add(part());
                skipSpaces();
            } while (at < plain.length());
            if (parts.size() > 2) {
                throw refusal("");
            }
            return new QuantityText(negative, parts);
        }

        private Part part() throws BadQuantity {
            int start = at;
            String digits = digits();
            boolean grouped = is(',') && digits.length() <= 3;
            while (grouped && is(',')) {
                at++;
                if (digits().length() != 3) {
                    throw refusal("");
                }
            }
            boolean whole = !is('.');
            if (!whole) {
                at++;
                digits();
            }
            if (grouped || !whole) {
                double value = Double.parseDouble(plain.substring(start, at).replace(",", ""));
                return new Part(value, unit(), whole, false, grouped);
            }
            int end = at;
            skipSpaces();
            if (is('/')) {
                return new Part(fraction(digits), unit(), false, true, false);
            }
            if (at > end && isDigit()) {
                double fraction = fraction(digits());
                return new Part(Double.parseDouble(digits) + fraction, unit(), false, true, false);
            }
            return new Part(Double.parseDouble(digits), unit(), true, false, false);
        }

        /** What stands from the bar on, under {@code over}. */
        private double fraction(String over) throws BadQuantity {
            skipSpaces();
            if (!is('/')) {
                throw refusal("");
            }
            at++;
            skipSpaces();
            double under = Double.parseDouble(digits());
            double value = Double.parseDouble(over) / under;
            if (under < 2 || under > 64 || value >= 1) {
                throw refusal(": the fraction is not a proper one");
            }
            return value;
        }

        private String digits() throws BadQuantity {
            int start = at;
            while (isDigit()) {
                at++;
            }
            if (at == start) {
                throw refusal("");
            }
            return plain.substring(start, at);
        }

        private String unit() throws BadQuantity {
            skipSpaces();
            if (at == plain.length()) {
                throw new BadQuantity("unit-missing", quoted(text) + " has no unit.", remedy);
            }
            int start = at;
            while (at < plain.length() && isOfUnit(plain.charAt(at))) {
                at++;
            }
            if (at == start) {
                throw refusal("");
            }
            // The bar of "km/h"; a unit of length is never followed by one.
            if (is('/') && at + 1 < plain.length() && Character.isLetter(plain.charAt(at + 1))) {
                at++;
                while (at < plain.length() && isOfUnit(plain.charAt(at))) {
                    at++;
                }
            }
            return plain.substring(start, at);
        }

        private boolean is(char c) {
            return at < plain.length() && plain.charAt(at) == c;
        }

        private boolean isDigit() {
            return at < plain.length() && plain.charAt(at) >= '0' && plain.charAt(at) <= '9';
        }

        private static boolean isOfUnit(char c) {
            return Character.isLetter(c) || c == '\'' || c == '"' || c == '%' || c == '\u00b0';
        }

        private void skipSpaces() {
            while (is(' ')) {
                at++;
            }
        }

        private BadQuantity refusal(String why) {
            return new BadQuantity("not-a-quantity", quoted(text) + " is not " + kind + why + ".", remedy);
        }
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

    /** Typographic signs, primes, fractions and spaces in their plain form. */
    private static String plain(String text) {
        if (text.chars().allMatch(c -> c < 0x80)) {
            return text.strip();
        }
        StringBuilder plain = new StringBuilder(text.length() + 8);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '\u2212', '\u2013' -> plain.append('-');
                case '\u2032', '\u2019' -> plain.append('\'');
                case '\u2033', '\u201d' -> plain.append('"');
                case '\u00a0', '\u202f', '\u2009' -> plain.append(' ');
                case '\u00bd' -> plain.append(" 1/2 ");
                case '\u00bc' -> plain.append(" 1/4 ");
                case '\u00be' -> plain.append(" 3/4 ");
                case '\u215b' -> plain.append(" 1/8 ");
                case '\u215c' -> plain.append(" 3/8 ");
                case '\u215d' -> plain.append(" 5/8 ");
                case '\u215e' -> plain.append(" 7/8 ");
                default -> plain.append(c);
            }
        }
        return plain.toString().strip();
    }
}
