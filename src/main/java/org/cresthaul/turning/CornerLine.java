package org.cresthaul.turning;

import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;

/**
 * A lead line of the family that is searched: straight along the approach at an offset, perhaps a swing away from the
 * turn, the turn itself and as much more, perhaps the swing back, straight along the exit. Curvature is built up and
 * taken off no faster than the steering allows.
 *
 * @param radiusM of the turn, metres; swings are a quarter wider
 * @param swingInRad how far it first turns away, not negative
 * @param swingOutRad how far it turns too far and comes back, not negative
 * @param offsetInM of the line on the approach, from its centre point, positive to the left
 * @param startM where the steering begins, along the approach from its centre point; negative before it
 */
public record CornerLine(
        double radiusM, double swingInRad, double swingOutRad, double offsetInM, double startM) {
    private static final double SWING_WIDER = 1.25;
    /** Sine between two roads below which a line is laid by its start and not by its offset on the exit. */
    static final double NEARLY_PARALLEL = 0.25;

    /** The path from where the steering begins until the last unit has followed round. */
    LeadPath path(Corner corner, TurningCombination combination) {
        RoadEnd in = corner.approach();
        double c = Math.cos(in.headingRad());
        double s = Math.sin(in.headingRad());
        return shape(corner, combination, in.xM() + startM * c - offsetInM * s, in.yM() + startM * s + offsetInM * c);
    }

    /** The same from any place. */
    LeadPath shape(Corner corner, TurningCombination combination, double xM, double yM) {
        double hand = corner.turnRad() < 0 ? -1 : 1;
        double rate = combination.tightestPerM() / combination.lockDistanceM();
        double across = Math.abs(Math.sin(corner.exit().headingRad() - corner.approach().headingRad()));
        // Where the roads run on nearly parallel the line must reach the exit from wherever it starts.
        double run = combination.lengthM() + (across < NEARLY_PARALLEL ? 65 : 6);
        double swing = 1 / (SWING_WIDER * radiusM);
        return LeadPath.from(xM, yM, corner.approach().headingRad())
                .turn(-hand * swingInRad, swing, rate)
                .turn(hand * (Math.abs(corner.turnRad()) + swingInRad + swingOutRad), 1 / radiusM, rate)
                .turn(-hand * swingOutRad, swing, rate)
                .line(run)
                .build();
    }

    /** Offset of the end of the path on the exit, from its centre point, positive to the left. */
    static double offsetOutM(Corner corner, double endXM, double endYM) {
        RoadEnd out = corner.exit();
        return -(endXM - out.xM()) * Math.sin(out.headingRad()) + (endYM - out.yM()) * Math.cos(out.headingRad());
    }
}
