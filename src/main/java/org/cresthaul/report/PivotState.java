package org.cresthaul.report;

import org.cresthaul.units.Worded;

/** Whether a booster's pivot lets it steer. */
public enum PivotState implements Worded {
    FREE("free"),
    LOCKED("locked");

    private final String word;

    PivotState(String word) {
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
