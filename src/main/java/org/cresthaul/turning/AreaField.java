package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * Signed distance to the edge of an area: exact, from the few edges that can be nearest to a place. Those are gathered
 * cell by cell when first asked for. Safe to share: two threads may gather the same, find the same, and see it whole or
 * not at all, since it stands in final fields.
 */
final class AreaField {
    private static final double CELL_M = 0.5;
    private static final double MARGIN_M = 20;
    private static final int TILE = 8;
    private static final int MOST_CELLS = 8000;
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
    /** Cells in tiles that are made when first asked for: roads are long and corners small. */
    private final Tile[] tiles;

    private final int tilesAcross;
    /** One over every edge's length squared. */
    private final double[] inverse;

    final JuttingCorners jutting;

    /** A square of cells: their nearest edges, and the distance of each middle to the edge, positive inside. */
    private static final class Tile {
        /** Null until first asked for. */
        final Cell[] cells = new Cell[TILE * TILE];
        /**
         * Every edge that is the nearest, or near enough to be gathered, of some cell; nearest to the tile's middle
         * first.
         */
        final int[] edges;
        /** How far from the tile's middle each of them is. */
        final double[] edgesM;
        /** Whether the tile's own middle is inside. */
        final boolean inside;

        Tile(int[] edges, double[] edgesM, boolean inside) {
            this.edges = edges;
            this.edgesM = edgesM;
            this.inside = inside;
        }
    }

    /** The distance of a cell's middle to the edge, positive inside, and its edges when first asked for. */
    private static final class Cell {
        final double middleM;
        Near near;

        Cell(double middleM) {
            this.middleM = middleM;
        }
    }

    /** Edges of a cell, nearest to its middle first, and how far from it each of them is. */
    private static final class Near {
        final int[] edges;
        final double[] awayM;

        Near(int[] edges, double[] awayM) {
            this.edges = edges;
            this.awayM = awayM;
        }
    }

    /** @param free whether the area is what is free, or what is kept off */
    AreaField(Geometry area, boolean free) {
        List<double[]> list = new ArrayList<>();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            if (area.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
                addRing(polygon.getExteriorRing(), !free, list);
                for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                    addRing(polygon.getInteriorRingN(h), free, list);
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
        box = area.getEnvelopeInternal();
        west = box.getMinX() - MARGIN_M;
        south = box.getMinY() - MARGIN_M;
        columns = area.isEmpty() ? 0 : (int) Math.min(MOST_CELLS, (box.getWidth() + 2 * MARGIN_M) / CELL_M + 1);
        rows = area.isEmpty() ? 0 : (int) Math.min(MOST_CELLS, (box.getHeight() + 2 * MARGIN_M) / CELL_M + 1);
        tilesAcross = columns / TILE + 1;
        tiles = new Tile[tilesAcross * (rows / TILE + 1)];
        jutting = new JuttingCorners(
                box, list.stream().filter(edge -> edge[4] > 0).toList());
    }

    /**
     * The edges of a ring, each with whether the ground that is kept off sticks out where it begins.
     *
     * @param around whether that ground lies within the ring
     */
    private static void addRing(LineString ring, boolean around, List<double[]> into) {
        Coordinate[] at = ring.getCoordinates();
        int first = into.size();
        for (int i = 1; i < at.length; i++) {
            if (at[i].distance(at[i - 1]) > 1e-9) {
                into.add(new double[] {at[i - 1].x, at[i - 1].y, at[i].x, at[i].y, 0});
            }
        }
        double way = Orientation.isCCW(at) == around ? 1 : -1;
        for (int i = first; i < into.size(); i++) {
            double[] before = into.get(i == first ? into.size() - 1 : i - 1);
            double[] behind = into.get(i);
            double turn = (before[2] - before[0]) * (behind[3] - behind[1])
                    - (before[3] - before[1]) * (behind[2] - behind[0]);
            behind[4] = way * turn >= 0 ? 1 : 0;
        }
    }

    boolean isEmpty() {
        return edges.length == 0;
    }

    /** Distance to the edge, meters, positive inside; minus infinity for an empty area. */
    double insideM(double x, double y) {
        return insideM(x, y, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /**
     * The same where it matters: what is {@code lowM} or less, or {@code highM} or more, may come back as anything on
     * that side. From one place to another the distance changes by no more than the way, so that the middle of a cell
     * tells most.
     */
    double insideM(double x, double y, double lowM, double highM) {
        if (edges.length == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        int column = (int) Math.floor((x - west) / CELL_M);
        int row = (int) Math.floor((y - south) / CELL_M);
        if (column < 0 || row < 0 || column >= columns || row >= rows) {
            double off = outsideBoxM(x, y);
            return -off <= lowM ? -off : -Math.sqrt(all(x, y));
        }
        Tile tile = tile(column, row);
        // Off the middle by odd amounts, so that no way from here to a place runs through a corner.
        double fromX = middleX(column);
        double fromY = middleY(row);
        Cell cell = cell(tile, column, row);
        double there = cell.middleM;
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
        Near near = near(tile, cell, column, row);
        for (int i = 0; i < near.edges.length; i++) {
            double nearest = near.awayM[i] - way;
            // Whatever is crossed on the way from the middle is no farther from it than the way.
            if (nearest > 0 && nearest * nearest > least) {
                break;
            }
            int e = near.edges[i];
            least = Math.min(least, distance2(e, x, y));
            in ^= !sure && Segments.cross(fromX, fromY, x, y, edges[e], edges[e + 1], edges[e + 2], edges[e + 3]);
        }
        double d = Math.sqrt(least);
        return in ? d : -d;
    }

    /** The point of the edge that is nearest to a place: x and y into {@code at}. Not for an empty area. */
    void nearest(double x, double y, double[] at) {
        double least = Double.POSITIVE_INFINITY;
        int[] some = nearOf(x, y);
        int n = some == null ? edges.length / 4 : some.length;
        for (int i = 0; i < n; i++) {
            int e = some == null ? 4 * i : some[i];
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

    /** How far from a place, in a direction of length one, the edge is crossed first; infinite where it is not. */
    double crossedM(double x, double y, double dirX, double dirY) {
        double least = Double.POSITIVE_INFINITY;
        for (int e = 0; e < edges.length; e += 4) {
            double a = (edges[e + 1] - y) * dirX - (edges[e] - x) * dirY;
            double b = (edges[e + 3] - y) * dirX - (edges[e + 2] - x) * dirY;
            if (a > 0 == b > 0) {
                continue;
            }
            double t = a / (a - b);
            double along = (edges[e] + t * (edges[e + 2] - edges[e]) - x) * dirX
                    + (edges[e + 1] + t * (edges[e + 3] - edges[e + 1]) - y) * dirY;
            least = along > 0 ? Math.min(least, along) : least;
        }
        return least;
    }

    /** Distance of a straight piece to the edge, zero where it crosses it; {@code withinM} when it is no nearer. */
    double chordM(double ax, double ay, double bx, double by, double withinM) {
        double mx = 0.5 * (ax + bx);
        double my = 0.5 * (ay + by);
        double half = 0.5 * Hypotenuse.of(bx - ax, by - ay);
        if (isEmpty() || boundM(mx, my, -1) - half >= withinM || -boundM(mx, my, 1) - half >= withinM) {
            return withinM;
        }
        int[] some = half <= HALF_CHORD_M ? nearOf(mx, my) : null;
        int n = some == null ? edges.length / 4 : some.length;
        double least = withinM < Double.POSITIVE_INFINITY ? withinM * withinM : withinM;
        for (int i = 0; i < n; i++) {
            int e = some == null ? 4 * i : some[i];
            least = Math.min(
                    least, Segments.distance2(ax, ay, bx, by, edges[e], edges[e + 1], edges[e + 2], edges[e + 3]));
        }
        return Math.sqrt(least);
    }

    /** The edges of the cell of a place; null outside the grid. */
    private int[] nearOf(double x, double y) {
        int column = (int) Math.floor((x - west) / CELL_M);
        int row = (int) Math.floor((y - south) / CELL_M);
        if (column < 0 || row < 0 || column >= columns || row >= rows) {
            return null;
        }
        Tile tile = tile(column, row);
        return near(tile, cell(tile, column, row), column, row).edges;
    }

    private static int inTile(int column, int row) {
        return row % TILE * TILE + column % TILE;
    }

    private Tile tile(int column, int row) {
        int at = row / TILE * tilesAcross + column / TILE;
        Tile tile = tiles[at];
        if (tile == null) {
            tile = tileOf(column / TILE, row / TILE);
            tiles[at] = tile;
        }
        return tile;
    }

    /** What {@link #insideM} is no less than ({@code way} -1) or no more than (+1), told without looking at edges. */
    double boundM(double x, double y, int way) {
        int column = (int) Math.floor((x - west) / CELL_M);
        int row = (int) Math.floor((y - south) / CELL_M);
        if (column < 0 || row < 0 || column >= columns || row >= rows) {
            return way > 0 ? -outsideBoxM(x, y) : Double.NEGATIVE_INFINITY;
        }
        Tile tile = tile(column, row);
        double dx = x - middleX(column);
        double dy = y - middleY(row);
        return cell(tile, column, row).middleM + way * Math.sqrt(dx * dx + dy * dy);
    }

    /** Distance to the box around the area, meters: no farther than the area itself. */
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

    /** Middle of a tile, off by odd amounts as those of cells are. */
    private double tileX(int tileColumn) {
        return west + (tileColumn + 0.5021) * TILE * CELL_M;
    }

    private double tileY(int tileRow) {
        return south + (tileRow + 0.4983) * TILE * CELL_M;
    }

    private Tile tileOf(int tileColumn, int tileRow) {
        double x = tileX(tileColumn);
        double y = tileY(tileRow);
        double[] away = new double[edges.length / 4];
        double least = Double.POSITIVE_INFINITY;
        boolean in = false;
        for (int e = 0; e < edges.length; e += 4) {
            away[e / 4] = distance2(e, x, y);
            least = Math.min(least, away[e / 4]);
            double y0 = edges[e + 1];
            double y1 = edges[e + 3];
            if (y0 > y != y1 > y && x < edges[e] + (y - y0) / (y1 - y0) * (edges[e + 2] - edges[e])) {
                in = !in;
            }
        }
        // No cell's middle is farther from the tile's than this, and its nearest edge no farther than the tile's and
        // that.
        double reach = Math.sqrt(least) + 2 * 0.75 * TILE * CELL_M + REACH_M;
        int[] near = IntStream.range(0, away.length)
                .filter(i -> away[i] <= reach * reach)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> away[i]))
                .mapToInt(i -> i)
                .toArray();
        double[] nearM = new double[near.length];
        for (int i = 0; i < near.length; i++) {
            nearM[i] = Math.sqrt(away[near[i]]);
            near[i] *= 4;
        }
        return new Tile(near, nearM, in);
    }

    private double all(double x, double y) {
        double least = Double.POSITIVE_INFINITY;
        for (int e = 0; e < edges.length; e += 4) {
            least = Math.min(least, distance2(e, x, y));
        }
        return least;
    }

    private Cell cell(Tile tile, int column, int row) {
        int at = inTile(column, row);
        Cell cell = tile.cells[at];
        if (cell == null) {
            cell = new Cell(middleM(tile, column, row));
            tile.cells[at] = cell;
        }
        return cell;
    }

    /**
     * Distance of a cell's middle to the edge, positive inside: whatever is crossed on the way from the tile's middle.
     */
    private double middleM(Tile tile, int column, int row) {
        double x = middleX(column);
        double y = middleY(row);
        double fromX = tileX(column / TILE);
        double fromY = tileY(row / TILE);
        double way = Math.sqrt((x - fromX) * (x - fromX) + (y - fromY) * (y - fromY));
        double least = Double.POSITIVE_INFINITY;
        boolean in = tile.inside;
        for (int i = 0; i < tile.edges.length; i++) {
            double nearest = tile.edgesM[i] - way;
            // Farther off than the nearest, and than anything that is crossed on the way: so are all that follow.
            if (nearest > 0 && nearest * nearest > least) {
                break;
            }
            int e = tile.edges[i];
            least = Math.min(least, distance2(e, x, y));
            in ^= Segments.cross(fromX, fromY, x, y, edges[e], edges[e + 1], edges[e + 2], edges[e + 3]);
        }
        double distance = Math.sqrt(least);
        return in ? distance : -distance;
    }

    /**
     * The edges that can be nearest to a place of a cell, or to a short chord in it, those nearest to its middle first.
     */
    private Near near(Tile tile, Cell cell, int column, int row) {
        Near near = cell.near;
        if (near == null) {
            double x = middleX(column);
            double y = middleY(row);
            double reach = Math.abs(cell.middleM) + REACH_M;
            List<double[]> found = new ArrayList<>();
            for (int e : tile.edges) {
                double away = distance2(e, x, y);
                if (away <= reach * reach) {
                    found.add(new double[] {Math.sqrt(away), e});
                }
            }
            found.sort(Comparator.comparingDouble(f -> f[0]));
            near = new Near(
                    found.stream().mapToInt(f -> (int) f[1]).toArray(),
                    found.stream().mapToDouble(f -> f[0]).toArray());
            cell.near = near;
        }
        return near;
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
}
