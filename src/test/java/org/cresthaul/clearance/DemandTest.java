package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.road.Soffit;
import org.junit.jupiter.api.Test;

/**
 * What a search says of demands, held against single positions: there the gap is that of the exact posture (whose own
 * check is {@link EngineAgainstBruteForceTest}) and the need is margin and uncertainty of that one place, as
 * docs/model.md defines them.
 */
class DemandTest {
    private static final int CASES = 150;
    private static final double EVERY_M = 0.25;
    private static final double ROUNDING_M = 1e-9;

    private int met;
    private int onlyFree;
    private int neither;

    @Test
    void noPositionHasLessSpareThanTheSearchSaysNorMissesADemandItSaysIsMet() {
        List<LongFunction<RandomCase>> kinds =
                List.of(RandomCase::of, RandomCase::withDents, RandomCase::withTightHinge);
        for (int i = 0; i < CASES; i++) {
            RandomCase c = kinds.get(i % kinds.size()).apply(RandomCase.SEED + 2_000_000 + i);
            hold(c, Optional.empty());
            hold(c, Optional.of(c.soffit()));
        }
        assertTrue(
                met > CASES / 4 && onlyFree > CASES / 20 && neither > CASES / 4,
                () -> "each must occur often: " + met + ", " + onlyFree + ", " + neither);
    }

    private void hold(RandomCase c, Optional<Soffit> soffit) {
        Passage passage = new Passage(c.stance(), c.profile());
        PassageSearch search = new PassageSearch(passage, c.setting(), c.leveling());
        Clearance least = search.least(soffit);
        if (!least.proven()) {
            return;
        }
        double otherM = c.random().nextDouble(0, 0.02);
        double surveyM = c.random().nextDouble(0, 0.01);
        // A margin that is kept, or just missed, where the gap is least.
        double marginM = Math.max(0, least.valueM() + c.random().nextDouble(-0.2, 0.03));
        Demand strict = new Demand(marginM, surveyM, otherM, true);
        Demand free = new Demand(0, surveyM, otherM, false);
        PassageSearch.Look look = search.look(soffit, Double.POSITIVE_INFINITY, List.of(strict, free));
        Clearance found = look.below().orElseThrow();
        assertTrue(
                Math.abs(found.valueM() - least.valueM()) <= SpanSearch.WITHIN_M + ROUNDING_M,
                () -> c + ": least " + least + ", with demands " + found);
        Clearance spare =
                search.leastSpareBelow(soffit, strict, Double.POSITIVE_INFINITY).orElseThrow();
        List<String> failures = new ArrayList<>();
        for (double steerM = passage.firstSteerM(); steerM <= passage.lastSteerM(); steerM += EVERY_M) {
            Optional<Clearance> at = search.at(soffit, steerM);
            if (at.isEmpty()) {
                continue;
            }
            double gapM = at.get().valueM();
            double strictM = marginM + search.footingOf(at.get(), strict).uncertaintyM();
            double freeM = search.footingOf(at.get(), free).uncertaintyM();
            if (spare.proven() && gapM - strictM < spare.valueM() - spare.provenWithinM() - ROUNDING_M) {
                failures.add("less spare than " + spare + " at " + steerM + ": " + (gapM - strictM));
            }
            if (look.firstMet() == 0 && gapM < strictM - ROUNDING_M
                    || look.firstMet() <= 1 && gapM < freeM - ROUNDING_M) {
                failures.add("demand " + look.firstMet() + " missed at " + steerM + " by " + at.get());
            }
        }
        assertEquals(List.of(), failures, () -> c + (soffit.isPresent() ? " under" : " over"));
        met += look.firstMet() == 0 ? 1 : 0;
        onlyFree += look.firstMet() == 1 ? 1 : 0;
        neither += look.firstMet() == 2 ? 1 : 0;
        if (spare.proven() && spare.valueM() >= SpanSearch.WITHIN_M) {
            assertEquals(0, look.firstMet(), () -> c + ": spare everywhere " + spare + ", demand not met");
        }
    }
}
