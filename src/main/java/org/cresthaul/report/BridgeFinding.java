package org.cresthaul.report;

import java.util.List;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * What the limits of a bridge ask beside weights of the whole combination.
 *
 * @param lengthM of the bridge, or null when nobody has measured it
 * @param terms how the permit wants it driven over, each in words
 * @param together for every state of booster and lift axle the heaviest axles that stand on it together; empty without
 *     a length
 */
public record BridgeFinding(
        @Rounded(Rounding.LENGTH_NEAR) Double lengthM, List<Sentence> terms, List<Together> together) {
    /**
     * The heaviest axles that stand on the bridge together in one state.
     *
     * @param axles which, in words, or null when the loads are not known
     * @param count how many, likewise
     * @param spreadM how far the outer ones are apart, rounded down, likewise
     * @param limitKg most allowed on them, or null where none is given
     */
    public record Together(
            LiftState lift,
            BoosterState booster,
            Sentence axles,
            Integer count,
            @Rounded(Rounding.LENGTH_DOWN) Double spreadM,
            @Rounded(Rounding.MASS_NEAR) Double loadKg,
            @Rounded(Rounding.MASS_NEAR) Double limitKg) {}
}
