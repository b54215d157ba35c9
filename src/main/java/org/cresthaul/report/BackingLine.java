package org.cresthaul.report;

import org.cresthaul.language.Sentence;
import org.cresthaul.turning.Side;
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
        Sentence watch) {}
