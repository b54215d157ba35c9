package org.cresthaul.road;

import java.util.List;
import org.cresthaul.road.CornerTemplate.PlanPoint;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** What templates are drawn with: meters, angles counter-clockwise from x. */
final class PlanShapes {
    static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** Curved edges turn by this from one chord to the next. */
    static final double STEP_RAD = Math.toRadians(2);

    private static final int QUADRANT = 45;

    private PlanShapes() {}

    /** The place {@code alongM} ahead of the origin and {@code leftM} to its left, looking along a heading. */
    static Coordinate turned(double headingRad, double alongM, double leftM) {
        double c = Math.cos(headingRad);
        double s = Math.sin(headingRad);
        return new Coordinate(alongM * c - leftM * s, alongM * s + leftM * c);
    }

    static Polygon rectangle(double headingRad, double fromM, double toM, double rightM, double leftM) {
        return polygon(
                turned(headingRad, fromM, rightM),
                turned(headingRad, toM, rightM),
                turned(headingRad, toM, leftM),
                turned(headingRad, fromM, leftM));
    }

    static Polygon polygon(List<PlanPoint> points) {
        return polygon(points.stream().map(p -> new Coordinate(p.xM(), p.yM())).toArray(Coordinate[]::new));
    }

    /** The last point is joined to the first. */
    static Polygon polygon(Coordinate... points) {
        Coordinate[] ring = new Coordinate[points.length + 1];
        System.arraycopy(points, 0, ring, 0, points.length);
        ring[points.length] = points[0].copy();
        return GEOMETRY.createPolygon(ring);
    }

    /** Widened all round; curved edges come out inside. Dents are not evened out, which would widen it more. */
    static Geometry buffer(Geometry g, double m) {
        BufferParameters how = new BufferParameters(QUADRANT);
        how.setSimplifyFactor(1e-5);
        return BufferOp.bufferOp(g, m, how);
    }

    /** A disk of pavement: its edge is inside the circle, by less than a six-thousandth of the radius. */
    static Geometry disk(double x, double y, double radiusM) {
        return buffer(GEOMETRY.createPoint(new Coordinate(x, y)), radiusM);
    }

    /** A disk to keep off: a regular polygon around the circle, not in it. */
    static Geometry diskAround(double x, double y, double radiusM) {
        return disk(x, y, radiusM / Math.cos(Math.PI / (4 * QUADRANT)));
    }

    static Geometry pole(PlanPoint at, double radiusM) {
        return BufferOp.bufferOp(
                GEOMETRY.createPoint(new Coordinate(at.xM(), at.yM())),
                radiusM / Math.cos(Math.PI / 32),
                new BufferParameters(8));
    }

    /**
     * An arc by the tangents at even steps: it stays on the outer side of the circle, which is the pavement's at a curb
     * return.
     */
    static void addArc(List<Coordinate> into, double x, double y, double r, double from, double to) {
        int steps = (int) Math.ceil((to - from) / STEP_RAD - 1e-9);
        if (steps < 1 || r <= 0) {
            return;
        }
        double step = (to - from) / steps;
        into.add(new Coordinate(x + r * Math.cos(from), y + r * Math.sin(from)));
        double around = r / Math.cos(step / 2);
        for (int i = 0; i < steps; i++) {
            double at = from + (i + 0.5) * step;
            into.add(new Coordinate(x + around * Math.cos(at), y + around * Math.sin(at)));
        }
        into.add(new Coordinate(x + r * Math.cos(to), y + r * Math.sin(to)));
    }
}
