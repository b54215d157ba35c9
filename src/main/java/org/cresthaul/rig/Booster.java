package org.cresthaul.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;

/**
 * A booster in its level stance, in its own frame, and how it can be used.
 *
 * @param hingeXM its front joint, meters along its own frame; the joint's height is that of the hinge ahead
 * @param axles one, fixed to its frame, or several that share their load and travel against each other
 * @param underside lowest line, rear to front, without tires
 * @param topside highest line, rear to front
 * @param states every state this rig may run in, at least one, none twice
 * @param hingeUpRad how far the booster may pitch nose up relative to the unit ahead (its axles dropping) before it
 *     hangs from that, radians, positive
 * @param hingeDownRad how far it may pitch nose down (its axles rising) before it carries the unit ahead, radians,
 *     positive
 * @param closeCoupledAxleXM where its axle stands in the trailer's frame when close-coupled, meters; required for that
 *     state
 * @param carried outline of the booster lying on the deck, in the trailer's frame; required for that state
 * @param nextHinge where it holds a booster behind it, in its own frame
 */
public record Booster(
        double hingeXM,
        AxleGroup axles,
        Outline underside,
        Outline topside,
        List<BoosterState> states,
        double hingeUpRad,
        double hingeDownRad,
        OptionalDouble closeCoupledAxleXM,
        Optional<Outline> carried,
        Optional<Hinge> nextHinge) {
    /**
     * Where a unit holds the booster behind it.
     *
     * @param at in the unit's frame
     * @param reachM how far joint and beams reach from there: nothing nearer is checked between both units, meters
     */
    public record Hinge(FramePoint at, double reachM) {
        public Hinge {
            Finite.requireAtLeast("reachM", 0, reachM);
        }
    }

    /** A booster on one axle with none behind it. */
    public Booster(
            double hingeXM,
            Axle axle,
            Outline underside,
            Outline topside,
            List<BoosterState> states,
            double hingeUpRad,
            double hingeDownRad,
            OptionalDouble closeCoupledAxleXM,
            Optional<Outline> carried) {
        this(
                hingeXM,
                new AxleGroup(List.of(axle), 0, 0),
                underside,
                topside,
                states,
                hingeUpRad,
                hingeDownRad,
                closeCoupledAxleXM,
                carried,
                Optional.empty());
    }

    public Booster {
        states = List.copyOf(states);
        if (states.isEmpty() || states.stream().distinct().count() != states.size()) {
            throw new IllegalArgumentException("booster states must be given, none twice: " + states);
        }
        if (axles.axles().get(0).xM() >= hingeXM) {
            throw new IllegalArgumentException("the booster's axles must be behind its hinge");
        }
        if (!(hingeUpRad >= 0 && hingeUpRad < 1 && hingeDownRad >= 0 && hingeDownRad < 1)) {
            throw new IllegalArgumentException(
                    "hinge limits must be between 0 and 1 rad, were " + hingeUpRad + " and " + hingeDownRad);
        }
        if (states.contains(BoosterState.CLOSE_COUPLED) && closeCoupledAxleXM.isEmpty()) {
            throw new IllegalArgumentException("a close-coupled booster needs the position of its axle");
        }
        if (states.contains(BoosterState.CLOSE_COUPLED) && axles.axles().size() > 1) {
            throw new IllegalArgumentException("only a booster on one axle is close-coupled");
        }
        if (states.contains(BoosterState.CARRIED) && carried.isEmpty()) {
            throw new IllegalArgumentException("a carried booster needs its outline on the deck");
        }
    }

    /** The same with nothing behind it. */
    Booster last() {
        return new Booster(
                hingeXM,
                axles,
                underside,
                topside,
                states,
                hingeUpRad,
                hingeDownRad,
                closeCoupledAxleXM,
                carried,
                Optional.empty());
    }

    /** Of a booster on one axle. */
    public Axle onlyAxle() {
        if (axles.axles().size() > 1) {
            throw new IllegalStateException("the booster has " + axles.axles().size() + " axles");
        }
        return axles.axles().get(0);
    }

    /** The last axle. */
    public Axle lastAxle() {
        return axles.axles().get(axles.axles().size() - 1);
    }
}
