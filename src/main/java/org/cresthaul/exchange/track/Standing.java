package org.cresthaul.exchange.track;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.exchange.track.TrackNote.Done;

/**
 * Makes one point of the many that a receiver gives while the truck stands. Where the file has times: within
 * {@link #AROUND_M} for {@link #LEAST_S} and more. Where it has none: ten points and more in there whose way is four
 * times as long as they are apart, which no bend is (a full circle is 3.14 times as long as it is wide).
 */
final class Standing {
    private static final double AROUND_M = 12;
    private static final double LEAST_S = 30;
    private static final int LEAST_POINTS = 4;
    private static final int LEAST_UNTIMED = 10;
    private static final double LONGER = 4;

    private Standing() {}

    static List<TrackPoint> without(List<TrackPoint> points, String file, List<TrackNote> notes) {
        List<TrackPoint> kept = new ArrayList<>(points.size());
        int i = 0;
        while (i < points.size()) {
            int end = cluster(points, i);
            if (end - i >= LEAST_POINTS && stands(points.subList(i, end))) {
                TrackPoint first = points.get(i);
                double stoodS = points.get(end - 1).timeS() - first.timeS();
                notes.add(TrackNote.at(
                        file,
                        Done.CORRECTED,
                        "stop",
                        first,
                        "From " + first.where() + " on " + (end - i) + " points lie within "
                                + Math.round(AROUND_M) + " m" + (stoodS > 0 ? " for " + told(stoodS) : "")
                                + ": the truck stood. One was kept."));
                kept.add(first);
                i = end;
            } else {
                kept.add(points.get(i));
                i++;
            }
        }
        return kept;
    }

    private static String told(double seconds) {
        return seconds < 120 ? Math.round(seconds) + " s" : Math.round(seconds / 60) + " min";
    }

    /** Behind the last point that lies around the first. */
    private static int cluster(List<TrackPoint> points, int from) {
        int end = from + 1;
        while (end < points.size() && points.get(end).roughM(points.get(from)) <= AROUND_M) {
            end++;
        }
        return end;
    }

    private static boolean stands(List<TrackPoint> around) {
        TrackPoint first = around.get(0);
        TrackPoint last = around.get(around.size() - 1);
        if (first.isTimed() && last.isTimed()) {
            return last.timeS() - first.timeS() >= LEAST_S;
        }
        double wayM = 0;
        double apartM = 0;
        for (int i = 1; i < around.size(); i++) {
            wayM += around.get(i).roughM(around.get(i - 1));
            apartM = Math.max(apartM, around.get(i).roughM(first));
        }
        return around.size() >= LEAST_UNTIMED && wayM >= LONGER * apartM;
    }
}
