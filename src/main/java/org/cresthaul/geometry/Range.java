package org.cresthaul.geometry;

/**
 * A closed interval as a value: the sums, products and quotients of two hold every sum, product and quotient of numbers
 * from them. Ends are rounded as numbers are; what that may cost is in the hands of the caller.
 *
 * @param lo at most {@code hi}
 */
public record Range(double lo, double hi) {
    public static final Range ZERO = new Range(0, 0);
    public static final Range ONE = new Range(1, 1);

    /** Between two numbers in either order. */
    public static Range between(double a, double b) {
        return new Range(Math.min(a, b), Math.max(a, b));
    }

    /** What an interval has gathered. */
    public static Range of(Interval gathered) {
        return new Range(gathered.lo, gathered.hi);
    }

    /** The least range that holds both. */
    public Range hull(Range other) {
        return new Range(Math.min(lo, other.lo), Math.max(hi, other.hi));
    }

    public Range plus(Range other) {
        return new Range(lo + other.lo, hi + other.hi);
    }

    public Range plus(double by) {
        return new Range(lo + by, hi + by);
    }

    public Range minus(Range other) {
        return new Range(lo - other.hi, hi - other.lo);
    }

    public Range times(double factor) {
        return factor >= 0 ? new Range(factor * lo, factor * hi) : new Range(factor * hi, factor * lo);
    }

    public Range times(Range other) {
        double a = lo * other.lo;
        double b = lo * other.hi;
        double c = hi * other.lo;
        double d = hi * other.hi;
        return new Range(Math.min(Math.min(a, b), Math.min(c, d)), Math.max(Math.max(a, b), Math.max(c, d)));
    }

    /** Divided by a number above zero. */
    public Range over(double divisor) {
        return new Range(lo / divisor, hi / divisor);
    }

    /** Divided by a range that does not hold zero. */
    public Range over(Range other) {
        double a = lo / other.lo;
        double b = lo / other.hi;
        double c = hi / other.lo;
        double d = hi / other.hi;
        return new Range(Math.min(Math.min(a, b), Math.min(c, d)), Math.max(Math.max(a, b), Math.max(c, d)));
    }

    /** Allows for so much more to both sides. */
    public Range widened(double by) {
        return new Range(lo - by, hi + by);
    }

    public double width() {
        return hi - lo;
    }

    /** The largest absolute value in it. */
    public double magnitude() {
        return Math.max(Math.abs(lo), Math.abs(hi));
    }
}
