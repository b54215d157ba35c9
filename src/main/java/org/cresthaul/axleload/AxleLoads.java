package org.cresthaul.axleload;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.rig.AxleKind;

/**
 * What every axle of a combination carries. A load is told as the mass it is the weight of, kilograms; negative where
 * the axle would have to be held down, which no road does.
 *
 * @param axles front to rear, those that stand on the road
 * @param fifthWheelsKg on each fifth wheel: the tractor's, and every jeep's behind it
 * @param joint what the joint of a trailing booster passes on
 */
public record AxleLoads(List<AxleLoad> axles, List<Double> fifthWheelsKg, Optional<BoosterJoint> joint) {
    public AxleLoads {
        axles = List.copyOf(axles);
        fifthWheelsKg = List.copyOf(fifthWheelsKg);
    }

    /** On the fifth wheel that carries the trailer. */
    public double kingpinKg() {
        return fifthWheelsKg.get(fifthWheelsKg.size() - 1);
    }

    /**
     * One axle.
     *
     * @param rightKg what its right side carries, when the tracks are known
     */
    public record AxleLoad(AxlePlace place, double loadKg, OptionalDouble rightKg) {
        /** The heavier side's load, when known. */
        public OptionalDouble heavierSideKg() {
            return rightKg.isEmpty()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(Math.max(rightKg.getAsDouble(), loadKg - rightKg.getAsDouble()));
        }
    }

    /**
     * The joint of a trailing booster.
     *
     * @param shearKg how much of the booster's weight the trailer carries; negative when the booster lifts it
     * @param momentKgM what the regulated air presses the booster's axle down with, about the joint
     */
    public record BoosterJoint(double shearKg, double momentKgM) {}

    /** Loads of the axles {@code first} to {@code last} together. */
    public double sumKg(int first, int last) {
        double sum = 0;
        for (int i = first; i <= last; i++) {
            sum += axles.get(i).loadKg();
        }
        return sum;
    }

    public double grossKg() {
        return sumKg(0, axles.size() - 1);
    }

    /** The groups that stand on the road, front to rear. */
    public List<LoadGroup> groups() {
        return axles.stream().map(a -> a.place().group()).distinct().toList();
    }

    /** Load of all groups of a kind; zero when none of its axles stands on the road. */
    public double groupKg(AxleKind group) {
        return axles.stream()
                .filter(a -> a.place().group().kind() == group)
                .mapToDouble(AxleLoad::loadKg)
                .sum();
    }

    /** Load of one axle of a group, of the first jeep's where there are several; empty when none stands on the road. */
    public OptionalDouble perAxleKg(AxleKind group) {
        return axles.stream()
                .filter(a -> a.place().group().kind() == group)
                .mapToDouble(AxleLoad::loadKg)
                .findFirst();
    }
}
