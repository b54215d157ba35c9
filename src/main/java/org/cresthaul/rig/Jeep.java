package org.cresthaul.rig;

import org.cresthaul.geometry.Finite;

/**
 * A jeep in its level stance, in its own frame: a dolly whose kingpin rides on the fifth wheel of the unit ahead and
 * whose own fifth wheel carries the next kingpin.
 *
 * @param kingpinXM its kingpin along the frame, meters; the height is that of the fifth wheel ahead
 * @param axles its group, which shares its load
 * @param fifthWheel where it carries the next kingpin; its height is also that kingpin's
 * @param plateReachM how far plate and ramps reach from there: nothing nearer is checked between the units it couples,
 *     meters
 * @param underside lowest line over the ground, rear to front, without tires
 * @param topside highest line, rear to front
 * @param mayBeLeftOff whether the combination also runs without it, the next kingpin then where its own was
 */
public record Jeep(
        double kingpinXM,
        AxleGroup axles,
        FramePoint fifthWheel,
        double plateReachM,
        Outline underside,
        Outline topside,
        boolean mayBeLeftOff) {
    public Jeep {
        Finite.require("kingpinXM", kingpinXM);
        Finite.requireAtLeast("plateReachM", 0, plateReachM);
        if (axles.axles().get(0).xM() >= kingpinXM) {
            throw new IllegalArgumentException("the jeep's axles must be behind its kingpin");
        }
        if (fifthWheel.xM() >= kingpinXM) {
            throw new IllegalArgumentException("the jeep's fifth wheel must be behind its kingpin");
        }
    }
}
