package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleSteering;

/**
 * The axles of a unit some of whose wheels turn; docs/model.md, section 13, "Steered axles".
 *
 * @param fixedM of each axle whose wheels do not: meters behind the hitch
 * @param castering whose wheels trail until they meet their stop
 * @param commanded whose wheels turn with the bend of the coupling ahead
 */
public record SteeredAxles(List<Double> fixedM, List<Castering> castering, List<Commanded> commanded) {
    /** @param behindM the hitch, meters */
    public record Castering(double behindM, double limitRad) {}

    /**
     * An axle that is steered.
     *
     * @param behindM the hitch, meters
     * @param ratio of the angle of its wheels to the bend, the other way round
     */
    public record Commanded(double behindM, double ratio, double limitRad) {
        /** Farthest that its wheels turn when the bend ahead is no more than its limit, radians. */
        double mostRad(double bendLimitRad) {
            return Math.min(limitRad, ratio * bendLimitRad);
        }
    }

    public SteeredAxles {
        fixedM = List.copyOf(fixedM);
        castering = List.copyOf(castering);
        commanded = List.copyOf(commanded);
        if (fixedM.isEmpty() && commanded.isEmpty()) {
            throw new IllegalArgumentException("wheels that are castering guide nothing");
        }
    }

    /**
     * The axles of a unit; empty where no wheels turn.
     *
     * @param hitchXM where it is pulled, in the frame of the axles
     * @param backing castering wheels are locked
     */
    static Optional<SteeredAxles> of(double hitchXM, List<Axle> axles, boolean backing) {
        List<Double> fixed = new ArrayList<>();
        List<Castering> castering = new ArrayList<>();
        List<Commanded> commanded = new ArrayList<>();
        for (Axle axle : axles) {
            double behindM = hitchXM - axle.xM();
            AxleSteering steering = axle.steering().orElse(null);
            if (steering instanceof AxleSteering.Castering c && !backing) {
                castering.add(new Castering(behindM, c.limitRad()));
            } else if (steering instanceof AxleSteering.Commanded c) {
                commanded.add(new Commanded(behindM, c.ratio(), c.limitRad()));
            } else {
                fixed.add(behindM);
            }
        }
        return castering.isEmpty() && commanded.isEmpty()
                ? Optional.empty()
                : Optional.of(new SteeredAxles(fixed, castering, commanded));
    }

    /** From the hitch to the effective axle of those that guide, all wheels straight ahead, meters. */
    double effectiveM() {
        List<Double> guiding = new ArrayList<>(fixedM);
        commanded.forEach(c -> guiding.add(c.behindM));
        return EffectiveAxle.behindHitchM(guiding);
    }

    /**
     * The axles of a unit and those of the next when the coupling between them is locked: its bend commands nothing
     * then.
     *
     * @param hitchM from this unit's hitch back to that of the next
     */
    SteeredAxles with(SteeredAxles next, double hitchM) {
        List<Double> fixed = new ArrayList<>(fixedM);
        next.fixedM.forEach(m -> fixed.add(hitchM + m));
        next.commanded.forEach(c -> fixed.add(hitchM + c.behindM));
        List<Castering> caster = new ArrayList<>(castering);
        next.castering.forEach(c -> caster.add(new Castering(hitchM + c.behindM, c.limitRad)));
        return new SteeredAxles(fixed, caster, commanded);
    }
}
