package org.cresthaul.rig;

import org.cresthaul.geometry.Finite;

/**
 * A trailer axle that can be raised.
 *
 * @param index which of the trailer's axles, the first is 0
 * @param gapM height of its raised tire above level ground in the level stance, meters
 */
public record LiftAxle(int index, double gapM) {
    public LiftAxle {
        Finite.requireAtLeast("gapM", 0, gapM);
    }
}
