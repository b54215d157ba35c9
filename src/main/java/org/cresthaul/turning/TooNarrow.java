package org.cresthaul.turning;

import java.util.Optional;
import org.cresthaul.road.Corner.RoadEnd;

/**
 * Proofs that there is no line at all. A combination that comes straight along the approach and leaves straight along the
 * exit stands on both as wide as its widest axle: tires that are farther apart than the road is wide leave it.
 */
public final class TooNarrow {
    private TooNarrow() {}

    /** Why no line can exist, in words; empty where that is not shown. */
    public static Optional<String> find(CornerSpace space, TurningCombination combination) {
        double tires = 2 * combination.halfTiresM();
        RoadEnd in = space.corner().approach();
        RoadEnd out = space.corner().exit();
        if (tires > space.leftM(in) + space.rightM(in)) {
            return Optional.of("the approach is narrower than the tires are apart");
        }
        if (tires > space.leftM(out) + space.rightM(out)) {
            return Optional.of("the exit is narrower than the tires are apart");
        }
        return Optional.empty();
    }
}
