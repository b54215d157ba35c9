package org.cresthaul.turning;

/**
 * The root of a sum of squares, for lengths of a road: none that overflow, so none of what makes the library's slow.
 */
final class Hypotenuse {
    private Hypotenuse() {}

    static double of(double a, double b) {
        return Math.sqrt(a * a + b * b);
    }
}
