package org.cresthaul.report;

import org.cresthaul.language.Sentence;
import org.cresthaul.turning.Side;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * A lead line as a driver takes it. The line of the steer axle's middle; distances along a road are from the corner's
 * point on it, positive past it.
 *
 * @param offsetInM offsetOutM of the line from the middle point of approach and exit, positive to the left
 * @param edgeInM edgeOutM from the outer face of the steer tire on the side on which one drives to that edge of the
 *     road that may be used
 * @param edgeSide which side that is
 * @param startM where the steer axle is when the wheel first goes over, along the approach
 * @param firstWay to which side it goes over first
 * @param swingAwayM how far the line swings away from the turn before it turns
 * @param turnInM where the steer axle is when the turn itself begins, along the approach
 * @param radiusM tightest radius of the steer axle's path with the wheels over to the side of the turn
 * @param endM where the steer axle is when the wheels are straight again, along the exit
 * @param mirror which mirror shows the tightest place
 * @param watch what to watch in it
 */
public record DriverLine(
        @Rounded(Rounding.LENGTH_NEAR) double offsetInM,
        @Rounded(Rounding.LENGTH_NEAR) double edgeInM,
        Side edgeSide,
        @Rounded(Rounding.LENGTH_NEAR) double startM,
        Side firstWay,
        @Rounded(Rounding.LENGTH_NEAR) double swingAwayM,
        @Rounded(Rounding.LENGTH_NEAR) double turnInM,
        @Rounded(Rounding.LENGTH_NEAR) double radiusM,
        @Rounded(Rounding.LENGTH_NEAR) double endM,
        @Rounded(Rounding.LENGTH_NEAR) double offsetOutM,
        @Rounded(Rounding.LENGTH_NEAR) double edgeOutM,
        Side mirror,
        Sentence watch) {}
