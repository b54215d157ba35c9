package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cresthaul.road.Corner;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.LinearComponentExtracter;

/**
 * Rooms of points on a grid, for {@link RicherPassage}: how far inside the pavement, how far off what bodies keep off.
 * Read between the grid's points; good to some centimeters, which is enough to lead a search that the judge ends.
 */
final class RicherField {
    private static final double CELL_M = 0.25;
    private static final double HALF_M = 190;
    private static final double FARTHEST_M = 6;
    /** The pavement is first made narrower by this, so that thin slots and tongues are wide enough for the grid. */
    private static final double NARROWER_M = 0.3;

    private final int n = (int) (2 * HALF_M / CELL_M) + 1;
    private final double x0;
    private final double y0;
    private final float[] tires;
    private final float[] bodies;
    private final List<Coordinate> islands = new ArrayList<>();
    private final List<Double> guideTurns = new ArrayList<>();
    private final double exitRad;

    RicherField(Corner corner, boolean escorts, LineString guide) {
        Coordinate middle = guide.getCoordinateN(0);
        double turn = 0;
        Coordinate[] g = guide.getCoordinates();
        // Around the middle of the bend: where half of the turning is done.
        double total = 0;
        for (int i = 1; i + 1 < g.length; i++) {
            total += Math.abs(bend(g, i));
        }
        for (int i = 1; i + 1 < g.length && turn < total / 2 + 1e-9; i++) {
            turn += Math.abs(bend(g, i));
            middle = g[i];
        }
        x0 = middle.x - HALF_M;
        y0 = middle.y - HALF_M;
        Geometry area = escorts ? corner.escorted().orElse(corner.pavement()) : corner.pavement();
        tires = new float[n * n];
        signed(area.buffer(-NARROWER_M), tires, 1);
        for (int i = 0; i < tires.length; i++) {
            tires[i] += (float) NARROWER_M;
        }
        Geometry hard = corner.obstacles();
        if (!escorts && !corner.opposing().isEmpty()) {
            hard = hard.isEmpty() ? corner.opposing() : hard.union(corner.opposing());
        } else if (escorts && !corner.opposing().isEmpty()) {
            Geometry left = corner.opposing().difference(area.buffer(0.05));
            hard = left.isEmpty() ? hard : hard.isEmpty() ? left : hard.union(left);
        }
        if (hard.isEmpty()) {
            bodies = null;
        } else {
            bodies = new float[n * n];
            signed(hard, bodies, -1);
        }
        exitRad = corner.exit().headingRad();
        for (Polygon island : IslandSides.islands(corner, area)) {
            islands.add(island.getInteriorPoint().getCoordinate());
        }
        double inRad = corner.approach().headingRad();
        Sides sides = new Sides(g[0].x, g[0].y, inRad);
        for (Coordinate c : g) {
            sides.pass(c.x, c.y);
        }
        sides.end(exitRad);
        for (double t : sides.turned) {
            guideTurns.add(t);
        }
    }

    private static double bend(Coordinate[] g, int i) {
        return Math.IEEEremainder(
                Math.atan2(g[i + 1].y - g[i].y, g[i + 1].x - g[i].x)
                        - Math.atan2(g[i].y - g[i - 1].y, g[i].x - g[i - 1].x),
                2 * Math.PI);
    }

    /** Distance to the area's edge, of this sign inside it. */
    private void signed(Geometry area, float[] into, int inside) {
        Arrays.fill(into, (float) FARTHEST_M);
        List<double[]> rows = new ArrayList<>();
        for (Object part : LinearComponentExtracter.getLines(area)) {
            Coordinate[] c = ((LineString) part).getCoordinates();
            for (int i = 1; i < c.length; i++) {
                rows.add(new double[] {c[i - 1].x, c[i - 1].y, c[i].x, c[i].y});
                near(c[i - 1], c[i], into);
            }
        }
        for (int r = 0; r < n; r++) {
            double y = y0 + r * CELL_M;
            double[] crossings = rows.stream()
                    .filter(e -> e[1] <= y != e[3] <= y)
                    .mapToDouble(e -> e[0] + (y - e[1]) / (e[3] - e[1]) * (e[2] - e[0]))
                    .sorted()
                    .toArray();
            int done = 0;
            for (int k = 0; k < n; k++) {
                double x = x0 + k * CELL_M;
                while (done < crossings.length && crossings[done] <= x) {
                    done++;
                }
                if (done % 2 == 1 != inside > 0) {
                    into[r * n + k] = -into[r * n + k];
                }
            }
        }
    }

    private void near(Coordinate a, Coordinate b, float[] into) {
        // Long edges in short parts: a box around each holds few points in vain.
        int parts = (int) Math.max(1, Math.ceil(a.distance(b) / 6));
        for (int i = 0; i < parts; i++) {
            Coordinate p = new Coordinate(a.x + (b.x - a.x) * i / parts, a.y + (b.y - a.y) * i / parts);
            Coordinate q = new Coordinate(a.x + (b.x - a.x) * (i + 1) / parts, a.y + (b.y - a.y) * (i + 1) / parts);
            int fromX = Math.max(0, (int) Math.ceil((Math.min(p.x, q.x) - FARTHEST_M - x0) / CELL_M));
            int toX = Math.min(n - 1, (int) Math.floor((Math.max(p.x, q.x) + FARTHEST_M - x0) / CELL_M));
            int fromY = Math.max(0, (int) Math.ceil((Math.min(p.y, q.y) - FARTHEST_M - y0) / CELL_M));
            int toY = Math.min(n - 1, (int) Math.floor((Math.max(p.y, q.y) + FARTHEST_M - y0) / CELL_M));
            for (int r = fromY; r <= toY; r++) {
                for (int k = fromX; k <= toX; k++) {
                    double d = Distance.pointToSegment(new Coordinate(x0 + k * CELL_M, y0 + r * CELL_M), p, q);
                    into[r * n + k] = (float) Math.min(into[r * n + k], d);
                }
            }
        }
    }

    double tireRoomM(double x, double y) {
        return read(tires, x, y);
    }

    boolean keepsBodies() {
        return bodies != null;
    }

    double bodyRoomM(double x, double y) {
        return read(bodies, x, y);
    }

    /** Beyond the grid nothing is known to be near. */
    private double read(float[] field, double x, double y) {
        double u = (x - x0) / CELL_M;
        double v = (y - y0) / CELL_M;
        int i = (int) u;
        int k = (int) v;
        if (u < 0 || v < 0 || i >= n - 1 || k >= n - 1) {
            return FARTHEST_M;
        }
        double a = u - i;
        double b = v - k;
        int at = k * n + i;
        double low = (1 - a) * field[at] + a * field[at + 1];
        double high = (1 - a) * field[at + n] + a * field[at + n + 1];
        return (1 - b) * low + b * high;
    }

    Sides sides(double xM, double yM, double headingRad) {
        return new Sides(xM, yM, headingRad);
    }

    /** How far the direction from every island to a moving point has turned. */
    final class Sides {
        private static final double ON_M = 1500;

        private final double[] turned = new double[islands.size()];
        private double x;
        private double y;

        private Sides(double xM, double yM, double headingRad) {
            x = xM - ON_M * Math.cos(headingRad);
            y = yM - ON_M * Math.sin(headingRad);
            pass(xM, yM);
        }

        void pass(double xM, double yM) {
            for (int i = 0; i < turned.length; i++) {
                Coordinate c = islands.get(i);
                turned[i] +=
                        Math.IEEEremainder(Math.atan2(yM - c.y, xM - c.x) - Math.atan2(y - c.y, x - c.x), 2 * Math.PI);
            }
            x = xM;
            y = yM;
        }

        private void end(double headingRad) {
            pass(x + ON_M * Math.cos(headingRad), y + ON_M * Math.sin(headingRad));
        }

        /** Islands passed on another side than the guide does, when the point goes straight on from here. */
        int wrong(double headingRad) {
            end(headingRad);
            int wrong = 0;
            for (int i = 0; i < turned.length; i++) {
                wrong += Math.abs(turned[i] - guideTurns.get(i)) > Math.PI ? 1 : 0;
            }
            return wrong;
        }
    }
}
