package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.WheelPath;

/**
 * The quasi-static posture of a combination on one line of ground, by exact rigid-body rotation.
 *
 * <p>Every rule is met within {@value PivotedGroup#SOLVED_M} m. Safe to share between threads.
 */
public final class PostureSolver {
    private static final double BEND_SOLVED_RAD = 1e-9;
    /** No hinge bends so far: a pitch found there is none, such as one a full turn away. */
    private static final double NO_BEND_RAD = 0.5 * Math.PI;

    private final CoupledCombination combination;
    private final WheelPath steerPath;
    private final WheelPath[] drivePaths;
    private final WheelPath[] trailerPaths;
    private final WheelPath[] boosterPaths;
    private final Optional<WheelPath> liftedPath;

    /**
     * A solver for one setting on one line.
     *
     * @throws IllegalArgumentException when the stance does not have the setting's lift or booster state
     */
    public PostureSolver(LevelStance stance, Setting setting, Leveling leveling, RoadProfile line) {
        this(
                new CoupledCombination(
                        new CombinationShape(stance, setting.lift(), setting.booster()), setting, leveling),
                new WheelPaths(line));
    }

    public PostureSolver(CoupledCombination combination, WheelPaths ground) {
        this.combination = combination;
        steerPath = ground.rolled(combination.steerRadiusM(), AxleKind.STEER);
        drivePaths = combination.tractor().rolledOn(ground, drives(combination.tractor()));
        trailerPaths =
                combination.trailer().rolledOn(ground, combination.shape().axleKinds());
        boosterPaths = combination
                .booster()
                .map(b -> b.rolledOn(ground, List.of(AxleKind.BOOSTER)))
                .orElse(null);
        liftedPath = combination.shape().raisedTire().map(c -> ground.rolled(c.radiusM(), AxleKind.TRAILER));
    }

    public static List<AxleKind> drives(PivotedGroup tractor) {
        return Collections.nCopies(tractor.size(), AxleKind.DRIVE);
    }

    public WheelPath[] trailerPaths() {
        return trailerPaths;
    }

    public WheelPath[] boosterPaths() {
        return boosterPaths;
    }

    public Optional<WheelPath> liftedPath() {
        return liftedPath;
    }

    public PlacedUnit tractorAt(double steerM, double guessRad) {
        return combination.tractor().place(drivePaths, steerM, steerPath.heightAt(steerM), guessRad);
    }

    public PlacedUnit trailerAt(PlacedUnit tractor, double guessRad) {
        double x = tractor.pose.worldXM(combination.fifthWheel());
        double z = tractor.pose.worldZM(combination.fifthWheel());
        return combination.trailer().place(trailerPaths, x, z, guessRad);
    }

    /** The trailing booster behind a placed trailer, its hinge within limits. */
    public PlacedBooster boosterAt(PlacedUnit trailer, double guessRad) {
        PivotedGroup group = combination.booster().orElseThrow();
        TrailingBooster joint = combination.shape().trailing().orElseThrow();
        double x = trailer.pose.worldXM(joint.hinge());
        double z = trailer.pose.worldZM(joint.hinge());
        PlacedUnit free = group.place(boosterPaths, x, z, guessRad);
        double bend = free.pose.pitchRad() - trailer.pose.pitchRad();
        if (!free.solved || Math.abs(bend) > NO_BEND_RAD) {
            return atLimit(trailer, group, joint, x, z);
        }
        if (bend > joint.upRad()) {
            return fixedTo(trailer, group, x, z, joint.upRad(), bend, WheelState.HANGING);
        }
        // A carrying booster holds the trailer at exactly this bend, give or take what the solver leaves.
        if (bend <= -joint.downRad() + BEND_SOLVED_RAD) {
            return fixedTo(trailer, group, x, z, -joint.downRad(), bend, WheelState.SOLID);
        }
        return new PlacedBooster(free, bend, WheelState.RIDING);
    }

    /**
     * Where no pitch of its own brings a booster's wheel to the ground: it hangs, or it stands with its hinge on the
     * stop.
     */
    private PlacedBooster atLimit(PlacedUnit trailer, PivotedGroup group, TrailingBooster joint, double x, double z) {
        PlacedBooster hanging = fixedTo(trailer, group, x, z, joint.upRad(), joint.upRad(), WheelState.HANGING);
        if (wheelGapM(hanging.unit) > 0) {
            return hanging;
        }
        PlacedBooster solid = fixedTo(trailer, group, x, z, -joint.downRad(), -joint.downRad(), WheelState.SOLID);
        if (wheelGapM(solid.unit) <= PlacedUnit.TOUCHES_M) {
            return solid;
        }
        PlacedUnit unsolved =
                new PlacedUnit(group, boosterPaths, x, z, trailer.pose.pitchRad(), new double[] {0}, false);
        return new PlacedBooster(unsolved, 0, WheelState.RIDING);
    }

    private double wheelGapM(PlacedUnit unit) {
        return unit.wheelZ[0] - boosterPaths[0].heightAt(unit.wheelX[0]);
    }

    private PlacedBooster fixedTo(
            PlacedUnit trailer, PivotedGroup group, double x, double z, double limit, double bend, WheelState state) {
        PlacedUnit placed = new PlacedUnit(
                group, boosterPaths, x, z, trailer.pose.pitchRad() + limit, new double[] {0}, trailer.solved);
        return new PlacedBooster(placed, bend, state);
    }

    /**
     * A booster and its hinge.
     *
     * @param bendRad pitch relative to the trailer that the ground asks for, before limits
     */
    public record PlacedBooster(PlacedUnit unit, double bendRad, WheelState state) {}

    /**
     * The posture with the steer axle's center at {@code steerM} along the line.
     *
     * @param steerM meters, any finite value
     */
    public CombinationPosture at(double steerM) {
        PlacedUnit tractor = tractorAt(steerM, 0);
        PlacedUnit trailer = trailerAt(tractor, tractor.pose.pitchRad());
        List<WheelPosture> wheels = new ArrayList<>();
        wheels.add(new WheelPosture(
                UnitName.TRACTOR, tractor.pivotX, tractor.pivotZ, combination.steerRadiusM(), 0, WheelState.RIDING));
        addWheels(UnitName.TRACTOR, combination.tractor(), tractor, wheels);
        addWheels(UnitName.TRAILER, combination.trailer(), trailer, wheels);
        combination
                .shape()
                .raisedTire()
                .ifPresent(c -> wheels.add(new WheelPosture(
                        UnitName.TRAILER,
                        trailer.pose.worldXM(c.xM(), c.hM()),
                        trailer.pose.worldZM(c.xM(), c.hM()),
                        c.radiusM(),
                        c.hM() - c.radiusM(),
                        WheelState.LIFTED)));
        Optional<Pose> booster = Optional.empty();
        if (combination.booster().isPresent()) {
            PlacedBooster placed = boosterAt(trailer, trailer.pose.pitchRad());
            booster = Optional.of(placed.unit.pose);
            wheels.add(new WheelPosture(
                    UnitName.BOOSTER,
                    placed.unit.wheelX[0],
                    placed.unit.wheelZ[0],
                    combination.booster().get().radiusM[0],
                    0,
                    placed.state));
        }
        return new CombinationPosture(steerM, tractor.pose, trailer.pose, booster, wheels);
    }

    private static void addWheels(UnitName name, PivotedGroup group, PlacedUnit unit, List<WheelPosture> wheels) {
        for (int i = 0; i < group.size(); i++) {
            double travel = Math.max(unit.travel[i], -group.reboundM);
            // The wheel that a fully drooped group comes down on stands, give or take what the solver leaves.
            WheelState state = unit.travel[i] < -group.reboundM - 1e-9
                    ? WheelState.HANGING
                    : travel >= group.jounceM - 1e-9 ? WheelState.SOLID : WheelState.RIDING;
            wheels.add(new WheelPosture(name, unit.wheelX[i], unit.wheelZ[i], group.radiusM[i], travel, state));
        }
    }
}
