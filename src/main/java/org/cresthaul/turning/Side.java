package org.cresthaul.turning;

import org.cresthaul.units.Worded;

/** A side of the combination, seen in the direction of travel. */
public enum Side implements Worded {
    LEFT("left"),
    RIGHT("right");

    private final String word;

    Side(String word) {
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
