package org.cresthaul.axleload;

import org.cresthaul.geometry.Finite;
import org.cresthaul.rig.Weights.FrontLift;

/** Raising the loaded deck front with the gooseneck's hydraulics. */
public final class Hydraulics {
    private Hydraulics() {}

    /** Pressure that raises {@code frontKg}, in proportion to the rated one, pascals. */
    public static double neededPa(FrontLift lift, double frontKg) {
        return lift.ratedPa() * Math.max(0, Finite.require("frontKg", frontKg)) / lift.ratedKg();
    }

    /** Whether the power take-off gives what {@code frontKg} needs. */
    public static boolean raises(FrontLift lift, double frontKg) {
        return neededPa(lift, frontKg) <= lift.takeOffPa();
    }
}
