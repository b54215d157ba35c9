package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.UnitName;
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
    /** Of each unit, in the order of {@link PivotedGroup#rolledOn}. */
    private final List<WheelPath[]> paths = new ArrayList<>();

    private final WheelPaths ground;

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
        this.ground = ground;
        CombinationShape shape = combination.shape();
        steerPath = ground.rolled(combination.steerRadiusM(), AxleKind.STEER);
        for (int k = 0; k < combination.groups().size(); k++) {
            paths.add(combination.groups().get(k).rolledOn(ground, shape.axleKinds(k)));
        }
    }

    public static List<AxleKind> drives(PivotedGroup tractor) {
        return Collections.nCopies(tractor.size(), AxleKind.DRIVE);
    }

    /** Under the wheels of one unit, in the order of {@link CombinationShape#units}. */
    public WheelPath[] paths(int unit) {
        return paths.get(unit);
    }

    /** Under a raised tire. */
    public WheelPath liftedPath(CombinationShape.Circle tire) {
        return ground.rolled(tire.radiusM(), AxleKind.TRAILER);
    }

    public PlacedUnit tractorAt(double steerM, double guessRad) {
        return combination.groups().get(0).place(paths.get(0), steerM, steerPath.heightAt(steerM), guessRad);
    }

    /**
     * A unit behind the one ahead of it, a trailing booster's hinge within its limits.
     *
     * @param unit its place in {@link CombinationShape#units}, from 1
     */
    public CoupledUnit behind(PlacedUnit ahead, int unit, double guessRad) {
        PivotedGroup group = combination.groups().get(unit);
        FramePoint heldAt = combination.shape().units().get(unit).heldAt();
        double x = ahead.pose.worldXM(heldAt);
        double z = ahead.pose.worldZM(heldAt);
        PlacedUnit free = group.place(paths.get(unit), x, z, guessRad);
        double bend = free.pose.pitchRad() - ahead.pose.pitchRad();
        if (unit <= combination.shape().trailerIndex()) {
            return new CoupledUnit(free, bend, WheelState.RIDING);
        }
        TrailingBooster joint = combination.shape().joint(unit);
        Hinged hinged = new Hinged(ahead, group, paths.get(unit), x, z);
        if (!free.solved || Math.abs(bend) > NO_BEND_RAD) {
            return hinged.atLimit(joint);
        }
        if (bend > joint.upRad()) {
            return hinged.fixed(joint.upRad(), bend, WheelState.HANGING);
        }
        // A carrying booster holds the unit ahead at exactly this bend, give or take what the solver leaves.
        if (bend <= -joint.downRad() + BEND_SOLVED_RAD) {
            return hinged.fixed(-joint.downRad(), bend, WheelState.SOLID);
        }
        return new CoupledUnit(free, bend, WheelState.RIDING);
    }

    /** A booster whose hinge is at a place. */
    private record Hinged(PlacedUnit ahead, PivotedGroup group, WheelPath[] rolled, double x, double z) {
        /**
         * Where no pitch of its own brings a booster's wheels to the ground: it hangs, or it stands with its hinge on
         * the stop.
         */
        CoupledUnit atLimit(TrailingBooster joint) {
            CoupledUnit hanging = fixed(joint.upRad(), joint.upRad(), WheelState.HANGING);
            if (group.excessM(hanging.unit, rolled) < 0) {
                return hanging;
            }
            CoupledUnit solid = fixed(-joint.downRad(), -joint.downRad(), WheelState.SOLID);
            if (group.excessM(solid.unit, rolled) <= PlacedUnit.TOUCHES_M) {
                return solid;
            }
            PlacedUnit unsolved =
                    new PlacedUnit(group, rolled, x, z, ahead.pose.pitchRad(), new double[group.size()], false);
            return new CoupledUnit(unsolved, 0, WheelState.RIDING);
        }

        CoupledUnit fixed(double limit, double bend, WheelState state) {
            double pitch = ahead.pose.pitchRad() + limit;
            double[] travel = group.travelsAt(rolled, x, z, pitch);
            return new CoupledUnit(new PlacedUnit(group, rolled, x, z, pitch, travel, ahead.solved), bend, state);
        }
    }

    /**
     * A unit and how it bends against the one ahead.
     *
     * @param bendRad pitch relative to the unit ahead that the ground asks for, before limits
     * @param state of a booster's wheel; of other units, whose axles have states of their own, riding
     */
    public record CoupledUnit(PlacedUnit unit, double bendRad, WheelState state) {}

    /**
     * The posture with the steer axle's center at {@code steerM} along the line.
     *
     * @param steerM meters, any finite value
     */
    public CombinationPosture at(double steerM) {
        CombinationShape shape = combination.shape();
        List<WheelPosture> wheels = new ArrayList<>();
        List<UnitName> names = new ArrayList<>();
        List<Pose> poses = new ArrayList<>();
        PlacedUnit at = tractorAt(steerM, 0);
        wheels.add(new WheelPosture(
                UnitName.TRACTOR, at.pivotX, at.pivotZ, combination.steerRadiusM(), 0, WheelState.RIDING));
        for (int k = 0; k < shape.units().size(); k++) {
            UnitName name = shape.units().get(k).name();
            CoupledUnit coupled = k == 0 ? null : behind(at, k, at.pose.pitchRad());
            at = k == 0 ? at : coupled.unit;
            names.add(name);
            poses.add(at.pose);
            addWheels(name, combination.groups().get(k), at, boosterState(name, k, coupled), wheels);
            if (k == shape.trailerIndex()) {
                addRaised(at.pose, wheels);
            }
        }
        return new CombinationPosture(steerM, names, poses, wheels);
    }

    private void addRaised(Pose trailer, List<WheelPosture> wheels) {
        combination
                .shape()
                .raisedTires()
                .forEach(c -> wheels.add(new WheelPosture(
                        UnitName.TRAILER,
                        trailer.worldXM(c.xM(), c.hM()),
                        trailer.worldZM(c.xM(), c.hM()),
                        c.radiusM(),
                        c.hM() - c.radiusM(),
                        WheelState.LIFTED)));
    }

    /** Also of a booster that rides on what is behind it alone. */
    private WheelState boosterState(UnitName name, int unit, CoupledUnit coupled) {
        if (name.kind() != UnitName.Kind.BOOSTER || coupled.state != WheelState.RIDING) {
            return name.kind() == UnitName.Kind.BOOSTER ? coupled.state : WheelState.RIDING;
        }
        PivotedGroup group = combination.groups().get(unit);
        return group.isRigid() && group.excessM(coupled.unit, paths.get(unit)) < -PlacedUnit.TOUCHES_M
                ? WheelState.HANGING
                : WheelState.RIDING;
    }

    /** @param coupled of a booster on a hinge's limit what that makes of all its wheels */
    private static void addWheels(
            UnitName name, PivotedGroup group, PlacedUnit unit, WheelState coupled, List<WheelPosture> wheels) {
        for (int i = 0; i < group.size(); i++) {
            double travel = Math.max(unit.travel[i], -group.reboundM);
            WheelState state = coupled == WheelState.RIDING && !group.isRigid() ? state(group, unit, i) : coupled;
            double shown = group.isRigid() ? 0 : travel;
            wheels.add(new WheelPosture(name, unit.wheelX[i], unit.wheelZ[i], group.radiusM[i], shown, state));
        }
    }

    private static WheelState state(PivotedGroup group, PlacedUnit unit, int i) {
        // The wheel that a fully drooped group comes down on stands, give or take what the solver leaves.
        if (unit.travel[i] < -group.reboundM - 1e-9) {
            return WheelState.HANGING;
        }
        return unit.travel[i] >= group.jounceM - 1e-9 ? WheelState.SOLID : WheelState.RIDING;
    }
}
