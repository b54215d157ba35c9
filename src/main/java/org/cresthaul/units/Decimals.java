package org.cresthaul.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as text, the same under every locale: a point for decimals, no exponent, no negative zero. */
public final class Decimals {
    private Decimals() {}

    /** {@code value} with exactly {@code decimals} of them, halves away from zero. */
    public static String fixed(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
    }

    /** A whole number with a comma between thousands, as US figures are written. */
    static String grouped(double value) {
        String digits = fixed(value, 0);
        StringBuilder text = new StringBuilder(digits);
        int first = digits.startsWith("-") ? 1 : 0;
        for (int i = digits.length() - 3; i > first; i -= 3) {
            text.insert(i, ',');
        }
        return text.toString();
    }
}
