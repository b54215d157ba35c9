package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.LongFunction;
import java.util.random.RandomGenerator;
import java.util.stream.LongStream;
import org.cresthaul.clearance.BruteForceClearance.Least;
import org.cresthaul.plan.Outcome;
import org.cresthaul.posture.BruteForcePosture;
import org.cresthaul.posture.BruteForcePosture.Frame;
import org.cresthaul.posture.BruteForcePosture.Stand;
import org.cresthaul.posture.BruteForcePosture.Standing;
import org.cresthaul.posture.BruteForcePosture.Wheel;
import org.cresthaul.posture.CombinationPosture;
import org.cresthaul.posture.Pose;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.posture.WheelPosture;
import org.cresthaul.rig.UnitName;
import org.junit.jupiter.api.Test;

/**
 * The engine against an independent computation from the definitions, over random combinations and roads. Where the
 * expected numbers come from: {@link BruteForcePosture} and {@link BruteForceClearance}, written without sight of the
 * engine.
 */
class EngineAgainstBruteForceTest {
    /** {@code -Dcresthaul.cases=...} draws more. */
    private static final int CASES = Integer.getInteger("cresthaul.cases", 2400);
    /** What the engine promises. */
    private static final double PROMISED_M = 0.001;
    /** What the independent search is run at. */
    private static final double BRUTE_M = 0.0002;
    /** Rounding: two exact computations of one position, at datums up to 1500 m. */
    private static final double ROUNDING_M = 1e-7;

    /** The engine draws a sagging deck as a polyline at most this much lower: on the safe side, as it documents. */
    private static final double SAG_DRAWN_LOWER_M = 0.0001;

    /** Beyond this pitch of a unit, 36 %, the engine may leave a passage unproven. */
    private static final double STEEP_RAD = 0.35;

    private static final double POSE_TOLERANCE = 1e-6;

    /** What one comparison of a least clearance found. */
    private record Outcome(boolean compared, double errorM, boolean clear, boolean contact, List<String> failures) {}

    @Test
    void theLeastGroundClearanceIsTheTrueOne() {
        report("ground", outcomes(CASES, RandomCase::of, EngineAgainstBruteForceTest::compareOverGround), CASES);
    }

    @Test
    void theLeastOverheadClearanceIsTheTrueOne() {
        report("overhead", outcomes(CASES, RandomCase::of, EngineAgainstBruteForceTest::compareUnderSoffit), CASES);
    }

    @Test
    void theLeastGroundClearanceWithATightBoosterHingeIsTheTrueOne() {
        int cases = CASES / 2;
        report(
                "ground, tight hinge",
                outcomes(cases, RandomCase::withTightHinge, EngineAgainstBruteForceTest::compareOverGround),
                cases);
    }

    @Test
    void theLeastOverheadClearanceWithATightBoosterHingeIsTheTrueOne() {
        int cases = CASES / 2;
        report(
                "overhead, tight hinge",
                outcomes(cases, RandomCase::withTightHinge, EngineAgainstBruteForceTest::compareUnderSoffit),
                cases);
    }

    @Test
    void theLeastClearanceOfDentedOutlinesIsTheTrueOne() {
        int cases = CASES / 3;
        report(
                "ground, dented",
                outcomes(cases, RandomCase::withDents, EngineAgainstBruteForceTest::compareOverGround),
                cases);
        report(
                "overhead, dented",
                outcomes(cases, RandomCase::withDents, EngineAgainstBruteForceTest::compareUnderSoffit),
                cases);
    }

    @Test
    void theLeastClearanceOfAChainWithJeepsIsTheTrueOne() {
        int cases = CASES / 4;
        report(
                "ground, jeeps",
                outcomes(cases, RandomCase::withJeeps, EngineAgainstBruteForceTest::compareOverGround),
                cases);
        report(
                "overhead, jeeps",
                outcomes(cases, RandomCase::withJeeps, EngineAgainstBruteForceTest::compareUnderSoffit),
                cases);
    }

    @Test
    void theLeastClearanceOfAChainWithBoostersIsTheTrueOne() {
        int cases = CASES / 4;
        report(
                "ground, boosters",
                outcomes(cases, RandomCase::withBoosters, EngineAgainstBruteForceTest::compareOverGround),
                cases);
        report(
                "overhead, boosters",
                outcomes(cases, RandomCase::withBoosters, EngineAgainstBruteForceTest::compareUnderSoffit),
                cases);
    }

    private static List<Outcome> outcomes(
            int cases, LongFunction<RandomCase> draw, Function<RandomCase, Outcome> compare) {
        return LongStream.range(0, cases)
                .parallel()
                .mapToObj(i -> compare.apply(draw.apply(RandomCase.SEED + i)))
                .toList();
    }

    private static Outcome compareOverGround(RandomCase c) {
        return compare(
                c,
                GroundClearance.least(c.stance(), c.setting(), c.leveling(), c.profile()),
                BruteForceClearance.overGround(c.stance(), c.setting(), c.leveling(), c.profile()),
                c.stance().trailer().deckSagM() > 0 ? SAG_DRAWN_LOWER_M : 0);
    }

    private static Outcome compareUnderSoffit(RandomCase c) {
        BruteForceClearance brute =
                BruteForceClearance.underSoffit(c.stance(), c.setting(), c.leveling(), c.profile(), c.soffit());
        Optional<Clearance> engine =
                OverheadClearance.least(c.stance(), c.setting(), c.leveling(), c.profile(), c.soffit());
        if (engine.isPresent()) {
            return compare(c, engine.get(), brute, 0);
        }
        // A soffit is always passed under: nothing overhead would be a wrong answer.
        return new Outcome(
                true,
                Double.NaN,
                false,
                false,
                List.of(c + ": nothing overhead for the engine, yet " + brute.least(BRUTE_M)));
    }

    /** {@code drawnLowerM}: how much lower than the truth the engine may be for its drawing of the outline. */
    private static Outcome compare(RandomCase c, Clearance engine, BruteForceClearance brute, double drawnLowerM) {
        List<String> failures = new ArrayList<>();
        Least least = brute.least(BRUTE_M);
        double error = engine.valueM() - least.valueM();
        if (!engine.proven()) {
            // The engine may give up, and say so, where a unit stands steeper than any road puts it.
            boolean steep = steepestPitchRad(c) > STEEP_RAD;
            return new Outcome(
                    false, 0, false, false, steep ? List.of() : List.of(c + ": not proven, engine " + engine));
        }
        if (!(Math.abs(error) <= PROMISED_M)) {
            failures.add("off by " + error * 1000 + " mm");
        }
        if (!(engine.provenWithinM() >= 0 && engine.provenWithinM() <= PROMISED_M)) {
            failures.add("proven only within " + engine.provenWithinM() + " m");
        }
        // Somewhere the truth is as low as the independent value: the engine must not exclude it.
        if (engine.valueM() - engine.provenWithinM() > least.valueM() + ROUNDING_M) {
            failures.add("excludes a clearance that exists");
        }
        // Nowhere is it lower than the independent value less its accuracy: the engine must not invent contact.
        if (engine.valueM() < least.valueM() - BRUTE_M - drawnLowerM - ROUNDING_M) {
            failures.add("finds a clearance that does not exist");
        }
        double there = brute.at(engine.steerM());
        if (!(engine.valueM() <= there + ROUNDING_M && engine.valueM() >= there - drawnLowerM - ROUNDING_M)) {
            failures.add("its value is not attained where it says: there it is " + there);
        }
        double required = least.valueM() + c.random().nextDouble(-0.003, 0.003);
        boolean clear = engine.valueM() - engine.provenWithinM() - required >= 0;
        boolean contact = least.valueM() - required < 0;
        if (clear && contact) {
            failures.add("clear for " + required + " m where there is contact");
        }
        return new Outcome(
                true,
                error,
                clear,
                contact,
                failures.isEmpty()
                        ? failures
                        : List.of(c + ": engine " + engine + ", independent " + least + ": " + failures));
    }

    private static double steepestPitchRad(RandomCase c) {
        BruteForcePosture brute = new BruteForcePosture(c.stance(), c.setting(), c.leveling(), c.profile());
        double steepest = 0;
        for (double steerM = c.profile().startM() - 5; steerM < c.profile().endM() + 30; steerM += 0.05) {
            Standing standing = brute.at(steerM);
            List<Frame> frames = new ArrayList<>(standing.jeeps());
            frames.addAll(List.of(standing.tractor(), standing.trailer()));
            frames.addAll(standing.boosters());
            for (Frame frame : frames) {
                steepest = Math.max(steepest, Math.abs(frame.pitchRad()));
            }
        }
        return steepest;
    }

    private static void report(String what, List<Outcome> outcomes, int expected) {
        List<String> failures =
                outcomes.stream().flatMap(o -> o.failures().stream()).toList();
        double worst =
                outcomes.stream().mapToDouble(o -> Math.abs(o.errorM())).max().orElseThrow();
        double above = outcomes.stream().mapToDouble(Outcome::errorM).max().orElseThrow();
        long clear = outcomes.stream().filter(Outcome::clear).count();
        long contact = outcomes.stream().filter(Outcome::contact).count();
        System.out.printf(
                "%s, seed %d: %d passages proven, off by at most %.4f mm, above by at most %.4f mm; "
                        + "%d clear, %d contact%n",
                what,
                RandomCase.SEED,
                outcomes.stream().filter(Outcome::compared).count(),
                worst * 1000,
                above * 1000,
                clear,
                contact);
        assertEquals(expected, outcomes.size(), "no case may be dropped");
        assertTrue(
                outcomes.stream().filter(Outcome::compared).count() >= 0.998 * expected,
                "hardly any case may be left unproven");
        assertTrue(clear > expected / 10 && contact > expected / 10, "both verdicts must occur often");
        assertTrue(
                failures.isEmpty(),
                () -> failures.size() + " of " + expected + " with seed " + RandomCase.SEED + ":\n"
                        + String.join("\n", failures.subList(0, Math.min(12, failures.size()))));
    }

    @Test
    void everyUnitAndWheelStandsWhereTheDefinitionsPutIt() {
        List<String> failures = new ArrayList<>();
        Map<Stand, Integer> seen = new EnumMap<>(Stand.class);
        double worst = 0;
        int positions = 0;
        for (int i = 0; i < CASES; i++) {
            RandomCase c =
                    switch (i % 8) {
                        case 3, 7 -> RandomCase.withJeeps(RandomCase.SEED + i);
                        case 5 -> RandomCase.withBoosters(RandomCase.SEED + i);
                        default -> RandomCase.of(RandomCase.SEED + i);
                    };
            BruteForcePosture brute = new BruteForcePosture(c.stance(), c.setting(), c.leveling(), c.profile());
            PostureSolver engine = new PostureSolver(c.stance(), c.setting(), c.leveling(), c.profile());
            RandomGenerator random = c.random();
            for (int k = 0; k < 8; k++) {
                double steerM =
                        random.nextDouble(c.profile().startM() - 5, c.profile().endM() + 28);
                Standing expected = brute.at(steerM);
                CombinationPosture actual = engine.at(steerM);
                String where = c + " at " + steerM + " m: ";
                worst = Math.max(worst, compare(where + "tractor", expected.tractor(), actual.tractor(), failures));
                worst = Math.max(worst, compare(where + "trailer", expected.trailer(), actual.trailer(), failures));
                for (int j = 0; j < expected.jeeps().size(); j++) {
                    worst = Math.max(
                            worst,
                            compare(
                                    where + "jeep " + j,
                                    expected.jeeps().get(j),
                                    actual.of(UnitName.jeep(j + 1)),
                                    failures));
                }
                if (expected.boosters().size()
                        != actual.units().size() - 2 - expected.jeeps().size()) {
                    failures.add(where + "boosters trail for one only");
                    continue;
                }
                for (int b = 0; b < expected.boosters().size(); b++) {
                    worst = Math.max(
                            worst,
                            compare(
                                    where + "booster " + b,
                                    expected.boosters().get(b),
                                    actual.of(UnitName.booster(b + 1)),
                                    failures));
                }
                compare(where, brute.wheels(expected), actual.wheels(), failures, seen);
                positions++;
            }
        }
        System.out.printf(
                "postures, seed %d: %d positions, worst difference %.2e m or rad; wheels %s%n",
                RandomCase.SEED, positions, worst, seen);
        assertEquals(8 * CASES, positions);
        for (Stand stand : Stand.values()) {
            assertTrue(seen.getOrDefault(stand, 0) > 1000, "too few wheels " + stand);
        }
        assertTrue(
                failures.isEmpty(),
                () -> failures.size() + " differences with seed " + RandomCase.SEED + ":\n"
                        + String.join("\n", failures.subList(0, Math.min(12, failures.size()))));
    }

    /** Compares pitch and the place of the frame's own point at the origin of the world's distances. */
    private static double compare(String what, Frame expected, Pose actual, List<String> failures) {
        double difference = Math.max(
                Math.abs(expected.pitchRad() - actual.pitchRad()),
                Math.max(
                        Math.abs(expected.originXM() - actual.originXM()),
                        Math.abs(expected.originZM() - actual.originZM())));
        if (!(difference <= POSE_TOLERANCE)) {
            failures.add(what + " differs by " + difference + ": " + actual + ", expected " + expected);
        }
        return difference;
    }

    private static void compare(
            String what,
            List<Wheel> expected,
            List<WheelPosture> actual,
            List<String> failures,
            Map<Stand, Integer> seen) {
        if (expected.size() != actual.size()) {
            failures.add(what + actual.size() + " wheels, expected " + expected.size());
            return;
        }
        List<WheelPosture> left = new ArrayList<>(actual);
        for (Wheel wheel : expected) {
            WheelPosture nearest = left.stream()
                    .min((a, b) -> Double.compare(distanceM(wheel, a), distanceM(wheel, b)))
                    .orElseThrow();
            left.remove(nearest);
            if (!(distanceM(wheel, nearest) <= POSE_TOLERANCE) || wheel.radiusM() != nearest.radiusM()) {
                failures.add(what + "no wheel where " + wheel + " is expected, nearest " + nearest);
            } else if (wheel.marginM() >= 1e-6) {
                // Nearer than a micrometer to its stop, a wheel may be told either way.
                seen.merge(wheel.stand(), 1, Integer::sum);
                if (!wheel.stand().name().equals(nearest.state().name())) {
                    failures.add(what + nearest + ", expected " + wheel);
                }
            }
        }
    }

    private static double distanceM(Wheel wheel, WheelPosture other) {
        return Math.hypot(wheel.xM() - other.xM(), wheel.zM() - other.zM());
    }
}
