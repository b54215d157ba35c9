package org.cresthaul.posture;

import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;

/**
 * One random passage. A case is fully given by its seed, so one that fails can be looked at alone.
 *
 * @param random goes on for whatever else the test draws
 */
public record RandomCase(
        long seed,
        LevelStance stance,
        Setting setting,
        Leveling leveling,
        RoadProfile profile,
        Soffit soffit,
        RandomGenerator random) {
    /** What every test draws its cases from; {@code -Dcresthaul.seed=...} draws others. */
    public static final long SEED = Long.getLong("cresthaul.seed", 20_261_125L);

    public static RandomCase of(long seed) {
        RandomGenerator random = generator(seed);
        LevelStance stance = RandomLifts.forEveryFifth(seed, RandomRigs.stance(random));
        return onRandomRoad(seed, stance, RandomRigs.setting(random, stance), random);
    }

    /** A booster trailing on a tight hinge. */
    public static RandomCase withTightHinge(long seed) {
        RandomGenerator random = generator(seed);
        LevelStance stance = RandomRigs.tightHingeStance(random);
        return onRandomRoad(seed, stance, RandomRigs.trailing(random, stance), random);
    }

    /** Undersides, loads and tops with small dents. */
    public static RandomCase withDents(long seed) {
        RandomGenerator random = generator(seed);
        LevelStance stance = Redrawn.dented(RandomRigs.stance(random), random);
        return onRandomRoad(seed, stance, RandomRigs.setting(random, stance), random);
    }

    /** One to three jeeps between tractor and trailer. */
    public static RandomCase withJeeps(long seed) {
        RandomGenerator random = generator(seed);
        LevelStance base = random.nextInt(4) == 0 ? RandomRigs.tightHingeStance(random) : RandomRigs.stance(random);
        LevelStance stance = RandomLifts.forEveryFifth(seed, RandomJeeps.under(base, random));
        return onRandomRoad(seed, stance, RandomRigs.setting(random, stance), random);
    }

    /** Boosters on several axles, one behind another, at times behind a trailer on jeeps. */
    public static RandomCase withBoosters(long seed) {
        RandomGenerator random = generator(seed);
        LevelStance drawn = RandomRigs.stance(random);
        LevelStance hinged = drawn.booster().isPresent() ? drawn : RandomRigs.tightHingeStance(random);
        LevelStance base = RandomBoosters.behind(hinged, random);
        LevelStance stance =
                RandomLifts.forEveryFifth(seed, random.nextInt(4) == 0 ? RandomJeeps.under(base, random) : base);
        return onRandomRoad(seed, stance, RandomRigs.setting(random, stance), random);
    }

    private static RandomGenerator generator(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    private static RandomCase onRandomRoad(long seed, LevelStance stance, Setting setting, RandomGenerator random) {
        Leveling leveling = RandomRigs.leveling(random, setting);
        RoadProfile profile = RandomProfiles.profile(random);
        double overTheTop = random.nextDouble(-0.3, 0.5);
        Soffit soffit = RandomProfiles.soffit(random, profile, RandomRigs.highestM(stance) + overTheTop);
        return new RandomCase(seed, stance, setting, leveling, profile, soffit, random);
    }

    @Override
    public String toString() {
        return "case with seed " + seed + " (" + leveling + ", " + setting + ")";
    }
}
