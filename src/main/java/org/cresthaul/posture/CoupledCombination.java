package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Levelling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.RoadProfile;

/**
 * A level stance with one setting applied: which axles carry, where each unit's pivot lies in its own frame, and the
 * rule its group follows. Immutable.
 *
 * <p>Notch and front raise turn the trailer frame by m = δ / (x_deckfront − x_valve) about the valve axle: in the frame
 * the kingpin drops by m (x_kingpin − x_valve). The rear height lets the valve axle's travel fall by ρ. Both as in
 * docs/model.md, section "Notch, rear height, raise".
 */
final class CoupledCombination {
    final PivotedGroup tractor;
    final PivotedGroup trailer;
    /** Only for a trailing booster. */
    final Optional<PivotedGroup> booster;

    final double steerRadiusM;
    final double fifthWheelXM;
    final double fifthWheelHM;
    final FramePoint hinge;
    final double hingeUpRad;
    final double hingeDownRad;
    /** The raised tyre, in the trailer's frame, when the lift axle is up. */
    final Optional<Circle> liftedTyre;

    final UnitOutlines tractorOutlines;
    final UnitOutlines trailerOutlines;
    final Optional<UnitOutlines> boosterOutlines;

    /** A circle fixed to a frame. */
    record Circle(double xM, double hM, double radiusM) {}

    /** What a unit shows to the road and to a structure above it. */
    record UnitOutlines(List<Outline> undersides, List<Outline> topsides) {}

    CoupledCombination(LevelStance stance, Setting setting, Levelling levelling) {
        if (!stance.liftStates().contains(setting.lift())) {
            throw new IllegalArgumentException("this stance has no lift axle to put " + setting.lift().word());
        }
        if (!stance.boosterStates().contains(setting.booster())) {
            throw new IllegalArgumentException("this stance does not run with booster " + setting.booster().word());
        }
        tractor = tractorGroup(stance.tractor());
        steerRadiusM = stance.tractor().steer().radiusM();
        fifthWheelXM = stance.tractor().fifthWheel().xM();
        fifthWheelHM = stance.tractor().fifthWheel().hM();
        tractorOutlines =
                new UnitOutlines(List.of(stance.tractor().underside()), List.of(stance.tractor().topside()));

        Trailer frame = stance.trailer();
        boolean closeCoupled = setting.booster() == BoosterState.CLOSE_COUPLED;
        boolean trailing = setting.booster() == BoosterState.TRAILING;
        boolean up = setting.lift() == LiftState.UP;
        List<Axle> down = new ArrayList<>(frame.axles().axles());
        liftedTyre = up ? Optional.of(liftedCircle(down.remove(down.size() - 1), frame)) : Optional.empty();
        Optional<Booster> coupled = stance.booster();
        if (closeCoupled) {
            Booster b = coupled.orElseThrow();
            down.add(new Axle(b.closeCoupledAxleXM().orElseThrow(), b.axle().radiusM()));
        }

        PivotedGroup group = trailerGroup(frame, down, setting, levelling, up);
        hinge = frame.boosterHinge().orElse(null);
        if (trailing) {
            Booster b = coupled.orElseThrow();
            hingeUpRad = b.hingeUpRad();
            hingeDownRad = b.hingeDownRad();
            double behind = b.axle().xM() - b.hingeXM();
            double below = b.axle().radiusM() - hinge.hM();
            double c = Math.cos(-hingeDownRad);
            double s = Math.sin(-hingeDownRad);
            group = group.withFixedWheel(
                    hinge.xM() + behind * c - below * s, hinge.hM() + behind * s + below * c, b.axle().radiusM());
            booster = Optional.of(PivotedGroup.rigid(b.hingeXM(), hinge.hM(), b.axle()));
            boosterOutlines = Optional.of(new UnitOutlines(List.of(b.underside()), List.of(b.topside())));
        } else {
            hingeUpRad = 0;
            hingeDownRad = 0;
            booster = Optional.empty();
            boosterOutlines = Optional.empty();
        }
        trailer = group;
        trailerOutlines = trailerOutlines(frame, coupled, setting.booster());
    }

    /** The tractor's group alone; the same for every setting. */
    static PivotedGroup tractorGroup(Tractor tractor) {
        AxleGroup drive = tractor.drive();
        return PivotedGroup.held(
                tractor.steer().xM(),
                tractor.steer().radiusM(),
                drive.axles(),
                drive.jounceM(),
                drive.reboundM(),
                0);
    }

    private static Circle liftedCircle(Axle axle, Trailer frame) {
        return new Circle(
                axle.xM(), axle.radiusM() + frame.liftAxle().orElseThrow().gapM(), axle.radiusM());
    }

    private PivotedGroup trailerGroup(
            Trailer frame, List<Axle> down, Setting setting, Levelling levelling, boolean liftUp) {
        double jounce = frame.axles().jounceM();
        double rebound = frame.axles().reboundM();
        double valveX = frame.axles().axles().get(frame.valveAxle()).xM();
        double turn = (setting.notchOffsetM() + setting.frontRaiseM()) / (frame.deckFront().xM() - valveX);
        double kingpinH = fifthWheelHM - turn * (frame.kingpinXM() - valveX);
        double rear = setting.rearRaiseM() + (liftUp ? frame.liftAxle().orElseThrow().secondaryRiseM() : 0);
        PivotedGroup settled = PivotedGroup.settled(
                frame.kingpinXM(), kingpinH, down, jounce, rebound, frame.valveAxle(), -rear);
        if (levelling == Levelling.SETTLED) {
            return settled;
        }
        WheelPaths level = new WheelPaths(RoadProfile.level());
        PlacedUnit standing = settled.place(settled.rolledOn(level), 0, fifthWheelHM, turn);
        double air = 0;
        for (double d : standing.travel) {
            air += Math.max(d, -rebound);
        }
        return PivotedGroup.held(frame.kingpinXM(), kingpinH, down, jounce, rebound, air);
    }

    private static UnitOutlines trailerOutlines(Trailer frame, Optional<Booster> coupled, BoosterState state) {
        List<Outline> undersides = new ArrayList<>();
        undersides.add(
                DeckSag.lower(frame.underside(), frame.deckRear().xM(), frame.deckFront().xM(), frame.deckSagM()));
        List<Outline> topsides = new ArrayList<>();
        topsides.add(frame.topside());
        topsides.addAll(frame.load());
        if (state == BoosterState.CARRIED) {
            topsides.add(coupled.orElseThrow().carried().orElseThrow());
        }
        if (state == BoosterState.CLOSE_COUPLED) {
            Booster b = coupled.orElseThrow();
            double shift = b.closeCoupledAxleXM().orElseThrow() - b.axle().xM();
            undersides.add(b.underside().shiftedBy(shift));
            topsides.add(b.topside().shiftedBy(shift));
        }
        return new UnitOutlines(List.copyOf(undersides), List.copyOf(topsides));
    }
}
