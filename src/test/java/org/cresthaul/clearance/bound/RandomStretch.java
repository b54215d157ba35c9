package org.cresthaul.clearance.bound;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CombinationShape.ChainUnit;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.posture.CombinationShape.UnitOutlines;
import org.cresthaul.posture.CoupledCombination;
import org.cresthaul.posture.PivotedGroup;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.PostureSolver.CoupledUnit;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.posture.WheelPaths;
import org.cresthaul.posture.WheelState;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.WheelPath;

/**
 * One unit of a random combination on a random stretch of a random road: what is said to bound it, and exact postures
 * in between, each solved alone. The stretches of a case are given by its seed.
 *
 * @param shares of the way, where the postures in between are; the first is 0 and the last 1
 * @param exact the unit there
 */
record RandomStretch(
        RandomCase of,
        UnitName unit,
        UnitOutlines outlines,
        double lengthM,
        Stretch on,
        MotionBounds motion,
        UnitBow bow,
        List<Double> shares,
        List<PlacedUnit> exact) {
    private static final int POSITIONS = 12;
    private static final int OF_EACH_CASE = 10;
    private static final double SHORTEST_M = 0.02;
    private static final double LONGEST_M = 10;
    /** A booster this far from its hinge's limits wherever it was looked at is taken to keep off them. */
    private static final double OFF_LIMIT_RAD = 0.01;

    /**
     * Gives so many places for a combination, each with its units, in every fifth with jeeps among them, to a check.
     */
    static void forEach(int places, Consumer<RandomStretch> check) {
        for (int i = 0; i < places / OF_EACH_CASE; i++) {
            RandomCase c =
                    switch (i % 10) {
                        case 4, 9 -> RandomCase.withJeeps(RandomCase.SEED + i);
                        case 2, 7 -> RandomCase.withBoosters(RandomCase.SEED + i);
                        default -> RandomCase.of(RandomCase.SEED + i);
                    };
            CombinationShape shape = new CombinationShape(
                    c.stance(), c.setting().lift(), c.setting().booster());
            Combination combination = new Combination(
                    c, new CoupledCombination(shape, c.setting(), c.leveling()), new WheelPaths(c.profile()));
            for (int k = 0; k < OF_EACH_CASE; k++) {
                combination.stretches().forEach(check);
            }
        }
    }

    int positions() {
        return exact.size();
    }

    /** The ends of the unit's undersides and topsides, and a vertex halfway. */
    List<FramePoint> somePoints() {
        List<FramePoint> some = new ArrayList<>();
        for (List<Outline> side : List.of(outlines.undersides(), outlines.topsides())) {
            List<FramePoint> points = side.get(0).points();
            some.add(points.get(0));
            some.add(points.get(points.size() / 2));
            some.add(points.get(points.size() - 1));
        }
        return some;
    }

    @Override
    public String toString() {
        return of + " " + unit + " over " + lengthM + " m from pivot " + exact.get(0).pivotX;
    }

    private record Combination(RandomCase of, CoupledCombination combination, WheelPaths ground, PostureSolver solver) {
        Combination(RandomCase of, CoupledCombination combination, WheelPaths ground) {
            this(of, combination, ground, new PostureSolver(combination, ground));
        }

        List<RandomStretch> stretches() {
            RandomGenerator random = of.random();
            double lengthM = SHORTEST_M * Math.pow(LONGEST_M / SHORTEST_M, random.nextDouble());
            double startM =
                    random.nextDouble(of.profile().startM() - 5, of.profile().endM() + 20);
            List<Double> shares = new ArrayList<>(List.of(0.0));
            for (int k = 1; k < POSITIONS; k++) {
                shares.add((k - 0.9 * random.nextDouble()) / POSITIONS);
            }
            shares.add(1.0);
            List<List<CoupledUnit>> placed = new ArrayList<>();
            int count = combination.groups().size();
            for (int unit = 0; unit < count; unit++) {
                placed.add(new ArrayList<>());
            }
            for (double t : shares) {
                PlacedUnit at = solver.tractorAt(startM + t * lengthM, 0);
                placed.get(0).add(new CoupledUnit(at, 0, WheelState.RIDING));
                for (int unit = 1; unit < count; unit++) {
                    CoupledUnit coupled = solver.behind(at, unit, at.pose.pitchRad());
                    placed.get(unit).add(coupled);
                    at = coupled.unit();
                }
            }
            List<RandomStretch> units = new ArrayList<>();
            RandomStretch ahead = tractor(startM, lengthM, shares, unitsOf(placed.get(0)));
            units.add(ahead);
            for (int unit = 1; unit < count && ahead.motion.known && keepsOffLimits(unit, placed.get(unit)); unit++) {
                ahead = behind(unit, ahead, unitsOf(placed.get(unit)));
                units.add(ahead);
            }
            return units;
        }

        private static List<PlacedUnit> unitsOf(List<CoupledUnit> coupled) {
            return coupled.stream().map(CoupledUnit::unit).toList();
        }

        private RandomStretch tractor(double startM, double lengthM, List<Double> shares, List<PlacedUnit> placed) {
            WheelPath steer = ground.rolled(combination.steerRadiusM(), AxleKind.STEER);
            PivotedGroup group = combination.groups().get(0);
            WheelPath[] drives = group.rolledOn(ground, PostureSolver.drives(group));
            Stretch on = new Stretch(group, drives, placed.get(0), placed.get(placed.size() - 1), lengthM);
            SteerBow pivot = SteerBow.of(steer, startM, startM + lengthM);
            MotionBounds motion = MotionBounds.of(on, pivot.motion());
            return unit(combination.shape().units().get(0), on, motion, pivot, shares, placed);
        }

        private boolean keepsOffLimits(int unit, List<CoupledUnit> placed) {
            if (unit <= combination.shape().trailerIndex()) {
                return true;
            }
            TrailingBooster joint = combination.shape().joint(unit);
            return placed.stream()
                    .allMatch(b -> b.state() == WheelState.RIDING
                            && b.bendRad() < joint.upRad() - OFF_LIMIT_RAD
                            && b.bendRad() > -joint.downRad() + OFF_LIMIT_RAD);
        }

        private RandomStretch behind(int unit, RandomStretch ahead, List<PlacedUnit> placed) {
            ChainUnit name = combination.shape().units().get(unit);
            FramePoint pivot = name.heldAt();
            Stretch on = new Stretch(
                    combination.groups().get(unit),
                    solver.paths(unit),
                    placed.get(0),
                    placed.get(placed.size() - 1),
                    ahead.lengthM);
            MotionBounds motion = MotionBounds.of(on, ahead.motion.at(ahead.on.a.pose, ahead.on.b.pose, pivot));
            PivotBow bow = ahead.bow.known ? ahead.bow.at(pivot.xM(), pivot.hM()) : null;
            return unit(name, on, motion, bow, ahead.shares, placed);
        }

        private RandomStretch unit(
                ChainUnit name,
                Stretch on,
                MotionBounds motion,
                PivotBow pivot,
                List<Double> shares,
                List<PlacedUnit> placed) {
            UnitBow bow = pivot == null ? UnitBow.unknown() : UnitBow.of(on, motion, pivot);
            return new RandomStretch(of, name.name(), name.outlines(), on.lengthM, on, motion, bow, shares, placed);
        }
    }
}
