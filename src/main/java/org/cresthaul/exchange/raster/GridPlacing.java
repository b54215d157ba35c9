package org.cresthaul.exchange.raster;

import org.cresthaul.exchange.crs.PlaneCoordinates;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;

/**
 * Where the cells of a raster lie: the middle of column 0 in row 0, and the steps to the next ones.
 *
 * @param eastStep of a column, positive
 * @param northStep of a row, negative where rows run southward
 * @param plane what the numbers are; null for longitude and latitude on WGS 84
 */
record GridPlacing(double east0, double north0, double eastStep, double northStep, PlaneCoordinates plane) {
    GridPlacing {
        if (!(Double.isFinite(east0)
                && Double.isFinite(north0)
                && eastStep > 0
                && northStep != 0
                && Double.isFinite(eastStep)
                && Double.isFinite(northStep))) {
            throw new IllegalArgumentException("cells must have a size and a place");
        }
    }

    /** @throws InputRejected when its middle is nowhere that its coordinates are used */
    void requireOnEarth(int columns, int rows) throws InputRejected {
        double east = east0 + eastStep * (columns - 1) / 2.0;
        double north = north0 + northStep * (rows - 1) / 2.0;
        boolean there = plane == null ? Math.abs(east) <= 360 && Math.abs(north) <= 90 : plane.at(east, north) != null;
        if (!there) {
            throw Refusals.of(
                    "raster-outside-crs",
                    "The raster lies outside of where its coordinates are used.",
                    "Check their EPSG code.");
        }
    }

    /** Column and row, with fractions; null where the coordinates do not reach. */
    double[] at(LonLat place) {
        if (plane == null) {
            double columnsPerTurn = 360 / eastStep;
            double column = (place.lonDeg() - east0) / eastStep;
            // The same place, once round the world.
            column -= Math.floor((column + 0.5) / columnsPerTurn) * columnsPerTurn;
            return new double[] {column, (place.latDeg() - north0) / northStep};
        }
        double[] plain = plane.from(place);
        return plain == null ? null : new double[] {(plain[0] - east0) / eastStep, (plain[1] - north0) / northStep};
    }
}
