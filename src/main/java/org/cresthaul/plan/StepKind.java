package org.cresthaul.plan;

import org.cresthaul.units.Worded;

/** What a step of a plan is. */
public enum StepKind implements Worded {
    DEPART("depart"),
    CHANGE("change"),
    RAISE("raise"),
    PASSAGE("passage"),
    LOWER("lower"),
    ARRIVE("arrive");

    private final String word;

    StepKind(String word) {
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
