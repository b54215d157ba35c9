package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A road in one arc, driven on the right. Works with the inside of the bend on the left, and mirrors a right bend back.
 */
final class BendDrawing {
    private final double turn;
    private final double middleY;

    private BendDrawing(double turn, double middleY) {
        this.turn = turn;
        this.middleY = middleY;
    }

    static DrawnCorner of(CornerTemplate t, Bend bend) {
        boolean right = t.turnRad() < 0;
        double turn = Math.abs(t.turnRad());
        double reachM = CornerTemplate.reachM(0);
        RoadStrip in = new RoadStrip(0, t.approach(), right, reachM);
        RoadStrip out = new RoadStrip(turn, t.exit(), right, reachM);
        double r = bend.innerM();
        double inside = Math.min(in.innerM, out.innerM);
        // The center line goes on; a road that is wider inside it than the bend steps in.
        BendDrawing arc = new BendDrawing(turn, r + inside);
        Coordinate end = arc.at(turn, r + inside);
        AffineTransformation move = AffineTransformation.translationInstance(end.x, end.y);

        double edge = r + bend.widthM();
        boolean twoWay = t.approach().opposingM() > 0 && t.exit().opposingM() > 0;
        double center = twoWay ? r + inside : right ? edge : r;
        // An apron belongs to what lies inside: to the own lanes of a right bend and of a one-way road.
        double tires = Math.max(0.1, r - t.apronM());
        Geometry all = arc.ring(tires, edge);
        Geometry own = right ? arc.ring(tires, center) : arc.ring(twoWay ? center : tires, edge);
        Geometry pavement = Areas.union(
                own, Areas.union(in.before(in.ownFrom, in.ownTo), move.transform(out.beyond(out.ownFrom, out.ownTo))));
        Geometry before = in.before(in.opposingFrom, in.opposingTo);
        Geometry beyond = move.transform(out.beyond(out.opposingFrom, out.opposingTo));
        Optional<Geometry> escorted = Optional.empty();
        if (t.approach().borrow() || t.exit().borrow()) {
            Geometry wide = Areas.union(pavement, all);
            wide = t.approach().borrow() ? Areas.union(wide, before) : wide;
            escorted = Optional.of(t.exit().borrow() ? Areas.union(wide, beyond) : wide);
        }
        Geometry opposing = Areas.without(Areas.union(arc.ring(r, edge), Areas.union(before, beyond)), pavement);
        DrawnCorner drawn = new DrawnCorner(
                pavement,
                escorted,
                opposing,
                List.of(),
                arc.way(r + inside - in.middleM(), r + inside - out.middleM(), reachM),
                in.end(false),
                out.end(false, end.x, end.y));
        return right ? drawn.mirrored(in.end(true), out.end(true, end.x, -end.y)) : drawn;
    }

    /** A place of the arc, so far turned, at a distance from its middle. */
    private Coordinate at(double turned, double distanceM) {
        return new Coordinate(distanceM * Math.sin(turned), middleY - distanceM * Math.cos(turned));
    }

    /**
     * Between two distances from the middle; its inner edge by tangents, its outer one by chords, so that it is inside
     * both.
     */
    private Geometry ring(double from, double to) {
        if (to - from < 1e-6) {
            return Areas.none();
        }
        List<Coordinate> points = new ArrayList<>();
        PlanShapes.addArc(points, 0, middleY, from, -Math.PI / 2, turn - Math.PI / 2);
        int steps = (int) Math.ceil(turn / PlanShapes.STEP_RAD);
        for (int i = steps; i >= 0; i--) {
            points.add(at(turn * i / steps, to));
        }
        return PlanShapes.polygon(points.toArray(new Coordinate[0]));
    }

    private List<Coordinate> way(double from, double to, double reachM) {
        List<Coordinate> way = new ArrayList<>();
        Coordinate start = at(0, from);
        way.add(new Coordinate(-reachM, start.y));
        int steps = (int) Math.ceil(turn / PlanShapes.STEP_RAD);
        for (int i = 0; i <= steps; i++) {
            double part = (double) i / steps;
            // Over the whole bend from the one lane's middle to the other's.
            way.add(at(turn * part, from + (to - from) * part));
        }
        Coordinate end = at(turn, to);
        way.add(new Coordinate(end.x + reachM * Math.cos(turn), end.y + reachM * Math.sin(turn)));
        return way;
    }
}
