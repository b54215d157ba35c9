package org.cresthaul.road;

import org.cresthaul.geometry.Finite;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.CornerTemplate.RoadWidths;

/**
 * Three roads that meet in a Y: one bears away from the other at a nose, or the way leads round the nose from one
 * branch into the other.
 *
 * @param third the road that is not driven; its own lanes are those that lead away from the meeting. It is closed,
 *     unless escorts may borrow it
 * @param thirdRad the direction in which it leads away, from that of the approach, positive to the left
 * @param inside the return inside the turn, where approach and exit are neighbors there
 * @param noseM radius of the noses between the third road and its neighbors
 */
public record Fork(RoadWidths third, double thirdRad, CurbReturn inside, double noseM)
        implements CornerTemplate.Layout {
    /** Two roads may lie no closer. */
    public static final double LEAST_BETWEEN_RAD = Math.toRadians(15);

    public Fork {
        Finite.require("thirdRad", thirdRad);
        Finite.requireAtLeast("noseM", 0, noseM);
        if (Math.PI - Math.abs(thirdRad) < LEAST_BETWEEN_RAD) {
            throw new IllegalArgumentException("the third road lies on the approach");
        }
    }

    @Override
    public double leastRad() {
        return 0;
    }

    @Override
    public double mostRad() {
        return Math.PI - LEAST_BETWEEN_RAD;
    }

    /** Whether the third road and the exit are far enough apart. */
    public boolean isApartFrom(double turnRad) {
        return Math.abs(Math.IEEEremainder(thirdRad - turnRad, 2 * Math.PI)) >= LEAST_BETWEEN_RAD - 1e-9;
    }

    @Override
    public Fork mirrored() {
        return new Fork(third, -thirdRad, inside, noseM);
    }
}
