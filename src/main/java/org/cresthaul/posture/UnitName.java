package org.cresthaul.posture;

/** The units of a combination, front to rear. */
public enum UnitName {
    TRACTOR("tractor"),
    TRAILER("trailer"),
    BOOSTER("booster");

    private final String word;

    UnitName(String word) {
        this.word = word;
    }

    /** The word used in files and on screens. */
    public String word() {
        return word;
    }
}
