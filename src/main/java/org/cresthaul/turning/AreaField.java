package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntConsumer;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * Signed distance to the edge of an area: exact, from the few edges that can be nearest to a place. Those are gathered
 * cell by cell when first asked for. For one thread.
 */
final class AreaField {
    private static final double CELL_M = 1.0;
    private static final double MARGIN_M = 20;
    private static final double CORNER_CELL_M = 4.0;
    private static final int[] NO_CORNERS = {};
    /** Half of the longest chord that asks the edges of one cell alone. */
    private static final double HALF_CHORD_M = 0.3;
    /** Twice the farthest that a place of a cell is from the cell's middle as it is taken here, and half a chord. */
    private static final double REACH_M = 1.46 * CELL_M + HALF_CHORD_M;

    private final double[] edges;
    private final Envelope box;
    private final double west;
    private final double south;
    private final int columns;
    private final int rows;
    private final int[][] near;
    /** Distance of a cell's middle to the edge, positive inside. */
    private final double[] middle;
    /** One over every edge's length squared. */
    private final double[] inverse;
    /** Corners of the edges by cell of {@value #CORNER_CELL_M} m. */
    private final Map<Long, int[]> cornerCells = new HashMap<>();

    AreaField(Geometry area) {
        List<double[]> list = new ArrayList<>();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            if (area.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
                addRing(polygon.getExteriorRing(), list);
                for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                    addRing(polygon.getInteriorRingN(h), list);
                }
            }
        }
        edges = new double[4 * list.size()];
        for (int i = 0; i < list.size(); i++) {
            System.arraycopy(list.get(i), 0, edges, 4 * i, 4);
        }
        inverse = new double[list.size()];
        for (int i = 0; i < inverse.length; i++) {
            double ux = edges[4 * i + 2] - edges[4 * i];
            double uy = edges[4 * i + 3] - edges[4 * i + 1];
            inverse[i] = 1 / (ux * ux + uy * uy);
        }
        for (int i = 0; i < list.size(); i++) {
            int corner = i;
            cornerCells.merge(cornerCell(cornerX(i), cornerY(i)), new int[] {corner}, AreaField::joined);
        }
        box = area.getEnvelopeInternal();
        west = box.getMinX() - MARGIN_M;
        south = box.getMinY() - MARGIN_M;
        columns = area.isEmpty() ? 0 : (int) Math.min(1500, (box.getWidth() + 2 * MARGIN_M) / CELL_M + 1);
        rows = area.isEmpty() ? 0 : (int) Math.min(1500, (box.getHeight() + 2 * MARGIN_M) / CELL_M + 1);
        near = new int[columns * rows][];
        middle = new double[columns * rows];
    }

    private static void addRing(LineString ring, List<double[]> into) {
        Coordinate[] at = ring.getCoordinates();
        for (int i = 1; i < at.length; i++) {
            if (at[i].distance(at[i - 1]) > 1e-9) {
                into.add(new double[] {at[i - 1].x, at[i - 1].y, at[i].x, at[i].y});
            }
        }
    }

    boolean isEmpty() {
        return edges.length == 0;
    }

    int corners() {
        return edges.length / 4;
    }

    double cornerX(int i) {
        return edges[4 * i];
    }

    double cornerY(int i) {
        return edges[4 * i + 1];
    }

    /** Distance to the edge, metres, positive inside; minus infinity for an empty area. */
    double insideM(double x, double y) {
        return insideM(x, y, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /**
     * The same where it matters: what is {@code lowM} or less, or {@code highM} or more, may come back as anything on that
     * side. From one place to another the distance changes by no more than the way, so that the middle of a cell tells
     * most.
     */
    double insideM(double x, double y, double lowM, double highM) {
        if (edges.length == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        int cell = cellOf(x, y);
        if (cell < 0) {
            double off = outsideBoxM(x, y);
            return -off <= lowM ? -off : -Math.sqrt(all(x, y));
        }
        int row = cell / columns;
        int column = cell - row * columns;
        // Off the middle by odd amounts, so that no way from here to a place runs through a corner.
        double fromX = middleX(column);
        double fromY = middleY(row);
        double there = middle[cell];
        double way = Math.sqrt((x - fromX) * (x - fromX) + (y - fromY) * (y - fromY));
        if (there - way >= highM) {
            return there - way;
        }
        if (there + way <= lowM) {
            return there + way;
        }
        boolean in = there > 0;
        boolean sure = Math.abs(there) > way;
        double least = Double.POSITIVE_INFINITY;
        for (int e : near[cell]) {
            least = Math.min(least, distance2(e, x, y));
            in ^= !sure && crosses(e, fromX, fromY, x, y);
        }
        double d = Math.sqrt(least);
        return in ? d : -d;
    }

    private static int[] joined(int[] a, int[] b) {
        int[] all = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return all;
    }

    private static long cornerCell(double x, double y) {
        return ((long) Math.floor(x / CORNER_CELL_M) << 32) ^ ((long) Math.floor(y / CORNER_CELL_M) & 0xffffffffL);
    }

    /** Hands every corner within a square around a place to {@code take}, by number; perhaps some beyond it. */
    void cornersAround(double x, double y, double withinM, IntConsumer take) {
        long west = (long) Math.floor((x - withinM) / CORNER_CELL_M);
        long east = (long) Math.floor((x + withinM) / CORNER_CELL_M);
        long south = (long) Math.floor((y - withinM) / CORNER_CELL_M);
        long north = (long) Math.floor((y + withinM) / CORNER_CELL_M);
        if ((east - west + 1) * (north - south + 1) > corners()) {
            for (int i = 0; i < corners(); i++) {
                take.accept(i);
            }
            return;
        }
        for (long cx = west; cx <= east; cx++) {
            for (long cy = south; cy <= north; cy++) {
                for (int i : cornerCells.getOrDefault((cx << 32) ^ (cy & 0xffffffffL), NO_CORNERS)) {
                    take.accept(i);
                }
            }
        }
    }

    /** The point of the edge that is nearest to a place: x and y into {@code at}. Not for an empty area. */
    void nearest(double x, double y, double[] at) {
        double least = Double.POSITIVE_INFINITY;
        int cell = cellOf(x, y);
        int n = cell < 0 ? corners() : near[cell].length;
        for (int i = 0; i < n; i++) {
            int e = cell < 0 ? 4 * i : near[cell][i];
            double ux = edges[e + 2] - edges[e];
            double uy = edges[e + 3] - edges[e + 1];
            double t = Math.max(0, Math.min(1, ((x - edges[e]) * ux + (y - edges[e + 1]) * uy) * inverse[e >> 2]));
            double dx = x - edges[e] - t * ux;
            double dy = y - edges[e + 1] - t * uy;
            double d = dx * dx + dy * dy;
            if (d < least) {
                least = d;
                at[0] = edges[e] + t * ux;
                at[1] = edges[e + 1] + t * uy;
            }
        }
    }

    /** Distance of a straight piece to the edge, zero where it crosses it; {@code withinM} when it is no nearer. */
    double chordM(double ax, double ay, double bx, double by, double withinM) {
        double mx = 0.5 * (ax + bx);
        double my = 0.5 * (ay + by);
        double half = 0.5 * Math.hypot(bx - ax, by - ay);
        if (isEmpty() || Math.abs(insideM(mx, my)) - half >= withinM) {
            return withinM;
        }
        int cell = half <= HALF_CHORD_M ? cellOf(mx, my) : -1;
        int n = cell < 0 ? corners() : near[cell].length;
        double least = withinM;
        Coordinate a = new Coordinate(ax, ay);
        Coordinate b = new Coordinate(bx, by);
        Coordinate c = new Coordinate();
        Coordinate d = new Coordinate();
        for (int i = 0; i < n; i++) {
            int e = cell < 0 ? 4 * i : near[cell][i];
            c.setX(edges[e]);
            c.setY(edges[e + 1]);
            d.setX(edges[e + 2]);
            d.setY(edges[e + 3]);
            least = Math.min(least, Distance.segmentToSegment(a, b, c, d));
        }
        return least;
    }

    /** The cell of a place with its edges gathered; negative outside the grid. */
    private int cellOf(double x, double y) {
        int column = (int) Math.floor((x - west) / CELL_M);
        int row = (int) Math.floor((y - south) / CELL_M);
        if (column < 0 || row < 0 || column >= columns || row >= rows) {
            return -1;
        }
        int cell = row * columns + column;
        if (near[cell] == null) {
            gather(cell, column, row);
        }
        return cell;
    }

    /** Distance to the box around the area, metres: no farther than the area itself. */
    double outsideBoxM(double x, double y) {
        double dx = Math.max(0, Math.max(box.getMinX() - x, x - box.getMaxX()));
        double dy = Math.max(0, Math.max(box.getMinY() - y, y - box.getMaxY()));
        return Math.sqrt(dx * dx + dy * dy);
    }

    private double middleX(int column) {
        return west + (column + 0.5137) * CELL_M;
    }

    private double middleY(int row) {
        return south + (row + 0.4871) * CELL_M;
    }

    private double all(double x, double y) {
        double least = Double.POSITIVE_INFINITY;
        for (int e = 0; e < edges.length; e += 4) {
            least = Math.min(least, distance2(e, x, y));
        }
        return least;
    }

    private void gather(int cell, int column, int row) {
        double x = middleX(column);
        double y = middleY(row);
        double distance = Math.sqrt(all(x, y));
        double reach = distance + REACH_M;
        boolean in = false;
        int[] found = new int[edges.length / 4];
        int n = 0;
        for (int e = 0; e < edges.length; e += 4) {
            if (distance2(e, x, y) <= reach * reach) {
                found[n++] = e;
            }
            double y0 = edges[e + 1];
            double y1 = edges[e + 3];
            if (y0 > y != y1 > y && x < edges[e] + (y - y0) / (y1 - y0) * (edges[e + 2] - edges[e])) {
                in = !in;
            }
        }
        near[cell] = Arrays.copyOf(found, n);
        middle[cell] = in ? distance : -distance;
    }

    private double distance2(int e, double x, double y) {
        double ux = edges[e + 2] - edges[e];
        double uy = edges[e + 3] - edges[e + 1];
        double px = x - edges[e];
        double py = y - edges[e + 1];
        double t = Math.max(0, Math.min(1, (px * ux + py * uy) * inverse[e >> 2]));
        double dx = px - t * ux;
        double dy = py - t * uy;
        return dx * dx + dy * dy;
    }

    private boolean crosses(int e, double ax, double ay, double bx, double by) {
        double cx = edges[e];
        double cy = edges[e + 1];
        double dx = edges[e + 2];
        double dy = edges[e + 3];
        boolean c = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax) > 0;
        boolean d = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax) > 0;
        if (c == d) {
            return false;
        }
        boolean a = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx) > 0;
        boolean b = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx) > 0;
        return a != b;
    }
}
