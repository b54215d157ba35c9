package org.cresthaul.exchange.track;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.exchange.track.TrackNote.Done;

/**
 * Leaves out points that strayed: one to three that lie far off while the line goes on past them. A spur, driven to its
 * end and back, is none: the line comes back to the very place it left, and stays.
 */
final class Spikes {
    private static final int MOST_POINTS = 3;
    /** A spike sticks out farther than this, meters: less is noise. */
    private static final double LEAST_M = 50;
    /** And farther than this many times the way past it. */
    private static final double TIMES = 3;
    /** Faster than this is no road, meters per second. */
    private static final double TOO_FAST_MPS = 70;
    /** Farther than this nobody drives between two points, meters: what is there and back again strayed. */
    private static final double TOO_FAR_M = 20_000;

    private Spikes() {}

    static List<TrackPoint> without(List<TrackPoint> points, String file, List<TrackNote> notes) {
        double usualM = Spacing.medianM(points);
        List<TrackPoint> kept = new ArrayList<>(points.size());
        int i = 0;
        while (i < points.size()) {
            int run = kept.isEmpty() ? 0 : strayed(points, kept.get(kept.size() - 1), i, usualM);
            if (run > 0) {
                TrackPoint first = points.get(i);
                notes.add(TrackNote.at(
                        file,
                        Done.CORRECTED,
                        "spike",
                        first,
                        (run == 1
                                        ? "The point at " + first.where() + " strays "
                                        : run + " points from " + first.where() + " on stray ")
                                + Math.round(first.roughM(kept.get(kept.size() - 1)))
                                + " m off; left out."));
                i += run;
            } else {
                kept.add(points.get(i));
                i++;
            }
        }
        return kept;
    }

    /** How many points from here on strayed. */
    private static int strayed(List<TrackPoint> points, TrackPoint before, int i, double usualM) {
        if (before.roughM(points.get(i)) < LEAST_M) {
            return 0;
        }
        for (int run = 1; run <= MOST_POINTS && i + run < points.size(); run++) {
            TrackPoint first = points.get(i);
            TrackPoint last = points.get(i + run - 1);
            TrackPoint after = points.get(i + run);
            double outM = Math.min(before.roughM(first), last.roughM(after));
            double pastM = before.roughM(after);
            if (outM < LEAST_M || outM < TIMES * Math.max(pastM, usualM)) {
                continue;
            }
            boolean goesOn = pastM > usualM / 2;
            if (goesOn || outM > TOO_FAR_M || isTooFast(before, first) && isTooFast(last, after)) {
                return run;
            }
        }
        return 0;
    }

    private static boolean isTooFast(TrackPoint from, TrackPoint to) {
        return from.isTimed() && to.isTimed() && from.roughM(to) > TOO_FAST_MPS * Math.abs(to.timeS() - from.timeS());
    }
}
