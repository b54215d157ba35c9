package org.cresthaul.rig;

import org.cresthaul.geometry.Finite;

/**
 * A ride-height notch of the gooseneck.
 *
 * @param name as marked on the gooseneck
 * @param offsetM deck-front height on level ground above that at the reference notch, meters; negative is lower
 */
public record Notch(String name, double offsetM) {
    public Notch {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a notch needs a name");
        }
        Finite.require("offsetM", offsetM);
    }
}
