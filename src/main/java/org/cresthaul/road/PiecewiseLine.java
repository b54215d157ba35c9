package org.cresthaul.road;

import java.util.Arrays;
import java.util.List;
import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Finite;
import org.cresthaul.geometry.Interval;

/**
 * Heights along the road, linear between points and going on at a fixed slope beyond both ends. Immutable.
 *
 * <p>Distances are meters in the direction of travel, strictly increasing; slopes are rise over run.
 */
public abstract class PiecewiseLine {
    /** Steepest slope taken for a road or a structure; beyond it the data is in the wrong unit or not a profile. */
    public static final double STEEPEST = 0.5;

    private final double[] s;
    private final double[] z;
    /** Slope of segment i, which starts at point i - 1: slope[0] is before the first point, slope[n] after the last. */
    private final double[] slope;

    private final int[] bucket;
    private final double bucketsPerM;
    /** Lines are looked up by what they are; with many points that is found once. */
    private final int hash;

    PiecewiseLine(List<SurveyedPoint> points, double slopeBefore, double slopeAfter) {
        int n = points.size();
        s = new double[n];
        z = new double[n];
        slope = new double[n + 1];
        for (int i = 0; i < n; i++) {
            s[i] = points.get(i).distanceM();
            z[i] = points.get(i).elevationM();
            if (i > 0) {
                if (s[i] <= s[i - 1]) {
                    throw new IllegalArgumentException(
                            "distances must increase: " + s[i] + " m follows " + s[i - 1] + " m");
                }
                slope[i] = requireSlope((z[i] - z[i - 1]) / (s[i] - s[i - 1]));
            }
        }
        slope[0] = requireSlope(slopeBefore);
        slope[n] = requireSlope(slopeAfter);
        int buckets = Math.max(1, 6 * n);
        bucketsPerM = n > 1 ? buckets / (s[n - 1] - s[0]) : 1;
        bucket = new int[buckets];
        for (int b = 0, i = 1; b < buckets; b++) {
            while (i < n && s[i - 1] <= s[0] + b / bucketsPerM) {
                i++;
            }
            bucket[b] = Math.max(1, i - 1);
        }
        hash = 31 * Arrays.hashCode(s) + Arrays.hashCode(z);
    }

    private static double requireSlope(double slope) {
        Finite.require("slope", slope);
        if (Math.abs(slope) > STEEPEST) {
            throw new IllegalArgumentException("a slope of " + Math.round(slope * 100) + " % is steeper than "
                    + Math.round(STEEPEST * 100) + " %");
        }
        return slope;
    }

    public final int size() {
        return s.length;
    }

    public final double distanceM(int point) {
        return s[point];
    }

    public final double elevationM(int point) {
        return z[point];
    }

    /** Slope of the segment that ends at {@code point}; {@code size()} gives the one after the last point. */
    public final double slopeBefore(int point) {
        return slope[point];
    }

    public final double startM() {
        return s[0];
    }

    public final double endM() {
        return s[s.length - 1];
    }

    /** Index of the segment holding {@code distanceM}: 0 before the first point, size() at or after the last. */
    public final int segmentAt(double distanceM) {
        int n = s.length;
        if (distanceM < s[0]) {
            return 0;
        }
        if (distanceM >= s[n - 1]) {
            return n;
        }
        int b = (int) ((distanceM - s[0]) * bucketsPerM);
        int i = bucket[Math.min(b, bucket.length - 1)];
        while (s[i] <= distanceM) {
            i++;
        }
        while (s[i - 1] > distanceM) {
            i--;
        }
        return i;
    }

    /** Height at {@code distanceM}, meters; beyond the ends along the end slopes. */
    public final double heightAt(double distanceM) {
        int i = segmentAt(distanceM);
        int from = i == 0 ? 0 : i - 1;
        return z[from] + slope[i] * (distanceM - s[from]);
    }

    /** Widens {@code into} by every slope found between two distances, {@code fromM} not after {@code toM}. */
    public final void addSlopes(double fromM, double toM, Interval into) {
        for (int i = segmentAt(fromM); ; i++) {
            into.add(slope[i]);
            if (i == s.length || s[i] > toM) {
                return;
            }
        }
    }

    /**
     * Widens {@code into} by how far the line lies above its chord between two distances, {@code fromM} before
     * {@code toM}: zero, which it has at both ends, and its least and greatest in between.
     */
    public final void addBow(double fromM, double toM, Interval into) {
        int i = segmentAt(fromM);
        into.add(0);
        if (i == s.length || s[i] >= toM) {
            return;
        }
        int base = i == 0 ? 0 : i - 1;
        double from = z[base] + slope[i] * (fromM - s[base]);
        double chord = (heightAt(toM) - from) / (toM - fromM);
        for (; i < s.length && s[i] < toM; i++) {
            into.add(z[i] - from - chord * (s[i] - fromM));
        }
    }

    /** Puts the same into {@code into}, and how far it strays from a parabola. */
    public final void bow(double fromM, double toM, Bow into) {
        into.clear();
        int i = segmentAt(fromM);
        if (i == s.length || s[i] >= toM) {
            return;
        }
        addBow(fromM, toM, into.whole);
        int base = i == 0 ? 0 : i - 1;
        double from = z[base] + slope[i] * (fromM - s[base]);
        double length = toM - fromM;
        double chord = (heightAt(toM) - from) / length;
        double peak = heightAt(fromM + 0.5 * length) - from - 0.5 * chord * length;
        into.peak = peak;
        double before = 0;
        double offBefore = 0;
        for (; i < s.length && s[i] < toM; i++) {
            double t = (s[i] - fromM) / length;
            double off = z[i] - from - chord * (s[i] - fromM) - 4 * peak * t * (1 - t);
            addOff(offBefore, off, peak * (t - before) * (t - before), into.rest);
            before = t;
            offBefore = off;
        }
        addOff(offBefore, 0, peak * (1 - before) * (1 - before), into.rest);
    }

    /**
     * A straight stretch over a parabola: between its ends it lies lower by no more than the parabola's own bow there.
     */
    static void addOff(double offBefore, double off, double bow, Interval into) {
        into.add(off);
        into.add(bow > 0 ? Math.min(offBefore, off) - bow : Math.max(offBefore, off) - bow);
    }

    /** Largest absolute slope anywhere, the ground beyond the ends included. */
    public final double steepest() {
        double most = 0;
        for (double m : slope) {
            most = Math.max(most, Math.abs(m));
        }
        return most;
    }

    /** Whether another has the same points and slopes, number for number. */
    @Override
    public boolean equals(Object other) {
        return other == this
                || other != null
                        && other.getClass() == getClass()
                        && hash == ((PiecewiseLine) other).hash
                        && Arrays.equals(s, ((PiecewiseLine) other).s)
                        && Arrays.equals(z, ((PiecewiseLine) other).z)
                        && Arrays.equals(slope, ((PiecewiseLine) other).slope);
    }

    @Override
    public int hashCode() {
        return hash;
    }
}
