package org.cresthaul.route;

import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.RoadProfile;

/** A dip or a crest of the road. */
public record RoadHump(HazardPlace place, Kind kind, List<RoadProfile> lines, Optional<Uncertainty> survey)
        implements Hazard {
    /** Which way the road bends. */
    public enum Kind {
        DIP("dip"),
        CREST("crest");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public RoadHump {
        lines = List.copyOf(lines);
        Hazard.requireSound(lines, survey);
    }

    @Override
    public String word() {
        return kind.word();
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
