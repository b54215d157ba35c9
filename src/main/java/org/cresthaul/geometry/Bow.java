package org.cresthaul.geometry;

/**
 * How far something strays from the straight interpolation between its values at both ends of a way, as a line does
 * from its chord: within {@link #whole}, and also within {@link #rest} of the parabola 4 · {@link #peak} · t (1 − t), t
 * being the share of the way. What bows alike at the same time can be set off against each other by their parabolas;
 * two intervals can not. Mutable on purpose, as {@link Interval} is.
 */
public final class Bow {
    public final Interval whole = new Interval();
    public final Interval rest = new Interval();
    public double peak;

    public Bow() {
        clear();
    }

    /** No bow at all. */
    public void clear() {
        peak = 0;
        whole.set(0, 0);
        rest.set(0, 0);
    }

    /** Adds so many times another. */
    public void add(double times, Bow other) {
        peak += times * other.peak;
        add(times, other.whole, whole);
        add(times, other.rest, rest);
    }

    private static void add(double times, Interval other, Interval into) {
        into.lo += times >= 0 ? times * other.lo : times * other.hi;
        into.hi += times >= 0 ? times * other.hi : times * other.lo;
    }

    public void scale(double factor) {
        peak *= factor;
        scale(factor, whole);
        scale(factor, rest);
    }

    private static void scale(double factor, Interval interval) {
        double a = factor * interval.lo;
        double b = factor * interval.hi;
        interval.set(Math.min(a, b), Math.max(a, b));
    }

    /** Allows for so much more to both sides. */
    public void widen(double by) {
        whole.set(whole.lo - by, whole.hi + by);
        rest.set(rest.lo - by, rest.hi + by);
    }

    /** Nothing over the way is less, with these values at its ends. */
    public double least(double from, double to) {
        return Math.max(Math.min(from, to) + whole.lo, least(from, to, peak, 0, 1) + rest.lo);
    }

    /** The least of a straight interpolation with a parabola on it, between two shares of the way. */
    public static double least(double from, double to, double peak, double first, double last) {
        double least = Math.min(on(from, to, peak, first), on(from, to, peak, last));
        if (peak < 0) {
            double level = 0.5 + (to - from) / (8 * peak);
            if (level > first && level < last) {
                return on(from, to, peak, level);
            }
        }
        return least;
    }

    private static double on(double from, double to, double peak, double t) {
        return from + t * (to - from + 4 * peak * (1 - t));
    }
}
