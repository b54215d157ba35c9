package org.cresthaul.report;

import java.util.List;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * The route of the report.
 *
 * @param sha256 of its file
 * @param limitsSha256 of the limits file that replaced the route's own limits, null when none did
 */
public record CheckedRoute(
        String name,
        String note,
        String sha256,
        String limitsSha256,
        @Rounded(Rounding.LENGTH_NEAR) double lengthM,
        List<CheckedLeg> legs) {}
