package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import org.cresthaul.clearance.BruteForceUnits.Least;
import org.cresthaul.plan.Outcome;
import org.cresthaul.posture.RandomCase;
import org.junit.jupiter.api.Test;

/**
 * Gaps between coupled units against an independent solver: {@code mvn test -Dtest=UnitsAgainstBruteForceTest
 * -Dunits.cases=5000} asks as many.
 */
class UnitsAgainstBruteForceTest {
    private static final int CASES = Integer.getInteger("units.cases", 30);
    private static final double PROMISED_M = 0.001;
    private static final double ROUNDING_M = 1e-6;

    private record Outcome(boolean compared, boolean atHinge, boolean apart, double errorM, List<String> failures) {}

    @Test
    void theLeastGapBetweenUnitsIsTheTrueOne() {
        theTrueOne("between units", RandomCouplings::caseOf);
    }

    @Test
    void theLeastGapBetweenUnitsOfAChainWithJeepsIsTheTrueOne() {
        theTrueOne("between units, jeeps", RandomCouplings::withJeeps);
    }

    @Test
    void theLeastGapBetweenUnitsOfAChainWithBoostersIsTheTrueOne() {
        theTrueOne("between units, boosters", RandomCouplings::withBoosters);
    }

    private static void theTrueOne(String what, LongFunction<RandomCase> draw) {
        List<Outcome> outcomes = LongStream.range(0, CASES)
                .parallel()
                .mapToObj(i -> compare(draw.apply(RandomCase.SEED + 7_000_000 + i)))
                .toList();
        List<String> failures =
                outcomes.stream().flatMap(o -> o.failures.stream()).toList();
        List<Outcome> apart = outcomes.stream().filter(o -> o.apart).toList();
        System.out.printf(
                "%s: %d compared, %d apart, off by at most %.4f mm, %d of them at the hinge%n",
                what,
                outcomes.stream().filter(Outcome::compared).count(),
                apart.size(),
                1000 * apart.stream().mapToDouble(o -> Math.abs(o.errorM)).max().orElseThrow(),
                apart.stream().filter(Outcome::atHinge).count());
        assertEquals(CASES, outcomes.size(), "no case may be dropped");
        assertTrue(
                outcomes.stream().filter(Outcome::compared).count() >= 0.98 * CASES, "hardly any may be left unproven");
        assertTrue(apart.size() > CASES / 4 && apart.size() < 0.95 * CASES, "both gaps and contacts must occur often");
        assertTrue(
                failures.isEmpty(),
                () -> failures.size() + " of " + CASES + ":\n"
                        + String.join("\n", failures.subList(0, Math.min(12, failures.size()))));
    }

    private static Outcome compare(RandomCase c) {
        Passage passage = new Passage(c.stance(), c.profile());
        UnitSearch.Look look = new UnitSearch(passage, c.setting(), c.leveling()).look(List.of());
        UnitGap engine = look.least().orElseThrow();
        boolean atHinge = engine.coupling().isHinge();
        if (look.undecided().isPresent()) {
            return new Outcome(false, atHinge, false, 0, List.of());
        }
        Least brute = new BruteForceUnits(c).least(passage.firstSteerM(), passage.lastSteerM());
        List<String> failures = new ArrayList<>();
        double error = engine.valueM() - brute.valueM();
        String told = c + ": engine " + engine + ", independent " + brute;
        if (brute.touches() && engine.valueM() - engine.provenWithinM() > 0) {
            failures.add(told + ": a contact is missed");
        } else if (!brute.touches() && engine.valueM() - engine.provenWithinM() > brute.valueM() + ROUNDING_M) {
            failures.add(told + ": excludes a gap that exists");
        } else if (!brute.touches() && Math.abs(error) > PROMISED_M) {
            failures.add(told + ": off by " + 1000 * error + " mm");
        }
        return new Outcome(true, atHinge, !brute.touches(), error, failures);
    }
}
