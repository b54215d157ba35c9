package org.cresthaul.plan;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * The least that a way leaves at any of its places, of gaps, room beside and loads alike; raised places at the raise
 * that is told. One definition for plan, trade and every document; share and length are told apart, for they may be at
 * two places.
 *
 * @param share of what is required or allowed; null where no place has figures
 * @param shareAt the place of it
 * @param shareKind "ground", "overhead", "units", "corner", "load", or "raised", a gap of either kind at a raise
 * @param lengthM of a gap or of room beside, beyond what is required; null where none has figures
 * @param lengthAt the place of it
 * @param lengthKind likewise
 * @param unknownAt places without figures, in driving order: what is left there is not known
 */
public record LeastReserve(
        Double share,
        String shareAt,
        SpareKind shareKind,
        @Rounded(Rounding.LENGTH_DOWN) Double lengthM,
        String lengthAt,
        SpareKind lengthKind,
        List<String> unknownAt) {
    public LeastReserve {
        unknownAt = List.copyOf(unknownAt);
    }

    /** Of a way; places that it must not pass are left out. */
    static LeastReserve of(Way way, RouteStates states, Admission admission) {
        Plan.Spare[] least = new Plan.Spare[2];
        String[] at = new String[2];
        Set<String> unknown = new LinkedHashSet<>();
        for (int k = 0; k < way.configurations().size(); k++) {
            int c = way.configurations().get(k);
            states.eachPassed(k, c, (place, raise, violated) -> {
                if (violated) {
                    return;
                }
                List<Plan.Spare> left = admission.left(place, c, raise);
                if (left.isEmpty()) {
                    unknown.add(place.id());
                }
                for (Plan.Spare spare : left) {
                    if (least[0] == null || spare.share() < least[0].share()) {
                        least[0] = spare;
                        at[0] = place.id();
                    }
                    if (spare.kind() != SpareKind.LOAD && (least[1] == null || spare.left() < least[1].left())) {
                        least[1] = spare;
                        at[1] = place.id();
                    }
                }
            });
        }
        return new LeastReserve(
                least[0] == null ? null : least[0].share(),
                at[0],
                least[0] == null ? null : least[0].kind(),
                least[1] == null ? null : least[1].left(),
                at[1],
                least[1] == null ? null : least[1].kind(),
                List.copyOf(unknown));
    }

    /** As ways are compared by it. */
    static double ranked(Way way, RouteStates states, Admission admission) {
        double[] least = {Double.POSITIVE_INFINITY};
        for (int k = 0; k < way.configurations().size(); k++) {
            int c = way.configurations().get(k);
            states.eachPassed(
                    k,
                    c,
                    (place, raise, violated) ->
                            least[0] = violated ? least[0] : Math.min(least[0], admission.ranked(place, c, raise)));
        }
        return least[0];
    }
}
