package org.cresthaul.report;

import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * The least gap to the ground over the sketch of a road that nobody has surveyed. It orders what to survey first, and
 * is no verdict on any place.
 *
 * @param source the raster that the sketch is from
 * @param spacingM between its cells
 * @param date of the raster, or null
 * @param tooCoarse whether its cells are too far apart to show a hump; then there is no gap
 * @param gapM the least gap, negative where the ground of the sketch reaches higher, or null where it is not known
 * @param configuration in which: the first axle and booster state at its highest notch; null without a gap
 */
public record SketchGap(
        String source,
        @Rounded(Rounding.LENGTH_NEAR) double spacingM,
        String date,
        boolean tooCoarse,
        @Rounded(Rounding.LENGTH_DOWN) Double gapM,
        String configuration) {}
