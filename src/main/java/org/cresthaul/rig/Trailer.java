package org.cresthaul.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Finite;

/**
 * The lowbed trailer with its gooseneck, in the level stance: coupled, on level ground, at the reference notch, every
 * trailer axle down.
 *
 * @param kingpinXM kingpin position along the frame, meters; its height is the fifth wheel's
 * @param deckFront where the deck meets the gooseneck; notches and the hydraulic raise act here
 * @param deckRear rear end of the deck; with {@code deckFront} the span of the deck sag
 * @param axles every trailer axle
 * @param valveAxle index into {@code axles} of the axle that both height valves read; never a lift axle
 * @param lift which of them can be raised, and how they are
 * @param hydraulicRaiseLimitM highest deck-front offset the gooseneck hydraulics reach, measured from the reference
 *     notch, meters
 * @param manualRaiseLimitM how far the rear can be raised by hand at the valve axle, above what its valve sets, meters
 * @param deckSagM extra sag at mid-deck below the underside as drawn, meters, zero when measured in place
 * @param underside lowest line over the ground, rear to front, without tires
 * @param topside highest line of the trailer itself, rear to front
 * @param load outlines of what is carried, each rear to front; they count as topside
 * @param boosterHinge where a booster couples, when one can
 * @param hingeReachM how far the joint itself reaches from there: nothing nearer is checked between trailer and
 *     booster, meters
 */
public record Trailer(
        double kingpinXM,
        FramePoint deckFront,
        FramePoint deckRear,
        AxleGroup axles,
        int valveAxle,
        LiftAxles lift,
        double hydraulicRaiseLimitM,
        double manualRaiseLimitM,
        double deckSagM,
        Outline underside,
        Outline topside,
        List<Outline> load,
        Optional<FramePoint> boosterHinge,
        double hingeReachM) {
    /** Pin, eyes and the frames' ends around them: 1 ft (common practice, no source). */
    public static final double USUAL_HINGE_REACH_M = 0.3048;

    /** With a joint of the usual size. */
    public Trailer(
            double kingpinXM,
            FramePoint deckFront,
            FramePoint deckRear,
            AxleGroup axles,
            int valveAxle,
            LiftAxles lift,
            double hydraulicRaiseLimitM,
            double manualRaiseLimitM,
            double deckSagM,
            Outline underside,
            Outline topside,
            List<Outline> load,
            Optional<FramePoint> boosterHinge) {
        this(
                kingpinXM,
                deckFront,
                deckRear,
                axles,
                valveAxle,
                lift,
                hydraulicRaiseLimitM,
                manualRaiseLimitM,
                deckSagM,
                underside,
                topside,
                load,
                boosterHinge,
                USUAL_HINGE_REACH_M);
    }

    public Trailer {
        Finite.require("kingpinXM", kingpinXM);
        load = List.copyOf(load);
        int count = axles.axles().size();
        if (lift.axles().stream().anyMatch(a -> a.index() < 0 || a.index() >= count)) {
            throw new IllegalArgumentException("the trailer has no such axle to raise: " + lift.axles());
        }
        if (valveAxle < 0 || valveAxle >= count || lift.has(valveAxle)) {
            throw new IllegalArgumentException("the valve axle must be one of the fixed axles");
        }
        if (axles.axles().get(0).xM() >= kingpinXM) {
            throw new IllegalArgumentException("the trailer axles must be behind the kingpin");
        }
        if (deckFront.xM() <= axles.axles().get(valveAxle).xM()) {
            throw new IllegalArgumentException("the deck front must be ahead of the valve axle");
        }
        if (deckRear.xM() >= deckFront.xM()) {
            throw new IllegalArgumentException("the deck rear must be behind the deck front");
        }
        Finite.requireAtLeast("hydraulicRaiseLimitM", 0, hydraulicRaiseLimitM);
        Finite.requireAtLeast("manualRaiseLimitM", 0, manualRaiseLimitM);
        Finite.requireAtLeast("deckSagM", 0, deckSagM);
        Finite.requireAtLeast("hingeReachM", 0, hingeReachM);
    }

    /** The axles of its own that carry, front to rear. */
    public List<Axle> down(LiftState state) {
        List<LiftAxle> up = lift.up(state);
        List<Axle> down = new ArrayList<>();
        for (int i = 0; i < axles.axles().size(); i++) {
            int index = i;
            if (up.stream().noneMatch(a -> a.index() == index)) {
                down.add(axles.axles().get(i));
            }
        }
        return List.copyOf(down);
    }
}
