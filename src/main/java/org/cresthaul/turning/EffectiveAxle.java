package org.cresthaul.turning;

import java.util.List;

/**
 * Where a group of equal axles that do not steer would be replaced by one. Each tire's side force grows with its slip,
 * and the moments of the group about the hitch balance, so the effective length is Σx² / Σx over the distances x from
 * the hitch: L + (Σ d²/n)/L with the mean L and the offsets d from it.
 */
public final class EffectiveAxle {
    private EffectiveAxle() {}

    /**
     * Distance from the hitch to the effective axle, meters.
     *
     * @param behindHitchM of each axle that carries, positive
     * @throws IllegalArgumentException when there is none, or one is not behind the hitch
     */
    public static double behindHitchM(List<Double> behindHitchM) {
        double sum = 0;
        double squares = 0;
        for (double x : behindHitchM) {
            if (!(x > 0)) {
                throw new IllegalArgumentException("an axle must be behind the hitch, was " + x + " m");
            }
            sum += x;
            squares += x * x;
        }
        if (behindHitchM.isEmpty()) {
            throw new IllegalArgumentException("a group needs an axle");
        }
        return behindHitchM.size() == 1 ? sum : squares / sum;
    }
}
