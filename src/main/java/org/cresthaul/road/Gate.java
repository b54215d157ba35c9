package org.cresthaul.road;

import org.cresthaul.geometry.Finite;

/**
 * A gate that is backed into: the combination drives past it along the road, stops, and backs in. The template's turn
 * is the direction of the drive behind the gate, from that of the road, positive to the left; its point is where the
 * middle of the drive meets the road's center line. The template's exit has no say: the drive goes on as wide as the
 * gate.
 *
 * @param widthM of the gate and the drive behind it
 * @param nearM radius of the return that is passed first
 * @param farM radius of the other
 */
public record Gate(double widthM, double nearM, double farM) implements CornerTemplate.Layout {
    public Gate {
        Finite.requireAtLeast("widthM", 2, widthM);
        Finite.requireAtLeast("nearM", 0, nearM);
        Finite.requireAtLeast("farM", 0, farM);
    }

    @Override
    public double leastRad() {
        return Math.toRadians(30);
    }

    @Override
    public double mostRad() {
        return Math.toRadians(150);
    }
}
