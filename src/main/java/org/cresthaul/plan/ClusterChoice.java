package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.cresthaul.plan.Admission.Raise;

/**
 * How one configuration passes a cluster: on one raise for all of it, or none.
 *
 * @param raise from before the first place until after the last
 * @param violated places that it must not pass so
 * @param exhausted whether fewer violated places are possible on no raise at all
 */
record ClusterChoice(Raise raise, List<Integer> violated, boolean exhausted) {
    /** With more raises wanted than this in one cluster, only none and the largest are tried. */
    static final int MOST_WANTED = 12;

    /** In transport stance, nothing in the way: what most are. */
    private static final ClusterChoice FLAT = new ClusterChoice(Raise.NONE, List.of(), true);

    ClusterChoice {
        violated = List.copyOf(violated);
    }

    boolean violates(int place) {
        return !violated.isEmpty() && violated.contains(place);
    }

    /**
     * Without a raise where that passes; else on the largest raise that any place wants, in front and in the rear, when
     * all its places may be passed so. Only then is it admissible. Where that leaves less than is asked for, the
     * largest of the raises that leave it.
     *
     * @param fewest whether, when it is not, the raise with the fewest violated places is looked for
     */
    static ClusterChoice of(
            List<Integer> members,
            List<PlanPlace> places,
            int configuration,
            Admission admission,
            boolean avoidRaising,
            boolean fewest) {
        if (isFlat(members, places, configuration, admission)) {
            return FLAT;
        }
        ClusterChoice best = at(Raise.NONE, members, places, configuration, admission, false, true);
        if (avoidRaising) {
            return best;
        }
        ClusterChoice least = raised(members, places, configuration, admission, fewest, false, best);
        if (least.violated.isEmpty() || admission.leastShare() == 0) {
            return least;
        }
        ClusterChoice leaving = raised(members, places, configuration, admission, fewest, true, best);
        return leaving.violated.size() < least.violated.size() ? leaving : least;
    }

    /**
     * @param leaving whether places want the raise that leaves what is asked for, not only the least that will do
     * @param flat how it is passed in transport stance
     */
    private static ClusterChoice raised(
            List<Integer> members,
            List<PlanPlace> places,
            int configuration,
            Admission admission,
            boolean fewest,
            boolean leaving,
            ClusterChoice flat) {
        ClusterChoice best = flat;
        Set<Raise> wanted = new LinkedHashSet<>();
        Raise largest = Raise.NONE;
        for (int m : members) {
            Raise raise = admission.wanted(places.get(m), configuration, leaving);
            if (!raise.equals(Raise.NONE)) {
                wanted.add(raise);
                largest = largest.atLeast(raise);
            }
        }
        if (wanted.isEmpty()) {
            return best;
        }
        ClusterChoice all = at(largest, members, places, configuration, admission, leaving, true);
        if (all.violated.isEmpty() || !fewest) {
            return all.violated.size() < best.violated.size() ? all : best;
        }
        boolean exhausted = wanted.size() <= MOST_WANTED;
        for (Raise raise : exhausted ? combined(wanted) : List.of(largest)) {
            ClusterChoice choice = at(raise, members, places, configuration, admission, leaving, exhausted);
            // Fewer violated, or as few on less of a raise: the raises come in rising order.
            best = choice.violated.size() < best.violated.size() ? choice : best;
        }
        return new ClusterChoice(best.raise, best.violated, exhausted);
    }

    private static boolean isFlat(
            List<Integer> members, List<PlanPlace> places, int configuration, Admission admission) {
        for (int m : members) {
            if (!admission.inTransport(places.get(m), configuration)) {
                return false;
            }
        }
        return true;
    }

    private static ClusterChoice at(
            Raise raise,
            List<Integer> members,
            List<PlanPlace> places,
            int configuration,
            Admission admission,
            boolean leaving,
            boolean exhausted) {
        List<Integer> violated = new ArrayList<>();
        Raise asked = Raise.NONE;
        for (int m : members) {
            PlanPlace place = places.get(m);
            Raise wanted = admission.wanted(place, configuration, leaving);
            if (!raise.covers(wanted) || !admission.at(place, configuration, raise)) {
                violated.add(m);
            } else {
                asked = asked.atLeast(wanted);
            }
        }
        // Nobody raises farther than what the places that are passed want.
        return asked.equals(raise)
                ? new ClusterChoice(raise, violated, exhausted)
                : new ClusterChoice(raise, members, exhausted);
    }

    /** Every front with every rear wanted, each rising. */
    private static List<Raise> combined(Set<Raise> wanted) {
        List<Raise> all = new ArrayList<>();
        for (double front : with(wanted.stream().map(Raise::frontM).toList())) {
            for (double rear : with(wanted.stream().map(Raise::rearM).toList())) {
                if (front > 0 || rear > 0) {
                    all.add(new Raise(front, rear));
                }
            }
        }
        return all;
    }

    private static List<Double> with(List<Double> raises) {
        List<Double> all = new ArrayList<>(raises);
        all.add(0.0);
        return all.stream().distinct().sorted().toList();
    }
}
