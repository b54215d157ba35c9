package org.cresthaul.route;

/**
 * The local metric frame of a place on the route: along the road in the direction of travel, and to its right.
 *
 * @param origin the place on the line
 * @param azimuthRad direction of travel, clockwise from north, radians
 */
public record RoadFrame(LonLat origin, double azimuthRad) {
    /** Meters along and to the right of the direction of travel, of a place not far away: the other way round. */
    public double[] alongRightM(LonLat place) {
        Geodesic line = new Geodesic().between(origin.lonDeg(), origin.latDeg(), place.lonDeg(), place.latDeg());
        double away = line.distanceM();
        double turn = away == 0 ? 0 : line.azimuthRad() - azimuthRad;
        return new double[] {away * Math.cos(turn), away * Math.sin(turn)};
    }

    /** The place at meters along and to the right of the direction of travel (negative: back, left). */
    public LonLat at(double alongM, double rightM) {
        return new Geodesic().from(origin, azimuthRad + Math.atan2(rightM, alongM), Math.hypot(alongM, rightM));
    }
}
