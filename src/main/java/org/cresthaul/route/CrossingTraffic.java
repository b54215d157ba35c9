package org.cresthaul.route;

import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;
import org.cresthaul.units.Worded;

/**
 * What is known of the trains at a crossing, and of the room beyond it. Whatever is empty is not known, and never
 * stands for "enough".
 *
 * @param warning what announces a train
 * @param warningS least time from the start of the warning to the train, seconds; only with active devices
 * @param storageM room for the combination beyond the outermost rail, before the next stop line or junction, meters
 * @param trainMps fastest train, meters per second
 * @param sightM how far along the track a train is seen from the stop line, the worse way, meters
 */
public record CrossingTraffic(
        Optional<Warning> warning,
        OptionalDouble warningS,
        OptionalDouble storageM,
        OptionalDouble trainMps,
        OptionalDouble sightM) {
    /** What announces a train. */
    public enum Warning implements Worded {
        /** Lights, bells or gates that a train sets off. */
        ACTIVE("active"),
        /** Signs alone: the driver looks. */
        PASSIVE("passive");

        private final String word;

        Warning(String word) {
            this.word = word;
        }

        @Override
        public String word() {
            return word;
        }

        @Override
        public String toString() {
            return word;
        }
    }

    /** Least warning of active devices, seconds: 49 CFR 234.225. */
    public static final double LEAST_WARNING_S = 20;

    public static final CrossingTraffic UNKNOWN = new CrossingTraffic(
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());

    public CrossingTraffic {
        boolean active = warning.isPresent() && warning.get() == Warning.ACTIVE;
        if (warningS.isPresent() && !active) {
            throw new IllegalArgumentException("only active devices have a warning time");
        }
        warningS.ifPresent(t -> Finite.requireAtLeast("warningS", 0, t));
        storageM.ifPresent(s -> Finite.requireAtLeast("storageM", 0, s));
        trainMps.ifPresent(v -> Finite.requireAtLeast("trainMps", 0, v));
        sightM.ifPresent(s -> Finite.requireAtLeast("sightM", 0, s));
    }

    /**
     * The warning before a train, seconds: as given, or the least that active devices must give. Empty without active
     * devices, and where nobody knows whether there are any.
     */
    public OptionalDouble leastWarningS() {
        return warning.isPresent() && warning.get() == Warning.ACTIVE && warningS.isEmpty()
                ? OptionalDouble.of(LEAST_WARNING_S)
                : warningS;
    }
}
