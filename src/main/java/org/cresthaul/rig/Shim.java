package org.cresthaul.rig;

/** Which plate is set at the booster joint. */
public enum Shim {
    NONE("none"),
    THIN("thin"),
    THICK("thick");

    private final String word;

    Shim(String word) {
        this.word = word;
    }

    /** The word used in files and on screens. */
    public String word() {
        return word;
    }
}
