package org.cresthaul.axleload;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.Weights;
import org.cresthaul.rig.Weights.MassPoint;

/** Invented weights for invented stances: loads anywhere on the deck, off-center, even where no one would put them. */
final class RandomWeights {
    /** Of a booster behind another: so much on each axle for every pascal. */
    static final double KG_PER_PA = 0.02;

    private static final double MOST_PA = 600_000;
    private static final ChartPoints CHART = new ChartPoints(
            List.of(new ChartPoints.Point(0, 0), new ChartPoints.Point(MOST_PA, KG_PER_PA * MOST_PA)), 0.05);

    private RandomWeights() {}

    private static double between(RandomGenerator random, double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    static Weights of(LevelStance stance, RandomGenerator random) {
        Trailer trailer = stance.trailer();
        List<Weights.Piece> pieces = new ArrayList<>();
        for (int i = random.nextInt(0, 4); i > 0; i--) {
            pieces.add(new Weights.Piece(
                    "piece " + i,
                    new MassPoint(
                            between(random, 100, 40_000),
                            between(
                                    random,
                                    trailer.deckRear().xM(),
                                    trailer.deckFront().xM()),
                            between(random, 0.5, 3),
                            between(random, -0.4, 0.4)),
                    Optional.empty()));
        }
        double steerXM = stance.tractor().steer().xM();
        MassPoint onDeck = point(
                random, 2_500, trailer.deckRear().xM(), trailer.deckFront().xM());
        Optional<Weights.BoosterWeight> booster = stance.booster()
                .map((Booster b) -> new Weights.BoosterWeight(
                        point(random, 2_500, b.lastAxle().xM(), b.hingeXM()), Optional.of(onDeck)));
        return new Weights(
                0.01,
                "invented",
                point(random, 9_000, steerXM - 5, steerXM),
                stance.jeeps().stream()
                        .map(j -> point(random, 4_000, j.axles().axles().get(0).xM() - 1, j.kingpinXM()))
                        .toList(),
                point(
                        random,
                        9_000,
                        trailer.deckRear().xM() - 2,
                        trailer.deckFront().xM()),
                point(random, 3_000, trailer.deckFront().xM(), trailer.kingpinXM()),
                booster,
                stance.boostersBehind().stream()
                        .map(b -> new Weights.BoosterBehind(
                                point(random, 2_500, b.lastAxle().xM(), b.hingeXM()),
                                CHART,
                                random.nextDouble() * MOST_PA))
                        .toList(),
                pieces,
                Map.of(
                        AxleKind.STEER,
                        2.0,
                        AxleKind.DRIVE,
                        1.85,
                        AxleKind.JEEP,
                        1.9,
                        AxleKind.TRAILER,
                        2.1,
                        AxleKind.BOOSTER,
                        2.0),
                new Weights.Ratings(Map.of(), Map.of(), OptionalDouble.empty()),
                OptionalDouble.empty(),
                Weights.Gauges.NONE,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static MassPoint point(RandomGenerator random, double aboutKg, double fromXM, double toXM) {
        return new MassPoint(
                aboutKg * between(random, 0.7, 1.3),
                between(random, fromXM, toXM),
                between(random, 0.5, 1.5),
                between(random, -0.1, 0.1));
    }
}
