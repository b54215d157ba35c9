package org.cresthaul.road;

import java.util.List;

/**
 * The underside of a structure over the road: heights above the same datum as the road profile below it. There is
 * nothing overhead before its first point and after its last.
 */
public final class Soffit extends PiecewiseLine {
    private Soffit(List<SurveyedPoint> points) {
        super(points, 0, 0);
    }

    /**
     * A soffit through points.
     *
     * @param points at least two, distances strictly increasing, no slope beyond {@link #STEEPEST}
     * @throws IllegalArgumentException when the points are not such a line
     */
    public static Soffit of(List<SurveyedPoint> points) {
        if (points.size() < 2) {
            throw new IllegalArgumentException("a soffit needs at least two points, has " + points.size());
        }
        return new Soffit(points);
    }
}
