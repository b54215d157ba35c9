package org.cresthaul.check;

import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.Side;
import org.cresthaul.turning.Track;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * How a gate is backed into: the pull-out that was found, told from its end. Wheels that roll without slipping roll
 * back the way they came, so that a line out of the gate is one into it; but what straightens by itself going forward
 * folds going backward, so that a driver has to hold every bend that the pull-out leaves to itself. Places are of the
 * steer axle.
 *
 * @param pivot of a trailing booster, whichever leaves more room; null without one
 * @param stopM past the middle of the gate along the road: where to stop, every coupling straight to a degree
 * @param edgeM from the outer face of the steer tire on the side on which one drives to that edge of the road that may
 *     be used, there
 * @param edgeSide which side that is
 * @param wheelM past the middle of the gate: where the wheel goes over first, no farther than where to stop
 * @param firstWay to which side it goes over first
 * @param radiusM tightest radius of the steer axle's path
 * @param straightM before the road's center line, seen from the drive, negative beyond it on the road: where the front
 *     wheels are straight again
 * @param mirror which mirror shows the tightest place
 * @param watch what to watch in it
 */
public record BackingLine(
        PivotState pivot,
        @Rounded(Rounding.LENGTH_NEAR) double stopM,
        @Rounded(Rounding.LENGTH_NEAR) double edgeM,
        Side edgeSide,
        @Rounded(Rounding.LENGTH_NEAR) double wheelM,
        Side firstWay,
        @Rounded(Rounding.LENGTH_NEAR) double radiusM,
        @Rounded(Rounding.LENGTH_NEAR) double straightM,
        Side mirror,
        Sentence watch) {
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
        DriverLine out = DriverLine.of(corner, fit);
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
