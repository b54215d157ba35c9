package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * The curb return between the left edges of two roads through the origin, the first along x, the second turned to the
 * left by {@code turn}: one arc, or three that touch.
 */
final class CurbCurve {
    private CurbCurve() {}

    /** How far beyond the meeting of the edges the return begins or ends, meters. */
    static double tangentM(CurbReturn curb, double turn) {
        double set = curb.middleM() + curb.offsetM();
        return set * Math.tan(turn / 2) + Math.max(reach(curb, curb.firstM()), reach(curb, curb.lastM()));
    }

    private static double reach(CurbReturn curb, double r) {
        double apart = r - curb.middleM();
        return Math.sqrt(apart * apart - (apart - curb.offsetM()) * (apart - curb.offsetM()));
    }

    /** The pavement that the return adds outside both roads. */
    static Geometry fillet(CurbReturn curb, double innerIn, double innerOut, double turn) {
        if (curb.middleM() + curb.offsetM() <= 0) {
            return Areas.none();
        }
        double cos = Math.cos(turn);
        double sin = Math.sin(turn);
        // The corner: on the line y = innerIn, and on the exit's line −x sin + y cos = innerOut.
        double cornerX = (innerIn * cos - innerOut) / sin;
        double set = curb.middleM() + curb.offsetM();
        // The middle circle's center is "set" inside both edges.
        double centerY = innerIn + set;
        double centerX = (centerY * cos - (innerOut + set)) / sin;
        List<Coordinate> points = new ArrayList<>();
        points.add(new Coordinate(cornerX, innerIn));
        double r1 = curb.firstM();
        double c1x = centerX - reach(curb, r1);
        double c1y = innerIn + r1;
        double join1 = r1 == curb.middleM() ? -Math.PI / 2 : Math.atan2(centerY - c1y, centerX - c1x);
        double r3 = curb.lastM();
        double t3 = innerOut + r3;
        double along = centerX * cos + centerY * sin + reach(curb, r3);
        double c3x = along * cos - t3 * sin;
        double c3y = along * sin + t3 * cos;
        double end = turn - Math.PI / 2;
        double join3 = r3 == curb.middleM() ? end : Math.atan2(centerY - c3y, centerX - c3x);
        PlanShapes.addArc(points, c1x, c1y, r1, -Math.PI / 2, join1);
        PlanShapes.addArc(points, centerX, centerY, curb.middleM(), join1, join3);
        PlanShapes.addArc(points, c3x, c3y, r3, join3, end);
        // Drawn by its tangents the curve begins and ends along the edges: to its ends and back would be a spike
        // without area.
        points.remove(1);
        points.remove(points.size() - 1);
        return PlanShapes.polygon(points.toArray(new Coordinate[0])).buffer(0);
    }
}
