package org.cresthaul.view;

import org.cresthaul.units.Worded;

/** What a place along a driver's line is. */
public enum MarkKind implements Worded {
    WHEEL_OVER("wheel over"),
    WHEELS_STRAIGHT("wheels straight"),
    /** Abreast of something one sees. */
    LANDMARK("landmark");

    private final String word;

    MarkKind(String word) {
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
