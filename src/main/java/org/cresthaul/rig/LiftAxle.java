package org.cresthaul.rig;

import org.cresthaul.geometry.Finite;

/**
 * The trailer axle that can be raised: always the rearmost of the trailer's group.
 *
 * @param gapM height of its raised tire above level ground in the level stance, meters
 * @param secondaryRiseM how much higher the secondary height valve sets the rear, at the valve axle, when this axle is
 *     up, meters (negative: lower)
 */
public record LiftAxle(double gapM, double secondaryRiseM) {
    public LiftAxle {
        Finite.requireAtLeast("gapM", 0, gapM);
        Finite.require("secondaryRiseM", secondaryRiseM);
    }
}
