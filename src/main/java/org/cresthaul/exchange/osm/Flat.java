package org.cresthaul.exchange.osm;

import org.cresthaul.route.LonLat;

/**
 * The plane that touches the WGS 84 ellipsoid at a place: longitudes and latitudes scaled to meters there, x east, y
 * north. Good to a millimeter within a few hundred meters.
 */
final class Flat {
    private static final double A_M = 6_378_137;
    private static final double E2 = 0.00669437999014;

    private final double lonDeg;
    private final double latDeg;
    private final double xPerDeg;
    private final double yPerDeg;

    Flat(double lonDeg, double latDeg) {
        this.lonDeg = lonDeg;
        this.latDeg = latDeg;
        double sin = Math.sin(Math.toRadians(latDeg));
        double w2 = 1 - E2 * sin * sin;
        xPerDeg = Math.toRadians(A_M / Math.sqrt(w2) * Math.cos(Math.toRadians(latDeg)));
        yPerDeg = Math.toRadians(A_M * (1 - E2) / (w2 * Math.sqrt(w2)));
    }

    static Flat at(LonLat place) {
        return new Flat(place.lonDeg(), place.latDeg());
    }

    double x(double lon) {
        return shortWay(lon - lonDeg) * xPerDeg;
    }

    double y(double lat) {
        return (lat - latDeg) * yPerDeg;
    }

    static double distanceM(double lonDeg, double latDeg, double toLonDeg, double toLatDeg) {
        Flat flat = new Flat(lonDeg, (latDeg + toLatDeg) / 2);
        return Math.hypot(flat.x(toLonDeg), flat.y(toLatDeg) - flat.y(latDeg));
    }

    static double distanceM(LonLat from, LonLat to) {
        return distanceM(from.lonDeg(), from.latDeg(), to.lonDeg(), to.latDeg());
    }

    /** The same difference of longitude, the short way round. */
    static double shortWay(double differenceDeg) {
        return differenceDeg - 360 * Math.rint(differenceDeg / 360);
    }

    /** A longitude within 180 degrees. */
    static double wrapped(double lonDeg) {
        return shortWay(lonDeg);
    }
}
