package org.cresthaul.axleload;

import org.cresthaul.rig.AxleKind;

/**
 * Axles that share their load.
 *
 * @param number which of its kind, the front one 1: each jeep has a group of its own
 */
public record LoadGroup(AxleKind kind, int number) {
    /** "trailer", "jeep 2" */
    public String word() {
        return number == 1 ? kind.word() : kind.word() + " " + number;
    }
}
