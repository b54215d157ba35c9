package org.cresthaul.check;

import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.CornerFinding;
import org.cresthaul.report.DriverLine;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.Side;
import org.cresthaul.turning.Track;

/** Reads the line that a driver takes off the passage that was found. */
final class DriverLines {
    private DriverLines() {}

    /** Less than this is no swing: nobody would see it, meters. */
    private static final double SEEN_M = 0.1;
    /** The turn itself begins where the wheels are over its way by this much. */
    private static final double TURNING_RAD = Math.toRadians(3);

    static DriverLine of(Corner corner, CornerFit fit) {
        Track track = fit.track();
        RoadEnd in = corner.approach();
        RoadEnd out = corner.exit();
        int start = fit.stateAt(fit.steering().fromM());
        int end = fit.stateAt(fit.steering().toM());
        double hand = corner.turnRad() >= 0 ? 1 : -1;
        int turnIn = start;
        while (turnIn < end && hand * track.steerRad(turnIn) < TURNING_RAD) {
            turnIn++;
        }
        double away = 0;
        int first = start;
        double firstSteer = 0;
        double over = 1e-3;
        for (int i = start; i <= end; i++) {
            double side = -hand
                    * (Passed.left(in, track.leadXM(i), track.leadYM(i))
                            - fit.steering().offsetInM());
            if (Passed.along(in, track.leadXM(i), track.leadYM(i))
                            <= Passed.along(in, track.leadXM(turnIn), track.leadYM(turnIn)) + 1e-6
                    || i <= turnIn) {
                away = Math.max(away, side);
            }
            over = Math.max(over, hand * track.steerRad(i));
            if (firstSteer == 0 && Math.abs(track.steerRad(i)) > Math.toRadians(1)) {
                firstSteer = track.steerRad(i);
                first = i;
            }
        }
        double half = fit.combination().units().get(0).tires().get(0).halfWidthM();
        CornerFit.Gap tightest = fit.tightest();
        boolean onLeft = corner.onLeft();
        double side = onLeft ? -1 : 1;
        return new DriverLine(
                fit.steering().offsetInM(),
                edgeM(in, fit.escorts(), onLeft) + side * fit.steering().offsetInM() - half,
                onLeft ? Side.LEFT : Side.RIGHT,
                Passed.along(in, track.leadXM(first), track.leadYM(first)),
                firstSteer >= 0 ? Side.LEFT : Side.RIGHT,
                away < SEEN_M ? 0 : away,
                Passed.along(in, track.leadXM(turnIn), track.leadYM(turnIn)),
                fit.combination().chain().get(0).hitchToAxleM() / Math.sin(Math.min(Math.PI / 2, over)),
                Passed.along(out, track.leadXM(end), track.leadYM(end)),
                fit.steering().offsetOutM(),
                edgeM(out, fit.escorts(), onLeft) + side * fit.steering().offsetOutM() - half,
                tightest.side(),
                Sentence.of(Code.PART_TO)
                        .with("part", CornerFinding.part(fit.combination().nameOf(tightest), tightest.part()))
                        .with("other", Sentence.word(tightest.against())));
    }

    /** From a road's center point to the edge that one drives along. */
    private static double edgeM(RoadEnd end, boolean escorts, boolean onLeft) {
        return onLeft ? escorts ? end.escortedLeftM() : end.leftM() : escorts ? end.escortedRightM() : end.rightM();
    }
}
