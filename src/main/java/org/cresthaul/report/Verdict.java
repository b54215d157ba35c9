package org.cresthaul.report;

import org.cresthaul.units.Worded;

/** What a check says, mildest first. Only {@link #CLEAR} lets a combination through without a person's decision. */
public enum Verdict implements Worded {
    /** Clearance is at least margin and uncertainty. */
    CLEAR("clear"),
    /** Contact is excluded, but the margin is not shown, or rests on something that is not known well enough. */
    TIGHT("tight"),
    /** Data is missing. Never counted as clear. */
    NOT_SURVEYED("not surveyed"),
    /** Weights are missing. Never counted as within limits. */
    LOADS_NOT_KNOWN("loads not known"),
    /** A load is above what is allowed, or below what is needed. */
    OUTSIDE_LIMITS("outside limits"),
    /** Contact cannot be excluded. */
    CONTACT("contact");

    private final String word;

    Verdict(String word) {
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

    public Verdict orWorse(Verdict other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
