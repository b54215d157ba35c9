package org.cresthaul.road;

import org.cresthaul.geometry.Finite;

/**
 * Back along the roadway on the other side: across the center line, or through an opening of the median between the
 * two. The template's point is on the approach's center line (its own lanes' inner edge), abreast of the middle of the
 * opening. Beyond the opening the other roadway is traffic that comes along: it counts as opposing, and escorts may
 * hold it when the exit may be borrowed.
 *
 * @param medianM between the inner edges of both roadways; zero where they touch
 * @param openingM length of the opening along the road, between the median's ends
 * @param noseM radius of the corners of the median's ends, at most half its width
 * @param loonM how far firm pavement reaches beyond the exit's outer edge, abreast of the opening; zero without one
 * @param loonLengthM of that pavement along its outer edge, its middle abreast of the middle of the opening
 */
public record UTurn(double medianM, double openingM, double noseM, double loonM, double loonLengthM)
        implements CornerTemplate.Layout {
    public UTurn {
        Finite.requireAtLeast("medianM", 0, medianM);
        Finite.requireAtLeast("openingM", 2, openingM);
        Finite.requireAtLeast("noseM", 0, noseM);
        Finite.requireAtLeast("loonM", 0, loonM);
        Finite.requireAtLeast("loonLengthM", 0, loonLengthM);
        if (noseM > medianM / 2) {
            throw new IllegalArgumentException("the median's ends cannot be rounder than half its width");
        }
    }

    @Override
    public double leastRad() {
        return Math.PI;
    }

    @Override
    public double mostRad() {
        return Math.PI;
    }
}
