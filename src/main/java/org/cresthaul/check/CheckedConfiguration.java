package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Notch;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Setting;

/** One configuration of a rig in transport: lift axle, booster and notch. */
public record CheckedConfiguration(LiftState lift, BoosterState booster, Notch notch, int axles) {
    /** Every configuration of a stance: by booster state, lift state, then notch from the lowest. */
    public static List<CheckedConfiguration> listOf(Rig rig, LevelStance stance) {
        List<CheckedConfiguration> all = new ArrayList<>();
        for (BoosterState booster : stance.boosterStates()) {
            for (LiftState lift : stance.liftStates()) {
                for (Notch notch : rig.notches()) {
                    all.add(new CheckedConfiguration(lift, booster, notch, stance.axlesDown(lift)));
                }
            }
        }
        return all;
    }

    /** Short name, unique within the rig: "down/none/3". */
    public String key() {
        return lift.word() + "/" + booster.word() + "/" + notch.name();
    }

    /** For people, without the notch: "3 axles · booster trailing". */
    String stateLabel() {
        return axles + (axles == 1 ? " axle" : " axles") + " · "
                + (booster == BoosterState.NONE ? "no booster" : "booster " + booster.word());
    }

    /** For people: "3 axles · booster trailing · notch 2". */
    String label() {
        return stateLabel() + " · notch " + notch.name();
    }

    /** The same state at another notch. */
    public CheckedConfiguration at(Notch other) {
        return new CheckedConfiguration(lift, booster, other, axles);
    }

    Setting transport() {
        return Setting.transport(lift, booster, notch);
    }
}
