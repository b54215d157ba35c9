package org.cresthaul.route;

import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.RoadProfile;

/**
 * A rail crossing at grade.
 *
 * @param crossingNumber number on the crossing's emergency sign, six digits and a letter, when known
 * @param tracksM where the tracks' center lines cross, meters along travel from the hazard's point, ascending
 * @param signs warning signs posted before it, such as "W10-5"; no sign never means flat
 * @param traffic what is known of trains, and of the room beyond
 * @param emergencyPhone telephone number on the emergency sign, when known
 */
public record RailCrossing(
        HazardPlace place,
        Optional<String> crossingNumber,
        List<RoadProfile> lines,
        Optional<Uncertainty> survey,
        List<Double> tracksM,
        List<String> signs,
        CrossingTraffic traffic,
        Optional<String> emergencyPhone)
        implements Hazard {
    /** What the signs for low ground clearance are numbered. */
    private static final String LOW_GROUND_SIGN = "W10-5";

    /** A crossing whose sign's telephone number is not known. */
    public RailCrossing(
            HazardPlace place,
            Optional<String> crossingNumber,
            List<RoadProfile> lines,
            Optional<Uncertainty> survey,
            List<Double> tracksM,
            List<String> signs,
            CrossingTraffic traffic) {
        this(place, crossingNumber, lines, survey, tracksM, signs, traffic, Optional.empty());
    }

    /** A crossing of which nothing is known but its road. */
    public RailCrossing(
            HazardPlace place,
            Optional<String> crossingNumber,
            List<RoadProfile> lines,
            Optional<Uncertainty> survey,
            List<Double> tracksM,
            List<String> signs) {
        this(place, crossingNumber, lines, survey, tracksM, signs, CrossingTraffic.UNKNOWN);
    }

    public RailCrossing {
        lines = List.copyOf(lines);
        tracksM = List.copyOf(tracksM);
        signs = List.copyOf(signs);
        Hazard.requireSound(lines, survey);
    }

    @Override
    public HazardKind kind() {
        return HazardKind.RAIL_CROSSING;
    }

    @Override
    public RailCrossing withSurvey(Uncertainty other) {
        return new RailCrossing(
                place, crossingNumber, lines, survey.map(s -> other), tracksM, signs, traffic, emergencyPhone);
    }

    @Override
    public boolean isSurveyed() {
        return !lines.isEmpty();
    }

    /** Whether the sign for low ground clearance is posted before it; none never means flat. */
    public boolean hasLowGroundSign() {
        return signs.contains(LOW_GROUND_SIGN);
    }
}
