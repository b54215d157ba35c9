package org.cresthaul.road;

import org.cresthaul.geometry.Areas;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/** What lies between two roads that lead away from the origin, the second next to the first counter-clockwise. */
final class Mouth {
    /** So far the sides behind a return are looked at, meters. */
    private static final double BEHIND_M = 2000;

    private Mouth() {}

    /**
     * A road that leads away.
     *
     * @param awayRad its direction
     * @param leftM rightM how far its edges are from its line, looking away
     */
    record Leg(double awayRad, double leftM, double rightM) {
        Geometry area(double reachM) {
            return PlanShapes.rectangle(awayRad, 0, reachM, -rightM, leftM);
        }
    }

    /** From the first road round to the second, counter-clockwise, up to a whole turn. */
    static double between(Leg first, Leg second) {
        double apart = (second.awayRad - first.awayRad) % (2 * Math.PI);
        return apart <= 0 ? apart + 2 * Math.PI : apart;
    }

    /**
     * The pavement between them: in an angle less than straight that which the return adds, and an apron behind it;
     * else the triangle that the ends of the roads leave open.
     */
    static Geometry area(Leg first, Leg second, CurbReturn curb, double apronM) {
        double between = between(first, second);
        if (between >= Math.PI - 1e-9) {
            return between < Math.PI + 1e-6
                    ? Areas.none()
                    : PlanShapes.polygon(
                            PlanShapes.turned(first.awayRad, 0, 0),
                            PlanShapes.turned(first.awayRad, 0, first.leftM),
                            PlanShapes.turned(second.awayRad, 0, -second.rightM));
        }
        // Seen from the second road, driven toward the origin, along x: the first turns off to the left.
        double turn = Math.PI - between;
        Geometry added = CurbCurve.fillet(curb, second.rightM, first.leftM, turn);
        if (apronM > 0 && !added.isEmpty()) {
            Geometry behind = Areas.common(
                    PlanShapes.rectangle(0, -BEHIND_M, BEHIND_M, second.rightM, BEHIND_M),
                    PlanShapes.rectangle(turn, -BEHIND_M, BEHIND_M, first.leftM, BEHIND_M));
            added = Areas.union(added, Areas.common(PlanShapes.buffer(added, apronM), behind));
        }
        return AffineTransformation.rotationInstance(second.awayRad - Math.PI).transform(added);
    }

    /** How far from the origin the return between them ends on either road, meters. */
    static double reachM(Leg first, Leg second, CurbReturn curb) {
        double between = between(first, second);
        if (between >= Math.PI) {
            return 0;
        }
        double wide = Math.max(Math.abs(first.leftM), Math.abs(second.rightM));
        return 2 * wide / Math.sin(between) + CurbCurve.tangentM(curb, Math.PI - between);
    }
}
