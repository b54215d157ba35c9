package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;

/** Invented boosters of one to three axles, one behind another, behind an invented trailer. */
public final class RandomBoosters {
    private RandomBoosters() {}

    /** The stance with one to three boosters in place of its own; one alone has two axles or three. */
    public static LevelStance behind(LevelStance stance, RandomGenerator random) {
        int count = random.nextInt(1, 4);
        List<Booster> boosters = new ArrayList<>();
        double heldHM = stance.trailer().boosterHinge().orElseThrow().hM();
        for (int i = 0; i < count; i++) {
            boolean last = i + 1 == count;
            Booster booster = booster(random, heldHM, random.nextInt(count == 1 ? 2 : 1, 4), last);
            heldHM = booster.nextHinge().map(h -> h.at().hM()).orElse(Double.NaN);
            boosters.add(booster);
        }
        return new LevelStance(
                stance.name() + ", boosters",
                stance.tractor(),
                stance.jeeps(),
                stance.trailer(),
                Optional.of(boosters.get(0)),
                boosters.subList(1, count),
                Optional.empty(),
                Optional.empty());
    }

    private static Booster booster(RandomGenerator random, double heldHM, int axles, boolean last) {
        double hingeX = random.nextBoolean() ? 0 : between(random, -20, 20);
        double firstX = hingeX - between(random, 1.6, 3.5);
        double spacing = between(random, 1.25, 1.6);
        double radius = between(random, 0.37, 0.52);
        List<Axle> group = new ArrayList<>();
        for (int i = 0; i < axles; i++) {
            group.add(new Axle(firstX - i * spacing, random.nextInt(4) > 0 ? radius : between(random, 0.37, 0.52)));
        }
        double lastX = group.get(axles - 1).xM();
        double rear = lastX - between(random, 0.5, 1);
        double front = hingeX + between(random, -0.2, 0.1);
        Outline under = new Outline(List.of(
                new FramePoint(rear, between(random, 0.4, 0.9)),
                new FramePoint(lastX, between(random, 0.25, 0.4)),
                new FramePoint(firstX + between(random, 0.3, 0.8), between(random, 0.3, 0.5)),
                new FramePoint(front, between(random, 0.4, 0.7))));
        Outline top = new Outline(List.of(
                new FramePoint(rear, between(random, 1, 1.4)), new FramePoint(front, between(random, 0.9, 1.2))));
        Optional<Booster.Hinge> next = last
                ? Optional.empty()
                : Optional.of(new Booster.Hinge(
                        new FramePoint(
                                lastX - between(random, -0.3, 1.5),
                                random.nextBoolean() ? heldHM : between(random, 0.6, 1.1)),
                        between(random, 0.3, 0.6)));
        return new Booster(
                hingeX,
                new AxleGroup(group, travel(random), travel(random)),
                under,
                top,
                List.of(BoosterState.TRAILING),
                hingeLimit(random),
                hingeLimit(random),
                OptionalDouble.empty(),
                Optional.empty(),
                next);
    }

    private static double hingeLimit(RandomGenerator random) {
        return switch (random.nextInt(4)) {
            case 0 -> between(random, 0, 0.01);
            case 1 -> between(random, 0.01, 0.05);
            default -> between(random, 0.1, 0.25);
        };
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
