package org.cresthaul.exchange.track;

import java.util.Arrays;
import java.util.List;

/** How far apart the points of a line usually are. */
final class Spacing {
    private Spacing() {}

    /** The median distance of neighbors that are apart at all, meters; 0 when none are. */
    static double medianM(List<TrackPoint> points) {
        double[] steps = new double[Math.max(0, points.size() - 1)];
        int n = 0;
        for (int i = 1; i < points.size(); i++) {
            double step = points.get(i).roughM(points.get(i - 1));
            if (step > 0) {
                steps[n++] = step;
            }
        }
        Arrays.sort(steps, 0, n);
        return n == 0 ? 0 : steps[n / 2];
    }
}
