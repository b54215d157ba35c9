package org.cresthaul.route;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.RoadProfile;

/**
 * A wire or cable over the road. It is passed like a low structure, but nothing may come near it: it is kept away from
 * by a distance that depends on its voltage, or that its owner names.
 *
 * @param height its height at its lowest, with what heat or ice adds taken off
 * @param carries what it is for
 * @param voltageV between conductors, volts, where that is known
 * @param steepestAlong of the line that stands for it, along the road
 * @param isLowest whether heat and ice are in the height: as its owner declares it, or as the file adds
 * @param keepAwayM what its owner asks to be kept away, meters
 */
public record OverheadWire(
        LowStructure height,
        Carries carries,
        OptionalDouble voltageV,
        double steepestAlong,
        boolean isLowest,
        OptionalDouble keepAwayM)
        implements Overhead {
    /** What a wire is for. */
    public enum Carries {
        POWER("power"),
        /** Telephone, television: no more voltage than a person may touch. */
        COMMUNICATION("communication"),
        UNKNOWN("unknown");

        private final String word;

        Carries(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    private static final double FOOT_M = 0.3048;

    /**
     * Up to so many volts, and what is kept away, feet: 29 CFR 1926.1411, Table T, for equipment that travels under or
     * near power lines with no load on a construction site; that it serves for a load on the road is this program's
     * choice.
     */
    private static final double[][] TABLE_T = {{750, 4}, {50e3, 6}, {345e3, 10}, {750e3, 16}, {1000e3, 20}};

    /** Of which the voltage is not known: what is asked up to 345 kV. */
    private static final double UNKNOWN_M = 10 * FOOT_M;

    public OverheadWire {
        Finite.requireAtLeast("steepestAlong", 0, steepestAlong);
        voltageV.ifPresent(v -> Finite.requireAtLeast("voltageV", 0, v));
        keepAwayM.ifPresent(k -> Finite.requireAtLeast("keepAwayM", 0, k));
        if (carries != Carries.POWER && voltageV.isPresent()) {
            throw new IllegalArgumentException("only a wire that carries power has a voltage");
        }
    }

    @Override
    public HazardPlace place() {
        return height.place();
    }

    @Override
    public List<RoadProfile> lines() {
        return height.lines();
    }

    @Override
    public Optional<Uncertainty> survey() {
        return height.survey();
    }

    @Override
    public HazardKind kind() {
        return HazardKind.OVERHEAD_WIRE;
    }

    @Override
    public boolean isSurveyed() {
        return height.isSurveyed();
    }

    @Override
    public OverheadWire withSurvey(Uncertainty other) {
        return new OverheadWire(height.withSurvey(other), carries, voltageV, steepestAlong, isLowest, keepAwayM);
    }

    /** Whether what is kept away from it is known, by its owner's word, its voltage or its use. */
    public boolean isDistanceKnown() {
        return keepAwayM.isPresent() || carries == Carries.COMMUNICATION || usualM().isPresent();
    }

    /**
     * What is kept away from it in every direction, meters: as its owner asks, or as its voltage asks. Of an unknown
     * voltage it is a figure to go on with, and not known to do.
     */
    public double keptAwayM() {
        return keepAwayM.orElse(carries == Carries.COMMUNICATION ? 0 : usualM().orElse(UNKNOWN_M));
    }

    /**
     * The vertical gap that leaves so much in every direction, meters: what lies so far straight below a line of a
     * slope is nearer to another place of it.
     */
    public double gapM() {
        return keptAwayM() * Math.hypot(1, steepestAlong);
    }

    private OptionalDouble usualM() {
        if (voltageV.isPresent()) {
            for (double[] row : TABLE_T) {
                if (voltageV.getAsDouble() <= row[0]) {
                    return OptionalDouble.of(row[1] * FOOT_M);
                }
            }
        }
        return OptionalDouble.empty();
    }
}
