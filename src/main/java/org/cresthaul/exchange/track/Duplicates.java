package org.cresthaul.exchange.track;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.exchange.track.TrackNote.Done;

/** Leaves out points that repeat the one before them. */
final class Duplicates {
    /** Nearer than this is the same place, meters: files tell about a centimeter. */
    private static final double SAME_M = 0.02;

    private Duplicates() {}

    static List<TrackPoint> without(List<TrackPoint> points, String file, List<TrackNote> notes) {
        List<TrackPoint> kept = new ArrayList<>(points.size());
        TrackPoint first = null;
        for (TrackPoint point : points) {
            if (!kept.isEmpty() && point.roughM(kept.get(kept.size() - 1)) < SAME_M) {
                first = first == null ? point : first;
            } else {
                kept.add(point);
            }
        }
        int left = points.size() - kept.size();
        if (left > 0) {
            notes.add(TrackNote.at(
                    file,
                    Done.CORRECTED,
                    "repeated-point",
                    first,
                    left == 1
                            ? "The point at " + first.where() + " repeats the one before it; it was left out."
                            : left + " points repeat the one before them, the first at " + first.where()
                                    + "; they were left out."));
        }
        return kept;
    }
}
