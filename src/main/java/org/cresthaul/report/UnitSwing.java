package org.cresthaul.report;

import org.cresthaul.turning.TurningFigures;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * How far one unit swings and trails on a way round, meters, none negative: as {@link TurningFigures} defines it.
 * Outside and inside are those of the turn.
 *
 * @param offtrackingM the farthest its effective axle is from the line of the steer axle
 * @param tailOutsideM tailInsideM how far a rear corner swings out past the line of its side before the turn
 * @param frontOutsideM frontInsideM how far a front corner swings out past the line of its side behind the turn
 * @param trailsOutsideM trailsInsideM how far its tires run beside those of the unit before it; null for the first unit
 */
public record UnitSwing(
        String unit,
        @Rounded(Rounding.LENGTH_UP) double offtrackingM,
        @Rounded(Rounding.LENGTH_UP) double tailOutsideM,
        @Rounded(Rounding.LENGTH_UP) double tailInsideM,
        @Rounded(Rounding.LENGTH_UP) double frontOutsideM,
        @Rounded(Rounding.LENGTH_UP) double frontInsideM,
        @Rounded(Rounding.LENGTH_UP) Double trailsOutsideM,
        @Rounded(Rounding.LENGTH_UP) Double trailsInsideM) {}
