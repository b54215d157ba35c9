package org.cresthaul.check;

import org.cresthaul.report.BackingLine;
import org.cresthaul.report.DriverLine;
import org.cresthaul.report.PivotState;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.Side;
import org.cresthaul.turning.Track;

/** Reads how a gate is backed into off the pull-out that was found. */
final class BackingLines {
    private BackingLines() {}

    /** A coupling bent by less is straight to the eye. */
    private static final double STRAIGHT_RAD = Math.toRadians(1);

    /** The wheel is over where it is turned by more. */
    private static final double OVER_RAD = Math.toRadians(1);

    /** Null at a corner that is driven forward. */
    static BackingLine of(Corner corner, CornerFit fit, BoosterState booster) {
        if (!corner.backing()) {
            return null;
        }
        Track track = fit.track();
        RoadEnd road = corner.exit();
        int last = track.size() - 1;
        int over = last;
        while (over > 0 && Math.abs(track.steerRad(over)) <= OVER_RAD) {
            over--;
        }
        int stop = last;
        while (stop > over && isStraight(track, stop - 1)) {
            stop--;
        }
        int straight = 0;
        while (straight < over && Math.abs(track.steerRad(straight)) <= OVER_RAD) {
            straight++;
        }
        DriverLine out = DriverLines.of(corner, fit);
        return new BackingLine(
                booster == BoosterState.TRAILING
                        ? fit.combination().hasPivot() ? PivotState.FREE : PivotState.LOCKED
                        : null,
                Passed.along(road, track.leadXM(stop), track.leadYM(stop)),
                out.edgeOutM(),
                out.edgeSide(),
                Passed.along(road, track.leadXM(over), track.leadYM(over)),
                track.steerRad(over) >= 0 ? Side.LEFT : Side.RIGHT,
                out.radiusM(),
                -Passed.along(corner.approach(), track.leadXM(straight), track.leadYM(straight)),
                out.mirror(),
                out.watch());
    }

    private static boolean isStraight(Track track, int state) {
        for (int k = 0; k + 1 < track.chain().size(); k++) {
            if (Math.abs(track.articulationRad(state, k)) > STRAIGHT_RAD) {
                return false;
            }
        }
        return true;
    }
}
