package org.cresthaul.turning;

/**
 * Places beside a lead path: station and offset of the nearest point on it, taken as straight between its states and
 * going on straight before and beyond. A search from the last answer on: for points that move along the path. Not for
 * sharing.
 */
final class PathFrame {
    private final Track track;
    private int near;
    private boolean fresh = true;
    private double station;
    private double offset;

    PathFrame(Track track) {
        this.track = track;
    }

    /** Finds the place of a point; near the last one when the path comes by twice. */
    void project(double x, double y) {
        int best = near;
        double least = distance2(near, x, y);
        // The first place is looked for over the length of a combination; the next ones are near the last.
        int reach = fresh ? 240 : 40;
        fresh = false;
        for (int i = Math.max(0, near - reach); i < Math.min(track.size(), near + reach); i++) {
            double d = distance2(i, x, y);
            if (d < least) {
                least = d;
                best = i;
            }
        }
        near = best;
        double found = Double.POSITIVE_INFINITY;
        for (int i = Math.max(0, best - 1); i <= Math.min(best, track.size() - 2); i++) {
            double dx = track.leadXM(i + 1) - track.leadXM(i);
            double dy = track.leadYM(i + 1) - track.leadYM(i);
            double length = Math.sqrt(dx * dx + dy * dy);
            if (length == 0) {
                continue;
            }
            double px = x - track.leadXM(i);
            double py = y - track.leadYM(i);
            double along = (px * dx + py * dy) / length;
            double lo = i == 0 ? Double.NEGATIVE_INFINITY : 0;
            double hi = i == track.size() - 2 ? Double.POSITIVE_INFINITY : length;
            double held = Math.max(lo, Math.min(hi, along));
            double across = (dx * py - dy * px) / length;
            double away = Math.sqrt(across * across + (along - held) * (along - held));
            if (away < found) {
                found = away;
                station = track.stationM(i) + held;
                offset = across >= 0 ? away : -away;
            }
        }
    }

    private double distance2(int i, double x, double y) {
        double dx = track.leadXM(i) - x;
        double dy = track.leadYM(i) - y;
        return dx * dx + dy * dy;
    }

    double stationM() {
        return station;
    }

    /** Positive to the left of the path. */
    double offsetM() {
        return offset;
    }
}
