package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/**
 * Corners at which the ground that is kept off sticks out, by squares of {@value #CELL_M} m. At other corners that
 * ground is nowhere nearest to what is straight.
 */
final class JuttingCorners {
    private static final double CELL_M = 12.0;
    private static final double[] NONE = {};

    /** Takes a place, meters. */
    interface Taker {
        void take(double x, double y);
    }

    private final double west;
    private final double south;
    private final int columns;
    private final int rows;
    /** By square, x and y of one after the other. */
    private final double[][] cells;

    /** @param corners x and y of each */
    JuttingCorners(Envelope box, List<double[]> corners) {
        west = box.getMinX();
        south = box.getMinY();
        columns = corners.isEmpty() ? 1 : (int) (box.getWidth() / CELL_M) + 1;
        rows = corners.isEmpty() ? 1 : (int) (box.getHeight() / CELL_M) + 1;
        List<List<double[]>> gathered = new ArrayList<>();
        for (int i = 0; i < columns * rows; i++) {
            gathered.add(null);
        }
        for (double[] corner : corners) {
            int cell = row(corner[1]) * columns + column(corner[0]);
            if (gathered.get(cell) == null) {
                gathered.set(cell, new ArrayList<>());
            }
            gathered.get(cell).add(corner);
        }
        cells = new double[columns * rows][];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = gathered.get(i) == null ? NONE : flat(gathered.get(i));
        }
    }

    private static double[] flat(List<double[]> corners) {
        double[] flat = new double[2 * corners.size()];
        for (int i = 0; i < corners.size(); i++) {
            flat[2 * i] = corners.get(i)[0];
            flat[2 * i + 1] = corners.get(i)[1];
        }
        return flat;
    }

    /** Column and row of a square; what lies outside belongs to the outermost. */
    private int column(double x) {
        return Math.max(0, Math.min(columns - 1, (int) Math.floor((x - west) / CELL_M)));
    }

    private int row(double y) {
        return Math.max(0, Math.min(rows - 1, (int) Math.floor((y - south) / CELL_M)));
    }

    /** Hands on every corner within a square around a place; perhaps some beyond it. */
    void around(double x, double y, double withinM, Taker taker) {
        int toColumn = column(x + withinM);
        int toRow = row(y + withinM);
        for (int row = row(y - withinM); row <= toRow; row++) {
            for (int column = column(x - withinM); column <= toColumn; column++) {
                double[] here = cells[row * columns + column];
                for (int i = 0; i < here.length; i += 2) {
                    double dx = here[i] - x;
                    double dy = here[i + 1] - y;
                    if (dx <= withinM && -dx <= withinM && dy <= withinM && -dy <= withinM) {
                        taker.take(here[i], here[i + 1]);
                    }
                }
            }
        }
    }
}
