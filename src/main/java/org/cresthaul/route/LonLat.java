package org.cresthaul.route;

import org.cresthaul.geometry.Finite;

/**
 * A place on the earth, WGS 84, in the order of RFC 7946.
 *
 * @param lonDeg longitude, degrees, east positive, -180 to 180
 * @param latDeg latitude, degrees, north positive, within {@link #MOST_LAT_DEG} either way
 */
public record LonLat(double lonDeg, double latDeg) {
    /** Farthest latitude taken, degrees. No haul goes nearer a pole, and local frames lose their accuracy there. */
    public static final double MOST_LAT_DEG = 85;

    public LonLat {
        Finite.requireAtLeast("lonDeg", -180, lonDeg);
        Finite.requireAtLeast("-lonDeg", -180, -lonDeg);
        Finite.requireAtLeast("latDeg", -MOST_LAT_DEG, latDeg);
        Finite.requireAtLeast("-latDeg", -MOST_LAT_DEG, -latDeg);
    }

    /** Distance on a sphere, meters, within 0.6 %: for telling a wrong position from a right one. */
    public static double roughM(LonLat from, LonLat to) {
        return Geodesic.roughM(from.lonDeg, from.latDeg, to.lonDeg, to.latDeg);
    }
}
