package org.cresthaul.rig;

import org.cresthaul.units.Worded;

/** Which unit an axle belongs to, front to rear. */
public enum AxleKind implements Worded {
    STEER("steer"),
    DRIVE("drive"),
    JEEP("jeep"),
    TRAILER("trailer"),
    BOOSTER("booster");

    private final String word;

    AxleKind(String word) {
        this.word = word;
    }

    /** The word used in files and on screens. */
    @Override
    public String word() {
        return word;
    }
}
