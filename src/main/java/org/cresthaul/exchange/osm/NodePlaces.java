package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cresthaul.route.LonLat;

/** Where nodes are, by their identifiers; of a bounded number. Not for sharing. */
final class NodePlaces {
    private final int most;
    private final NodeIndex index = new NodeIndex();
    private double[] lonDeg = new double[1024];
    private double[] latDeg = new double[1024];

    NodePlaces(int most) {
        this.most = most;
    }

    /** Whether these numbers are a place that a road may have. */
    static boolean isPlace(double lon, double lat) {
        return Math.abs(lat) <= LonLat.MOST_LAT_DEG && Math.abs(lon) <= 180;
    }

    boolean has(long id) {
        return index.find(id) >= 0;
    }

    /** Whether there was room for it. */
    boolean put(long id, double lon, double lat) {
        if (index.size() >= most && !has(id)) {
            return false;
        }
        int at = index.add(id);
        if (at >= lonDeg.length) {
            lonDeg = Arrays.copyOf(lonDeg, 2 * lonDeg.length);
            latDeg = Arrays.copyOf(latDeg, 2 * latDeg.length);
        }
        lonDeg[at] = lon;
        latDeg[at] = lat;
        return true;
    }

    /** Those of a run of nodes that are known. */
    List<LonLat> of(long[] ids, int from, int to) {
        List<LonLat> points = new ArrayList<>();
        for (int i = from; i < to; i++) {
            int at = index.find(ids[i]);
            if (at >= 0) {
                points.add(new LonLat(lonDeg[at], latDeg[at]));
            }
        }
        return points;
    }
}
