package org.cresthaul.route;

import org.cresthaul.geometry.Finite;

/**
 * A part of the route with a name of its own.
 *
 * @param name from the file
 * @param firstPoint index of its first point on the route's line
 * @param lastPoint index of its last point, after the first
 * @param startChainageM chainage of the first point, meters
 * @param endChainageM chainage of the last point, meters
 */
public record Leg(String name, int firstPoint, int lastPoint, double startChainageM, double endChainageM) {
    public Leg {
        if (name.isBlank() || firstPoint < 0 || lastPoint <= firstPoint) {
            throw new IllegalArgumentException(
                    "a leg needs a name and two points: \"" + name + "\", " + firstPoint + ", " + lastPoint);
        }
        Finite.requireAtLeast("startChainageM", 0, startChainageM);
        Finite.requireAtLeast("endChainageM", startChainageM, endChainageM);
    }
}
