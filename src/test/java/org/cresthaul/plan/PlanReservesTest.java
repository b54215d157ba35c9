package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.cresthaul.route.StoppingPlace;
import org.junit.jupiter.api.Test;

/** The best of equal plans, what is asked of reserve and conditions, and the trade, against trying every sequence. */
class PlanReservesTest {
    private static final int CASES = 2_400;

    private static List<String> keys(PlanCase it, Plan plan) {
        List<String> keys = new ArrayList<>();
        String key = plan.steps().get(0).set().configuration();
        keys.add(key);
        for (StoppingPlace stop : it.route().stops()) {
            for (Plan.Step step : plan.steps()) {
                if (step.change() != null
                        && step.change().stop().equals(stop.place().id())) {
                    key = step.change().to().configuration();
                }
            }
            keys.add(key);
        }
        return keys;
    }

    /**
     * As ways compare: a clear place without figures leaves nothing that is known, unless no configuration has any
     * there; one that is set aside is so on every way.
     */
    private static double ranked(PlanCase it, Plan.Trade t) {
        double known = t.leastReserve() == null ? Double.POSITIVE_INFINITY : t.leastReserve();
        boolean counts = it.report().hazards().stream()
                .filter(h -> t.unknownAt().contains(h.id())
                        && !it.options().setAside().contains(h.id()))
                .anyMatch(h -> h.cells().stream().anyMatch(c -> c.ground() != null || c.raise() != null));
        return counts ? Math.min(0, known) : known;
    }

    private static PlanCase asked(PlanCase it, Double reserve, boolean fewest) {
        return it.with(it.options().with(reserve, fewest, List.of()));
    }

    /** As ways compare: 20 min for each condition, or more than any time. */
    private static long weighed(Plan.Trade t, boolean fewest) {
        return t.seconds() + (fewest ? 1_000_000L : 20 * 60) * t.conditions();
    }

    @Test
    void amongEqualCostsTheLargestLeastReserveAndWhatIsAskedIsKept() {
        SplittableRandom random = new SplittableRandom(20261129);
        int open = 0;
        int asked = 0;
        int fewest = 0;
        int traded = 0;
        int unknown = 0;
        int quicker = 0;
        for (int i = 0; i < CASES; i++) {
            PlanCase plain = PlanCase.random(random);
            Double least = random.nextInt(3) == 0 ? List.of(0.0, 0.2, 0.4).get(random.nextInt(3)) : null;
            PlanCase it = asked(plain, least, random.nextInt(3) == 0);
            PlanOracle oracle = new PlanOracle(it);
            Optional<BestSequence> best = oracle.best();
            Plan plan = it.plan();
            String what = "case " + i + " asked " + least + " " + it.options().fewestConditions();
            assertEquals(best.isEmpty(), plan.outcome() == Outcome.BLOCKED, what);
            if (best.isEmpty()) {
                assertTrue(plan.trades().isEmpty());
                continue;
            }
            assertEquals(best.get().seconds(), plan.seconds(), what);
            assertEquals(best.get().changes(), plan.changes(), what);
            assertEquals(best.get().keys(), keys(it, plan), what);
            Plan.Trade own = plan.trades().get(0);
            assertEquals(best.get().reserve(), ranked(it, own), what);
            assertEquals(own.leastReserve(), plan.least().share(), what);
            unknown += own.unknownAt().isEmpty() ? 0 : 1;
            // Each further point leaves more than the one before for more cost, and asking for that reserve plans it.
            long quickest = oracle.quickest(Set.of()).orElseThrow().seconds();
            assertTrue(plan.trades().stream().anyMatch(t -> t.seconds() == quickest), what);
            quicker += quickest < own.seconds() ? 1 : 0;
            for (Plan.Trade t : plan.trades().subList(1, plan.trades().size())) {
                if (t.seconds() < own.seconds()) {
                    assertTrue(t.conditions() > own.conditions(), what);
                } else if (t.conditions() >= own.conditions()
                        && it.options().acceptTight().isEmpty()) {
                    assertTrue(ranked(it, t) > ranked(it, own), what);
                    PlanCase more = asked(
                            plain, Math.max(0, ranked(it, t)), it.options().fewestConditions());
                    Plan there = more.plan();
                    if (least == null
                            && ranked(it, t) >= 0
                            && it.options().setAside().containsAll(t.unknownAt())) {
                        // Or for less: asked for, a raised place is raised as far as that reserve takes.
                        boolean first = it.options().fewestConditions();
                        assertTrue(weighed(there.trades().get(0), first) <= weighed(t, first), what);
                        traded += t.seconds() == there.seconds() ? 1 : 0;
                    }
                }
            }
            open++;
            asked += least != null && least > 0 ? 1 : 0;
            fewest += it.options().fewestConditions() ? 1 : 0;
        }
        System.out.println(open + " open, " + asked + " with a reserve asked for, " + fewest
                + " with the fewest conditions, "
                + traded + " points of trade planned again, " + unknown + " past places without figures, " + quicker
                + " quicker under more conditions");
        assertTrue(
                open > 700 && asked > 60 && fewest > 200 && traded > 50 && unknown > 100 && quicker > 20,
                open + " " + asked + " " + fewest + " " + traded + " " + unknown + " " + quicker);
    }

    @Test
    void fewestConditionsNeverHasMoreAndNeverCostsLess() {
        SplittableRandom random = new SplittableRandom(20261130);
        int fewer = 0;
        for (int i = 0; i < 1_000; i++) {
            PlanCase it = PlanCase.random(random);
            Plan plain = it.plan();
            if (plain.outcome() != Outcome.BLOCKED) {
                Plan few = asked(it, null, true).plan();
                assertTrue(few.seconds() >= plain.seconds());
                Plan.Trade quickest = plain.trades().stream()
                        .min(Comparator.comparingLong(Plan.Trade::seconds))
                        .orElseThrow();
                fewer += few.trades().get(0).conditions() < quickest.conditions() ? 1 : 0;
            }
        }
        assertTrue(fewer > 10, fewer + " with fewer than the quickest");
    }
}
