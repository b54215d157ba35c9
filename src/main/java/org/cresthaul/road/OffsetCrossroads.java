package org.cresthaul.road;

import org.cresthaul.geometry.Finite;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.CornerTemplate.RoadWidths;

/**
 * Into a road that crosses, a short stretch along it, and out the other way: the template's turn is that of the first
 * of the two turns, the second turns back by as much, so that the exit runs beside the approach. The template's point
 * is where the approach's center line meets that of the crossing road.
 *
 * @param crossing the road between, in the direction it is driven
 * @param offsetM between the center lines of approach and exit, square to them
 * @param first the return inside the first turn
 * @param second inside the second
 */
public record OffsetCrossroads(RoadWidths crossing, double offsetM, CurbReturn first, CurbReturn second)
        implements CornerTemplate.Layout {
    public OffsetCrossroads {
        Finite.requireAtLeast("offsetM", 1, offsetM);
    }

    @Override
    public double leastRad() {
        return Math.toRadians(30);
    }

    @Override
    public double mostRad() {
        return Math.toRadians(150);
    }

    @Override
    public boolean turnsBack() {
        return true;
    }
}
