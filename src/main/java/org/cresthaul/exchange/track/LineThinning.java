package org.cresthaul.exchange.track;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.route.LonLat;

/**
 * Leaves out points of a line that lie within a tolerance of the straight piece that then takes their place (D. Douglas
 * and T. Peucker, Algorithms for the reduction of the number of points, Cartographica 10, 1973). Pieces are straight in
 * longitude and latitude, as those of a route are. First and last stay, and so does every {@link #APART}th: the work
 * then grows with the length of a line and not, where points wind on purpose, with its square.
 */
public final class LineThinning {
    private static final double A_M = 6_378_137;
    /** Of the ellipsoid, a degree is at most 1 % longer or shorter than on this sphere: the tolerance allows for it. */
    private static final double DEG_M = Math.toRadians(A_M) * 1.01;

    private static final int APART = 1024;

    private LineThinning() {}

    /** @param withinM 0 keeps every point */
    public static List<LonLat> of(List<LonLat> line, double withinM) {
        if (withinM <= 0 || line.size() < 3) {
            return List.copyOf(line);
        }
        // A cosine for each point, not for each time that it is looked at.
        double[] lonDegM = line.stream()
                .mapToDouble(p -> DEG_M * Math.cos(Math.toRadians(p.latDeg())))
                .toArray();
        BitSet kept = new BitSet(line.size());
        kept.set(0);
        StopSignal stop = StopSignal.current();
        for (int from = 0; from < line.size() - 1; from += APART) {
            stop.poll();
            int to = Math.min(from + APART, line.size() - 1);
            kept.set(to);
            keep(line, lonDegM, new int[] {from, to}, withinM, kept);
        }
        List<LonLat> thin = new ArrayList<>(kept.cardinality());
        kept.stream().forEach(i -> thin.add(line.get(i)));
        return List.copyOf(thin);
    }

    /** Marks the points between two that are needed. */
    private static void keep(List<LonLat> line, double[] lonDegM, int[] whole, double withinM, BitSet kept) {
        Deque<int[]> open = new ArrayDeque<>();
        open.push(whole);
        while (!open.isEmpty()) {
            int[] span = open.pop();
            int farthest = -1;
            double most2M = withinM * withinM;
            for (int i = span[0] + 1; i < span[1]; i++) {
                double off2M = off2M(line.get(i), lonDegM[i], line.get(span[0]), line.get(span[1]));
                if (off2M > most2M) {
                    most2M = off2M;
                    farthest = i;
                }
            }
            if (farthest >= 0) {
                kept.set(farthest);
                open.push(new int[] {span[0], farthest});
                open.push(new int[] {farthest, span[1]});
            }
        }
    }

    /** How far a place is from a piece, squared, square meters; rather too much than too little. */
    private static double off2M(LonLat place, double xPerDeg, LonLat from, LonLat to) {
        double ax = shortWay(from.lonDeg() - place.lonDeg()) * xPerDeg;
        double ay = (from.latDeg() - place.latDeg()) * DEG_M;
        double ux = shortWay(to.lonDeg() - from.lonDeg()) * xPerDeg;
        double uy = (to.latDeg() - from.latDeg()) * DEG_M;
        double length2 = ux * ux + uy * uy;
        double t = length2 == 0 ? 0 : Math.max(0, Math.min(1, -(ax * ux + ay * uy) / length2));
        double x = ax + t * ux;
        double y = ay + t * uy;
        return x * x + y * y;
    }

    private static double shortWay(double differenceDeg) {
        return differenceDeg - 360 * Math.rint(differenceDeg / 360);
    }
}
