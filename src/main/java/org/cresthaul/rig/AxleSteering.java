package org.cresthaul.rig;

import org.cresthaul.geometry.Finite;

/**
 * How the wheels of an axle behind the tractor turn out of their unit's direction, those of one side about their own
 * middle. Wheels that are locked straight ahead have none.
 */
public sealed interface AxleSteering {
    /** Largest angle of the wheels either way, radians: their stop. */
    double limitRad();

    /** Wheels that trail where they roll, and guide nothing until they meet their stop. They are locked for backing. */
    record Castering(double limitRad) implements AxleSteering {
        public Castering {
            requireLimit(limitRad);
        }
    }

    /**
     * Wheels that are turned against the bend of the coupling ahead of their unit.
     *
     * @param ratio their angle for each angle of the bend, to the other side, so that the unit cuts in less
     */
    record Commanded(double ratio, double limitRad) implements AxleSteering {
        public Commanded {
            Finite.requireAtLeast("ratio", 0, ratio);
            requireLimit(limitRad);
        }
    }

    private static void requireLimit(double limitRad) {
        Finite.requireAtLeast("limitRad", 0, limitRad);
        if (limitRad >= Math.PI / 2) {
            throw new IllegalArgumentException("wheels turn by less than a right angle, was " + limitRad);
        }
    }
}
