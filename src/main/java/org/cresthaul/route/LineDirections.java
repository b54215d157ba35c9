package org.cresthaul.route;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The direction in which a stretch of a route line runs, every {@link #STEP_M} along it, freed of what single positions
 * are off. Positions within {@link #CLUSTER_M} of one another, and more where they waver, are taken together, so that a
 * receiver that wavers or stands adds no length. The direction at a place leads from the middle of the {@link #LEG_M}
 * before it to the middle of the {@link #LEG_M} behind it. Beyond both ends of the route the line is taken to go on
 * straight.
 */
final class LineDirections {
    /** Places are this far apart, meters: a twelfth of a leg. */
    static final double STEP_M = 2.5;

    /**
     * Length of a leg, meters. Positions 10 m apart, each off by 3 m (one standard deviation, more than a plain
     * receiver's), leave the direction between two legs uncertain by about 5°. A longer leg would run two turns into
     * one.
     */
    static final double LEG_M = 30;

    /** Less than the tightest turn a combination drives is wide, and more than a receiver wavers, meters. */
    static final double CLUSTER_M = 8;

    /** So many times what positions are found to waver by is added to that. */
    private static final double WAVERS = 4;

    /**
     * Positions this near to the next but one are close, meters: on a curve of 30 m they lie 0.4 m beside their middle.
     */
    private static final double CLOSE_M = 10;

    private static final int LEAST_CLOSE = 20;

    private final double[] chainage;
    private final double[] heading;

    private LineDirections(double[] chainage, double[] heading) {
        this.chainage = chainage;
        this.heading = heading;
    }

    int size() {
        return heading.length;
    }

    double chainageM(int i) {
        return chainage[i];
    }

    /** Counter-clockwise from east, unwrapped: it counts whole turns. */
    double headingRad(int i) {
        return heading[i];
    }

    /** Of a stretch; its directions are those of the whole line, except within a leg of a cut end. */
    static LineDirections of(RouteLine line, double fromM, double toM) {
        List<double[]> thinned = thinned(line, fromM, toM);
        double length = 0;
        for (int i = 1; i < thinned.size(); i++) {
            length += distance(thinned.get(i - 1), thinned.get(i));
        }
        int leg = (int) Math.round(LEG_M / STEP_M);
        int n = (int) (length / STEP_M) + 1;
        double[] x = new double[n + 2 * leg];
        double[] y = new double[n + 2 * leg];
        double[] at = new double[n];
        lay(thinned, leg, n, x, y, at);
        double[] heading = new double[n];
        double sumX = 0;
        double sumY = 0;
        for (int k = 0; k < leg; k++) {
            sumX += x[leg + 1 + k] - x[k];
            sumY += y[leg + 1 + k] - y[k];
        }
        for (int i = 0; i < n; i++) {
            double now = Math.atan2(sumY, sumX);
            heading[i] = i == 0 ? now : heading[i - 1] + Math.IEEEremainder(now - heading[i - 1], 2 * Math.PI);
            if (i + 1 < n) {
                sumX += x[i + 1 + 2 * leg] - x[i + 1 + leg] - x[i + leg] + x[i];
                sumY += y[i + 1 + 2 * leg] - y[i + 1 + leg] - y[i + leg] + y[i];
            }
        }
        return new LineDirections(at, heading);
    }

    private static List<double[]> thinned(RouteLine line, double fromM, double toM) {
        List<double[]> places = places(line, fromM, toM);
        return clustered(places, CLUSTER_M + WAVERS * waveringM(places));
    }

    /**
     * How far single positions are off, one standard deviation in each direction, from how far close ones lie beside
     * the middle of their neighbors: the median of many, to which turns count little. Zero where positions are too far
     * apart to tell.
     */
    private static double waveringM(List<double[]> places) {
        List<Double> beside = new ArrayList<>();
        for (int i = 1; i + 1 < places.size(); i++) {
            double[] a = places.get(i - 1);
            double[] b = places.get(i);
            double[] c = places.get(i + 1);
            if (distance(a, c) < CLOSE_M) {
                double x = a[0] - 2 * b[0] + c[0];
                double y = a[1] - 2 * b[1] + c[1];
                beside.add(Math.sqrt(x * x + y * y));
            }
        }
        if (beside.size() < LEAST_CLOSE) {
            return 0;
        }
        Collections.sort(beside);
        // a − 2b + c has six times the variance of one position; the median of a plane deviation is √(2 ln 2) of its σ.
        return beside.get(beside.size() / 2) / Math.sqrt(6 * 2 * Math.log(2));
    }

    /** Places that follow one another within a reach become their middle; the first and the last stay. */
    private static List<double[]> clustered(List<double[]> places, double reachM) {
        List<double[]> clusters = new ArrayList<>(List.of(places.get(0)));
        double[] seed = null;
        double[] sum = null;
        for (double[] place : places.subList(1, places.size() - 1)) {
            if (seed != null && distance(seed, place) < reachM) {
                for (int k = 0; k < 3; k++) {
                    sum[k] += place[3] * place[k];
                }
                sum[3] += place[3];
            } else {
                if (sum != null) {
                    clusters.add(middle(sum));
                }
                seed = place;
                sum = new double[] {place[3] * place[0], place[3] * place[1], place[3] * place[2], place[3]};
            }
        }
        if (sum != null) {
            clusters.add(middle(sum));
        }
        clusters.add(places.get(places.size() - 1));
        return clusters;
    }

    private static double[] middle(double[] sum) {
        return new double[] {sum[0] / sum[3], sum[1] / sum[3], sum[2] / sum[3], sum[3]};
    }

    /** Positions: meters east and north of the first one, their chainage, and how many they stand for. */
    private static List<double[]> places(RouteLine line, double fromM, double toM) {
        List<double[]> places = new ArrayList<>();
        double x = 0;
        double y = 0;
        int first = line.pieceAt(fromM);
        int last = Math.min(line.size() - 1, line.pieceAt(toM) + 1);
        places.add(new double[] {0, 0, line.chainageM(first), 1});
        for (int i = first + 1; i <= last; i++) {
            LonLat a = line.position(i - 1);
            LonLat b = line.position(i);
            double east = Geodesic.shortWay(b.lonDeg() - a.lonDeg())
                    * Math.cos(Math.toRadians(0.5 * (a.latDeg() + b.latDeg())));
            double north = b.latDeg() - a.latDeg();
            double scale = (line.chainageM(i) - line.chainageM(i - 1))
                    / Math.max(1e-12, Math.sqrt(east * east + north * north));
            x += east * scale;
            y += north * scale;
            places.add(new double[] {x, y, line.chainageM(i), 1});
        }
        return places;
    }

    /** Places in equal steps, {@code leg} of them beyond each end. */
    private static void lay(List<double[]> thinned, int leg, int n, double[] x, double[] y, double[] at) {
        int piece = 1;
        double done = 0;
        for (int i = 0; i < n; i++) {
            double s = i * STEP_M;
            double length = distance(thinned.get(piece - 1), thinned.get(piece));
            while (s - done > length && piece + 1 < thinned.size()) {
                done += length;
                piece++;
                length = distance(thinned.get(piece - 1), thinned.get(piece));
            }
            double[] a = thinned.get(piece - 1);
            double[] b = thinned.get(piece);
            double t = length > 0 ? Math.min(1, (s - done) / length) : 0;
            x[leg + i] = a[0] + t * (b[0] - a[0]);
            y[leg + i] = a[1] + t * (b[1] - a[1]);
            at[i] = a[2] + t * (b[2] - a[2]);
        }
        int reach = Math.min(leg, n - 1);
        for (int k = 1; k <= leg; k++) {
            double part = reach == 0 ? 0 : (double) k / reach;
            x[leg - k] = x[leg] - part * (x[leg + reach] - x[leg]);
            y[leg - k] = y[leg] - part * (y[leg + reach] - y[leg]);
            int end = leg + n - 1;
            x[end + k] = x[end] + part * (x[end] - x[end - reach]);
            y[end + k] = y[end] + part * (y[end] - y[end - reach]);
        }
    }

    private static double distance(double[] a, double[] b) {
        double x = b[0] - a[0];
        double y = b[1] - a[1];
        return Math.sqrt(x * x + y * y);
    }
}
