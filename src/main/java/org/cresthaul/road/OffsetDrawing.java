package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Two junctions one after the other, driven on the right: into a crossing road and out of it on its other side. */
final class OffsetDrawing {
    private OffsetDrawing() {}

    static DrawnCorner of(CornerTemplate t, OffsetCrossroads crossroads) {
        double turn = t.turnRad();
        double alongM = crossroads.offsetM() / Math.sin(Math.abs(turn));
        CornerTemplate first = new CornerTemplate(
                turn,
                t.approach(),
                crossroads.crossing(),
                crossroads.first(),
                t.apronM(),
                List.of(),
                List.of(),
                t.curbHeightM());
        CornerTemplate second = new CornerTemplate(
                -turn,
                crossroads.crossing(),
                t.exit(),
                crossroads.second(),
                t.apronM(),
                List.of(),
                List.of(),
                t.curbHeightM());
        DrawnCorner a = JunctionDrawing.of(first, crossroads.first());
        DrawnCorner b = JunctionDrawing.of(second, crossroads.second());
        Coordinate meeting = PlanShapes.turned(turn, alongM, 0);
        AffineTransformation move = AffineTransformation.rotationInstance(turn).translate(meeting.x, meeting.y);
        // The first junction's part of the crossing road ends with the exit, the second's begins with the approach.
        double reachM = CornerTemplate.reachM(alongM);
        RoadStrip in = new RoadStrip(0, t.approach(), false, reachM);
        RoadStrip out = new RoadStrip(0, t.exit(), false, reachM);
        double hand = Math.signum(turn);
        double last = hand * crossroads.offsetM() + (hand > 0 ? out.innerM : out.outerM);
        double begin = hand > 0 ? in.outerM : in.innerM;
        Geometry upTo = beside(in, last, -hand);
        Geometry from = beside(in, begin, hand);

        Geometry pavement = joined(a.pavement(), upTo, move.transform(b.pavement()), from);
        Optional<Geometry> escorted = a.escorted().isEmpty() && b.escorted().isEmpty()
                ? Optional.empty()
                : Optional.of(Areas.union(
                        pavement,
                        joined(
                                a.escorted().orElse(a.pavement()),
                                upTo,
                                move.transform(b.escorted().orElse(b.pavement())),
                                from)));
        Geometry opposing = Areas.without(joined(a.opposing(), upTo, move.transform(b.opposing()), from), pavement);
        return new DrawnCorner(
                pavement,
                escorted,
                opposing,
                List.of(),
                way(t, crossroads, meeting, reachM),
                in.end(false),
                out.end(false, meeting.x, meeting.y));
    }

    private static Geometry beside(RoadStrip road, double offsetM, double hand) {
        return hand > 0 ? road.side(offsetM) : Areas.without(road.side(offsetM - 2000), road.side(offsetM));
    }

    private static Geometry joined(Geometry a, Geometry ofA, Geometry b, Geometry ofB) {
        return Areas.union(Areas.common(a, ofA), Areas.common(b, ofB));
    }

    /** Along the middle of the own lanes of all three roads. */
    private static List<Coordinate> way(
            CornerTemplate t, OffsetCrossroads crossroads, Coordinate meeting, double reachM) {
        double turn = t.turnRad();
        double in = -t.approach().ownM() / 2;
        double between = -crossroads.crossing().ownM() / 2;
        double out = meeting.y - t.exit().ownM() / 2;
        List<Coordinate> corners = new ArrayList<>();
        corners.add(new Coordinate(-reachM, in));
        corners.add(crossing(turn, between, in));
        corners.add(crossing(turn, between, out));
        corners.add(new Coordinate(meeting.x + reachM, out));
        return RoundedWay.rounded(corners, new double[] {
            radiusM(crossroads.first(), turn, t.approach(), crossroads.crossing()),
            radiusM(crossroads.second(), -turn, crossroads.crossing(), t.exit())
        });
    }

    /** Round a return in the middle of the lanes, the way that leaves the more room beside it of both roads. */
    private static double radiusM(CurbReturn curb, double turn, RoadWidths in, RoadWidths out) {
        return curb.middleM() + curb.offsetM() + Math.min(insideM(turn, in), insideM(turn, out));
    }

    /** From the middle of the own lanes to the edge inside the turn. */
    private static double insideM(double turn, RoadWidths road) {
        return road.ownM() / 2 + (turn > 0 ? road.opposingM() : road.shoulderM());
    }

    /** Where a line beside the crossing road is so far to the left of the approach. */
    private static Coordinate crossing(double turn, double beside, double leftM) {
        double along = (leftM - beside * Math.cos(turn)) / Math.sin(turn);
        return PlanShapes.turned(turn, along, beside);
    }
}
