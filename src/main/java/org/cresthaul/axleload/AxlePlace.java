package org.cresthaul.axleload;

import org.cresthaul.geometry.Finite;
import org.cresthaul.rig.AxleKind;

/**
 * An axle that stands on the road.
 *
 * @param group the axles it shares air with: a close-coupled booster axle stands in the trailer's group
 * @param kind the unit it belongs to
 * @param number its place among the axles of its kind, the front one 1
 * @param xM along the combination, meters, in the tractor's frame
 */
public record AxlePlace(AxleKind group, AxleKind kind, int number, double xM) {
    public AxlePlace {
        Finite.require("xM", xM);
    }

    /** "trailer axle 2", "steer axle" */
    public String label() {
        return kind == AxleKind.STEER || kind == AxleKind.BOOSTER
                ? kind.word() + " axle"
                : kind.word() + " axle " + number;
    }
}
