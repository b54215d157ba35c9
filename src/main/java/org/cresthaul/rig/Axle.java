package org.cresthaul.rig;

import org.cresthaul.geometry.Finite;

/**
 * One axle of a unit, as it stands in the level stance.
 *
 * @param xM position along the unit's frame, metres
 * @param radiusM loaded tyre radius, metres: the height of the axle's centre above level ground
 */
public record Axle(double xM, double radiusM) {
    public Axle {
        Finite.require("xM", xM);
        Finite.requireAtLeast("radiusM", 0.1, radiusM);
    }
}
