package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.rig.PlanDimensions.Tires;
import org.cresthaul.rig.PlanDimensions.Widths;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.Approach;
import org.cresthaul.road.CrossSection;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.SurveyedPoint;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One crossing, complete: three wheel paths of 40 points, five of seven notches, two and three axles, leveling held and
 * settled, which is 60 least ground clearances. The engine proves each within 1 mm; the independent solver of the tests
 * is run at the same 1 mm, both as it is usually meant (every position at the one step that guarantees 1 mm) and with
 * its own interval halving. Compare only numbers of one run on one machine.
 */
@State(Scope.Benchmark)
@Fork(1)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class CrossingBenchmark {
    private static final double ACCURACY_M = 0.001;
    private static final int POINTS = 40;

    /** {@code hump}: a rail crossing; {@code noisy}: nearly flat, every point a little off; {@code crest}: a curve. */
    @Param({"hump", "noisy", "crest"})
    public String crossing;

    private static final Tires TIRES = new Tires(0.66, 0.3);
    private static final PlanDimensions PLAN = new PlanDimensions(
            new Widths(2.5, 2.5, TIRES),
            0.7,
            5,
            TIRES,
            Optional.empty(),
            OptionalDouble.empty(),
            new Widths(2.6, 2.6, TIRES),
            OptionalDouble.empty(),
            1.4,
            Optional.empty(),
            OptionalDouble.empty());

    private LevelStance stance;
    private List<RoadProfile> paths;
    private List<Setting> settings;

    /** As a check asks: the margin, and only whether contact is excluded. */
    private static final List<Demand> BETWEEN_UNITS =
            List.of(new Demand(0.0254, 0.015, 0.014, true), new Demand(0, 0.015, 0.014, false));

    @Setup
    public void setUp() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(RandomCase.SEED);
        stance = lowbed();
        paths = new ArrayList<>();
        for (String name : List.of("left", "center", "right")) {
            paths.add(path(name, random));
        }
        settings = new ArrayList<>();
        for (LiftState lift : stance.liftStates()) {
            for (int notch = -2; notch <= 2; notch++) {
                settings.add(new Setting(lift, BoosterState.NONE, 0.015875 * notch, 0, 0));
            }
        }
        requireEqualAccuracy();
    }

    /** What is timed must be right: both must give the same clearances. */
    private void requireEqualAccuracy() {
        for (RoadProfile path : paths) {
            Passage passage = new Passage(stance, path);
            for (Setting setting : settings) {
                for (Leveling leveling : Leveling.values()) {
                    Clearance engine = GroundClearance.least(passage, setting, leveling);
                    double brute = BruteForceClearance.overGround(stance, setting, leveling, path)
                            .least(ACCURACY_M)
                            .valueM();
                    if (!engine.proven() || Math.abs(engine.valueM() - brute) > ACCURACY_M) {
                        throw new IllegalStateException(engine + " against " + brute + " m");
                    }
                }
            }
        }
    }

    /** The engine: what is the same for every setting is computed once per wheel path. */
    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Warmup(iterations = 5, time = 1)
    @Measurement(iterations = 8, time = 1)
    public double engine() {
        double least = Double.POSITIVE_INFINITY;
        for (RoadProfile path : paths) {
            Passage passage = new Passage(stance, path);
            for (Setting setting : settings) {
                for (Leveling leveling : Leveling.values()) {
                    least = Math.min(
                            least,
                            GroundClearance.least(passage, setting, leveling).valueM());
                }
            }
        }
        return least;
    }

    /** The same, and what is left between the units in each setting. */
    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Warmup(iterations = 5, time = 1)
    @Measurement(iterations = 8, time = 1)
    public double engineAndUnits() {
        double least = Double.POSITIVE_INFINITY;
        for (RoadProfile path : paths) {
            Passage passage = new Passage(stance, path);
            for (Setting setting : settings) {
                for (Leveling leveling : Leveling.values()) {
                    least = Math.min(
                            least,
                            GroundClearance.least(passage, setting, leveling).valueM());
                    least = Math.min(
                            least,
                            new UnitSearch(passage, setting, leveling)
                                    .look(BETWEEN_UNITS)
                                    .least()
                                    .orElseThrow()
                                    .valueM());
                }
            }
        }
        return least;
    }

    /**
     * The three paths as one road, clearance under the whole width: about ten times the ways and places of one line.
     */
    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Warmup(iterations = 5, time = 1)
    @Measurement(iterations = 8, time = 1)
    public double engineAcross() {
        List<RoadProfile> lines = new ArrayList<>();
        for (int i = 0; i < paths.size(); i++) {
            RoadProfile path = paths.get(i);
            lines.add(RoadProfile.of(
                    path.name(), OptionalDouble.of(1.5 * (i - 1)), path.points(), path.before(), path.after()));
        }
        LevelStance wide = stance.withPlan(PLAN);
        List<RoadPlace> places = new AcrossRoad(CrossSection.of(lines).orElseThrow(), wide).underUnits();
        Map<Double, Passage> ways = new HashMap<>();
        List<Passage> passages = new ArrayList<>();
        for (RoadPlace place : places) {
            passages.add(ways.computeIfAbsent(
                            place.drivenRightM(),
                            d -> new Passage(
                                    wide,
                                    place,
                                    lines.get(0).startM(),
                                    lines.get(0).endM()))
                    .at(place));
        }
        double least = Double.POSITIVE_INFINITY;
        for (Setting setting : settings) {
            for (Passage passage : passages) {
                for (Leveling leveling : Leveling.values()) {
                    least = Math.min(
                            least,
                            GroundClearance.least(passage, setting, leveling).valueM());
                }
            }
        }
        return least;
    }

    /** The independent solver at every position of one small step. */
    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 1)
    @Measurement(iterations = 2)
    public double bruteForce() {
        double least = Double.POSITIVE_INFINITY;
        for (RoadProfile path : paths) {
            for (Setting setting : settings) {
                for (Leveling leveling : Leveling.values()) {
                    least = Math.min(
                            least,
                            BruteForceClearance.overGround(stance, setting, leveling, path)
                                    .denseScan(ACCURACY_M)
                                    .valueM());
                }
            }
        }
        return least;
    }

    /** The independent solver with interval halving, as the tests run it. */
    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 3)
    @Measurement(iterations = 4)
    public double bruteForceHalving() {
        double least = Double.POSITIVE_INFINITY;
        for (RoadProfile path : paths) {
            for (Setting setting : settings) {
                for (Leveling leveling : Leveling.values()) {
                    least = Math.min(
                            least,
                            BruteForceClearance.overGround(stance, setting, leveling, path)
                                    .least(ACCURACY_M)
                                    .valueM());
                }
            }
        }
        return least;
    }

    private RoadProfile path(String name, RandomGenerator random) {
        List<SurveyedPoint> points = new ArrayList<>();
        for (int i = 0; i < POINTS; i++) {
            double s = -19.5 + i;
            double noiseM = 0.003 * random.nextGaussian();
            double z =
                    switch (crossing) {
                        // A plane 2.8 m wide at rail height, 5 % down on both sides for 8 m, then 1.5 %.
                        case "hump" ->
                            -0.05 * Math.min(8, Math.max(0, Math.abs(s) - 1.4))
                                    - 0.015 * Math.max(0, Math.abs(s) - 9.4)
                                    + noiseM;
                        case "noisy" -> 2 * noiseM;
                        case "crest" -> -s * s / 800;
                        default -> throw new IllegalArgumentException(crossing);
                    };
            points.add(new SurveyedPoint(s, z));
        }
        return RoadProfile.of(name, points, Approach.undeclared(), Approach.undeclared());
    }

    /** An invented three-axle lowbed, loaded, behind a tandem tractor. */
    private static LevelStance lowbed() {
        Tractor tractor = new Tractor(
                new Axle(0, 0.51),
                new AxleGroup(List.of(new Axle(-4.9, 0.5), new Axle(-6.25, 0.5)), 0.08, 0.1),
                new FramePoint(-5.35, 1.22),
                outline(
                        -7, 0.7, -6.3, 0.32, -4.8, 0.32, -4.4, 0.55, -3.4, 0.5, -3.4, 0.3, -1.2, 0.32, 0, 0.3, 1.2,
                        0.28),
                outline(-7, 1.05, -3.6, 1.1, -3.6, 3.4, 0.3, 3.5, 1.2, 1.8));
        Trailer trailer = new Trailer(
                0,
                new FramePoint(-3.1, 0.61, "deck front"),
                new FramePoint(-10.7, 0.61, "deck rear"),
                new AxleGroup(List.of(new Axle(-12.1, 0.42), new Axle(-13.5, 0.42), new Axle(-14.9, 0.42)), 0.08, 0.1),
                0,
                LiftAxles.one(2, 0.06, 0.038),
                0.25,
                0.075,
                0.012,
                outline(
                        -15.6, 0.5, -14.9, 0.35, -11.4, 0.35, -10.8, 0.5, -10.8, 0.16, -7, 0.15, -3.3, 0.16, -3.0, 1.1,
                        0, 1.22, 0.5, 1.3),
                outline(-15.6, 1, -11, 1, -10.7, 0.61, -3.2, 0.61, -3.2, 1.5, 0.5, 1.6),
                List.of(outline(-10.5, 0.7, -10, 3.2, -6, 3.9, -3.6, 2.4)),
                Optional.empty());
        return new LevelStance("loaded", tractor, trailer, Optional.empty());
    }

    private static Outline outline(double... xh) {
        List<FramePoint> points = new ArrayList<>();
        for (int i = 0; i < xh.length; i += 2) {
            points.add(new FramePoint(xh[i], xh[i + 1]));
        }
        return new Outline(points);
    }
}
