package org.cresthaul.report;

import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/** A leg of the route that was checked. */
public record CheckedLeg(
        String name,
        @Rounded(Rounding.LENGTH_NEAR) double startChainageM,
        @Rounded(Rounding.LENGTH_NEAR) double endChainageM) {}
