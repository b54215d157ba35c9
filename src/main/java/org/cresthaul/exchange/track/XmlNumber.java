package org.cresthaul.exchange.track;

import org.codehaus.stax2.typed.TypedValueDecoder;

/**
 * A number as a map has millions of (a sign, digits, one point), from the characters the parser holds, without a text
 * for each. What is written otherwise is left to the platform. Not for sharing.
 */
final class XmlNumber extends TypedValueDecoder {
    /** Whole numbers of so many digits are held exactly, as doubles too, and so are powers of ten up to it. */
    private static final int MOST_DIGITS = 15;

    private static final double[] TEN = new double[MOST_DIGITS + 1];

    static {
        TEN[0] = 1;
        for (int i = 1; i <= MOST_DIGITS; i++) {
            TEN[i] = 10 * TEN[i - 1];
        }
    }

    private long digits;
    private int afterPoint;
    private boolean point;
    private boolean negative;
    /** Where it is not so plain. */
    private String text;

    @Override
    public void decode(String whole) {
        decode(whole.toCharArray(), 0, whole.length());
    }

    @Override
    public void decode(char[] chars, int from, int to) {
        digits = 0;
        afterPoint = 0;
        point = false;
        text = null;
        negative = from < to && chars[from] == '-';
        int count = 0;
        boolean plain = true;
        for (int i = negative ? from + 1 : from; i < to && plain; i++) {
            int digit = chars[i] - '0';
            if (digit >= 0 && digit <= 9) {
                plain = ++count <= MOST_DIGITS;
                digits = 10 * digits + digit;
                afterPoint += point ? 1 : 0;
            } else {
                plain = chars[i] == '.' && !point;
                point = true;
            }
        }
        if (!plain || count == 0) {
            text = new String(chars, from, to - from);
        }
    }

    @Override
    public void handleEmptyValue() {
        decode("");
    }

    /** @throws NumberFormatException when it is none */
    long whole() {
        if (text != null || point) {
            return Long.parseLong(text == null ? "." : text);
        }
        return negative ? -digits : digits;
    }

    /**
     * The same number to its last bit as {@link Double#parseDouble} gives: one division of two numbers that are held
     * exactly is rounded once.
     *
     * @throws NumberFormatException when it is none
     */
    double decimal() {
        if (text != null) {
            return Double.parseDouble(text);
        }
        double value = digits / TEN[afterPoint];
        return negative ? -value : value;
    }
}
