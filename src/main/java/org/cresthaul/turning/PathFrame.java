package org.cresthaul.turning;

import org.cresthaul.geometry.StopSignal;

/**
 * Places beside a lead path, of one place of one unit: station and offset of the nearest point on the path, which is
 * taken as straight between its states and goes on straight before and beyond. Only the part of the path is looked at
 * that the unit can be beside: from four times as far behind the lead point as the place is along the straight
 * combination (units cut across what the lead point goes round), up to the lead point or to what is ahead of it. So the
 * leg that a sharp turn comes back on is not mistaken for the one a unit is still on.
 */
final class PathFrame {
    private static final double SLACK_M = 1;
    private static final double ROUND_ABOUT = 4;

    private final StopSignal stop = StopSignal.current();
    private final Track track;
    private final double behindM;
    private final double stepM;
    private int last;
    private double station;
    private double offset;

    /** @param aheadM of the place, ahead of the unit's effective axle */
    PathFrame(Track track, int unit, double aheadM) {
        this.track = track;
        double behind = -aheadM;
        for (int k = 0; k <= unit; k++) {
            behind += track.chain().get(k).hitchToAxleM()
                    + (k < unit ? track.chain().get(k).couplingBehindM() : 0);
        }
        behindM = behind;
        double longest = 1e-9;
        for (int i = 1; i < track.size(); i++) {
            longest = Math.max(longest, track.stationM(i) - track.stationM(i - 1));
        }
        stepM = longest;
    }

    /** Finds the place of a point at a state. */
    void project(int state, double x, double y) {
        stop.poll();
        double lead = track.stationM(state);
        double from = lead - ROUND_ABOUT * Math.max(behindM, 0) - SLACK_M;
        double to = lead + Math.max(-behindM, 0) + SLACK_M;
        int first = state;
        while (first > 0 && track.stationM(first) > from) {
            first -= Math.max(1, (int) Math.min(first, (track.stationM(first) - from) / stepM));
        }
        // Where the place was last is near where it is now.
        int best = Math.max(first, Math.min(last, state));
        double least2 = distance2(best, x, y);
        double least = Math.sqrt(least2);
        for (int i = first; i < track.size() && track.stationM(i) <= to + stepM; ) {
            double d2 = distance2(i, x, y);
            if (d2 < least2) {
                least2 = d2;
                least = Math.sqrt(d2);
                best = i;
            }
            // Too far to be beaten before the path has come so much nearer.
            double next = least + 2 * stepM;
            i += d2 < next * next ? 1 : (int) ((Math.sqrt(d2) - least) / stepM);
        }
        last = best;
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
        if (first == 0 && from < 0) {
            besideTheStart(x, y, found);
        }
    }

    private double distance2(int state, double x, double y) {
        double dx = track.leadXM(state) - x;
        double dy = track.leadYM(state) - y;
        return dx * dx + dy * dy;
    }

    /** The straight before the path, which its first states do not show. */
    private void besideTheStart(double x, double y, double found) {
        double px = x - track.leadXM(0);
        double py = y - track.leadYM(0);
        double along = px * track.leadCos(0) + py * track.leadSin(0);
        double across = py * track.leadCos(0) - px * track.leadSin(0);
        if (along < 0 && Math.abs(across) < found) {
            station = track.stationM(0) + along;
            offset = across;
        }
    }

    double stationM() {
        return station;
    }

    /** Positive to the left of the path. */
    double offsetM() {
        return offset;
    }
}
