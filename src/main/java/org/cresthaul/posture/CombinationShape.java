package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;

/**
 * What lift axle and booster state alone decide: the units that bend against each other, which axles carry, what hangs
 * below and stands above each unit, and how far a trailing booster's hinge may bend. The same for every notch, raise
 * and leveling. Immutable.
 */
public final class CombinationShape {
    /** A circle fixed to a frame. */
    public record Circle(double xM, double hM, double radiusM) {}

    /** What a unit shows to the road and to a structure above it. */
    public record UnitOutlines(List<Outline> undersides, List<Outline> topsides) {}

    /**
     * A unit of the chain.
     *
     * @param heldAt where the unit ahead holds its pivot, in that unit's frame; of the tractor, which nothing holds,
     *     its steer axle
     */
    public record ChainUnit(UnitName name, FramePoint heldAt, UnitOutlines outlines) {}

    /**
     * A booster on its hinge.
     *
     * @param hinge in the frame of the unit ahead
     * @param hingeXM the same along its own frame
     */
    public record TrailingBooster(
            FramePoint hinge, double hingeXM, AxleGroup axles, double upRad, double downRad, UnitOutlines outlines) {
        static TrailingBooster of(LevelStance stance, int index) {
            Booster b = stance.boosters().get(index);
            return new TrailingBooster(
                    stance.boosterHeldAt(index),
                    b.hingeXM(),
                    b.axles(),
                    b.hingeUpRad(),
                    b.hingeDownRad(),
                    new UnitOutlines(List.of(b.underside()), List.of(b.topside())));
        }
    }

    private final LevelStance stance;
    private final LiftState lift;
    private final BoosterState booster;
    private final List<Axle> axlesDown;
    private final List<Circle> raisedTires;
    private final List<ChainUnit> units;
    private final List<TrailingBooster> trailing;

    /**
     * The shape of a stance in one state.
     *
     * @throws IllegalArgumentException when the stance does not have that lift or booster state
     */
    public CombinationShape(LevelStance stance, LiftState lift, BoosterState booster) {
        if (!stance.liftStates().contains(lift)) {
            throw new IllegalArgumentException("this stance has no lift axle to put " + lift.word());
        }
        if (!stance.boosterStates().contains(booster)) {
            throw new IllegalArgumentException("this stance does not run with booster " + booster.word());
        }
        this.stance = stance;
        this.lift = lift;
        this.booster = booster;
        Trailer frame = stance.trailer();
        List<Axle> down = new ArrayList<>(frame.down(lift));
        raisedTires = frame.lift().up(lift).stream()
                .map(up -> circle(frame.axles().axles().get(up.index()), up.gapM()))
                .toList();
        List<Outline> undersides = new ArrayList<>();
        undersides.add(DeckSag.lower(
                frame.underside(), frame.deckRear().xM(), frame.deckFront().xM(), frame.deckSagM()));
        List<Outline> topsides = new ArrayList<>();
        topsides.add(frame.topside());
        topsides.addAll(frame.load());
        List<TrailingBooster> onHinges = new ArrayList<>();
        if (booster != BoosterState.NONE) {
            Booster b = stance.booster().orElseThrow();
            switch (booster) {
                case CARRIED -> topsides.add(b.carried().orElseThrow());
                case CLOSE_COUPLED -> {
                    double axleX = b.closeCoupledAxleXM().orElseThrow();
                    double shift = axleX - b.onlyAxle().xM();
                    down.add(
                            new Axle(axleX, b.onlyAxle().radiusM(), b.onlyAxle().steering()));
                    undersides.add(b.underside().shiftedBy(shift));
                    topsides.add(b.topside().shiftedBy(shift));
                }
                case TRAILING -> {
                    for (int i = 0; i < stance.boosters().size(); i++) {
                        onHinges.add(TrailingBooster.of(stance, i));
                    }
                }
                default -> throw new IllegalArgumentException("booster state " + booster);
            }
        }
        axlesDown = List.copyOf(down);
        trailing = List.copyOf(onHinges);
        units = chain(new UnitOutlines(List.copyOf(undersides), List.copyOf(topsides)));
    }

    private List<ChainUnit> chain(UnitOutlines trailer) {
        List<ChainUnit> chain = new ArrayList<>();
        FramePoint steer = new FramePoint(
                stance.tractor().steer().xM(), stance.tractor().steer().radiusM());
        chain.add(new ChainUnit(
                UnitName.TRACTOR,
                steer,
                new UnitOutlines(
                        List.of(stance.tractor().underside()),
                        List.of(stance.tractor().topside()))));
        FramePoint heldAt = stance.tractor().fifthWheel();
        for (Jeep jeep : stance.jeeps()) {
            chain.add(new ChainUnit(
                    UnitName.jeep(chain.size()),
                    heldAt,
                    new UnitOutlines(List.of(jeep.underside()), List.of(jeep.topside()))));
            heldAt = jeep.fifthWheel();
        }
        chain.add(new ChainUnit(UnitName.TRAILER, heldAt, trailer));
        for (int i = 0; i < trailing.size(); i++) {
            TrailingBooster b = trailing.get(i);
            chain.add(new ChainUnit(UnitName.booster(i + 1), b.hinge(), b.outlines()));
        }
        return List.copyOf(chain);
    }

    private static Circle circle(Axle axle, double gapM) {
        return new Circle(axle.xM(), axle.radiusM() + gapM, axle.radiusM());
    }

    public LevelStance stance() {
        return stance;
    }

    LiftState lift() {
        return lift;
    }

    BoosterState booster() {
        return booster;
    }

    /** Front to rear: the tractor, jeeps, the trailer and trailing boosters. */
    public List<ChainUnit> units() {
        return units;
    }

    /** Where in {@link #units} the trailer stands. */
    public int trailerIndex() {
        return 1 + stance.jeeps().size();
    }

    /** Axles of the trailer's group that carry, a close-coupled booster's among them. */
    public List<Axle> axlesDown() {
        return axlesDown;
    }

    /** Which of them both height valves read. */
    int valveAxle() {
        Trailer frame = stance.trailer();
        return axlesDown.indexOf(frame.axles().axles().get(frame.valveAxle()));
    }

    /** Whose the carrying axles of a unit are, the tractor's without its steer axle. */
    public List<AxleKind> axleKinds(int unit) {
        return switch (units.get(unit).name().kind()) {
            case TRACTOR -> Collections.nCopies(stance.tractor().drive().axles().size(), AxleKind.DRIVE);
            case JEEP ->
                Collections.nCopies(stance.jeeps().get(unit - 1).axles().axles().size(), AxleKind.JEEP);
            case TRAILER -> trailerKinds();
            case BOOSTER -> Collections.nCopies(joint(unit).axles().axles().size(), AxleKind.BOOSTER);
        };
    }

    private List<AxleKind> trailerKinds() {
        List<AxleKind> kinds = new ArrayList<>(Collections.nCopies(axlesDown.size(), AxleKind.TRAILER));
        if (booster == BoosterState.CLOSE_COUPLED) {
            kinds.set(kinds.size() - 1, AxleKind.BOOSTER);
        }
        return kinds;
    }

    /** Front to rear. */
    public List<Circle> raisedTires() {
        return raisedTires;
    }

    public UnitOutlines trailer() {
        return units.get(trailerIndex()).outlines();
    }

    /** The unit that carries the trailer's kingpin. */
    public UnitOutlines aheadOfTrailer() {
        return units.get(trailerIndex() - 1).outlines();
    }

    /** Front to rear, each held by the one before it. */
    public List<TrailingBooster> trailing() {
        return trailing;
    }

    /** The hinge ahead of a booster, by its place in {@link #units}. */
    public TrailingBooster joint(int unit) {
        return trailing.get(unit - trailerIndex() - 1);
    }
}
