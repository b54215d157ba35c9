package org.cresthaul.clearance;

import java.util.Optional;
import org.cresthaul.clearance.bound.OutlineGaps;

/**
 * What a passage is searched for, unit by unit: the undersides over the ground, or the topsides under a soffit.
 *
 * @param booster only for a trailing booster
 */
record Target(OutlineGaps tractor, OutlineGaps trailer, Optional<OutlineGaps> booster) {
    /** What placed outlines take beside their points, in points of some 30 bytes. */
    private static final int BESIDE = 12;

    /**
     * Room that the outlines take at one position, in vertices and segments; the tractor's only where it is placed
     * anew.
     */
    int room(boolean withTractor) {
        return trailer.points()
                + BESIDE
                + booster.map(b -> b.points() + BESIDE).orElse(0)
                + (withTractor ? tractor.points() + BESIDE : 0);
    }
}
