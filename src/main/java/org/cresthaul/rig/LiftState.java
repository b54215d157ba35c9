package org.cresthaul.rig;

/** Whether the lift axle carries. */
public enum LiftState {
    DOWN("down"),
    UP("up");

    private final String word;

    LiftState(String word) {
        this.word = word;
    }

    /** The word used in files and on screens. */
    public String word() {
        return word;
    }
}
