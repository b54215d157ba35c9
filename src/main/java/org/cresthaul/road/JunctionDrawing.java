package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** Two roads that meet with a curb return, driven on the right. */
final class JunctionDrawing {
    private JunctionDrawing() {}

    /** Works in a frame whose y points to the inside of the turn, and mirrors a right turn back at the end. */
    static DrawnCorner of(CornerTemplate t, CurbReturn curb) {
        boolean right = t.turnRad() < 0;
        double turn = Math.abs(t.turnRad());
        double reachM = CornerTemplate.reachM(CurbCurve.tangentM(curb, turn));
        RoadStrip in = new RoadStrip(0, t.approach(), right, reachM);
        RoadStrip out = new RoadStrip(turn, t.exit(), right, reachM);
        Geometry fillet = CurbCurve.fillet(curb, in.innerM, out.innerM, turn);
        Geometry ownIn = in.strip(in.ownFrom, in.ownTo);
        Geometry ownOut = out.strip(out.ownFrom, out.ownTo);
        Geometry allIn = in.strip(in.outerM, in.innerM);
        Geometry allOut = out.strip(out.outerM, out.innerM);
        Geometry box = Areas.common(allIn, allOut);
        Geometry ownInCut = Areas.common(ownIn, out.side(right ? out.ownFrom : out.outerM));
        Geometry ownOutCut = Areas.common(ownOut, in.side(right ? in.ownFrom : in.outerM));
        Geometry own = Areas.union(ownInCut, ownOutCut);
        // Turning across, the truck has the junction itself; turning to its own side it has its own lanes and the
        // return.
        Geometry pavement = Areas.union(own, right ? fillet : Areas.union(box, fillet));
        Geometry opposing = Areas.union(
                Areas.common(in.strip(in.opposingFrom, in.opposingTo), out.side(out.outerM)),
                Areas.common(out.strip(out.opposingFrom, out.opposingTo), in.side(in.outerM)));
        opposing = Areas.without(opposing, pavement);
        Optional<Geometry> escorted = Optional.empty();
        if (t.approach().borrow() || t.exit().borrow()) {
            Geometry wide = Areas.union(pavement, box);
            if (t.approach().borrow()) {
                wide = Areas.union(wide, Areas.common(allIn, out.side(out.outerM)));
            }
            if (t.exit().borrow()) {
                wide = Areas.union(wide, Areas.common(allOut, in.side(in.outerM)));
            }
            escorted = Optional.of(Areas.union(wide, fillet));
        }
        if (t.apronM() > 0) {
            Geometry apron = Areas.common(
                    Areas.common(PlanShapes.buffer(fillet, t.apronM()), in.side(in.innerM)), out.side(out.innerM));
            pavement = Areas.union(pavement, apron);
            escorted = escorted.map(e -> Areas.union(e, apron));
        }
        double set = curb.middleM() + curb.offsetM();
        double radius = Math.min(set + in.innerM - in.middleM(), set + out.innerM - out.middleM());
        DrawnCorner drawn = new DrawnCorner(
                pavement,
                escorted,
                opposing,
                List.of(),
                way(in.middleM(), out.middleM(), turn, radius, reachM),
                in.end(false),
                out.end(false));
        return right ? drawn.mirrored(in.end(true), out.end(true)) : drawn;
    }

    /** Along one line, round an arc, along the other. */
    private static List<Coordinate> way(double offsetIn, double offsetOut, double turn, double radius, double reachM) {
        double cos = Math.cos(turn);
        double sin = Math.sin(turn);
        double meetX = (offsetIn * cos - offsetOut) / sin;
        double tangent = radius * Math.tan(turn / 2);
        List<Coordinate> way = new ArrayList<>();
        way.add(new Coordinate(-reachM, offsetIn));
        int steps = (int) Math.ceil(turn / PlanShapes.STEP_RAD);
        for (int i = 0; i <= steps; i++) {
            double a = turn * i / steps;
            way.add(new Coordinate(meetX - tangent + radius * Math.sin(a), offsetIn + radius * (1 - Math.cos(a))));
        }
        way.add(PlanShapes.turned(turn, reachM, offsetOut));
        return way;
    }
}
