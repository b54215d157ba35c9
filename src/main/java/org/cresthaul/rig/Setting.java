package org.cresthaul.rig;

import java.util.List;
import org.cresthaul.geometry.Finite;

/**
 * Everything that is set on the combination before it moves.
 *
 * @param lift lift axle down or up
 * @param booster how the booster is used
 * @param notchOffsetM offset of the notch it stands in, meters from the reference notch
 * @param frontRaiseM hydraulic raise of the deck front above that notch, meters; zero in transport
 * @param rearRaiseM manual raise of the rear at the valve axle above what its valve sets, meters; zero in transport
 */
public record Setting(
        LiftState lift, BoosterState booster, double notchOffsetM, double frontRaiseM, double rearRaiseM) {
    public Setting {
        Finite.require("notchOffsetM", notchOffsetM);
        Finite.requireAtLeast("frontRaiseM", 0, frontRaiseM);
        Finite.requireAtLeast("rearRaiseM", 0, rearRaiseM);
    }

    /** In transport: on the stops at a notch, rear leveling in auto. */
    public static Setting transport(LiftState lift, BoosterState booster, Notch notch) {
        return new Setting(lift, booster, notch.offsetM(), 0, 0);
    }

    public Setting raised(double frontM, double rearM) {
        return new Setting(lift, booster, notchOffsetM, frontM, rearM);
    }

    /** The leveling rules that may act: both in auto, only {@link Leveling#HELD} once the rear is raised by hand. */
    public List<Leveling> levelings() {
        return rearRaiseM > 0 ? List.of(Leveling.HELD) : List.of(Leveling.HELD, Leveling.SETTLED);
    }
}
