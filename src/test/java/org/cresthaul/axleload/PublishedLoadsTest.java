package org.cresthaul.axleload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.posture.RandomRigs;
import org.cresthaul.rig.AirSpring;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Weights;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Values from outside this program, each with its source. P: read in the source; M: from memory of it; F: computed from
 * a published formula or rule, independently of this program.
 */
class PublishedLoadsTest {
    static final double LB = 0.45359237;
    static final double PSI = 0.45359237 * 9.80665 / (0.0254 * 0.0254);
    private static final double FOOT = 0.3048;
    private static final double INCH = 0.0254;

    /** W1: 23 CFR 658.17 (F); nearest 500 lb with ties down, FHWA-HOP-19-028 (P, secondary). */
    @ParameterizedTest(name = "{0} ft, {1} axles")
    @CsvSource({"9,3,42500", "11,3,44000", "18,5,59000", "30,5,66500", "46,5,76500"})
    void bridgeFormulaRoundsTiesDown(int feet, int axles, int pounds) {
        assertEquals(pounds, BridgeFormula.pounds(feet, axles));
    }

    /** W2: 23 CFR 658.17 (F). */
    @ParameterizedTest(name = "{0} ft, {1} axles")
    @CsvSource({
        "4,2,34000",
        "10,2,40000",
        "8,3,42000",
        "20,3,51000",
        "32,3,60000",
        "12,4,50000",
        "35,4,65500",
        "57,4,80000",
        "16,5,58000",
        "51,5,80000",
        "60,5,85500",
        "43,6,80000",
        "50,6,84000",
        "34,7,80000",
        "60,7,95000"
    })
    void bridgeFormula(int feet, int axles, int pounds) {
        assertEquals(pounds, BridgeFormula.pounds(feet, axles));
    }

    private static List<AxlePlace> axlesAt(double... xM) {
        List<AxlePlace> places = new ArrayList<>();
        for (int i = 0; i < xM.length; i++) {
            places.add(new AxlePlace(AxleKind.TRAILER, AxleKind.TRAILER, i + 1, xM[i]));
        }
        return places;
    }

    /** Least that any rule allows on the axles {@code first} to {@code last}, pounds. */
    private static double federalLb(List<AxlePlace> places, int first, int last) {
        return WeightLimits.federal().boundsOn(places).stream()
                        .filter(b -> b.first() == first && b.last() == last)
                        .mapToDouble(LoadBound::limitKg)
                        .min()
                        .orElseThrow()
                / LB;
    }

    /** W3: 23 CFR 658.17, FHWA questions and answers (P). Exact. */
    @Test
    void tandemsSinglesAndGross() {
        assertEquals(20_000, federalLb(axlesAt(0, -12 * FOOT), 0, 0), 1e-6);
        assertEquals(20_000, federalLb(axlesAt(0, -40 * INCH), 0, 1), 1e-6);
        assertEquals(34_000, federalLb(axlesAt(0, -40.1 * INCH), 0, 1), 1e-6);
        assertEquals(34_000, federalLb(axlesAt(0, -96 * INCH), 0, 1), 1e-6);
        assertEquals(38_000, federalLb(axlesAt(0, -96.1 * INCH), 0, 1), 1e-6);
        double[] long13 = new double[13];
        for (int i = 0; i < long13.length; i++) {
            long13[i] = -i * 10 * FOOT;
        }
        assertEquals(80_000, federalLb(axlesAt(long13), 0, 12), 1e-6);
    }

    /** W4: 23 CFR 658.17 (P). Exact. */
    @Test
    void twoTandemsMayCarry68000From36Feet() {
        for (int feet : new int[] {35, 36, 37, 38, 39}) {
            double[] at = {0, -4 * FOOT, -(feet - 4) * FOOT, -feet * FOOT};
            int formula = Map.of(35, 65_500, 36, 66_000, 37, 66_500, 38, 67_500, 39, 68_000)
                    .get(feet);
            assertEquals(formula, BridgeFormula.pounds(feet, 4));
            assertEquals(feet == 35 ? 65_500 : 68_000, federalLb(axlesAt(at), 0, 3), 1e-6, feet + " ft");
        }
        assertEquals(2_500, 68_000 - federalLb(axlesAt(0, -4 * FOOT, -31 * FOOT, -35 * FOOT), 0, 3), 1e-6);
        // Neither group of this one is a tandem: no exception.
        assertEquals(66_000, federalLb(axlesAt(0, -9 * FOOT, -27 * FOOT, -36 * FOOT), 0, 3), 1e-6);
    }

    /** W5: 23 CFR 658.17 (P, F); that a lifted axle is not counted: M. Exact. */
    @Test
    void threeCloseAxlesAndTheLastLifted() {
        assertEquals(42_500, federalLb(axlesAt(0, -54.5 * INCH, -109 * INCH), 0, 2), 1e-6);
        assertEquals(34_000, federalLb(axlesAt(0, -54.5 * INCH), 0, 1), 1e-6);

        LevelStance stance = stanceWithBooster();
        Weights weights = RandomWeights.of(stance, new java.util.SplittableRandom(3));
        int down = new Statics(stance, weights, LiftState.DOWN, BoosterState.NONE, 0)
                .places()
                .size();
        int up = new Statics(stance, weights, LiftState.UP, BoosterState.NONE, 0)
                .places()
                .size();
        assertEquals(1, down - up);
    }

    /** W6: air-spring engineering manual p. 56 (P). Within 5 lb and 0.01. */
    @Test
    void airSpringCarriesPressureTimesArea() {
        AirSpring spring = AirSpring.of(7_045 * LB, 100 * PSI);
        assertEquals(70.45, spring.areaKgPerPa() * PSI / LB, 0.01);
        assertEquals(6_340, spring.loadKg(90 * PSI) / LB, 5);
        assertEquals(1.36, spring.armRatio(20_000 * LB, 800 * LB, 100 * PSI), 0.01);
        assertEquals(20_000, spring.axleKg(100 * PSI, 9_600.0 / 7_045, 800 * LB) / LB, 5);
    }

    /**
     * W7: axles sharing air carry equal load; accepted within 10 % of the group's mean (California lift-axle test, P).
     */
    @Test
    void axlesThatShareAirCarryTheSame() {
        java.util.SplittableRandom random = new java.util.SplittableRandom(5);
        int groups = 0;
        for (int i = 0; i < 300; i++) {
            LevelStance stance = RandomRigs.stance(random);
            Weights weights = RandomWeights.of(stance, random);
            AxleLoads loads = new Statics(stance, weights, LiftState.DOWN, BoosterState.NONE, 0).onGrade(0.03);
            for (AxleKind kind : new AxleKind[] {AxleKind.DRIVE, AxleKind.TRAILER}) {
                double mean = loads.perAxleKg(kind).orElseThrow();
                for (AxleLoads.AxleLoad axle : loads.axles()) {
                    if (axle.place().group().kind() == kind) {
                        assertEquals(mean, axle.loadKg(), 0.10 * Math.abs(mean));
                        assertEquals(mean, axle.loadKg(), 1e-9 * Math.abs(mean));
                        groups++;
                    }
                }
            }
        }
        assertTrue(groups > 600);
    }

    private static LevelStance stanceWithBooster() {
        java.util.SplittableRandom random = new java.util.SplittableRandom(11);
        LevelStance stance = RandomRigs.stance(random);
        while (stance.booster().isEmpty()
                || !stance.boosterStates().contains(BoosterState.TRAILING)
                || stance.trailer().lift().isEmpty()
                || stance.trailer().axles().axles().size() != 3) {
            stance = RandomRigs.stance(random);
        }
        return stance;
    }

    /** W8: common practice, no source: 80,000 lb behind, 20,000 lb on the booster, leaves 60,000 lb on three axles. */
    @Test
    void regulatedBoosterEvensOutFourAxles() {
        LevelStance stance = stanceWithBooster();
        Weights random = RandomWeights.of(stance, new java.util.SplittableRandom(12));
        // The piece that makes the rear 80,000 lb: the group's load is straight in its weight.
        double xM = stance.trailer().deckRear().xM();
        double withoutKg = rearKg(stance, piece(random, 0, xM));
        double withOneKg = rearKg(stance, piece(random, 1_000, xM));
        double pieceKg = 1_000 * (80_000 * LB - withoutKg) / (withOneKg - withoutKg);
        AxleLoads loads = new Statics(
                        stance, piece(random, pieceKg, xM), LiftState.DOWN, BoosterState.TRAILING, 20_000 * LB)
                .level();
        assertEquals(80_000, rearKg(loads) / LB, 1e-6);
        assertEquals(60_000, loads.groupKg(AxleKind.TRAILER) / LB, 1e-6);
        assertEquals(4, loads.axles().stream().filter(a -> isRear(a.place())).count());
        for (AxleLoads.AxleLoad axle : loads.axles()) {
            if (isRear(axle.place())) {
                assertEquals(20_000, axle.loadKg() / LB, 1e-6);
            }
        }
    }

    private static boolean isRear(AxlePlace place) {
        return place.group().kind() == AxleKind.TRAILER || place.group().kind() == AxleKind.BOOSTER;
    }

    private static Weights piece(Weights weights, double massKg, double xM) {
        return weights.withPieces(
                List.of(new Weights.Piece("machine", new Weights.MassPoint(massKg, xM, 2, 0), Optional.empty())));
    }

    private static double rearKg(LevelStance stance, Weights weights) {
        return rearKg(new Statics(stance, weights, LiftState.DOWN, BoosterState.TRAILING, 20_000 * LB).level());
    }

    private static double rearKg(AxleLoads loads) {
        return loads.groupKg(AxleKind.TRAILER) + loads.groupKg(AxleKind.BOOSTER);
    }

    /** W9: common practice, no source: 60 psi is 19,000 lb on each axle with three down. Both ways. */
    @Test
    void gaugeChartReadsBothWays() {
        GaugeChart chart = new GaugeChart(new ChartPoints(
                List.of(
                        new ChartPoints.Point(10 * PSI, 4_500 * LB),
                        new ChartPoints.Point(60 * PSI, 19_000 * LB),
                        new ChartPoints.Point(80 * PSI, 25_000 * LB)),
                0.05));
        assertEquals(19_000, chart.loadKg(60 * PSI).orElseThrow() / LB, 1e-9);
        assertEquals(60, chart.pressurePa(19_000 * LB).orElseThrow() / PSI, 1e-9);
        for (double psi = 10; psi <= 80; psi += 0.37) {
            double back =
                    chart.pressurePa(chart.loadKg(psi * PSI).orElseThrow()).orElseThrow() / PSI;
            assertEquals(psi, back, 1e-9);
        }
        assertTrue(chart.loadKg(9.9 * PSI).isEmpty()
                && chart.pressurePa(25_001 * LB).isEmpty());
    }

    /** W11: common practice, no source: a take-off of 2,700 to 3,000 psi lifts the full load behind the gooseneck. */
    @Test
    void takeOffLiftsTheFullLoadBehindTheGooseneck() {
        double ratedKg = 50_000 * LB;
        Weights.FrontLift lift = new Weights.FrontLift(2_700 * PSI, ratedKg, 2_700 * PSI);
        assertEquals(2_700, Hydraulics.neededPa(lift, ratedKg) / PSI, 1e-9);
        assertEquals(1_350, Hydraulics.neededPa(lift, ratedKg / 2) / PSI, 1e-9);
        assertTrue(Hydraulics.raises(lift, ratedKg));
        assertFalse(Hydraulics.raises(lift, ratedKg * 1.001));
        assertTrue(Hydraulics.raises(new Weights.FrontLift(2_700 * PSI, ratedKg, 3_000 * PSI), ratedKg * 1.1));
    }

    /**
     * W12: common practice, no source: a plate only under load, sized so that both frames stand level with each other.
     */
    @Test
    void shimKeepsTheBeamsParallel() {
        Weights.ShimSet shims = new Weights.ShimSet(
                "thick",
                List.of(
                        new Weights.ShimPlate("none", 0, 0, 8_000 * LB),
                        new Weights.ShimPlate("thin", 0.25 * INCH, 6_000 * LB, 14_000 * LB),
                        new Weights.ShimPlate("thick", 0.5 * INCH, 12_000 * LB, 22_000 * LB)),
                20 * INCH,
                Math.atan(0.5 / 20),
                20_000 * LB);
        BoosterBeam beam = new BoosterBeam(shims);
        List<BoosterBeam.Pairing> loaded = beam.pairings(20_000 * LB);
        List<BoosterBeam.Pairing> empty = beam.pairings(0);
        assertEquals(0, loaded.get(2).angleRad(), 1e-12);
        assertTrue(loaded.get(2).allowed() && loaded.get(2).trouble().isEmpty());
        assertEquals(0, empty.get(0).angleRad(), 1e-12);
        assertTrue(empty.get(0).allowed() && empty.get(0).trouble().isEmpty());
        assertFalse(loaded.get(0).allowed());
        assertTrue(loaded.get(0).angleRad() > BoosterBeam.PARALLEL_RAD);
        assertTrue(
                loaded.get(0).trouble().contains("tail stands up"),
                loaded.get(0).trouble());
        assertFalse(empty.get(2).allowed());
        assertTrue(empty.get(2).angleRad() < -BoosterBeam.PARALLEL_RAD);
        assertTrue(
                empty.get(2).trouble().contains("tail points down"),
                empty.get(2).trouble());
    }

    /** W12: the least load that keeps an empty booster's tires from skipping is a bound like any other. */
    @Test
    void anAxleTooLightToBrakeIsFound() {
        List<AxlePlace> places = axlesAt(0, -1.4);
        Weights some = RandomWeights.of(stanceWithBooster(), new java.util.SplittableRandom(1));
        Weights weights = new Weights(
                0,
                "invented",
                some.tractor(),
                some.jeeps(),
                some.trailer(),
                some.gooseneck(),
                some.booster(),
                some.boostersBehind(),
                some.pieces(),
                Map.of(),
                some.ratings(),
                OptionalDouble.of(2_000 * LB),
                some.gauges(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        LoadBound bound = RatingBounds.on(places, weights).get(0);
        assertTrue(bound.least());
        assertTrue(new LoadTest(bound, 2_000 * LB).isKept());
        assertFalse(new LoadTest(bound, 1_999 * LB).isKept());
    }
}
