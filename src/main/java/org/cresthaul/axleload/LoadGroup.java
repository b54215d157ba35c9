package org.cresthaul.axleload;

import org.cresthaul.rig.AxleKind;
import org.cresthaul.units.Worded;

/**
 * Axles that share their load.
 *
 * @param number which of its kind, the front one 1: each jeep and each booster has a group of its own
 */
public record LoadGroup(AxleKind kind, int number) implements Worded {
    /** The only one of its kind, or the front one. */
    public LoadGroup(AxleKind kind) {
        this(kind, 1);
    }

    /** "trailer", "jeep 2" */
    @Override
    public String word() {
        return number == 1 ? kind.word() : kind.word() + " " + number;
    }
}
