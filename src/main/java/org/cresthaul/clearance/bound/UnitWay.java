package org.cresthaul.clearance.bound;

import java.util.Optional;

/**
 * All that is known of how one unit gets from one position to the next.
 *
 * @param also a second motion it may have instead, now and then: a booster's while its hinge is at a limit and fixes it
 *     to the trailer
 * @param bow of the same unit, where it is known
 */
public record UnitWay(MotionBounds motion, Optional<MotionBounds> also, UnitBow bow) {
    public UnitWay(MotionBounds motion, UnitBow bow) {
        this(motion, Optional.empty(), bow);
    }

    boolean known() {
        return motion.known && (also.isEmpty() || also.get().known);
    }
}
