package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;

/** Invented jeeps of trade proportions under the trailer of an invented combination. */
public final class RandomJeeps {
    private RandomJeeps() {}

    /** The stance with one to three jeeps; the last carries its trailer at the height at which the tractor did. */
    public static LevelStance under(LevelStance stance, RandomGenerator random) {
        int count = random.nextInt(3) == 0 ? random.nextInt(2, 4) : 1;
        List<Jeep> jeeps = new ArrayList<>();
        double heldHM = stance.tractor().fifthWheel().hM();
        for (int i = 0; i < count; i++) {
            double carriesHM = i + 1 == count ? stance.tractor().fifthWheel().hM() : between(random, 1.0, 1.4);
            jeeps.add(jeep(random, heldHM, carriesHM));
            heldHM = carriesHM;
        }
        return new LevelStance(
                stance.name() + ", jeeps",
                stance.tractor(),
                jeeps,
                stance.trailer(),
                stance.booster(),
                stance.boostersBehind(),
                Optional.empty(),
                Optional.empty());
    }

    private static Jeep jeep(RandomGenerator random, double heldHM, double carriesHM) {
        double kingpinX = random.nextBoolean() ? 0 : between(random, -20, 20);
        double firstX = kingpinX - between(random, 2.6, 4.2);
        double spacing = between(random, 1.25, 1.5);
        int count = random.nextInt(1, 4);
        List<Axle> axles = new ArrayList<>();
        double radius = between(random, 0.38, 0.52);
        for (int i = 0; i < count; i++) {
            axles.add(new Axle(firstX - i * spacing, random.nextInt(4) > 0 ? radius : between(random, 0.38, 0.52)));
        }
        double lastX = axles.get(count - 1).xM();
        double rear = lastX - between(random, 0.5, 0.9);
        double nose = kingpinX + between(random, 0.3, 0.8);
        double deck = Math.max(0.95, carriesHM - between(random, 0.05, 0.3));
        Outline under = new Outline(List.of(
                new FramePoint(rear, between(random, 0.5, 0.8)),
                new FramePoint(lastX, between(random, 0.25, 0.45)),
                new FramePoint(firstX + between(random, 0.2, 0.6), between(random, 0.25, 0.5)),
                new FramePoint(firstX + between(random, 0.8, 1.4), heldHM + between(random, 0, 0.05)),
                new FramePoint(nose, heldHM + between(random, 0, 0.1))));
        Outline top = new Outline(List.of(
                new FramePoint(rear, deck),
                new FramePoint(firstX + between(random, 0.6, 0.9), deck),
                new FramePoint(firstX + between(random, 1, 1.4), heldHM + between(random, 0.3, 0.6)),
                new FramePoint(nose, heldHM + between(random, 0.2, 0.5))));
        return new Jeep(
                kingpinX,
                new AxleGroup(axles, travel(random), travel(random)),
                new FramePoint((firstX + lastX) / 2 + between(random, -0.2, 0.6), carriesHM),
                between(random, 0.4, 0.7),
                under,
                top,
                false);
    }

    private static double travel(RandomGenerator random) {
        return switch (random.nextInt(5)) {
            case 0 -> between(random, 0, 0.02);
            case 1 -> between(random, 0.02, 0.06);
            default -> between(random, 0.06, 0.15);
        };
    }

    private static double between(RandomGenerator random, double least, double most) {
        return least + (most - least) * random.nextDouble();
    }
}
