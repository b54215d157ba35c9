package org.cresthaul.rig;

/**
 * The tractor in its level stance.
 *
 * @param steer the steer axle, ahead of the drive group
 * @param drive the drive group
 * @param fifthWheel where it carries the kingpin; its height is also the kingpin's
 * @param underside lowest line over the ground, rear to front
 * @param topside highest line, rear to front
 */
public record Tractor(Axle steer, AxleGroup drive, FramePoint fifthWheel, Outline underside, Outline topside) {
    public Tractor {
        if (drive.axles().get(0).xM() >= steer.xM()) {
            throw new IllegalArgumentException("the drive axles must be behind the steer axle");
        }
    }
}
