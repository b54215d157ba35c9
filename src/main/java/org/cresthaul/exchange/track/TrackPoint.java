package org.cresthaul.exchange.track;

import org.cresthaul.route.LonLat;

/**
 * A position as a file gives it.
 *
 * @param timeS when, seconds since 1970; NaN where the file does not say
 * @param line of the file, from 1; 0 where its format has no lines to speak of
 * @param number of the point in its file, from 1
 */
public record TrackPoint(LonLat at, double timeS, int line, int number) {
    private static final double DEGREE_M = Math.toRadians(6_371_000);

    boolean isTimed() {
        return !Double.isNaN(timeS);
    }

    /** Where a person finds it in the file. */
    String where() {
        return line > 0 ? "line " + line : "point " + number;
    }

    /**
     * About how far it is from another, meters: within 1 % for neighbors on a road, less well where they are degrees
     * apart, which is far in any case.
     */
    double roughM(TrackPoint other) {
        double dLon = other.at.lonDeg() - at.lonDeg();
        double x = (dLon - 360 * Math.rint(dLon / 360)) * Math.cos(Math.toRadians(at.latDeg()));
        double y = other.at.latDeg() - at.latDeg();
        return DEGREE_M * Math.sqrt(x * x + y * y);
    }
}
