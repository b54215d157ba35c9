package org.cresthaul.plan;

import org.cresthaul.units.Worded;

/** What would have to be otherwise for a blocking place to open. */
public enum RelaxationKind implements Worded {
    /** Another configuration, which the plan cannot have there or may not use. */
    CONFIGURATION("configuration"),
    NO_BOOSTER("no booster"),
    /** Accepted as tight, with somebody on foot. */
    SPOTTER("spotter"),
    /** Accepted as tight, with escorts who hold the opposing lane. */
    ESCORTS("escorts"),
    /** Accepted by the owner of a wire, who lifts it, switches it off or says how near one may come. */
    OWNER("owner"),
    RAISE("raise"),
    NOTCH("notch"),
    LIGHTER("lighter piece"),
    POSITION("load position"),
    SURVEY("survey");

    private final String word;

    RelaxationKind(String word) {
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
