package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.cresthaul.clearance.BruteForceRoad.Place;
import org.cresthaul.plan.Outcome;
import org.cresthaul.posture.PlainGround;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.posture.RandomProfiles;
import org.cresthaul.posture.RandomRigs;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.CrossSection;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.junit.jupiter.api.Test;

/**
 * Gaps under the whole width, random combinations on random three-line roads, against {@link BruteForceRoad}, written
 * from the definitions in docs/model.md.
 */
class AcrossRoadTest {
    /** {@code -Dcresthaul.roads=...} draws more. */
    private static final int CASES = Integer.getInteger("cresthaul.roads", 36);
    /** What the engine promises. */
    private static final double PROMISED_M = 0.001;

    private static final double SAG_DRAWN_LOWER_M = 0.0001;
    private static final double ROUNDING_M = 1e-7;
    private static final double STEP_M = 0.04;

    /** What one road showed. */
    private record Outcome(int compared, double worstM, double lowestBetweenM, List<String> failures) {}

    @Test
    void noGapUnderTheWidthIsLessThanTold() {
        List<Outcome> outcomes = LongStream.range(0, CASES)
                .parallel()
                .mapToObj(i -> compare(RandomRoads.of(RandomCase.SEED + i)))
                .toList();
        List<String> failures =
                outcomes.stream().flatMap(o -> o.failures.stream()).toList();
        long compared = outcomes.stream().filter(o -> o.compared > 0).count();
        System.out.printf(
                "across, seed %d: %d roads, %d places, off by at most %.4f mm; between places at least %.4f mm above%n",
                RandomCase.SEED,
                compared,
                outcomes.stream().mapToInt(Outcome::compared).sum(),
                1000 * outcomes.stream().mapToDouble(Outcome::worstM).max().orElseThrow(),
                1000
                        * outcomes.stream()
                                .mapToDouble(Outcome::lowestBetweenM)
                                .min()
                                .orElseThrow());
        assertTrue(compared >= 0.9 * CASES, compared + " of " + CASES + " compared");
        assertEquals(List.of(), failures.subList(0, Math.min(12, failures.size())), failures.size() + " failures");
    }

    @Test
    void noGapUnderAStructureIsLessThanTold() {
        List<Outcome> outcomes = LongStream.range(0, CASES)
                .parallel()
                .mapToObj(i -> compareUnder(RandomRoads.of(RandomCase.SEED + i)))
                .toList();
        List<String> failures =
                outcomes.stream().flatMap(o -> o.failures.stream()).toList();
        long compared = outcomes.stream().filter(o -> o.compared > 0).count();
        System.out.printf(
                "across, under structures, seed %d: %d roads, off by at most %.4f mm%n",
                RandomCase.SEED,
                compared,
                1000 * outcomes.stream().mapToDouble(Outcome::worstM).max().orElseThrow());
        assertTrue(compared >= 0.9 * CASES, compared + " of " + CASES + " compared");
        assertEquals(List.of(), failures.subList(0, Math.min(12, failures.size())), failures.size() + " failures");
    }

    /** One place of each road, looked at every 2 cm: nowhere less than told, and as told where it is told. */
    private static Outcome compareUnder(RandomRoads c) {
        RoadProfile middle = c.lines().get(1);
        Soffit soffit = RandomProfiles.soffit(
                c.random(), middle, RandomRigs.highestM(c.stance()) + c.random().nextDouble(-0.3, 0.5));
        List<RoadPlace> places = new AcrossRoad(CrossSection.of(c.lines()).orElseThrow(), c.stance()).overUnits();
        RoadPlace place = places.get(c.random().nextInt(places.size()));
        Passage passage = new Passage(c.stance(), place, soffit.startM(), soffit.endM());
        Clearance engine = new PassageSearch(passage, c.setting(), c.leveling()).least(Optional.of(soffit));
        if (!engine.proven()) {
            return new Outcome(0, 0, Double.POSITIVE_INFINITY, List.of());
        }
        PlainGround over = PlainGround.ofSoffit(BruteForceClearance.soffitPoints(soffit));
        BruteForceRoad brute = new BruteForceRoad(
                c.stance(), c.setting(), c.leveling(), c.lines(), c.halfTrackM(), place.drivenRightM());
        double rightM = place.rightM(UnitName.TRAILER);
        List<String> failures = new ArrayList<>();
        for (double steerM = passage.firstSteerM(); steerM < passage.lastSteerM(); steerM += 0.02) {
            double gap = brute.underM(over, rightM, steerM);
            if (gap < engine.valueM() - PROMISED_M) {
                failures.add(c.seed() + " " + place.label() + ": " + engine + ", at " + steerM + " " + gap);
                break;
            }
        }
        double off = Math.abs(engine.valueM() - brute.underM(over, rightM, engine.steerM()));
        if (off > ROUNDING_M) {
            failures.add(c.seed() + " " + place.label() + ": " + engine + " is off by " + off);
        }
        return new Outcome(1, off, 0, failures);
    }

    private static Outcome compare(RandomRoads c) {
        List<String> failures = new ArrayList<>();
        CrossSection road = CrossSection.of(c.lines()).orElseThrow();
        double from = c.lines().stream().mapToDouble(RoadProfile::startM).min().orElseThrow();
        double to = c.lines().stream().mapToDouble(RoadProfile::endM).max().orElseThrow();
        double worst = 0;
        double told = Double.POSITIVE_INFINITY;
        double allowed = 0;
        int compared = 0;
        double first = 0;
        double last = 0;
        for (RoadPlace place : new AcrossRoad(road, c.stance()).underUnits()) {
            Passage passage = new Passage(c.stance(), place, from, to);
            first = passage.firstSteerM();
            last = passage.lastSteerM();
            Clearance engine = new PassageSearch(passage, c.setting(), c.leveling()).least(Optional.empty());
            if (!engine.proven()) {
                return new Outcome(0, 0, Double.POSITIVE_INFINITY, List.of());
            }
            told = Math.min(told, engine.valueM());
            allowed = Math.max(allowed, allowedM(c, place));
            // All are searched by the engine; an independent look at some of them keeps the test quick.
            if (c.random().nextInt(4) > 0) {
                continue;
            }
            Place brute = placeOf(c, place);
            double least = brute.least(first, last, STEP_M);
            double there = brute.at(engine.steerM());
            compared++;
            worst = Math.max(worst, Math.abs(engine.valueM() - there));
            if (engine.valueM() > least + PROMISED_M) {
                failures.add(
                        c.seed() + " " + place.name() + " " + place.drivenRightM() + ": " + engine + " above " + least);
            }
            double lower = c.stance().trailer().deckSagM() > 0 ? SAG_DRAWN_LOWER_M : 0;
            if (engine.valueM() > there + ROUNDING_M || engine.valueM() < there - lower - ROUNDING_M) {
                failures.add(
                        c.seed() + " " + place.name() + " " + place.drivenRightM() + ": " + engine + " there " + there);
            }
        }
        double between = between(c, first, last);
        if (between < told - allowed - PROMISED_M) {
            failures.add(
                    c.seed() + ": between the places only " + between + ", told " + told + " allowing for " + allowed);
        }
        return new Outcome(Math.max(1, compared), worst, between - told, failures);
    }

    /** What the need at a place allows for between two ways of driving, at whatever point it is most. */
    private static double allowedM(RandomRoads c, RoadPlace place) {
        Leverage leverage = new Leverage(c.stance(), c.setting());
        Demand nothing = new Demand(0, 0, 0, false);
        double most = c.stance().trailer().underside().points().stream()
                .mapToDouble(p -> place.wantedM(nothing, leverage, UnitName.TRAILER, p.xM()))
                .max()
                .orElseThrow();
        for (int j = 0; j < c.stance().jeeps().size(); j++) {
            UnitName unit = UnitName.jeep(j + 1);
            most = c.stance().jeeps().get(j).underside().points().stream()
                    .mapToDouble(p -> place.wantedM(nothing, leverage, unit, p.xM()))
                    .reduce(most, Math::max);
        }
        for (int b = 1; b < c.stance().boosters().size(); b++) {
            UnitName unit = UnitName.booster(b + 1);
            most = c.stance().boosters().get(b).underside().points().stream()
                    .mapToDouble(p -> place.wantedM(nothing, leverage, unit, p.xM()))
                    .reduce(most, Math::max);
        }
        return most;
    }

    private static int units(RandomRoads c) {
        return 3 + c.stance().jeeps().size() + c.stance().boostersBehind().size();
    }

    private static Place placeOf(RandomRoads c, RoadPlace place) {
        double[] rightM = new double[units(c)];
        for (UnitName unit : c.stance().units()) {
            int index =
                    switch (unit.kind()) {
                        case TRACTOR -> 0;
                        case TRAILER -> 1;
                        case BOOSTER ->
                            unit.number() == 1 ? 2 : 1 + c.stance().jeeps().size() + unit.number();
                        case JEEP -> 2 + unit.number();
                    };
            rightM[index] = place.rightM(unit);
        }
        double[] tires = place.raisedTiresRightM().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        return new BruteForceRoad(
                c.stance(), c.setting(), c.leveling(), c.lines(), c.halfTrackM(), place.drivenRightM())
        .new Place(rightM, tires);
    }

    /**
     * The least found anywhere in the width, driven any way within half a foot, at places that the engine did not
     * choose.
     */
    private static double between(RandomRoads c, double first, double last) {
        PlanDimensions plan = c.stance().plan().orElseThrow();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 3; i++) {
            double driven = c.random().nextDouble(-AcrossRoad.DRIVEN_OFF_M, AcrossRoad.DRIVEN_OFF_M);
            double share = c.random().nextBoolean()
                    ? (c.random().nextBoolean() ? 1 : -1)
                    : c.random().nextDouble(-1, 1);
            double[] rightM = new double[units(c)];
            double booster = share * plan.booster().map(b -> b.bodyM() / 2).orElse(0.0);
            Arrays.fill(rightM, booster);
            Arrays.fill(
                    rightM,
                    3,
                    3 + c.stance().jeeps().size(),
                    share * plan.jeep().map(j -> j.bodyM() / 2).orElse(0.0));
            rightM[0] = share * plan.tractor().bodyM() / 2;
            rightM[1] = share * plan.trailer().bodyM() / 2;
            rightM[2] = booster;
            double outer = plan.trailer().tiresM() / 2;
            double tire = (c.random().nextBoolean() ? 1 : -1)
                    * (outer - c.random().nextDouble() * plan.trailer().tires().treadM());
            Place place = new BruteForceRoad(c.stance(), c.setting(), c.leveling(), c.lines(), c.halfTrackM(), driven)
            .new Place(rightM, new double[] {tire});
            least = Math.min(least, place.least(first, last, STEP_M));
        }
        return least;
    }
}
