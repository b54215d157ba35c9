package org.cresthaul.turning;

import org.cresthaul.geometry.Finite;

/**
 * A part of a unit that does not pass over some raised ground beside the pavement: its underside is too low for it, or
 * the height of that ground is unknown.
 *
 * @param unit index into the chain
 * @param part whose underside it is
 * @param rearM frontM meters ahead of the unit's effective axle
 * @param halfWidthM meters
 * @param island index of the island it must stay off, or {@link #BEYOND_EDGE}
 */
public record LowPart(int unit, PartOfUnit part, double rearM, double frontM, double halfWidthM, int island) {
    /** Whatever lies beyond the pavement's outer edge. */
    public static final int BEYOND_EDGE = -1;

    public LowPart {
        Finite.require("rearM", rearM);
        Finite.requireAtLeast("frontM", rearM, frontM);
        Finite.requireAtLeast("halfWidthM", 0, halfWidthM);
    }
}
