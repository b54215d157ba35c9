package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.Corner.Island;
import org.cresthaul.road.CornerTemplate.Roundabout;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Two roads that meet on a roundabout, driven counter-clockwise. */
final class RoundaboutDrawing {
    private RoundaboutDrawing() {}

    static DrawnCorner of(CornerTemplate t, Roundabout round) {
        double reachM = CornerTemplate.reachM(round.outerM() + round.filletM());
        RoadStrip in = new RoadStrip(0, t.approach(), false, reachM);
        RoadStrip out = new RoadStrip(t.turnRad(), t.exit(), false, reachM);
        Geometry disk = PlanShapes.disk(0, 0, round.outerM());
        Geometry all =
                Areas.union(Areas.union(disk, in.before(in.outerM, in.innerM)), out.beyond(out.outerM, out.innerM));
        all = Areas.union(all, fillet(round, Math.PI, -in.outerM, 1));
        all = Areas.union(all, fillet(round, Math.PI, in.innerM, -1));
        all = Areas.union(all, fillet(round, t.turnRad(), -out.outerM, -1));
        all = Areas.union(all, fillet(round, t.turnRad(), out.innerM, 1));
        Geometry island = PlanShapes.diskAround(0, 0, Math.max(0.1, round.islandM() - t.apronM()));
        all = Areas.without(all, island);
        Geometry opposing = Areas.without(
                Areas.union(in.before(in.opposingFrom, in.opposingTo), out.beyond(out.opposingFrom, out.opposingTo)),
                disk);
        Geometry pavement = Areas.without(all, opposing);
        Optional<Geometry> escorted = t.approach().borrow() || t.exit().borrow() ? Optional.of(all) : Optional.empty();
        return new DrawnCorner(
                pavement,
                escorted,
                opposing,
                List.of(new Island(island, round.islandHeightM())),
                way(t.turnRad(), in.middleM(), out.middleM(), 0.5 * (round.outerM() + round.islandM()), reachM),
                in.end(false),
                out.end(false));
    }

    /**
     * The curb return between the outer edge and one edge of a road: an arc that touches both from outside.
     *
     * @param outwardRad where the road leads, seen from the middle
     * @param edgeM how far the edge is beside the middle
     * @param side 1 when the edge is the left one looking there, -1 the right one
     */
    private static Geometry fillet(Roundabout round, double outwardRad, double edgeM, int side) {
        double r = round.filletM();
        double aside = edgeM + r;
        double across = round.outerM() + r;
        if (r <= 0 || aside >= across) {
            return Areas.none();
        }
        double ahead = Math.sqrt(across * across - aside * aside);
        List<Coordinate> points = new ArrayList<>();
        // A little inside road and circle, so that no two sides of the piece lie in each other.
        points.add(new Coordinate(0, edgeM - 0.25));
        PlanShapes.addArc(points, ahead, aside, r, Math.PI + Math.atan2(aside, ahead), 1.5 * Math.PI);
        AffineTransformation place = AffineTransformation.scaleInstance(1, side);
        place.rotate(outwardRad);
        return place.transform(PlanShapes.polygon(points.toArray(new Coordinate[0])));
    }

    /** Along the approach's own lanes to the middle of the circulating lane, round it, and out. */
    private static List<Coordinate> way(
            double turnRad, double offsetIn, double offsetOut, double radius, double reachM) {
        double back = Math.asin(Math.max(-1, Math.min(1, offsetIn / radius)));
        double ahead = Math.asin(Math.max(-1, Math.min(1, offsetOut / radius)));
        double from = Math.PI - back;
        double round = Math.max(0, turnRad + ahead + Math.PI + back);
        List<Coordinate> way = new ArrayList<>();
        way.add(new Coordinate(-reachM, offsetIn));
        int steps = (int) Math.ceil(round / PlanShapes.STEP_RAD);
        for (int i = 0; i <= steps; i++) {
            double a = from + (steps == 0 ? 0 : round * i / steps);
            way.add(new Coordinate(radius * Math.cos(a), radius * Math.sin(a)));
        }
        way.add(PlanShapes.turned(turnRad, reachM, offsetOut));
        return way;
    }
}
