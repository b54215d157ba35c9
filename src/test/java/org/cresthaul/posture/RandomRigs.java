package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;

/** Invented combinations of trade proportions, with the corners that strain a posture: short travels, tight hinges. */
public final class RandomRigs {
    private static final double INCH = 0.0254;

    private RandomRigs() {}

    public static LevelStance stance(RandomGenerator random) {
        Tractor tractor = tractor(random);
        boolean booster = random.nextInt(5) < 3;
        Trailer trailer = trailer(random, booster);
        return new LevelStance(
                "random",
                tractor,
                trailer,
                booster
                        ? Optional.of(booster(random, trailer, hingeLimit(random), hingeLimit(random)))
                        : Optional.empty());
    }

    /** Always with a booster, its hinge so tight that it carries the trailer, or hangs from it, again and again. */
    public static LevelStance tightHingeStance(RandomGenerator random) {
        Tractor tractor = tractor(random);
        Trailer trailer = trailer(random, true);
        Booster booster = booster(random, trailer, between(random, 0, 0.03), between(random, 0, 0.03));
        return new LevelStance("tight hinge", tractor, trailer, Optional.of(booster));
    }

    private static double between(RandomGenerator random, double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    /** Frames start anywhere. */
    private static double origin(RandomGenerator random) {
        return random.nextBoolean() ? 0 : between(random, -20, 20);
    }

    private static double travel(RandomGenerator random) {
        return switch (random.nextInt(6)) {
            case 0 -> 0;
            case 1 -> between(random, 0.002, 0.02);
            case 2 -> between(random, 0.02, 0.06);
            case 3 -> between(random, 0.2, 0.5);
            default -> between(random, 0.06, 0.12);
        };
    }

    private static Tractor tractor(RandomGenerator random) {
        double steerX = origin(random);
        double radius = between(random, 0.46, 0.55);
        int drives = random.nextInt(1, 4);
        double spacing = between(random, 1.3, 1.45);
        double firstX = steerX - between(random, 3.6, 6);
        List<Axle> axles = new ArrayList<>();
        for (int i = 0; i < drives; i++) {
            axles.add(new Axle(firstX - i * spacing, random.nextBoolean() ? radius : between(random, 0.46, 0.55)));
        }
        double lastX = axles.get(drives - 1).xM();
        double fifthWheelX = (firstX + lastX) / 2 + between(random, -0.1, 0.7);
        double rear = lastX - between(random, 0.6, 1);
        double front = steerX + between(random, 0.7, 1.6);
        Line under = new Line();
        under.to(rear, between(random, 0.6, 0.9));
        under.to(lastX - 0.2, between(random, 0.25, 0.4));
        under.to(firstX + 0.2, between(random, 0.22, 0.4));
        if (random.nextBoolean()) {
            under.up(between(random, 0.45, 0.6));
            under.to(firstX + between(random, 0.4, 0.9), between(random, 0.45, 0.6));
            under.up(between(random, 0.22, 0.35));
        }
        under.to(steerX - between(random, 0.8, 1.4), between(random, 0.22, 0.4));
        under.to(steerX, between(random, 0.22, 0.35));
        under.to(front, between(random, 0.2, 0.35));
        Line top = new Line();
        top.to(rear, between(random, 0.9, 1.1));
        top.to(firstX + between(random, 0.7, 1.2), between(random, 1, 1.1));
        top.up(between(random, 2.6, 4));
        top.to(steerX, between(random, 2.6, 4.1));
        top.to(front, between(random, 1.4, 2.6));
        return new Tractor(
                new Axle(steerX, between(random, 0.46, 0.55)),
                new AxleGroup(axles, travel(random), travel(random)),
                new FramePoint(fifthWheelX, between(random, 1.05, 1.35)),
                under.outline(),
                top.outline());
    }

    private static Trailer trailer(RandomGenerator random, boolean withHinge) {
        double kingpinX = origin(random);
        double deckFront = kingpinX - between(random, 2.3, 4);
        double deckRear = deckFront - between(random, 5, 9.5);
        int count = random.nextInt(1, 5);
        double spacing = between(random, 1.25, 1.55);
        double firstX = deckRear - between(random, 0.6, 2);
        double radius = between(random, 0.37, 0.52);
        List<Axle> axles = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            axles.add(new Axle(firstX - i * spacing, random.nextInt(4) > 0 ? radius : between(random, 0.37, 0.52)));
        }
        double lastX = axles.get(count - 1).xM();
        double jounce = travel(random);
        double rebound = travel(random);
        LiftAxles lift = count > 1 && random.nextInt(4) > 0
                // A valve cannot set a height its axles cannot reach down from.
                ? LiftAxles.one(count - 1, between(random, 0.05, 0.12), Math.min(rebound, between(random, -0.03, 0.06)))
                : LiftAxles.NONE;
        int fixed = !lift.isEmpty() ? count - 1 : count;
        double deckH = between(random, 0.14, 0.35);
        double rear = lastX - between(random, 0.5, 1);
        Line under = new Line();
        under.to(rear, between(random, 0.4, 0.9));
        under.to(lastX, between(random, 0.25, 0.5));
        under.to(firstX + between(random, 0.1, 0.4), between(random, 0.25, 0.5));
        if (random.nextBoolean()) {
            under.to(deckRear + between(random, 0, 0.5), deckH);
        } else {
            under.x = deckRear + between(random, -0.1, 0.3);
            under.to(under.x, between(random, 0.4, 0.6));
            under.up(deckH);
        }
        if (random.nextInt(3) == 0) {
            double box = between(random, deckRear + 0.6, deckFront - 1.5);
            under.to(box, deckH);
            under.up(deckH - between(random, 0, 0.08));
            under.to(box + between(random, 0.05, 0.8), deckH - between(random, 0, 0.08));
            under.up(deckH);
        }
        under.to(deckFront - between(random, 0, 0.3), deckH + between(random, -0.05, 0.05));
        if (random.nextBoolean()) {
            under.up(between(random, 0.8, 1.2));
        } else {
            under.to(deckFront + between(random, 0.1, 0.6), between(random, 0.8, 1.2));
        }
        under.to(kingpinX, between(random, 1.1, 1.35));
        under.to(kingpinX + between(random, 0.3, 0.9), between(random, 1.1, 1.4));
        Line top = new Line();
        top.to(rear, between(random, 0.9, 1.1));
        top.to(firstX + 0.5, between(random, 0.9, 1.1));
        top.to(deckRear + 0.2, between(random, 0.5, 0.7));
        top.to(deckFront - 0.1, between(random, 0.5, 0.7));
        top.up(between(random, 1.3, 1.7));
        top.to(kingpinX + 0.9, between(random, 1.4, 1.7));
        List<Outline> load = new ArrayList<>();
        int pieces = random.nextInt(0, 3);
        for (int i = 0; i < pieces; i++) {
            load.add(load(random, deckRear, deckFront));
        }
        return new Trailer(
                kingpinX,
                new FramePoint(deckFront, 0.6, "deck front"),
                new FramePoint(deckRear, 0.6, "deck rear"),
                new AxleGroup(axles, jounce, rebound),
                random.nextInt(fixed),
                lift,
                0.3,
                0.1,
                random.nextInt(3) == 0 ? between(random, 0.005, 0.06) : 0,
                under.outline(),
                top.outline(),
                load,
                withHinge
                        ? Optional.of(new FramePoint(lastX - between(random, 0.6, 1.3), between(random, 0.5, 1)))
                        : Optional.empty());
    }

    private static Outline load(RandomGenerator random, double deckRear, double deckFront) {
        double rear = between(random, deckRear - 0.8, deckRear + 2);
        double front = Math.max(rear + 1, between(random, deckFront - 3, deckFront + 0.5));
        Line line = new Line();
        line.to(rear, between(random, 0.6, 2));
        line.up(between(random, 1.5, 3.5));
        int n = random.nextInt(0, 5);
        for (int i = 1; i <= n; i++) {
            line.to(rear + (front - rear) * i / (n + 1), between(random, 2, 4.3));
            if (random.nextInt(3) == 0) {
                line.up(between(random, 2, 4.3));
            }
        }
        line.to(front, between(random, 1.5, 3.5));
        line.up(between(random, 0.6, 2));
        return line.outline();
    }

    private static Booster booster(RandomGenerator random, Trailer trailer, double hingeUpRad, double hingeDownRad) {
        double hingeX = origin(random);
        double axleX = hingeX - between(random, 1.2, 3.5);
        double radius = between(random, 0.37, 0.52);
        double rear = axleX - between(random, 0.5, 1);
        double front = hingeX + between(random, -0.2, 0.1);
        Line under = new Line();
        under.to(rear, between(random, 0.4, 0.9));
        under.to(axleX, between(random, 0.25, 0.4));
        under.to(axleX + between(random, 0.3, 0.8), between(random, 0.3, 0.5));
        under.to(front, between(random, 0.4, 0.7));
        Line top = new Line();
        top.to(rear, between(random, 1, 1.4));
        top.to(front, between(random, 0.9, 1.2));
        double lastX =
                trailer.axles().axles().get(trailer.axles().axles().size() - 1).xM();
        double carriedRear = trailer.deckRear().xM() + between(random, -2, 1);
        Line carried = new Line();
        carried.to(carriedRear, between(random, 1, 1.5));
        carried.up(between(random, 1.5, 2.5));
        carried.to(carriedRear + between(random, 1.5, 3), between(random, 1.5, 3.8));
        return new Booster(
                hingeX,
                new Axle(axleX, radius),
                under.outline(),
                top.outline(),
                List.of(BoosterState.values()),
                hingeUpRad,
                hingeDownRad,
                OptionalDouble.of(lastX - between(random, 1.2, 1.7)),
                Optional.of(carried.outline()));
    }

    private static double hingeLimit(RandomGenerator random) {
        return switch (random.nextInt(4)) {
            case 0 -> between(random, 0, 0.01);
            case 1 -> between(random, 0.01, 0.05);
            default -> between(random, 0.1, 0.3);
        };
    }

    /** Any setting the stance can run in: transport at a notch, raised at the front, at the rear, or both. */
    public static Setting setting(RandomGenerator random, LevelStance stance) {
        List<LiftState> lifts = stance.liftStates();
        List<BoosterState> boosters = List.copyOf(EnumSet.copyOf(stance.boosterStates()));
        double notch = 0.75 * INCH * random.nextInt(-2, 3);
        boolean raised = random.nextInt(3) == 0;
        return new Setting(
                lifts.get(random.nextInt(lifts.size())),
                boosters.get(random.nextInt(boosters.size())),
                random.nextInt(4) == 0 ? between(random, -0.06, 0.06) : notch,
                raised && random.nextInt(3) > 0 ? between(random, 0, 0.25) : 0,
                raised && random.nextBoolean() ? between(random, 0.001, 0.1) : 0);
    }

    /** A setting with the booster trailing. */
    public static Setting trailing(RandomGenerator random, LevelStance stance) {
        Setting any = setting(random, stance);
        return new Setting(any.lift(), BoosterState.TRAILING, any.notchOffsetM(), any.frontRaiseM(), any.rearRaiseM());
    }

    public static Leveling leveling(RandomGenerator random, Setting setting) {
        return setting.levelings().get(random.nextInt(setting.levelings().size()));
    }

    /** How high the rig reaches, meters, standing level. */
    public static double highestM(LevelStance stance) {
        double highest = Math.max(
                stance.tractor().topside().highestM(),
                stance.trailer().topside().highestM());
        for (Jeep jeep : stance.jeeps()) {
            highest = Math.max(highest, jeep.topside().highestM());
        }
        for (Outline load : stance.trailer().load()) {
            highest = Math.max(highest, load.highestM());
        }
        return highest;
    }

    /** An outline under construction, rear to front. */
    private static final class Line {
        private final List<FramePoint> points = new ArrayList<>();
        private double x = Double.NEGATIVE_INFINITY;

        void to(double toX, double h) {
            x = Math.max(points.isEmpty() ? toX : points.get(points.size() - 1).xM(), toX);
            points.add(new FramePoint(x, h));
        }

        /** A vertical face. */
        void up(double h) {
            points.add(new FramePoint(points.get(points.size() - 1).xM(), h));
        }

        Outline outline() {
            return new Outline(points);
        }
    }
}
