package org.cresthaul.route;

import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.RoadProfile;

/** A spot on the route where the combination may touch something, or be heavier than allowed. */
public sealed interface Hazard permits RailCrossing, Overhead, RoadHump, LimitedPlace, RouteCorner {
    HazardPlace place();

    /** Surveyed wheel-path lines over it, names distinct; none when nobody surveyed the road here. */
    List<RoadProfile> lines();

    /** Accuracy of the survey (95 %); there whenever something was surveyed. */
    Optional<Uncertainty> survey();

    HazardKind kind();

    /** False when what this kind of hazard is judged by is not known. It is then never clear. */
    boolean isSurveyed();

    /** The same place, surveyed so accurately; itself where no accuracy is given. */
    Hazard withSurvey(Uncertainty other);

    /** What every kind must hold to; throws when it does not. */
    static void requireSound(List<RoadProfile> lines, Optional<Uncertainty> survey) {
        if (!lines.isEmpty() && survey.isEmpty()) {
            throw new IllegalArgumentException("a surveyed line needs the accuracy of its survey");
        }
        if (lines.stream().map(RoadProfile::name).distinct().count() != lines.size()) {
            throw new IllegalArgumentException("the lines of a hazard need different names");
        }
    }
}
