package org.cresthaul.exchange.osm;

import java.util.function.LongConsumer;
import org.cresthaul.route.LonLat;

/** Numbers the cells of a grid of longitudes and latitudes, which goes on across the 180th meridian. */
final class GlobeCells {
    private final long columns;
    private final double lonCellDeg;
    private final double latCellDeg;

    /** Cells of about these sizes; never narrower. */
    GlobeCells(double lonCellDeg, double latCellDeg) {
        columns = Math.max(1, (long) Math.floor(360 / lonCellDeg));
        this.lonCellDeg = 360.0 / columns;
        this.latCellDeg = latCellDeg;
    }

    private long column(double lonDeg) {
        return (long) Math.floor((lonDeg + 180) / lonCellDeg);
    }

    private long row(double latDeg) {
        return (long) Math.floor(latDeg / latCellDeg);
    }

    private long key(long column, long row) {
        return Math.floorMod(column, columns) << 32 ^ row & 0xFFFFFFFFL;
    }

    /** Of the cell that holds a place. */
    long at(double lonDeg, double latDeg) {
        return key(column(lonDeg), row(latDeg));
    }

    /** Every cell that the box of two places touches, the short way between them, and so many cells around it. */
    void forEach(LonLat a, LonLat b, int around, LongConsumer what) {
        double east = Flat.shortWay(b.lonDeg() - a.lonDeg());
        forEach(
                a.lonDeg() + Math.min(0, east),
                Math.min(a.latDeg(), b.latDeg()),
                a.lonDeg() + Math.max(0, east),
                Math.max(a.latDeg(), b.latDeg()),
                around,
                what);
    }

    /** Every cell of a box; its longitudes may be beyond 180 degrees. */
    void forEach(double west, double south, double east, double north, int around, LongConsumer what) {
        for (long x = column(west) - around; x <= column(east) + around; x++) {
            for (long y = row(south) - around; y <= row(north) + around; y++) {
                what.accept(key(x, y));
            }
        }
    }
}
