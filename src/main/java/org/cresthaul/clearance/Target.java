package org.cresthaul.clearance;

import java.util.Optional;
import org.cresthaul.clearance.bound.OutlineGaps;

/**
 * What a passage is searched for, unit by unit: the undersides over the ground, or the topsides under a soffit.
 *
 * @param booster only for a trailing booster
 */
record Target(OutlineGaps tractor, OutlineGaps trailer, Optional<OutlineGaps> booster) {
    /** How many vertices and segments have to be placed behind the tractor. */
    int points() {
        return trailer.points() + booster.map(OutlineGaps::points).orElse(0);
    }
}
