package org.cresthaul.exchange.raster;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.Optional;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;

/**
 * Heights of the land, in cells. Not for sharing.
 *
 * @param name of the file
 * @param format what it is
 * @param date as the file has it
 */
public record ElevationRaster(
        String name, String format, Optional<LocalDate> date, HeightUnit unit, GridPlacing placing, Grid grid)
        implements AutoCloseable {
    private static final double DEGREE_M = 6_371_000 * Math.PI / 180;
    /** Places on earth have heights between these, meters. */
    private static final double LOWEST_M = -500;

    private static final double HIGHEST_M = 9000;

    /** The same, once its middle is somewhere that its coordinates are used. */
    ElevationRaster onEarth() throws InputRejected {
        boolean there = false;
        try {
            placing.requireOnEarth(grid.columns(), grid.rows());
            there = true;
            return this;
        } finally {
            if (!there) {
                close();
            }
        }
    }

    /** Between two cells at a place, along the wider side, meters; not a number where its coordinates do not reach. */
    public double spacingM(LonLat place) {
        double[] at = placing.at(place);
        // Half a meter either way: how many cells that is.
        double latDeg = 0.5 / DEGREE_M;
        double lonDeg = latDeg / Math.cos(Math.toRadians(place.latDeg()));
        double[] north = placing.at(new LonLat(place.lonDeg(), Math.min(LonLat.MOST_LAT_DEG, place.latDeg() + latDeg)));
        double[] east = placing.at(new LonLat(Math.min(180, place.lonDeg() + lonDeg), place.latDeg()));
        if (at == null || north == null || east == null) {
            return Double.NaN;
        }
        double columns = Math.hypot(east[0] - at[0], north[0] - at[0]) * 2;
        double rows = Math.hypot(east[1] - at[1], north[1] - at[1]) * 2;
        return 1 / Math.min(columns, rows);
    }

    /**
     * The height between the four cells around a place, meters; not a number where one of them has none.
     *
     * @throws InputRejected when the file turns out to be damaged there
     */
    public double heightM(LonLat place) throws InputRejected {
        double[] at = placing.at(place);
        if (at == null || !(at[0] >= 0 && at[1] >= 0 && at[0] <= grid.columns() - 1 && at[1] <= grid.rows() - 1)) {
            return Double.NaN;
        }
        int column = (int) Math.min(Math.floor(at[0]), grid.columns() - 2.0);
        int row = (int) Math.min(Math.floor(at[1]), grid.rows() - 2.0);
        double right = at[0] - column;
        double down = at[1] - row;
        try {
            double upper = between(grid.cell(column, row), grid.cell(column + 1, row), right);
            double lower = between(grid.cell(column, row + 1), grid.cell(column + 1, row + 1), right);
            double heightM = between(upper, lower, down) * unit.meters();
            return heightM >= LOWEST_M && heightM <= HIGHEST_M ? heightM : Double.NaN;
        } catch (IOException e) {
            throw Refusals.damaged();
        }
    }

    private static double between(double a, double b, double share) {
        return a + (b - a) * share;
    }

    /** What is known of it, for people. */
    public String told() {
        return format + ", " + grid.columns() + " by " + grid.rows() + " cells, heights in " + unit.word() + "; "
                + (placing.plane() == null
                        ? "longitude and latitude on WGS 84."
                        : placing.plane().told());
    }

    @Override
    public void close() {
        try {
            grid.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
