package org.cresthaul.road;

import org.cresthaul.geometry.Finite;

/**
 * A road that turns in one arc with its edges concentric: a ramp, a turnout, a loop back. The template's point is on
 * the approach's center line where the bend begins, and the center line goes on through the bend. What lies inside of
 * it is as wide in the bend as in the narrower of both roads; the rest of the bend's width is outside of it.
 *
 * @param innerM radius of the inner edge
 * @param widthM of the bend from edge to edge, with shoulders
 */
public record Bend(double innerM, double widthM) implements CornerTemplate.Layout {
    public Bend {
        Finite.requireAtLeast("innerM", 0.5, innerM);
        Finite.requireAtLeast("widthM", 2, widthM);
    }

    @Override
    public double leastRad() {
        return Math.toRadians(20);
    }

    @Override
    public double mostRad() {
        return Math.PI;
    }
}
