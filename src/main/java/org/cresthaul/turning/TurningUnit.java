package org.cresthaul.turning;

import org.cresthaul.geometry.Finite;

/**
 * One unit of a combination as it turns: pulled at its hitch, rolling without side slip at its effective axle.
 *
 * @param hitchToAxleM from the point it is pulled at (the steer axle for the tractor) back to its effective axle,
 *     meters, positive; see {@link EffectiveAxle}
 * @param couplingBehindM where the next unit is coupled: meters behind the effective axle, negative ahead of it (a
 *     fifth wheel ahead of the drive axles). Without meaning on the last unit
 */
public record TurningUnit(double hitchToAxleM, double couplingBehindM) {
    /** Shorter than this no unit is; it bounds how fast a heading can change. */
    public static final double SHORTEST_M = 0.3;

    public TurningUnit {
        Finite.requireAtLeast("hitchToAxleM", SHORTEST_M, hitchToAxleM);
        Finite.require("couplingBehindM", couplingBehindM);
    }
}
