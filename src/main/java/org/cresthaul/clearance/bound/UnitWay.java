package org.cresthaul.clearance.bound;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.geometry.Range;
import org.cresthaul.posture.Pose;
import org.cresthaul.rig.FramePoint;

/**
 * All that is known of how one unit gets from one position to the next.
 *
 * @param also other motions it may have instead, now and then: a booster's while its hinge is at a limit and fixes it
 *     to the unit ahead
 * @param bow of the same unit, where it is known
 */
public record UnitWay(MotionBounds motion, List<MotionBounds> also, UnitBow bow) {
    public UnitWay {
        also = List.copyOf(also);
    }

    public UnitWay(MotionBounds motion, UnitBow bow) {
        this(motion, List.of(), bow);
    }

    public boolean known() {
        return motion.known && also.stream().allMatch(m -> m.known);
    }

    /** Every motion it may have. */
    public List<MotionBounds> motions() {
        if (also.isEmpty()) {
            return List.of(motion);
        }
        List<MotionBounds> all = new ArrayList<>(List.of(motion));
        all.addAll(also);
        return all;
    }

    /** ω of any of them, radians per meter. */
    public Range turn() {
        Range turn = motion.turn();
        for (MotionBounds m : also) {
            turn = turn.hull(m.turn());
        }
        return turn;
    }

    /** Bounds on the motion of a point fixed to the unit, between two of its poses. */
    public PointMotion at(Pose a, Pose b, FramePoint point) {
        PointMotion at = motion.at(a, b, point);
        for (MotionBounds m : also) {
            at = at.hull(m.at(a, b, point));
        }
        return at;
    }
}
