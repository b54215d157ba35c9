package org.cresthaul.check;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.AxlePlace;
import org.cresthaul.axleload.OnBridge;
import org.cresthaul.report.BridgeFinding;
import org.cresthaul.route.PostedBridge;

/** What a posted bridge asks beside weights of the whole, told as a finding. */
final class BridgeTelling {
    private BridgeTelling() {}

    static BridgeFinding of(PostedBridge bridge, List<BridgeFinding.Together> together) {
        return new BridgeFinding(
                bridge.extent().map(e -> e.toM() - e.fromM()).orElse(null),
                bridge.asked().terms().stream().map(OnBridge.Term::text).toList(),
                bridge.extent().isPresent() ? together : List.of());
    }

    /** In one state; the length of the bridge counts also where its limits are not known. */
    static BridgeFinding.Together together(PostedBridge bridge, LoadCase loadCase, Optional<LoadJudge> judge) {
        Double limitKg =
                bridge.asked().mostKg().isPresent() ? bridge.asked().mostKg().getAsDouble() : null;
        if (judge.isEmpty() || bridge.extent().isEmpty()) {
            return new BridgeFinding.Together(loadCase.lift(), loadCase.booster(), null, null, null, null, limitKg);
        }
        List<AxlePlace> places = loadCase.statics().places();
        OnBridge.Run heaviest =
                OnBridge.overLength(bridge.extent().get().toM()
                                - bridge.extent().get().fromM())
                        .together(places)
                        .stream()
                        .max(Comparator.comparingDouble(r -> judge.get().loads().sumKg(r.first(), r.last())))
                        .orElseThrow();
        return new BridgeFinding.Together(
                loadCase.lift(),
                loadCase.booster(),
                LoadJudge.axles(places.get(heaviest.first()), places.get(heaviest.last())),
                heaviest.count(),
                places.get(heaviest.first()).xM() - places.get(heaviest.last()).xM(),
                judge.get().loads().sumKg(heaviest.first(), heaviest.last()),
                limitKg);
    }
}
