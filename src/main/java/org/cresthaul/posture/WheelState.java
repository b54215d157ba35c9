package org.cresthaul.posture;

/** How a wheel stands. */
public enum WheelState {
    /** On the ground, carrying its share. */
    RIDING("riding"),
    /** At its rebound limit, off the ground. */
    HANGING("hanging"),
    /** At its jounce limit, lifting the frame. */
    SOLID("solid"),
    /** The lift axle, up. */
    LIFTED("lifted");

    private final String word;

    WheelState(String word) {
        this.word = word;
    }

    /** The word used in files and on screens. */
    public String word() {
        return word;
    }
}
