package org.cresthaul.exchange.osm;

import java.util.List;
import org.cresthaul.route.LonLat;

/**
 * The strip along a line of which the map is kept: every place within {@link #LEAST_M} of it, and some farther ones. A
 * bridge or railway over the road that has no node in the strip is not seen; it would have to run straight for twice as
 * far.
 */
final class Corridor {
    static final double LEAST_M = 300;

    private static final double CELL_DEG = 0.003;

    private final GlobeCells grid;
    private final NodeIndex cells = new NodeIndex();

    Corridor(List<LonLat> line) {
        this(line, CELL_DEG);
    }

    /**
     * @param cellDeg every place within about so many degrees of latitude of the line is in it, and some farther ones
     */
    Corridor(List<LonLat> line, double cellDeg) {
        double farthest =
                line.stream().mapToDouble(p -> Math.abs(p.latDeg())).max().orElse(0);
        grid = new GlobeCells(cellDeg / Math.cos(Math.toRadians(farthest)), cellDeg);
        for (int i = 0; i < line.size(); i++) {
            LonLat from = line.get(Math.max(0, i - 1));
            LonLat to = line.get(i);
            double dLon = Flat.shortWay(to.lonDeg() - from.lonDeg());
            double dLat = to.latDeg() - from.latDeg();
            int steps = 1 + (int) (Math.max(Math.abs(dLon), Math.abs(dLat)) / (cellDeg / 2));
            for (int k = 0; k <= steps; k++) {
                double lon = from.lonDeg() + dLon * k / steps;
                double lat = from.latDeg() + dLat * k / steps;
                grid.forEach(lon, lat, lon, lat, 1, cells::add);
            }
        }
    }

    boolean holds(double lonDeg, double latDeg) {
        return cells.find(grid.at(lonDeg, latDeg)) >= 0;
    }
}
