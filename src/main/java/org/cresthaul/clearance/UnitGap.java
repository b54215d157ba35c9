package org.cresthaul.clearance;

import org.cresthaul.rig.FramePoint;

/**
 * The least gap between two coupled units on a passage.
 *
 * @param valueM the gap, or gap less need, meters; negative when they overlap, by no more than they do
 * @param provenWithinM the true minimum lies between {@code valueM - provenWithinM} and {@code valueM}
 * @param coupling which two units
 * @param ahead where on the one ahead, in its frame
 * @param behind where on the one behind
 * @param bendRad pitch of the one behind relative to the one ahead then, nose up
 * @param outM how far the place is from the coupling's pivot, meters
 * @param steerM where the steer axle stands then, meters along the line
 */
public record UnitGap(
        double valueM,
        double provenWithinM,
        Coupling coupling,
        FramePoint ahead,
        FramePoint behind,
        double bendRad,
        double outM,
        double steerM) {}
