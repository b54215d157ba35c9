package org.cresthaul.rig;

import org.cresthaul.units.Worded;

/** How the booster is used. */
public enum BoosterState implements Worded {
    /** Left behind. */
    NONE("none"),
    /** On its pivot and hinge behind the trailer, its load set by regulated air. */
    TRAILING("trailing"),
    /** Fixed close behind the trailer as one more axle of its group. */
    CLOSE_COUPLED("close-coupled"),
    /** Lying on the deck. */
    CARRIED("carried");

    private final String word;

    BoosterState(String word) {
        this.word = word;
    }

    /** The trade's word, as used in files and on screens. */
    @Override
    public String word() {
        return word;
    }

    @Override
    public String toString() {
        return word;
    }
}
