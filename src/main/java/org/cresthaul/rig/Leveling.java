package org.cresthaul.rig;

/** How the air suspension of the trailer's group answers to uneven ground. */
public enum Leveling {
    /** The air is shut in: fast passage, or leveling on manual. The sum of axle travels stays what it was. */
    HELD("held"),
    /** The height valve has had time to act: the travel of the axle it reads stays what it was. */
    SETTLED("settled");

    private final String word;

    Leveling(String word) {
        this.word = word;
    }

    /** The word used in files and on screens. */
    public String word() {
        return word;
    }
}
