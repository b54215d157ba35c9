package org.cresthaul.plan;

import org.cresthaul.units.Worded;

/** What a plan comes to. */
public enum Outcome implements Worded {
    THROUGH("way through"),
    CONDITIONAL("way through under conditions"),
    BLOCKED("no way through"),
    /** The route file names no hazard: nobody looked, and no way is called open. */
    UNJUDGED("nothing judged");

    private final String word;

    Outcome(String word) {
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
