package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * Two roadways with a median between, driven on the right: along the one, through the opening, back along the other.
 */
final class UTurnDrawing {
    /** Pieces overlap by this, meters, so that they are one. */
    private static final double LAP_M = 0.001;

    private UTurnDrawing() {}

    static DrawnCorner of(CornerTemplate t, UTurn back) {
        double reachM = CornerTemplate.reachM(back.openingM() + back.loonLengthM());
        RoadStrip in = new RoadStrip(0, t.approach(), false, reachM);
        RoadStrip out = new RoadStrip(Math.PI, t.exit(), false, reachM);
        double median = back.medianM();
        double half = back.openingM() / 2;
        // Looking along the approach, the exit's lanes lie beyond the median.
        double far = median - out.outerM;
        Geometry pavement = in.strip(in.outerM, in.innerM);
        Geometry opening = PlanShapes.rectangle(0, -half - t.apronM(), half + t.apronM(), -LAP_M, median + LAP_M);
        for (int side = -1; side <= 1; side += 2) {
            opening = Areas.union(opening, corner(side * (half + t.apronM()), 0, side, 1, back.noseM()));
            opening = Areas.union(opening, corner(side * (half + t.apronM()), median, side, -1, back.noseM()));
        }
        pavement = Areas.union(pavement, opening);
        pavement = Areas.union(pavement, PlanShapes.rectangle(0, -reachM, half, median, far));
        Geometry across = PlanShapes.rectangle(0, half, reachM, median, far);
        if (back.loonM() > 0 && back.loonLengthM() > 0) {
            double longHalf = back.loonLengthM() / 2;
            Geometry loon = PlanShapes.rectangle(0, -longHalf, longHalf, far - LAP_M, far + back.loonM());
            pavement = Areas.union(pavement, loon);
        }
        Geometry opposing = Areas.without(across, pavement);
        Optional<Geometry> escorted = t.exit().borrow() ? Optional.of(Areas.union(pavement, across)) : Optional.empty();
        double outY = median - out.middleM();
        double radius = (outY - in.middleM()) / 2;
        List<Coordinate> way = new ArrayList<>(List.of(new Coordinate(-reachM, in.middleM())));
        int steps = (int) Math.round(Math.PI / PlanShapes.STEP_RAD);
        for (int i = 0; i <= steps; i++) {
            double a = Math.PI * i / steps;
            way.add(new Coordinate(radius * Math.sin(a), in.middleM() + radius * (1 - Math.cos(a))));
        }
        way.add(new Coordinate(-reachM, outY));
        return new DrawnCorner(pavement, escorted, opposing, List.of(), way, in.end(false), out.end(false, 0, median));
    }

    /**
     * What rounding off a corner of the median adds to the opening: {@code way} and {@code up} point into the median.
     */
    private static Geometry corner(double x, double y, int way, int up, double radiusM) {
        if (radiusM <= 0) {
            return Areas.none();
        }
        List<Coordinate> points = new ArrayList<>();
        // From a little inside the opening, so that the pieces are one.
        points.add(new Coordinate(-LAP_M, -LAP_M));
        PlanShapes.addArc(points, radiusM, radiusM, radiusM, Math.PI, 1.5 * Math.PI);
        points.add(new Coordinate(radiusM, -LAP_M));
        for (Coordinate c : points) {
            c.setX(x + way * c.x);
            c.setY(y + up * c.y);
        }
        points.add(1, new Coordinate(x - way * LAP_M, y + up * radiusM));
        return PlanShapes.polygon(points.toArray(new Coordinate[0]));
    }
}
