package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.cresthaul.posture.RandomBoosters;
import org.cresthaul.posture.RandomJeeps;
import org.cresthaul.posture.RandomLifts;
import org.cresthaul.posture.RandomProfiles;
import org.cresthaul.posture.RandomRigs;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.rig.PlanDimensions.Tires;
import org.cresthaul.rig.PlanDimensions.Widths;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.SurveyedPoint;

/**
 * Random combinations on random roads of three lines: skewed humps, crowns, crossfalls, a third rail, a raised median.
 */
record RandomRoads(
        long seed,
        LevelStance stance,
        Setting setting,
        Leveling leveling,
        List<RoadProfile> lines,
        double halfTrackM,
        RandomGenerator random) {
    static RandomRoads of(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        double halfTrack = random.nextDouble(0.85, 1.05);
        LevelStance drawn = RandomRigs.stance(random);
        LevelStance stance = withPlan(RandomLifts.forEveryFifth(seed, longer(seed, drawn, random)), halfTrack, random);
        Setting setting = RandomRigs.setting(random, stance);
        return new RandomRoads(
                seed, stance, setting, RandomRigs.leveling(random, setting), lines(random), halfTrack, random);
    }

    /** Every third has jeeps, and of the others, where there is a hinge, every fourth boosters behind one another. */
    private static LevelStance longer(long seed, LevelStance drawn, RandomGenerator random) {
        if (seed % 3 == 2) {
            return RandomJeeps.under(drawn, random);
        }
        return seed % 4 == 1 && drawn.booster().isPresent() ? RandomBoosters.behind(drawn, random) : drawn;
    }

    private static LevelStance withPlan(LevelStance stance, double halfTrackM, RandomGenerator random) {
        Tires tires = new Tires(random.nextDouble(0.2, 0.7), 0.3);
        double overTires = 2 * halfTrackM + tires.treadM();
        boolean booster = stance.booster().isPresent();
        boolean jeeps = !stance.jeeps().isEmpty();
        PlanDimensions plan = new PlanDimensions(
                new Widths(random.nextDouble(2.3, 2.6), overTires, tires),
                0.6,
                3,
                tires,
                jeeps ? Optional.of(new Widths(random.nextDouble(2.3, 3.1), overTires, tires)) : Optional.empty(),
                jeeps ? OptionalDouble.of(0.9) : OptionalDouble.empty(),
                new Widths(random.nextDouble(2.4, 3.4), overTires, tires),
                OptionalDouble.empty(),
                1,
                booster ? Optional.of(new Widths(random.nextDouble(2.3, 3.1), overTires, tires)) : Optional.empty(),
                booster ? OptionalDouble.of(0.8) : OptionalDouble.empty());
        return stance.withPlan(plan);
    }

    private static List<RoadProfile> lines(RandomGenerator random) {
        RoadProfile middle = RandomProfiles.profile(random);
        double[] offsets = {random.nextDouble(-1.9, -1.2), random.nextDouble(-0.4, 0.4), random.nextDouble(1.2, 1.9)};
        double skew = random.nextInt(3) == 0 ? 0 : random.nextDouble(-0.8, 0.8);
        double fall = random.nextBoolean() ? 0 : random.nextDouble(-0.05, 0.05);
        double crown = random.nextInt(3) == 0 ? random.nextDouble(-0.03, 0.03) : 0;
        double[] raised = new double[3];
        if (random.nextInt(3) == 0) {
            raised[random.nextInt(3)] = random.nextDouble(-0.05, 0.12);
        }
        double noise = random.nextBoolean() ? 0 : 0.004;
        List<RoadProfile> lines = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            double y = offsets[i];
            List<SurveyedPoint> points = new ArrayList<>();
            double lastS = Double.NaN;
            double lastZ = 0;
            for (SurveyedPoint p : middle.points()) {
                double s = p.distanceM() + skew * y;
                double z = p.elevationM() + fall * y - crown * Math.abs(y) + raised[i];
                z += noise * random.nextGaussian();
                if (s > lastS) {
                    double most = 0.45 * (s - lastS);
                    z = Math.max(lastZ - most, Math.min(lastZ + most, z));
                }
                points.add(new SurveyedPoint(s, z));
                lastS = s;
                lastZ = z;
            }
            lines.add(RoadProfile.of("line " + i, OptionalDouble.of(y), points, middle.before(), middle.after()));
        }
        return lines;
    }
}
