package org.cresthaul.route;

import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;

/**
 * Shortest lines on the WGS 84 ellipsoid (GeographicLib; C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87,
 * 2013: nanometers). Not for sharing between threads.
 */
public final class Geodesic {
    private static final double EARTH_M = 6_371_000;

    private GeodesicData line;

    /** Points from one place to another; {@link #distanceM} and {@link #azimuthRad} then tell of that line. */
    public Geodesic between(double lonDeg, double latDeg, double toLonDeg, double toLatDeg) {
        line = net.sf.geographiclib.Geodesic.WGS84.Inverse(
                latDeg, lonDeg, toLatDeg, toLonDeg, GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
        return this;
    }

    double distanceM() {
        return line.s12;
    }

    /** Direction at the start, clockwise from north, radians. */
    public double azimuthRad() {
        return Math.toRadians(line.azi1);
    }

    /** The place at a distance in a direction. */
    LonLat from(LonLat start, double azimuthRad, double distanceM) {
        double azimuthDeg = Math.toDegrees(azimuthRad);
        GeodesicData end = net.sf.geographiclib.Geodesic.WGS84.Direct(
                start.latDeg(), start.lonDeg(), azimuthDeg - 360 * Math.rint(azimuthDeg / 360), distanceM);
        return new LonLat(end.lon2, end.lat2);
    }

    /** Distance on a sphere, within 0.6 %, for telling a wrong position from a right one. */
    public static double roughM(double lonDeg, double latDeg, double toLonDeg, double toLatDeg) {
        double halfLat = Math.sin(Math.toRadians(toLatDeg - latDeg) / 2);
        double halfLon = Math.sin(Math.toRadians(toLonDeg - lonDeg) / 2);
        double a = halfLat * halfLat
                + Math.cos(Math.toRadians(latDeg)) * Math.cos(Math.toRadians(toLatDeg)) * halfLon * halfLon;
        return 2 * EARTH_M * Math.asin(Math.min(1, Math.sqrt(a)));
    }

    /** The same difference of longitude, the short way round: from -180 to 180 degrees. */
    static double shortWay(double differenceDeg) {
        return differenceDeg - 360 * Math.rint(differenceDeg / 360);
    }
}
