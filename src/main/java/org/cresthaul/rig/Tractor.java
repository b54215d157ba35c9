package org.cresthaul.rig;

import org.cresthaul.geometry.Finite;

/**
 * The tractor in its level stance.
 *
 * @param steer the steer axle, ahead of the drive group
 * @param drive the drive group
 * @param fifthWheel where it carries the kingpin; its height is also the kingpin's
 * @param plateReachM how far plate and ramps reach from there: nothing nearer is checked between tractor and gooseneck,
 *     meters
 * @param underside lowest line over the ground, rear to front
 * @param topside highest line, rear to front
 */
public record Tractor(
        Axle steer, AxleGroup drive, FramePoint fifthWheel, double plateReachM, Outline underside, Outline topside) {
    /** Half a plate's length with its ramps: 2 ft (common practice, no source). */
    public static final double USUAL_PLATE_REACH_M = 0.6096;

    /** With a plate of the usual length. */
    public Tractor(Axle steer, AxleGroup drive, FramePoint fifthWheel, Outline underside, Outline topside) {
        this(steer, drive, fifthWheel, USUAL_PLATE_REACH_M, underside, topside);
    }

    public Tractor {
        Finite.requireAtLeast("plateReachM", 0, plateReachM);
        if (drive.axles().get(0).xM() >= steer.xM()) {
            throw new IllegalArgumentException("the drive axles must be behind the steer axle");
        }
    }
}
