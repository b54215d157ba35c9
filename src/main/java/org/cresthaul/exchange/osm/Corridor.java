package org.cresthaul.exchange.osm;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.cresthaul.route.LonLat;

/**
 * The strip along a line of which the map is kept: every place within {@link #LEAST_M} of it, and some farther ones. A
 * bridge or railway over the road that has no node in the strip is not seen; it would have to run straight for twice as
 * far.
 */
final class Corridor {
    static final double LEAST_M = 300;

    private static final double CELL_DEG = 0.003;

    private final double lonCellDeg;
    private final Set<Long> cells = new HashSet<>();

    private final double latCellDeg;

    Corridor(List<LonLat> line) {
        this(line, CELL_DEG);
    }

    /**
     * @param cellDeg every place within about so many degrees of latitude of the line is in it, and some farther ones
     */
    Corridor(List<LonLat> line, double cellDeg) {
        latCellDeg = cellDeg;
        double farthest =
                line.stream().mapToDouble(p -> Math.abs(p.latDeg())).max().orElse(0);
        lonCellDeg = cellDeg / Math.cos(Math.toRadians(farthest));
        for (int i = 0; i < line.size(); i++) {
            LonLat from = line.get(Math.max(0, i - 1));
            LonLat to = line.get(i);
            double dLon = to.lonDeg() - from.lonDeg();
            dLon -= 360 * Math.rint(dLon / 360);
            double dLat = to.latDeg() - from.latDeg();
            int steps = 1 + (int) (Math.max(Math.abs(dLon), Math.abs(dLat)) / (cellDeg / 2));
            for (int k = 0; k <= steps; k++) {
                around(from.lonDeg() + dLon * k / steps, from.latDeg() + dLat * k / steps);
            }
        }
    }

    private void around(double lon, double lat) {
        long x = (long) Math.floor(lon / lonCellDeg);
        long y = (long) Math.floor(lat / latCellDeg);
        for (long i = x - 1; i <= x + 1; i++) {
            for (long j = y - 1; j <= y + 1; j++) {
                cells.add(key(i, j));
            }
        }
    }

    private static long key(long x, long y) {
        return x << 32 ^ y & 0xFFFFFFFFL;
    }

    boolean holds(double lonDeg, double latDeg) {
        return cells.contains(key((long) Math.floor(lonDeg / lonCellDeg), (long) Math.floor(latDeg / latCellDeg)));
    }
}
