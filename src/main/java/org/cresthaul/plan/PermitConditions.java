package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.axleload.OnBridge;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.PostedBridge;
import org.cresthaul.route.Route;

/**
 * What a permit asks and the program cannot judge is a condition: until which day and at which hours, since it does not
 * know the date, and how a bridge is driven over.
 */
public final class PermitConditions {
    private PermitConditions() {}

    static List<Plan.Condition> of(Route route) {
        List<Plan.Condition> all = new ArrayList<>();
        route.limits()
                .flatMap(l -> of(Plan.WHOLE_ROUTE, "limits of the whole route", l))
                .ifPresent(all::add);
        route.hazards().stream()
                .filter(LimitedPlace.class::isInstance)
                .map(LimitedPlace.class::cast)
                .flatMap(PermitConditions::of)
                .forEach(all::add);
        return all;
    }

    private static Stream<Plan.Condition> of(LimitedPlace place) {
        return Stream.concat(
                place.limits().flatMap(l -> of(place.place().id(), place.place().name(), l)).stream(),
                place instanceof PostedBridge bridge ? overBridge(bridge).stream() : Stream.empty());
    }

    /** What the program cannot see to: how the bridge is driven over. */
    private static Optional<Plan.Condition> overBridge(PostedBridge bridge) {
        List<OnBridge.Term> terms = bridge.asked().terms();
        return terms.isEmpty()
                ? Optional.empty()
                : Optional.of(new Plan.Condition(
                        bridge.place().id(),
                        bridge.place().name(),
                        ConditionKind.BRIDGE,
                        Sentence.of(Code.CONDITION_BRIDGE_TERMS)
                                .with("limits", bridge.limits().orElseThrow().name())
                                .with("source", bridge.limits().orElseThrow().source())
                                .with(
                                        "terms",
                                        Sentence.listed(
                                                terms.stream()
                                                        .map(OnBridge.Term::text)
                                                        .toList(),
                                                "; "))));
    }

    private static Optional<Plan.Condition> of(String hazard, String name, WeightLimits limits) {
        List<Sentence> terms = new ArrayList<>();
        limits.further()
                .lastDay()
                .ifPresent(d -> terms.add(Sentence.of(Code.PERMIT_LAST_DAY).with("day", d.toString())));
        limits.further()
                .hours()
                .forEach(h -> terms.add(Sentence.of(Code.PERMIT_HOURS).with("hours", h)));
        return terms.isEmpty()
                ? Optional.empty()
                : Optional.of(new Plan.Condition(
                        hazard,
                        name,
                        ConditionKind.PERMIT,
                        Sentence.of(Code.CONDITION_PERMIT_TERMS)
                                .with("limits", limits.name())
                                .with("source", limits.source())
                                .with("terms", Sentence.listed(terms, "; "))));
    }
}
