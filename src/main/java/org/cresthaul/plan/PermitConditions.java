package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.axleload.OnBridge;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.PostedBridge;
import org.cresthaul.route.Route;

/**
 * What a permit asks and the program cannot judge is a condition: until which day and at which hours, since it does not
 * know the date, and how a bridge is driven over.
 */
final class PermitConditions {
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
                        bridge.limits().orElseThrow().name() + " ("
                                + bridge.limits().orElseThrow().source() + ") holds "
                                + String.join(
                                        "; ",
                                        terms.stream().map(OnBridge.Term::text).toList())
                                + ". Arrange who keeps the bridge free and who sees to it."));
    }

    private static Optional<Plan.Condition> of(String hazard, String name, WeightLimits limits) {
        List<String> terms = new ArrayList<>();
        limits.further().lastDay().ifPresent(d -> terms.add("may be used up to and including " + d + ", not after"));
        limits.further().hours().forEach(h -> terms.add("at these times only: " + h));
        return terms.isEmpty()
                ? Optional.empty()
                : Optional.of(new Plan.Condition(
                        hazard,
                        name,
                        ConditionKind.PERMIT,
                        limits.name() + " (" + limits.source() + ") " + String.join("; ", terms) + "."));
    }
}
