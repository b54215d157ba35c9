package org.cresthaul.turning;

import java.util.Optional;
import org.cresthaul.geometry.Finite;

/**
 * One unit of a combination as it turns: pulled at its hitch, rolling without side slip at its effective axle.
 *
 * @param hitchToAxleM from the point it is pulled at (the steer axle for the tractor) back to its effective axle,
 *     meters, positive; see {@link EffectiveAxle}. With wheels that turn, that of the axles that guide, their wheels
 *     straight ahead
 * @param couplingBehindM where the next unit is coupled: meters behind the effective axle, negative ahead of it (a
 *     fifth wheel ahead of the drive axles). Without meaning on the last unit
 * @param steered the axles of a unit some of whose wheels turn
 */
public record TurningUnit(double hitchToAxleM, double couplingBehindM, Optional<SteeredAxles> steered) {
    /** Shorter than this no unit is; it bounds how fast a heading can change. */
    public static final double SHORTEST_M = 0.3;

    public TurningUnit {
        Finite.requireAtLeast("hitchToAxleM", SHORTEST_M, hitchToAxleM);
        Finite.require("couplingBehindM", couplingBehindM);
    }

    /** Whose wheels do not turn. */
    public TurningUnit(double hitchToAxleM, double couplingBehindM) {
        this(hitchToAxleM, couplingBehindM, Optional.empty());
    }

    /** From the point it is pulled at to where the next is coupled, meters. */
    double reachM() {
        return hitchToAxleM + couplingBehindM;
    }

    /** Whether the bend ahead turns wheels of it. */
    boolean isCommanded() {
        return steered.isPresent() && !steered.get().commanded().isEmpty();
    }
}
