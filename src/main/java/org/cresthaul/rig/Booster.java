package org.cresthaul.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The booster in its level stance, in its own frame, and how it can be used.
 *
 * @param hingeXM its front joint, meters along its own frame; the joint's height is the trailer's hinge height
 * @param axle its axle
 * @param underside lowest line, rear to front, without the tire
 * @param topside highest line, rear to front
 * @param states every state this rig may run in, at least one, none twice
 * @param hingeUpRad how far the booster may pitch nose up relative to the trailer (its axle dropping) before it hangs
 *     from the trailer, radians, positive
 * @param hingeDownRad how far it may pitch nose down (its axle rising) before it carries the trailer, radians, positive
 * @param closeCoupledAxleXM where its axle stands in the trailer's frame when close-coupled, meters; required for that
 *     state
 * @param carried outline of the booster lying on the deck, in the trailer's frame; required for that state
 */
public record Booster(
        double hingeXM,
        Axle axle,
        Outline underside,
        Outline topside,
        List<BoosterState> states,
        double hingeUpRad,
        double hingeDownRad,
        OptionalDouble closeCoupledAxleXM,
        Optional<Outline> carried) {
    public Booster {
        states = List.copyOf(states);
        if (states.isEmpty() || states.stream().distinct().count() != states.size()) {
            throw new IllegalArgumentException("booster states must be given, none twice: " + states);
        }
        if (axle.xM() >= hingeXM) {
            throw new IllegalArgumentException("the booster's axle must be behind its hinge");
        }
        if (!(hingeUpRad >= 0 && hingeUpRad < 1 && hingeDownRad >= 0 && hingeDownRad < 1)) {
            throw new IllegalArgumentException(
                    "hinge limits must be between 0 and 1 rad, were " + hingeUpRad + " and " + hingeDownRad);
        }
        if (states.contains(BoosterState.CLOSE_COUPLED) && closeCoupledAxleXM.isEmpty()) {
            throw new IllegalArgumentException("a close-coupled booster needs the position of its axle");
        }
        if (states.contains(BoosterState.CARRIED) && carried.isEmpty()) {
            throw new IllegalArgumentException("a carried booster needs its outline on the deck");
        }
    }
}
