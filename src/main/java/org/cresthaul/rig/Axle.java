package org.cresthaul.rig;

import java.util.Optional;
import org.cresthaul.geometry.Finite;

/**
 * One axle of a unit, as it stands in the level stance.
 *
 * @param xM position along the unit's frame, meters
 * @param radiusM loaded tire radius, meters: the height of the axle's center above level ground
 * @param steering how its wheels turn, when they do; the tractor's steer axle is no such axle
 */
public record Axle(double xM, double radiusM, Optional<AxleSteering> steering) {
    public Axle {
        Finite.require("xM", xM);
        Finite.requireAtLeast("radiusM", 0.1, radiusM);
    }

    /** Whose wheels do not turn. */
    public Axle(double xM, double radiusM) {
        this(xM, radiusM, Optional.empty());
    }
}
