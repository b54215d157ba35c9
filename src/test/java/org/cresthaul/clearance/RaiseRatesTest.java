package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Notch;
import org.cresthaul.rig.Setting;
import org.junit.jupiter.api.Test;

/**
 * No gap over the ground changes faster with a raise than {@link RaiseRates} says, however many boosters ride, hang or
 * stand on their stops: exact postures before and after small raises, over random roads.
 */
class RaiseRatesTest {
    private static final int CASES = 400;
    private static final int POSITIONS = 12;
    private static final double STEP_M = 0.004;
    /** Two exact gaps at datums up to 1500 m. */
    private static final double ROUNDING_M = 1e-7;

    @Test
    void noGapChangesFaster() {
        holds("one booster at most", RandomCase::of);
    }

    @Test
    void noGapChangesFasterWithBoostersBehindOneAnother() {
        holds("boosters", RandomCase::withBoosters);
    }

    private static void holds(String what, LongFunction<RandomCase> draw) {
        List<String> failures = new ArrayList<>();
        double nearest = 0;
        int compared = 0;
        for (int i = 0; i < CASES; i++) {
            RandomCase c = draw.apply(RandomCase.SEED + i);
            Passage passage = new Passage(c.stance(), c.profile());
            Setting plain = Setting.transport(
                    c.setting().lift(),
                    c.setting().booster(),
                    new Notch("n", c.setting().notchOffsetM()));
            RaiseRates rates = RaiseRates.of(
                    new CombinationShape(c.stance(), plain.lift(), plain.booster()),
                    c.profile().steepest());
            for (int k = 0; k < POSITIONS; k++) {
                double steerM = passage.firstSteerM()
                        + (passage.lastSteerM() - passage.firstSteerM())
                                * c.random().nextDouble();
                double raisedM = 0.1 * c.random().nextDouble();
                for (Leveling leveling : plain.levelings()) {
                    double share = share(
                            passage,
                            leveling,
                            plain.raised(raisedM, 0),
                            plain.raised(raisedM + STEP_M, 0),
                            steerM,
                            rates.front());
                    nearest = Math.max(nearest, share);
                    compared++;
                    if (share > 1) {
                        failures.add(c + " front, " + leveling + " at " + steerM + ": " + share);
                    }
                }
                double share = share(
                        passage,
                        Leveling.HELD,
                        plain.raised(0, 0.001 + 0.5 * raisedM),
                        plain.raised(0, 0.001 + 0.5 * raisedM + STEP_M),
                        steerM,
                        rates.rear());
                nearest = Math.max(nearest, share);
                compared++;
                if (share > 1) {
                    failures.add(c + " rear at " + steerM + ": " + share);
                }
            }
        }
        System.out.printf("raise rates, %s: %d compared, nearest %.3f of what is allowed%n", what, compared, nearest);
        assertEquals(CASES * POSITIONS * 3, compared);
        assertTrue(
                failures.isEmpty(), () -> failures.size() + ": " + failures.subList(0, Math.min(8, failures.size())));
        // A bound that nothing comes near would say nothing; behind one another boosters rarely all turn their worst
        // way.
        assertTrue(nearest > 0.3, "nearest " + nearest);
    }

    /** How much of what the rate allows the least gap at a position changes by. */
    private static double share(
            Passage passage, Leveling leveling, Setting before, Setting after, double steerM, double rate) {
        double a = gapM(passage, leveling, before, steerM);
        double b = gapM(passage, leveling, after, steerM);
        return Math.max(0, Math.abs(b - a) - ROUNDING_M) / (rate * STEP_M);
    }

    private static double gapM(Passage passage, Leveling leveling, Setting setting, double steerM) {
        return new PassageSearch(passage, setting, leveling)
                .at(Optional.empty(), steerM)
                .orElseThrow()
                .valueM();
    }
}
