package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.Route;

/** Limits that may be used until a day, or at some hours, are conditions: this program does not know today's date. */
final class PermitConditions {
    private PermitConditions() {}

    static List<Plan.Condition> of(Route route) {
        List<Plan.Condition> all = new ArrayList<>();
        route.limits().flatMap(l -> of(Plan.WHOLE_ROUTE, "limits of the whole route", l)).ifPresent(all::add);
        route.hazards().stream()
                .filter(LimitedPlace.class::isInstance)
                .map(LimitedPlace.class::cast)
                .flatMap(p -> p.limits().flatMap(l -> of(p.place().id(), p.place().name(), l)).stream())
                .forEach(all::add);
        return all;
    }

    private static Optional<Plan.Condition> of(String hazard, String name, WeightLimits limits) {
        List<String> terms = new ArrayList<>();
        limits.further().lastDay().ifPresent(d -> terms.add("may be used up to and including " + d + ", not after"));
        limits.further().hours().forEach(h -> terms.add("at these times only: " + h));
        return terms.isEmpty()
                ? Optional.empty()
                : Optional.of(new Plan.Condition(hazard, name, Plan.Condition.PERMIT,
                        limits.name() + " (" + limits.source() + ") " + String.join("; ", terms) + "."));
    }
}
