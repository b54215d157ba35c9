package org.cresthaul.rig;

import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;

/**
 * What the combination measures seen from above, and how far it bends: what turning needs beyond the level stance.
 * Lengths along the units come from their outlines and axles.
 *
 * @param tractor the tractor
 * @param steerLimitRad farthest the front wheels turn at the middle of the steer axle, radians
 * @param lockDistanceM how far it rolls at maneuvering speed while the wheels go from straight to that limit, meters:
 *     the steering rate
 * @param steerTires of the steer axle
 * @param jeep of every jeep: where they differ, the widest; absent without one
 * @param jeepLimitRad farthest angle between a jeep and the unit ahead of it, radians; absent without one
 * @param trailer the trailer
 * @param loadWidthM of the load, where it is wider than the trailer or the trailer's width is not to count for it
 * @param kingpinLimitRad farthest angle between the trailer and the unit ahead of it, radians
 * @param booster of the booster; absent without one
 * @param pivotLimitRad farthest angle between trailer and trailing booster, radians; absent without a booster
 */
public record PlanDimensions(
        Widths tractor,
        double steerLimitRad,
        double lockDistanceM,
        Tires steerTires,
        Optional<Widths> jeep,
        OptionalDouble jeepLimitRad,
        Widths trailer,
        OptionalDouble loadWidthM,
        double kingpinLimitRad,
        Optional<Widths> booster,
        OptionalDouble pivotLimitRad) {
    /**
     * Widths of one unit.
     *
     * @param bodyM over everything that is not a tire, meters
     * @param tiresM over the outer faces of the tires, at the ground, meters
     * @param tires of its axles, the steer axle's apart
     */
    public record Widths(double bodyM, double tiresM, Tires tires) {
        public Widths {
            Finite.requireAtLeast("bodyM", 0.5, bodyM);
            Finite.requireAtLeast("tiresM", 0.5, tiresM);
        }
    }

    /**
     * What the tires of one side of an axle cover on the ground: one tire, or a dual as a whole.
     *
     * @param treadM across, meters
     * @param contactM along, meters
     */
    public record Tires(double treadM, double contactM) {
        /** A steer tire that nobody measured: wide enough for wide-base ones. Common practice, no source. */
        public static final Tires STEER = new Tires(0.42, 0.30);
        /** A dual that nobody measured: two 11-inch tires 13.5 inches apart. Common practice, no source. */
        public static final Tires DUAL = new Tires(0.66, 0.30);

        public Tires {
            Finite.requireAtLeast("treadM", 0.05, treadM);
            Finite.requireAtLeast("contactM", 0.02, contactM);
        }
    }

    public PlanDimensions {
        requireAngle("steerLimitRad", steerLimitRad);
        requireAngle("kingpinLimitRad", kingpinLimitRad);
        pivotLimitRad.ifPresent(p -> requireAngle("pivotLimitRad", p));
        jeepLimitRad.ifPresent(p -> requireAngle("jeepLimitRad", p));
        Finite.requireAtLeast("lockDistanceM", 0.5, lockDistanceM);
        loadWidthM.ifPresent(w -> Finite.requireAtLeast("loadWidthM", 0.1, w));
        if (jeep.isPresent() != jeepLimitRad.isPresent()) {
            throw new IllegalArgumentException("jeeps need widths and a limit, and nothing else does");
        }
        if (booster.isPresent() != pivotLimitRad.isPresent()) {
            throw new IllegalArgumentException("a booster needs widths and a pivot limit, and nothing else does");
        }
    }

    /** Of a combination whose jeeps are left off. */
    PlanDimensions withoutJeep() {
        return new PlanDimensions(
                tractor,
                steerLimitRad,
                lockDistanceM,
                steerTires,
                Optional.empty(),
                OptionalDouble.empty(),
                trailer,
                loadWidthM,
                kingpinLimitRad,
                booster,
                pivotLimitRad);
    }

    private static void requireAngle(String name, double rad) {
        Finite.requireAtLeast(name, 0.05, rad);
        Finite.requireAtLeast("-" + name, -Math.PI, -rad);
    }
}
