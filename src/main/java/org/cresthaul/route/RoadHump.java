package org.cresthaul.route;

import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.RoadProfile;

/** A dip or a crest of the road. */
public record RoadHump(HazardPlace place, HazardKind kind, List<RoadProfile> lines, Optional<Uncertainty> survey)
        implements Hazard {
    public RoadHump {
        if (kind != HazardKind.DIP && kind != HazardKind.CREST) {
            throw new IllegalArgumentException("a " + kind.spoken() + " is no hump of the road");
        }
        lines = List.copyOf(lines);
        Hazard.requireSound(lines, survey);
    }

    @Override
    public RoadHump withSurvey(Uncertainty other) {
        return new RoadHump(place, kind, lines, survey.map(s -> other));
    }

    @Override
    public boolean isSurveyed() {
        return !lines.isEmpty();
    }
}
