package org.cresthaul.geometry;

/**
 * A closed interval that a bound is gathered into. Mutable on purpose: the position search fills millions of them; it
 * never leaves the thread that made it.
 */
public final class Interval {
    public double lo;
    public double hi;

    public Interval() {
        clear();
    }

    /** Empties it: the next {@link #add} sets both ends. */
    public void clear() {
        lo = Double.POSITIVE_INFINITY;
        hi = Double.NEGATIVE_INFINITY;
    }

    public void set(double lo, double hi) {
        this.lo = lo;
        this.hi = hi;
    }

    /** Widens it to hold {@code value}. */
    public void add(double value) {
        if (value < lo) {
            lo = value;
        }
        if (value > hi) {
            hi = value;
        }
    }

    /** Widens it to hold {@code other}. */
    public void add(Interval other) {
        if (other.lo < lo) {
            lo = other.lo;
        }
        if (other.hi > hi) {
            hi = other.hi;
        }
    }

    public double width() {
        return hi - lo;
    }

    /** The largest absolute value in it. */
    public double magnitude() {
        return Math.max(Math.abs(lo), Math.abs(hi));
    }
}
