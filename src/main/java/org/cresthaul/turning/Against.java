package org.cresthaul.turning;

import org.cresthaul.units.Worded;

/** What room is measured to. */
public enum Against implements Worded {
    PAVEMENT("the edge of the pavement"),
    OBSTACLE("an obstacle"),
    OPPOSING("the opposing lane"),
    CURB("a curb it does not pass over"),
    ISLAND("an island it does not pass over");

    private final String word;

    Against(String word) {
        this.word = word;
    }

    /** Whether only undersides keep off it that are too low to pass over. */
    boolean isLow() {
        return this == CURB || this == ISLAND;
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
