package org.cresthaul.report;

import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * Where a unit comes nearest to the one behind it.
 *
 * @param xM hM where on it, in its frame
 * @param bendRad pitch of the one behind relative to it then, nose up
 */
public record FacingUnit(
        String unit,
        @Rounded(Rounding.LENGTH_NEAR) double xM,
        @Rounded(Rounding.LENGTH_NEAR) double hM,
        String part,
        @Rounded(Rounding.BEND_NEAR) double bendRad) {}
