package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.StoppingPlace;
import org.junit.jupiter.api.Test;

/** Plans of small invented routes against trying everything, and what must hold of any plan. */
class RoutePlanTest {
    private static final int CASES = 1500;

    private static SplittableRandom random(String what, long seed) {
        System.out.println(what + ", seed " + seed);
        return new SplittableRandom(seed);
    }

    /** The configuration between each two stops, as the steps have it. */
    private static List<String> keys(PlanCase it, Plan plan) {
        List<String> keys = new ArrayList<>();
        String key = plan.steps().get(0).set().configuration();
        keys.add(key);
        for (StoppingPlace stop : it.route().stops()) {
            for (Plan.Step step : plan.steps()) {
                if (step.change() != null
                        && step.change().stop().equals(stop.place().id())) {
                    assertEquals(key, step.change().from().configuration());
                    key = step.change().to().configuration();
                }
            }
            keys.add(key);
        }
        assertEquals(key, plan.steps().get(plan.steps().size() - 1).set().configuration());
        return keys;
    }

    @Test
    void isTheCheapestOfAllSequencesAndItsBlockTheSmallestOfAllSets() {
        SplittableRandom random = random("small plans", 20260301);
        int open = 0;
        int changed = 0;
        int raised = 0;
        int blocked = 0;
        int several = 0;
        for (int i = 0; i < CASES; i++) {
            PlanCase it = PlanCase.random(random);
            PlanOracle oracle = new PlanOracle(it);
            Plan plan = it.plan();
            Optional<BestSequence> best = oracle.best();
            String what = "case " + i + ": " + plan.outcome() + " " + plan.blocking();
            assertEquals(best.isEmpty(), plan.outcome() == Outcome.BLOCKED, what);
            if (best.isPresent()) {
                assertEquals(best.get().seconds(), plan.seconds(), what);
                assertEquals(best.get().changes(), plan.changes(), what);
                assertEquals(best.get().keys(), keys(it, plan), what);
                open++;
                changed += plan.changes() > 0 ? 1 : 0;
                raised += plan.steps().stream()
                                .anyMatch(
                                        s -> s.passage() != null && s.passage().raise() != null)
                        ? 1
                        : 0;
            } else {
                Set<String> ids = new HashSet<>(
                        plan.blocking().stream().map(Plan.Block::hazard).toList());
                assertTrue(oracle.quickest(ids).isPresent(), what + " opens no way");
                for (String one : ids) {
                    Set<String> others = new HashSet<>(ids);
                    others.remove(one);
                    assertTrue(oracle.quickest(others).isEmpty(), what + " open without " + one);
                }
                Optional<BestSequence> cheapest = cheapestOfSize(oracle, ids.size());
                assertTrue(
                        ids.isEmpty() || cheapestOfSize(oracle, ids.size() - 1).isEmpty(),
                        what + " is not the smallest");
                assertEquals(cheapest.orElseThrow().seconds(), plan.seconds(), what);
                assertEquals(cheapest.orElseThrow().changes(), plan.changes(), what);
                assertTrue(plan.stopsAtBlocks());
                blocked++;
                several += ids.size() > 1 ? 1 : 0;
            }
            assertAddsUp(plan);
        }
        System.out.println(open + " open, " + changed + " changed, " + raised + " raised, " + blocked + " blocked, "
                + several + " by several");
        assertTrue(
                open > 200 && changed > 50 && raised > 50 && blocked > 200 && several > 50,
                open + " " + changed + " " + raised + " " + blocked + " " + several);
    }

    /** The cheapest way that any set of so many places opens. */
    private static Optional<BestSequence> cheapestOfSize(PlanOracle oracle, int size) {
        List<String> places = oracle.places();
        BestSequence cheapest = null;
        for (int bits = 0; bits < 1 << places.size(); bits++) {
            if (Integer.bitCount(bits) == size) {
                Set<String> aside = new HashSet<>();
                for (int p = 0; p < places.size(); p++) {
                    if ((bits >> p & 1) == 1) {
                        aside.add(places.get(p));
                    }
                }
                Optional<BestSequence> best = oracle.quickest(aside);
                if (best.isPresent() && (cheapest == null || best.get().isBelow(cheapest))) {
                    cheapest = best.get();
                }
            }
        }
        return Optional.ofNullable(cheapest);
    }

    /** The steps are the plan: their times and changes add up, they run forward, and nothing is left out. */
    private static void assertAddsUp(Plan plan) {
        long seconds = 0;
        int changes = 0;
        double last = 0;
        Set<String> passed = new HashSet<>();
        for (Plan.Step step : plan.steps()) {
            seconds += step.change() == null ? 0 : step.change().seconds();
            seconds += step.passage() == null ? 0 : step.passage().seconds();
            seconds += step.lift() == null ? 0 : step.lift().seconds();
            changes += step.change() == null ? 0 : 1;
            assertTrue(step.chainageM() >= last, step.toString());
            last = step.chainageM();
            if (step.passage() != null) {
                passed.add(step.passage().hazard());
                Plan.HazardPassage p = step.passage();
                boolean settled = p.verdict() == Verdict.CLEAR || p.blocked() || p.condition() != null;
                assertTrue(settled, "passed without being clear, accepted or set aside: " + p);
                assertTrue(p.raise() == null || p.crawls(), "raised at road speed: " + p);
            }
        }
        assertEquals(plan.seconds(), seconds);
        assertEquals(plan.changes(), changes);
        assertTrue(plan.blocking().stream().allMatch(b -> passed.contains(b.hazard())));
        assertEquals(
                plan.outcome() == Outcome.THROUGH,
                plan.blocking().isEmpty() && plan.conditions().isEmpty());
    }

    @Test
    void everyPlaceOfTheReportIsPassed() {
        SplittableRandom random = random("places passed", 20260302);
        for (int i = 0; i < 300; i++) {
            PlanCase it = PlanCase.random(random);
            Plan plan = it.plan();
            Set<String> passed = new HashSet<>();
            plan.steps().stream()
                    .filter(s -> s.passage() != null)
                    .forEach(s -> passed.add(s.passage().hazard()));
            assertEquals(new HashSet<>(new PlanOracle(it).places()), passed);
        }
    }

    /**
     * The report's, whatever the front does; and from it where the front comes and where it is when the rear has left.
     */
    @Test
    void aPlaceHasOneMilepost() {
        SplittableRandom random = random("mileposts", 20261128);
        int told = 0;
        for (int i = 0; i < 300; i++) {
            PlanCase it = PlanCase.random(random);
            for (Plan.Step step : it.plan().steps()) {
                Plan.HazardPassage p = step.passage();
                if (p == null || p.hazard().equals(Plan.WHOLE_ROUTE)) {
                    continue;
                }
                double point = it.report().hazards().stream()
                        .filter(h -> h.id().equals(p.hazard()))
                        .findFirst()
                        .orElseThrow()
                        .chainageM();
                assertEquals(point, p.chainageM(), 1e-4);
                assertEquals(p.fromChainageM(), point + p.frontFromM(), 2e-4);
                assertEquals(p.toChainageM(), point + p.frontToM(), 2e-4);
                boolean whole =
                        p.fromChainageM() > 0 && p.toChainageM() < it.route().lengthM() - 1 && p.standsAtPoint();
                assertTrue(!whole || p.frontToM() - p.frontFromM() >= p.set().lengthM() - 1e-3, p.toString());
                told += whole ? 1 : 0;
            }
        }
        assertTrue(told > 500, told + " told");
    }

    /** Seconds, with 20 min for each condition: what plans are compared by. */
    private static long weighed(Plan plan) {
        return plan.seconds() + 20 * 60 * plan.trades().get(0).conditions();
    }

    @Test
    void moreStopsNeverCostMore() {
        SplittableRandom random = random("more stops", 20260303);
        int compared = 0;
        for (int i = 0; i < 800; i++) {
            PlanCase it = PlanCase.random(random);
            List<StoppingPlace> more = new ArrayList<>(it.route().stops());
            more.add(PlanCase.stop("PX", 30 * random.nextInt(1, 45) + 10, true, 80));
            Plan before = it.plan();
            Plan after = it.withStops(more).plan();
            if (before.outcome() != Outcome.BLOCKED) {
                assertFalse(after.outcome() == Outcome.BLOCKED);
                assertTrue(weighed(after) <= weighed(before), weighed(before) + " to " + weighed(after));
                compared++;
            } else {
                assertTrue(after.blocking().size() <= before.blocking().size());
            }
        }
        assertTrue(compared > 100, compared + " compared");
    }

    @Test
    void forbiddingAConfigurationNeverCostsLess() {
        SplittableRandom random = random("forbidden", 20260304);
        int compared = 0;
        for (int i = 0; i < 800; i++) {
            PlanCase it = PlanCase.random(random);
            Plan before = it.plan();
            PlanOptions o = it.options();
            List<String> forbid = new ArrayList<>(o.forbid());
            String key = before.steps().get(0).set().configuration();
            forbid.add(key);
            if (forbid.size() < 4) {
                Plan after = it.with(new PlanOptions(
                                o.times(), forbid, null, o.avoidRaising(), o.acceptTight(), o.setAside()))
                        .plan();
                assertTrue(after.blocking().size() >= before.blocking().size());
                if (before.blocking().isEmpty() && after.blocking().isEmpty()) {
                    assertTrue(weighed(after) >= weighed(before));
                    compared++;
                } else if (after.blocking().size() == before.blocking().size()) {
                    assertTrue(after.seconds() >= before.seconds());
                    compared++;
                }
                assertTrue(after.steps().stream()
                        .noneMatch(
                                s -> s.set() != null && s.set().configuration().equals(key)));
            }
        }
        assertTrue(compared > 100, compared + " compared");
    }

    @Test
    void aPlaceThatEveryConfigurationPassesAtRoadSpeedChangesNothing() {
        SplittableRandom random = random("harmless places", 20260306);
        for (int i = 0; i < 500; i++) {
            PlanCase it = PlanCase.random(random);
            Hazard harmless = PlanCase.stretch("HX", 30 * random.nextInt(1, 45), 500);
            List<Hazard> hazards = new ArrayList<>(it.route().hazards());
            hazards.add(harmless);
            List<HazardFindings> findings = new ArrayList<>(it.report().hazards());
            findings.add(PlanCase.findings(
                    harmless,
                    List.of(0.0, 500.0),
                    it.report().configurations().stream()
                            .map(c -> PlanCase.cell(c, "clear", null))
                            .toList()));
            Report r = it.report();
            PlanCase more = new PlanCase(
                    PlanCase.routeOf(hazards, it.route().stops()),
                    it.stance(),
                    new Report(
                            r.cresthaul(),
                            r.version(),
                            r.route(),
                            r.rig(),
                            r.margins(),
                            r.uncertainties(),
                            r.configurations(),
                            findings,
                            r.loads(),
                            r.reversing(),
                            r.cautions()),
                    it.options(),
                    it.judge());
            Plan before = it.plan();
            Plan after = more.plan();
            assertEquals(keys(it, before), keys(more, after));
            assertEquals(before.seconds(), after.seconds());
            assertEquals(before.blocking(), after.blocking());
        }
    }

    @Test
    void settingAsideNeverMakesItWorse() {
        SplittableRandom random = random("set aside", 20260305);
        int opened = 0;
        for (int i = 0; i < 800; i++) {
            // A judge of raises without rhyme or reason could want a place in the way; none is asked here.
            PlanCase any = PlanCase.random(random);
            PlanOptions o = any.options();
            PlanCase it = any.with(new PlanOptions(o.times(), o.forbid(), null, true, o.acceptTight(), o.setAside()));
            List<String> places = new PlanOracle(it).places();
            Plan before = it.plan();
            Plan after = it.withSetAside(List.of(places.get(random.nextInt(places.size()))))
                    .plan();
            assertTrue(after.blocking().size() <= before.blocking().size());
            if (before.blocking().isEmpty()) {
                // One place more, which was a condition already or is one now.
                assertTrue(weighed(after) <= weighed(before) + 20 * 60, weighed(before) + " to " + weighed(after));
            } else if (after.blocking().size() == before.blocking().size()) {
                assertTrue(after.seconds() <= before.seconds());
            } else {
                opened++;
            }
            assertFalse(after.outcome() == Outcome.THROUGH, "set aside is a condition");
        }
        assertTrue(opened > 50, opened + " opened");
    }
}
