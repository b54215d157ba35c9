package org.cresthaul.route;

import org.cresthaul.geometry.Finite;

/**
 * Where the combination may stop and be worked on.
 *
 * @param place where its front stands
 * @param setUpArea whether a booster may be coupled, uncoupled or loaded there as well
 * @param roomM length of the room there is, meters
 */
public record StoppingPlace(HazardPlace place, boolean setUpArea, double roomM) {
    /** The words of the route file. */
    public static final String STOPPING_PLACE = "stopping-place";

    public static final String SET_UP_AREA = "set-up-area";

    public StoppingPlace {
        Finite.requireAtLeast("roomM", 0, roomM);
    }

    /** The kind in the word of the route file. */
    public String word() {
        return setUpArea ? SET_UP_AREA : STOPPING_PLACE;
    }
}
