package org.cresthaul.rig;

import java.util.List;
import java.util.Optional;

/**
 * The combination as a person with a tape measures it: coupled, on level ground, at the reference notch, lift axle
 * down.
 *
 * @param name "loaded" or "empty"
 * @param booster the booster, when the rig has one; the trailer then has a hinge
 * @param weights what it weighs; without them its loads are not known
 * @param plan widths and turning limits, when they were measured; without them no corner can be judged
 */
public record LevelStance(
        String name,
        Tractor tractor,
        Trailer trailer,
        Optional<Booster> booster,
        Optional<Weights> weights,
        Optional<PlanDimensions> plan) {
    /** A stance whose loads are not known, and of which only the side view was measured. */
    public LevelStance(String name, Tractor tractor, Trailer trailer, Optional<Booster> booster) {
        this(name, tractor, trailer, booster, Optional.empty(), Optional.empty());
    }

    /** A stance of which only the side view was measured. */
    public LevelStance(
            String name, Tractor tractor, Trailer trailer, Optional<Booster> booster, Optional<Weights> weights) {
        this(name, tractor, trailer, booster, weights, Optional.empty());
    }

    public LevelStance {
        if (plan.isPresent() && plan.get().booster().isPresent() != booster.isPresent()) {
            throw new IllegalArgumentException("plan and stance must both have a booster, or neither");
        }
        if (booster.isPresent() && trailer.boosterHinge().isEmpty()) {
            throw new IllegalArgumentException("a booster needs a hinge on the trailer");
        }
        booster.ifPresent(b -> b.closeCoupledAxleXM().ifPresent(x -> {
            double last = trailer.axles()
                    .axles()
                    .get(trailer.axles().axles().size() - 1)
                    .xM();
            if (x >= last) {
                throw new IllegalArgumentException("the close-coupled axle must be behind the trailer's axles");
            }
        }));
    }

    /** The booster states this stance can run in; only {@link BoosterState#NONE} without a booster. */
    public List<BoosterState> boosterStates() {
        return booster.map(Booster::states).orElse(List.of(BoosterState.NONE));
    }

    /** The lift-axle states this stance can run in; only {@link LiftState#DOWN} without a lift axle. */
    public List<LiftState> liftStates() {
        return trailer.liftAxle().isPresent() ? List.of(LiftState.DOWN, LiftState.UP) : List.of(LiftState.DOWN);
    }

    /** How many trailer axles carry, without the booster. */
    public int axlesDown(LiftState lift) {
        return trailer.axles().axles().size() - (lift == LiftState.UP ? 1 : 0);
    }
}
