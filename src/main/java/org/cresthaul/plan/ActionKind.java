package org.cresthaul.plan;

import org.cresthaul.units.Worded;

/** One thing that is done in a change of configuration. */
public enum ActionKind implements Worded {
    /** Changes the plate that is fitted, before departure. */
    PLATE("plate"),
    NOTCH("notch"),
    LIFT_AXLE("lift axle"),
    REGULATOR("regulator"),
    SHIM("shim"),
    COUPLE("couple booster"),
    UNCOUPLE("uncouple booster"),
    CLOSE_COUPLE("close-couple booster"),
    OPEN_CLOSE_COUPLING("open close-coupling"),
    LOAD("load booster"),
    UNLOAD("unload booster");

    private final String word;

    ActionKind(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }

    @Override
    public String toString() {
        return word;
    }
}
