package org.cresthaul.posture;

import java.util.List;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.SurveyedPoint;

/**
 * A line of the road or of a soffit, computed from its points alone, for the independent check. Nothing here is shared
 * with the engine: heights by looking the segment up, the wheel by the definition of rolling.
 */
public final class PlainGround implements WheelGround {
    private final double[] s;
    private final double[] z;
    /** slope[i] ends at point i; slope[0] lies before the first point, slope[n] after the last. */
    private final double[] slope;
    /** √(1 + slope²), needed for every wheel standing on the segment. */
    private final double[] stretch;

    public PlainGround(List<SurveyedPoint> points, double slopeBefore, double slopeAfter) {
        int n = points.size();
        s = points.stream().mapToDouble(SurveyedPoint::distanceM).toArray();
        z = points.stream().mapToDouble(SurveyedPoint::elevationM).toArray();
        slope = new double[n + 1];
        slope[0] = slopeBefore;
        slope[n] = slopeAfter;
        for (int i = 1; i < n; i++) {
            slope[i] = (z[i] - z[i - 1]) / (s[i] - s[i - 1]);
        }
        stretch = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            stretch[i] = Math.sqrt(1 + slope[i] * slope[i]);
        }
    }

    /** The road: goes on at the declared grades, undeclared at the slope of its end segment (model §4). */
    public static PlainGround of(RoadProfile profile) {
        List<SurveyedPoint> points = profile.points();
        int n = points.size();
        return new PlainGround(
                points,
                profile.before().declaredGrade().orElse(slope(points.get(0), points.get(1))),
                profile.after().declaredGrade().orElse(slope(points.get(n - 2), points.get(n - 1))));
    }

    /** A soffit: callers must not ask beyond its ends. */
    public static PlainGround ofSoffit(List<SurveyedPoint> points) {
        return new PlainGround(points, 0, 0);
    }

    private static double slope(SurveyedPoint a, SurveyedPoint b) {
        return (b.elevationM() - a.elevationM()) / (b.distanceM() - a.distanceM());
    }

    public double slopeBefore() {
        return slope[0];
    }

    public double slopeAfter() {
        return slope[slope.length - 1];
    }

    public int size() {
        return s.length;
    }

    public double distanceM(int i) {
        return s[i];
    }

    public double elevationM(int i) {
        return z[i];
    }

    public double startM() {
        return s[0];
    }

    public double endM() {
        return s[s.length - 1];
    }

    /** Number of points at or before {@code x}: the index of the segment that holds it. */
    public int segmentAt(double x) {
        int lo = 0;
        int hi = s.length;
        while (lo < hi) {
            int mid = (lo + hi) >>> 1;
            if (s[mid] <= x) {
                lo = mid + 1;
            } else {
                hi = mid;
            }
        }
        return lo;
    }

    public double heightAt(double x) {
        return heightOn(segmentAt(x), x);
    }

    /** Height of the straight line through segment {@code i}, at {@code x}. */
    public double heightOn(int i, double x) {
        int from = Math.max(0, i - 1);
        return z[from] + slope[i] * (x - s[from]);
    }

    /**
     * Height of the center of a rigid wheel over {@code x}: the largest of p(x + u) + √(r² − u²) over |u| ≤ r. On a
     * straight segment that function is concave in u, so its largest value is at the tangent point u = r sin(slope),
     * or, when that point is not on the segment, at one of the segment's ends.
     */
    @Override
    public double wheelCenterM(double x, double radiusM) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = segmentAt(x - radiusM); ; i++) {
            double from = i == 0 ? Double.NEGATIVE_INFINITY : s[i - 1];
            double to = i == s.length ? Double.POSITIVE_INFINITY : s[i];
            double touch = x + radiusM * slope[i] / stretch[i];
            if (touch >= from && touch <= to) {
                most = Math.max(most, heightOn(i, x) + radiusM * stretch[i]);
            }
            if (to > x + radiusM) {
                return most;
            }
            double u = to - x;
            most = Math.max(most, z[i] + Math.sqrt(Math.max(0, radiusM * radiusM - u * u)));
        }
    }

    /** Smallest slope found between two distances. */
    public double leastSlope(double from, double to) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = segmentAt(from); i <= s.length; i++) {
            least = Math.min(least, slope[i]);
            if (i == s.length || s[i] > to) {
                break;
            }
        }
        return least;
    }

    /** Largest slope found between two distances. */
    public double mostSlope(double from, double to) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = segmentAt(from); i <= s.length; i++) {
            most = Math.max(most, slope[i]);
            if (i == s.length || s[i] > to) {
                break;
            }
        }
        return most;
    }
}
