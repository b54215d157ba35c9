package org.cresthaul.report;

import java.util.List;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * How far a combination goes straight back when nobody steers, in every state of lift axle and booster: information,
 * never a verdict. Lengths are meters, angles radians; null stands for "not known" or "does not apply".
 *
 * @param bendRad at every coupling at the start, to whichever side is the worse; this program's choice
 * @param mostM how far it is tried; this program's choice
 * @param states every state of booster and lift axle, as the configurations run
 */
public record ReversingReport(
        @Rounded(Rounding.ANGLE_NEAR) double bendRad, double mostM, List<State> states, List<Sentence> cautions) {
    /**
     * One state.
     *
     * @param unknown why it is not known, or null
     * @param free with every coupling free; null when not known
     * @param locked with the booster's pivot locked; null without a trailing booster
     * @param lockedLight the same with the booster's air out, so that only the trailer's axles guide; null likewise
     */
    public record State(
            LiftState lift,
            BoosterState booster,
            int axles,
            String label,
            Sentence unknown,
            StraightBack free,
            StraightBack locked,
            StraightBack lockedLight) {}

    /**
     * How far.
     *
     * @param limitMetM after how much way a coupling is at its limit, rounded down; null when none is within
     *     {@link #mostM}
     * @param coupling which one, "kingpin" or "pivot", or null
     * @param limitRad that limit, or null
     */
    public record StraightBack(
            @Rounded(Rounding.LENGTH_DOWN) Double limitMetM,
            Sentence coupling,
            @Rounded(Rounding.ANGLE_NEAR) Double limitRad) {}
}
