package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.RoadProfile;

/**
 * A shape with notch, raise and leveling applied: where each unit's pivot lies in its own frame, and the rule its group
 * follows. Immutable.
 *
 * <p>Notch and front raise turn the trailer frame by m = δ / (x_deckfront − x_valve) about the valve axle: in the frame
 * the kingpin drops by m (x_kingpin − x_valve). The rear height lets the valve axle's travel fall by ρ. Both as in
 * docs/model.md, section "Notch, rear height, raise".
 */
public final class CoupledCombination {
    private final CombinationShape shape;
    private final List<PivotedGroup> groups;

    public CoupledCombination(CombinationShape shape, Setting setting, Leveling leveling) {
        if (!setting.lift().equals(shape.lift()) || setting.booster() != shape.booster()) {
            throw new IllegalArgumentException("the setting is of another shape: " + setting);
        }
        this.shape = shape;
        List<PivotedGroup> all = new ArrayList<>();
        all.add(tractorGroup(shape.stance().tractor()));
        for (int i = 0; i < shape.stance().jeeps().size(); i++) {
            all.add(jeepGroup(
                    shape.stance().jeeps().get(i), shape.units().get(i + 1).heldAt()));
        }
        PivotedGroup group = settledGroup(setting);
        List<TrailingBooster> boosters = shape.trailing();
        group = group.withPinned(PinnedWheels.behind(boosters));
        all.add(leveling == Leveling.SETTLED ? group : group.holding(airStandingLevelM(group)));
        for (int i = 0; i < boosters.size(); i++) {
            all.add(boosterGroup(boosters.get(i))
                    .withPinned(PinnedWheels.behind(boosters.subList(i + 1, boosters.size()))));
        }
        groups = List.copyOf(all);
    }

    /** The tractor's group; the same for every setting. */
    public static PivotedGroup tractorGroup(Tractor tractor) {
        AxleGroup drive = tractor.drive();
        return PivotedGroup.held(
                tractor.steer().xM(), tractor.steer().radiusM(), drive.axles(), drive.jounceM(), drive.reboundM(), 0);
    }

    /** A jeep's group keeps its air, or equalizes its load, as the drive group does. */
    private static PivotedGroup jeepGroup(Jeep jeep, FramePoint heldAt) {
        AxleGroup group = jeep.axles();
        return PivotedGroup.held(jeep.kingpinXM(), heldAt.hM(), group.axles(), group.jounceM(), group.reboundM(), 0);
    }

    /** A single axle is fixed to the booster's frame; several travel against each other, as the drive group's do. */
    private static PivotedGroup boosterGroup(TrailingBooster b) {
        AxleGroup group = b.axles();
        return group.axles().size() == 1
                ? PivotedGroup.rigid(b.hingeXM(), b.hinge().hM(), group.axles().get(0))
                : PivotedGroup.held(b.hingeXM(), b.hinge().hM(), group.axles(), group.jounceM(), group.reboundM(), 0);
    }

    private PivotedGroup settledGroup(Setting setting) {
        Trailer frame = shape.stance().trailer();
        double valveX = frame.axles().axles().get(frame.valveAxle()).xM();
        double turn = (setting.notchOffsetM() + setting.frontRaiseM())
                / (frame.deckFront().xM() - valveX);
        double kingpinH = trailerKingpinHM() - turn * (frame.kingpinXM() - valveX);
        double rear = setting.rearRaiseM() + frame.lift().secondaryRiseM(setting.lift());
        return PivotedGroup.settled(
                frame.kingpinXM(),
                kingpinH,
                shape.axlesDown(),
                frame.axles().jounceM(),
                frame.axles().reboundM(),
                shape.valveAxle(),
                -rear);
    }

    /** Sum of the travels of a settled group on level ground, a hanging axle at its stop. */
    private double airStandingLevelM(PivotedGroup settled) {
        WheelPaths level = new WheelPaths(RoadProfile.level());
        PlacedUnit standing =
                settled.place(settled.rolledOn(level, shape.axleKinds(shape.trailerIndex())), 0, trailerKingpinHM(), 0);
        double air = 0;
        for (double d : standing.travel) {
            air += Math.max(d, -settled.reboundM);
        }
        return air;
    }

    public CombinationShape shape() {
        return shape;
    }

    /** In the order of {@link CombinationShape#units}. */
    public List<PivotedGroup> groups() {
        return groups;
    }

    public double steerRadiusM() {
        return shape.stance().tractor().steer().radiusM();
    }

    private double trailerKingpinHM() {
        return shape.stance().trailerFifthWheel().hM();
    }
}
