package org.cresthaul.rig;

import org.cresthaul.geometry.Finite;

/**
 * One axle of a unit, as it stands in the level stance.
 *
 * @param xM position along the unit's frame, meters
 * @param radiusM loaded tire radius, meters: the height of the axle's center above level ground
 */
public record Axle(double xM, double radiusM) {
    public Axle {
        Finite.require("xM", xM);
        Finite.requireAtLeast("radiusM", 0.1, radiusM);
    }
}
