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
    /** On a straight a bend shrinks by e for every length of its unit: after so many nothing moves by a millimeter. */
    private static final double SETTLED_LENGTHS = 13;
    /** Straight before the steering begins, besides the combination's own length, metres. */
    private static final double APPROACH_M = 20;
    /** Sine between two roads below which a line is laid by its start and not by its offset on the exit. */
    static final double NEARLY_PARALLEL = 0.25;

    /**
     * The whole passage: straight along the approach for as long as the combination is and more, so that what lies behind its
     * rear when the steering begins is passed as well, until every unit is straight on the exit.
     */
    LeadPath path(Corner corner, TurningCombination combination) {
        RoadEnd in = corner.approach();
        double c = Math.cos(in.headingRad());
        double s = Math.sin(in.headingRad());
        double before = combination.lengthM() + APPROACH_M;
        double from = startM - before;
        LeadPath.Builder path = LeadPath.from(
                in.xM() + from * c - offsetInM * s, in.yM() + from * s + offsetInM * c, in.headingRad()).line(before);
        return steered(path, corner, combination);
    }

    /** The same from any place. */
    LeadPath shape(Corner corner, TurningCombination combination, double xM, double yM) {
        return steered(LeadPath.from(xM, yM, corner.approach().headingRad()), corner, combination);
    }

    private LeadPath steered(LeadPath.Builder path, Corner corner, TurningCombination combination) {
        double hand = corner.turnRad() < 0 ? -1 : 1;
        double rate = combination.tightestPerM() / combination.lockDistanceM();
        double across = Math.abs(Math.sin(corner.exit().headingRad() - corner.approach().headingRad()));
        // Where the roads run on nearly parallel the line must reach the exit from wherever it starts.
        double longest = combination.chain().stream().mapToDouble(TurningUnit::hitchToAxleM).max().orElseThrow();
        double run = SETTLED_LENGTHS * longest + combination.lengthM() + (across < NEARLY_PARALLEL ? 65 : 6);
        double swing = 1 / (SWING_WIDER * radiusM);
        return path
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
