package org.cresthaul.rig;

import org.cresthaul.units.Worded;

/** Whether the lift axle carries. */
public enum LiftState implements Worded {
    DOWN("down"),
    UP("up");

    private final String word;

    LiftState(String word) {
        this.word = word;
    }

    /** The word used in files and on screens. */
    @Override
    public String word() {
        return word;
    }

    @Override
    public String toString() {
        return word;
    }
}
