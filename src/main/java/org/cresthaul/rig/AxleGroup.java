package org.cresthaul.rig;

import java.util.List;
import org.cresthaul.geometry.Finite;

/**
 * Axles that share the air of one suspension.
 *
 * @param axles front to rear, at least one
 * @param jounceM how far an axle can travel up from the level stance before it is solid, meters
 * @param reboundM how far it can travel down before it hangs, meters
 */
public record AxleGroup(List<Axle> axles, double jounceM, double reboundM) {
    public AxleGroup {
        axles = List.copyOf(axles);
        if (axles.isEmpty()) {
            throw new IllegalArgumentException("an axle group needs at least one axle");
        }
        for (int i = 1; i < axles.size(); i++) {
            if (axles.get(i).xM() >= axles.get(i - 1).xM()) {
                throw new IllegalArgumentException("axles run from front to rear: axle " + (i + 1) + " at "
                        + axles.get(i).xM() + " m is not behind axle " + i + " at "
                        + axles.get(i - 1).xM() + " m");
            }
        }
        Finite.requireAtLeast("jounceM", 0, jounceM);
        Finite.requireAtLeast("reboundM", 0, reboundM);
    }
}
