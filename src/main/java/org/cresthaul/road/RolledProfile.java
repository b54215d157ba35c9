package org.cresthaul.road;

import java.util.List;
import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;

/**
 * The path of the center of a rigid wheel rolled along a profile: at every distance the highest of the wheel's circles
 * that the ground can hold up, zc(s) = max over |u| ≤ r of p(s + u) + √(r² − u²). Exact: straight pieces over segments,
 * circular arcs over humps, cut where they cross. Immutable.
 */
public final class RolledProfile implements WheelPath {
    private final double radiusM;
    /** Piece k reaches from start[k] to start[k + 1]. */
    private final double[] start;
    /** A straight piece: height at s is base + slope (s - foot). An arc: base + √(r² − (s − foot)²). */
    private final double[] foot;

    private final double[] base;
    /** Slope of a straight piece, NaN for an arc. */
    private final double[] slope;

    /** How far an arc reaches above its own chord. */
    private final double[] sagitta;

    private final int[] bucket;
    private final double bucketsPerM;

    public RolledProfile(PiecewiseLine line, double radiusM) {
        this.radiusM = radiusM;
        List<RollingEnvelope.Piece> pieces = RollingEnvelope.of(line, radiusM);
        int n = pieces.size();
        start = new double[n];
        foot = new double[n];
        base = new double[n];
        slope = new double[n];
        for (int k = 0; k < n; k++) {
            RollingEnvelope.Piece piece = pieces.get(k);
            start[k] = piece.from();
            foot[k] = piece.foot();
            base[k] = piece.base();
            slope[k] = piece.slope();
        }
        sagitta = new double[n];
        for (int k = 1; k + 1 < n; k++) {
            sagitta[k] = slope[k] == slope[k] ? 0 : sagittaM(k);
        }
        int buckets = Math.max(1, 6 * n);
        bucketsPerM = n > 2 ? buckets / (start[n - 1] - start[1]) : 1;
        bucket = new int[buckets];
        for (int b = 0, k = 0; n > 2 && b < buckets; b++) {
            while (k + 1 < n && start[k + 1] <= start[1] + b / bucketsPerM) {
                k++;
            }
            bucket[b] = k;
        }
    }

    public double radiusM() {
        return radiusM;
    }

    @Override
    public double heightAt(double distanceM) {
        return heightOn(pieceAt(distanceM), distanceM);
    }

    private double heightOn(int k, double distanceM) {
        double u = distanceM - foot[k];
        double m = slope[k];
        return m == m ? base[k] + m * u : base[k] + Math.sqrt(radiusM * radiusM - u * u);
    }

    @Override
    public void locate(double distanceM, double[] heightThenSlope) {
        int k = pieceAt(distanceM);
        double u = distanceM - foot[k];
        double m = slope[k];
        if (m == m) {
            heightThenSlope[0] = base[k] + m * u;
            heightThenSlope[1] = m;
        } else {
            double rise = Math.sqrt(radiusM * radiusM - u * u);
            heightThenSlope[0] = base[k] + rise;
            heightThenSlope[1] = -u / rise;
        }
    }

    @Override
    public void addSlopes(double fromM, double toM, Interval into) {
        for (int k = pieceAt(fromM); ; k++) {
            double m = slope[k];
            boolean last = k + 1 == start.length || start[k + 1] > toM;
            if (m == m) {
                into.add(m);
            } else {
                into.add(arcSlope(k, Math.max(fromM, start[k])));
                into.add(arcSlope(k, last ? toM : start[k + 1]));
            }
            if (last) {
                return;
            }
        }
    }

    @Override
    public void addBow(double fromM, double toM, Interval into) {
        into.add(0);
        int k = pieceAt(fromM);
        if (slope[k] == slope[k] && endsBehind(k, toM)) {
            return;
        }
        double from = heightOn(k, fromM);
        double chord = (heightAt(toM) - from) / (toM - fromM);
        // An arc stands farthest above the chord where it has its slope.
        double level = 1 / Math.sqrt(1 + chord * chord);
        for (; ; k++) {
            boolean last = endsBehind(k, toM);
            if (slope[k] != slope[k]) {
                double at = foot[k] - radiusM * chord * level;
                if (at > Math.max(fromM, start[k]) && at < (last ? toM : start[k + 1])) {
                    into.add(base[k] + radiusM * level - from - chord * (at - fromM));
                }
            }
            if (last) {
                return;
            }
            into.add(heightOn(k, start[k + 1]) - from - chord * (start[k + 1] - fromM));
        }
    }

    @Override
    public void bow(double fromM, double toM, Bow into) {
        into.clear();
        int k = pieceAt(fromM);
        if (slope[k] == slope[k] && endsBehind(k, toM)) {
            return;
        }
        addBow(fromM, toM, into.whole);
        double from = heightOn(k, fromM);
        double length = toM - fromM;
        double chord = (heightAt(toM) - from) / length;
        double peak = heightAt(fromM + 0.5 * length) - from - 0.5 * chord * length;
        into.peak = peak;
        double before = 0;
        double offBefore = 0;
        for (; ; k++) {
            boolean last = endsBehind(k, toM);
            double end = last ? toM : start[k + 1];
            double t = last ? 1 : (end - fromM) / length;
            double off = last ? 0 : heightOn(k, end) - from - chord * (end - fromM) - 4 * peak * t * (1 - t);
            double bow = peak * (t - before) * (t - before);
            if (slope[k] != slope[k]) {
                into.rest.add(Math.max(offBefore, off) + sagitta[k] + Math.max(0, -bow));
            }
            PiecewiseLine.addOff(offBefore, off, bow, into.rest);
            if (last) {
                return;
            }
            before = t;
            offBefore = off;
        }
    }

    private boolean endsBehind(int piece, double toM) {
        return piece + 1 == start.length || start[piece + 1] >= toM;
    }

    private double sagittaM(int k) {
        double from = heightOn(k, start[k]);
        double chord = (heightOn(k, start[k + 1]) - from) / (start[k + 1] - start[k]);
        double level = 1 / Math.sqrt(1 + chord * chord);
        double at = foot[k] - radiusM * chord * level;
        return Math.max(0, base[k] + radiusM * level - from - chord * (at - start[k]));
    }

    private double arcSlope(int k, double distanceM) {
        double u = distanceM - foot[k];
        return -u / Math.sqrt(radiusM * radiusM - u * u);
    }

    private int pieceAt(double distanceM) {
        int n = start.length;
        if (n == 1 || distanceM < start[1]) {
            return 0;
        }
        if (distanceM >= start[n - 1]) {
            return n - 1;
        }
        int k = bucket[Math.min((int) ((distanceM - start[1]) * bucketsPerM), bucket.length - 1)];
        while (start[k + 1] <= distanceM) {
            k++;
        }
        while (start[k] > distanceM) {
            k--;
        }
        return k;
    }
}
