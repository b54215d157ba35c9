package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.cresthaul.posture.RandomBoosters;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.posture.RandomJeeps;
import org.cresthaul.posture.RandomLifts;
import org.cresthaul.posture.RandomProfiles;
import org.cresthaul.posture.RandomRigs;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.RoadProfile;

/**
 * Random rigs redrawn so that the gooseneck stands a hand's width or two over the tractor's frame and its nose a step
 * behind the cab, sometimes with a load that reaches over the tractor or the booster: what {@link RandomRigs} draws
 * there is of no account to the road, and mostly overlaps.
 */
final class RandomCouplings {
    private RandomCouplings() {}

    /** A case given by its seed; the soffit is of no account. */
    static RandomCase caseOf(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        LevelStance base = random.nextInt(4) == 0 ? RandomRigs.tightHingeStance(random) : RandomRigs.stance(random);
        // With room at the kingpin the booster is what comes nearest.
        boolean roomy = base.booster().isPresent() && random.nextInt(3) > 0;
        LevelStance stance = RandomLifts.forEveryFifth(seed, redrawn(base, roomy, random));
        Setting setting = stance.booster().isPresent() && (roomy || random.nextBoolean())
                ? RandomRigs.trailing(random, stance)
                : RandomRigs.setting(random, stance);
        RoadProfile profile = RandomProfiles.profile(random);
        return new RandomCase(seed, stance, setting, RandomRigs.leveling(random, setting), profile, null, random);
    }

    /** The same with a jeep or more, as they are drawn for the road. */
    static RandomCase withJeeps(long seed) {
        RandomCase base = caseOf(seed);
        return new RandomCase(
                seed,
                RandomJeeps.under(base.stance(), base.random()),
                base.setting(),
                base.leveling(),
                base.profile(),
                null,
                base.random());
    }

    /** Boosters on several axles, one behind another, behind a trailer that leaves them to come nearest. */
    static RandomCase withBoosters(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        LevelStance base = redrawn(RandomRigs.tightHingeStance(random), random.nextInt(4) > 0, random);
        LevelStance stance = RandomBoosters.behind(base, random);
        Setting setting = RandomRigs.setting(random, stance);
        RoadProfile profile = RandomProfiles.profile(random);
        return new RandomCase(seed, stance, setting, RandomRigs.leveling(random, setting), profile, null, random);
    }

    private static LevelStance redrawn(LevelStance base, boolean roomy, RandomGenerator random) {
        Tractor t = base.tractor();
        double plateH = t.fifthWheel().hM();
        double cabX = t.fifthWheel().xM() + (roomy ? 2.4 : between(random, 0.9, 2.4));
        double frontX = t.underside().frontXM();
        double frameH = Math.max(0.92, plateH - (roomy ? 0.4 : between(random, 0.05, 0.4)));
        List<FramePoint> top = new ArrayList<>();
        top.add(new FramePoint(t.underside().rearXM(), frameH, "frame end"));
        if (random.nextBoolean()) {
            // The plate itself, within its reach.
            top.add(new FramePoint(t.fifthWheel().xM() - 0.3, frameH, "frame"));
            top.add(new FramePoint(t.fifthWheel().xM() - 0.25, plateH, "plate"));
            top.add(new FramePoint(t.fifthWheel().xM() + 0.25, plateH, "plate"));
            top.add(new FramePoint(t.fifthWheel().xM() + 0.3, frameH, "frame"));
        }
        top.add(new FramePoint(cabX, frameH, "frame"));
        top.add(new FramePoint(cabX, between(random, 2.2, 3.2), "cab back"));
        top.add(new FramePoint(Math.max(cabX + 0.5, frontX), between(random, 2, 3.2), "cab"));
        Tractor tractor = new Tractor(
                t.steer(), t.drive(), t.fifthWheel(), between(random, 0.4, 0.7), t.underside(), new Outline(top));
        Trailer f = base.trailer();
        double deckX = f.deckFront().xM();
        double noseX = f.kingpinXM() + (roomy ? 0.4 : between(random, 0.3, 1.3));
        List<FramePoint> under = new ArrayList<>(
                f.underside().points().stream().filter(p -> p.xM() <= deckX).toList());
        under.add(new FramePoint(
                deckX + between(random, 0.1, 0.4),
                plateH + (roomy ? 0.25 : between(random, -0.1, 0.15)),
                "gooseneck foot"));
        under.add(new FramePoint(f.kingpinXM(), plateH + between(random, 0, 0.05), "gooseneck"));
        under.add(new FramePoint(noseX, plateH + between(random, -0.05, 0.15), "nose"));
        List<FramePoint> over = new ArrayList<>(
                f.topside().points().stream().filter(p -> p.xM() < deckX - 0.1).toList());
        over.add(new FramePoint(deckX - 0.1, between(random, 1.6, 1.9), "gooseneck"));
        over.add(new FramePoint(noseX, between(random, 1.6, 1.9), "nose"));
        List<Outline> load = new ArrayList<>(f.load());
        if (!roomy && random.nextInt(3) == 0) {
            load.add(overhang(random, deckX - 2, noseX + between(random, -1, 1.5)));
        }
        if (random.nextInt(3) == 0) {
            double rear = over.get(0).xM();
            load.add(overhang(random, rear - between(random, -0.5, 2.5), rear + 2));
        }
        Trailer redrawn = new Trailer(
                f.kingpinXM(),
                f.deckFront(),
                f.deckRear(),
                f.axles(),
                f.valveAxle(),
                f.lift(),
                f.hydraulicRaiseLimitM(),
                f.manualRaiseLimitM(),
                f.deckSagM(),
                new Outline(under),
                new Outline(over),
                load,
                f.boosterHinge()
                        .map(h -> new FramePoint(
                                f.underside().rearXM() - between(random, 0.1, 0.4), between(random, 0.5, 0.9))),
                between(random, 0.2, 0.6));
        return new LevelStance(base.name(), tractor, redrawn, base.booster());
    }

    /** A load with both its ends drawn as faces, or none. */
    private static Outline overhang(RandomGenerator random, double rearX, double frontX) {
        boolean faces = random.nextInt(4) > 0;
        double bottom = between(random, 1.7, 2.6);
        List<FramePoint> points = new ArrayList<>();
        if (faces) {
            points.add(new FramePoint(rearX, bottom, "load"));
        }
        points.add(new FramePoint(rearX, between(random, 2.7, 3.5), "load"));
        points.add(new FramePoint(frontX, between(random, 2.7, 3.5), "load"));
        if (faces) {
            points.add(new FramePoint(frontX, bottom, "load"));
        }
        return new Outline(points);
    }

    private static double between(RandomGenerator random, double least, double most) {
        return least + (most - least) * random.nextDouble();
    }
}
