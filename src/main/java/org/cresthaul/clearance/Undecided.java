package org.cresthaul.clearance;

/**
 * Why a search ended without an answer.
 *
 * @param cause what kept a stretch of positions from being bounded
 * @param spent whether the work allowed for the files ran out; else a stretch as short as they get was still open
 * @param steerM where the steer axle stood then, meters along the line
 */
public record Undecided(Cause cause, boolean spent, double steerM) {
    /** What kept a stretch from being bounded. */
    public enum Cause {
        /** Some unit pitches too steeply, or too fast, for its motion to be bounded. */
        STEEP,
        /** Line and outlines need more positions, or nearer ones, than the search takes. */
        ROUGH
    }
}
