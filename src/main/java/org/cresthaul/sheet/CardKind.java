package org.cresthaul.sheet;

import org.cresthaul.units.Worded;

/** What a driver's card is about. */
public enum CardKind implements Worded {
    SET_UP("set-up"),
    STUCK("stuck"),
    RAISING("raising"),
    LOADING("loading"),
    UNLOADING("unloading"),
    UNCOUPLING("uncoupling"),
    COUPLING("coupling"),
    COUPLING_BOOSTER("coupling booster"),
    UNCOUPLING_BOOSTER("uncoupling booster"),
    CLOSE_COUPLING("close-coupling"),
    CARRYING_BOOSTER("carrying booster"),
    BACKING("backing");

    private final String word;

    CardKind(String word) {
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
