package org.cresthaul.axleload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.DoubleFunction;
import org.cresthaul.posture.RandomRigs;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Weights;
import org.junit.jupiter.api.Test;

/** The window of places against the dumb way: try every place. */
class LoadWindowTest {
    private static final int PLACES = 2_000;

    @Test
    void agreesWithTryingEveryPlace() {
        SplittableRandom random = new SplittableRandom(99);
        int windows = 0;
        int none = 0;
        for (int rig = 0; rig < 600; rig++) {
            LevelStance stance = RandomRigs.stance(random);
            Weights weights = RandomWeights.of(stance, random);
            double massKg = 5_000 + random.nextDouble() * 30_000;
            List<LoadBound> bounds = new ArrayList<>(RatingBounds.on(
                    new Statics(stance, weights, LiftState.DOWN, BoosterState.NONE, 0).places(), weights));
            WeightLimits limits = new WeightLimits(
                    "random",
                    "invented",
                    java.time.LocalDate.EPOCH,
                    OptionalDouble.empty(),
                    OptionalDouble.of(7_000 + random.nextDouble() * 7_000),
                    OptionalDouble.of(5_000 + random.nextDouble() * 2_000),
                    new TreeMap<>(),
                    new TreeMap<>(),
                    List.of(),
                    random.nextInt(4) == 0);
            bounds.addAll(limits.boundsOn(new Statics(stance, weights, LiftState.DOWN, BoosterState.NONE, 0).places()));
            DoubleFunction<AxleLoads> at = xM -> new Statics(
                            stance,
                            weights.withPieces(List.of(new Weights.Piece(
                                    "machine", new Weights.MassPoint(massKg, xM, 2, 0), Optional.empty()))),
                            LiftState.DOWN,
                            BoosterState.NONE,
                            0)
                    .level();
            double from = stance.trailer().deckRear().xM();
            double to = stance.trailer().deckFront().xM();

            LoadWindow window = LoadWindow.of(at, from, to, bounds);

            double least = Double.NaN;
            double most = Double.NaN;
            double best = Double.NEGATIVE_INFINITY;
            double step = (to - from) / PLACES;
            for (int i = 0; i <= PLACES; i++) {
                double xM = from + i * step;
                AxleLoads loads = at.apply(xM);
                double margin = bounds.stream()
                        .mapToDouble(b -> b.relativeMargin(b.loadKg(loads)))
                        .min()
                        .orElseThrow();
                if (margin >= 0) {
                    least = Double.isNaN(least) ? xM : least;
                    most = xM;
                    best = Math.max(best, margin);
                }
            }
            if (Double.isNaN(least)) {
                assertTrue(
                        window.allowed().isEmpty()
                                || window.allowed().get().to()
                                                - window.allowed().get().from()
                                        < step,
                        "rig " + rig);
                none += window.allowed().isEmpty() ? 1 : 0;
                window.conflict().ifPresent(c -> assertTrue(c.isOne() || c.lowAt() > c.highAt(), c.toString()));
            } else {
                LoadWindow.Range range = window.allowed().orElseThrow();
                assertTrue(range.from() <= least + 1e-9 && range.from() > least - step - 1e-9, "rig " + rig);
                assertTrue(range.to() >= most - 1e-9 && range.to() < most + step + 1e-9, "rig " + rig);
                LoadWindow.Best found = window.best().orElseThrow();
                assertTrue(found.relativeMargin() >= best - 1e-9, found + " but " + best);
                AxleLoads loads = at.apply(found.at());
                double margin = bounds.stream()
                        .mapToDouble(b -> b.relativeMargin(b.loadKg(loads)))
                        .min()
                        .orElseThrow();
                assertEquals(margin, found.relativeMargin(), 1e-9);
                windows++;
            }
        }
        System.out.println("windows " + windows + ", none " + none);
        assertTrue(windows > 100 && none > 100, windows + " and " + none);
    }

    /**
     * What the regulator sets may be off by its chart's accuracy: every setting in the window keeps every bound at both
     * ends.
     */
    @Test
    void holdsAlsoWhenWhatIsSetIsOff() {
        SplittableRandom random = new SplittableRandom(98);
        int windows = 0;
        int narrower = 0;
        for (int rig = 0; rig < 1_500; rig++) {
            LevelStance stance = RandomRigs.stance(random);
            double off = 0.02 + 0.2 * random.nextDouble();
            if (stance.booster().isEmpty() || !stance.boosterStates().contains(BoosterState.TRAILING)) {
                continue;
            }
            Weights weights = RandomWeights.of(stance, random);
            DoubleFunction<AxleLoads> at =
                    kg -> new Statics(stance, weights, LiftState.DOWN, BoosterState.TRAILING, kg).level();
            List<LoadBound> bounds = new ArrayList<>(RatingBounds.on(
                    new Statics(stance, weights, LiftState.DOWN, BoosterState.TRAILING, 0).places(), weights));
            bounds.addAll(new WeightLimits(
                            "random",
                            "invented",
                            java.time.LocalDate.EPOCH,
                            OptionalDouble.empty(),
                            OptionalDouble.of(5_000 + random.nextDouble() * 9_000),
                            OptionalDouble.empty(),
                            new TreeMap<>(),
                            new TreeMap<>(),
                            List.of(),
                            false)
                    .boundsOn(new Statics(stance, weights, LiftState.DOWN, BoosterState.TRAILING, 0).places()));
            double from = 500;
            double to = 12_000;
            LoadWindow window = LoadWindow.of(at, from, to, bounds, off);
            int steps = 400;
            for (int i = 0; i <= steps; i++) {
                double kg = from + (to - from) * i / steps;
                double margin =
                        Math.min(least(bounds, at.apply(kg * (1 - off))), least(bounds, at.apply(kg * (1 + off))));
                boolean in = window.allowed().isPresent()
                        && kg >= window.allowed().get().from() - 1e-6
                        && kg <= window.allowed().get().to() + 1e-6;
                assertTrue(
                        in ? margin >= -1e-6 : margin <= 1e-6,
                        "rig " + rig + " " + kg + " kg, " + margin + " " + window.allowed());
            }
            Optional<LoadWindow.Range> plain =
                    LoadWindow.of(at, from, to, bounds).allowed();
            windows += window.allowed().isPresent() ? 1 : 0;
            narrower += plain.isPresent() && !plain.equals(window.allowed()) ? 1 : 0;
        }
        System.out.println("windows " + windows + ", narrower than without " + narrower);
        assertTrue(windows > 50 && narrower > 50, windows + " and " + narrower);
    }

    private static double least(List<LoadBound> bounds, AxleLoads loads) {
        return bounds.stream()
                .mapToDouble(b -> b.relativeMargin(b.loadKg(loads)))
                .min()
                .orElseThrow();
    }
}
