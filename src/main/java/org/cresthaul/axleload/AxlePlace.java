package org.cresthaul.axleload;

import org.cresthaul.geometry.Finite;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.AxleKind;

/**
 * An axle that stands on the road.
 *
 * @param group the axles it shares its load with: a close-coupled booster axle stands in the trailer's group
 * @param kind the unit it belongs to
 * @param number its place among the axles of its kind, of all jeeps or boosters together, the front one 1;
 *     {@link #ONLY} for the one axle of a booster
 * @param xM along the combination, meters, in the tractor's frame
 */
public record AxlePlace(LoadGroup group, AxleKind kind, int number, double xM) {
    /** The number of a booster's axle without another. */
    public static final int ONLY = 0;

    public AxlePlace {
        Finite.require("xM", xM);
    }

    /** In the only group of a kind. */
    public AxlePlace(AxleKind group, AxleKind kind, int number, double xM) {
        this(new LoadGroup(group, 1), kind, number, xM);
    }

    /** "trailer axle 2", "steer axle" */
    public Sentence label() {
        return switch (kind) {
            case STEER -> Sentence.of(Code.AXLE_STEER);
            case DRIVE -> Sentence.of(Code.AXLE_DRIVE).with("number", number);
            case JEEP -> Sentence.of(Code.AXLE_JEEP).with("number", number);
            case TRAILER -> Sentence.of(Code.AXLE_TRAILER).with("number", number);
            case BOOSTER ->
                number == ONLY
                        ? Sentence.of(Code.AXLE_BOOSTER)
                        : Sentence.of(Code.AXLE_BOOSTER_NUMBERED).with("number", number);
        };
    }
}
