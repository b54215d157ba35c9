package org.cresthaul.check;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.AxlePlace;
import org.cresthaul.axleload.OnBridge;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;
import org.cresthaul.route.PostedBridge;
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

    static BridgeFinding of(PostedBridge bridge, List<Together> together) {
        return new BridgeFinding(
                bridge.extent().map(e -> e.toM() - e.fromM()).orElse(null),
                bridge.asked().terms().stream().map(OnBridge.Term::text).toList(),
                bridge.extent().isPresent() ? together : List.of());
    }

    /** In one state; the length of the bridge counts also where its limits are not known. */
    static Together together(PostedBridge bridge, LoadCase loadCase, Optional<LoadJudge> judge) {
        Double limitKg =
                bridge.asked().mostKg().isPresent() ? bridge.asked().mostKg().getAsDouble() : null;
        if (judge.isEmpty() || bridge.extent().isEmpty()) {
            return new Together(loadCase.lift(), loadCase.booster(), null, null, null, null, limitKg);
        }
        List<AxlePlace> places = loadCase.statics().places();
        OnBridge.Run heaviest =
                OnBridge.overLength(bridge.extent().get().toM()
                                - bridge.extent().get().fromM())
                        .together(places)
                        .stream()
                        .max(Comparator.comparingDouble(r -> judge.get().loads().sumKg(r.first(), r.last())))
                        .orElseThrow();
        return new Together(
                loadCase.lift(),
                loadCase.booster(),
                LoadJudge.axles(places.get(heaviest.first()), places.get(heaviest.last())),
                heaviest.count(),
                places.get(heaviest.first()).xM() - places.get(heaviest.last()).xM(),
                judge.get().loads().sumKg(heaviest.first(), heaviest.last()),
                limitKg);
    }
}
