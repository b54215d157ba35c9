package org.cresthaul.exchange.track;

import java.util.List;
import org.cresthaul.exchange.track.TrackNote.Done;

/**
 * Tells of what may be right as it is: places where a line turns back on itself, and where its points are far apart.
 */
final class Doubts {
    private static final double LEAST_LEG_M = 15;
    private static final double BACK_COS = Math.cos(Math.toRadians(150));
    private static final double FAR_M = 500;
    private static final double FARTHER = 20;

    private Doubts() {}

    static void tell(List<TrackPoint> points, String file, List<TrackNote> notes) {
        double usualM = Spacing.medianM(points);
        for (int i = 1; i < points.size(); i++) {
            TrackPoint from = points.get(i - 1);
            TrackPoint at = points.get(i);
            double stepM = at.roughM(from);
            if (stepM > FAR_M && stepM > FARTHER * usualM) {
                notes.add(TrackNote.at(
                        file,
                        Done.DOUBTFUL,
                        "far-apart",
                        at,
                        "The points before and at " + at.where() + " are " + Math.round(stepM)
                                + " m apart, taken as driven straight."));
            }
            if (i + 1 < points.size() && turnsBack(from, at, points.get(i + 1))) {
                notes.add(TrackNote.at(
                        file,
                        Done.DOUBTFUL,
                        "turns-back",
                        at,
                        "The line turns back on itself at " + at.where() + "; kept as driven."));
            }
        }
    }

    private static boolean turnsBack(TrackPoint a, TrackPoint b, TrackPoint c) {
        double cos = Math.cos(Math.toRadians(b.at().latDeg()));
        double inX = (b.at().lonDeg() - a.at().lonDeg()) * cos;
        double inY = b.at().latDeg() - a.at().latDeg();
        double outX = (c.at().lonDeg() - b.at().lonDeg()) * cos;
        double outY = c.at().latDeg() - b.at().latDeg();
        return a.roughM(b) > LEAST_LEG_M
                && b.roughM(c) > LEAST_LEG_M
                && inX * outX + inY * outY < BACK_COS * Math.hypot(inX, inY) * Math.hypot(outX, outY);
    }
}
