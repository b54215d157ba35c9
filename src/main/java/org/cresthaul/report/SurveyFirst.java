package org.cresthaul.report;

import java.util.List;
import org.cresthaul.language.Sentence;
import org.cresthaul.route.HazardKind;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * Every place of a route that is not surveyed, or known only because somebody reports it, in the order in which it is
 * worth going there; with how high a rail crossing the combination clears. None of it changes a verdict. The order is a
 * rule (docs/model.md, What to survey first).
 *
 * @param places in that order; empty where everything is surveyed
 * @param humps for every number of tracks that waits, fewest first
 */
public record SurveyFirst(List<PlaceToSurvey> places, List<HumpLadder> humps) {
    /**
     * A place that waits for a survey.
     *
     * @param rank from 1
     * @param landmark what a driver sees before it, or null
     * @param reported whether a height or limits are known from hearsay; nothing is, where it is false
     * @param tracks of a rail crossing, null where nobody says, and elsewhere
     * @param lowGroundSign whether a sign of low ground clearance is recorded at a rail crossing; none never means flat
     * @param angleRad between road and rails, null where nobody says, and elsewhere
     * @param sketch the road there as an elevation raster has it, and the gap over it; null where there is none
     * @param origin who says that there is something, or null where the route file alone does
     * @param known what else is known of it, or null
     */
    public record PlaceToSurvey(
            int rank,
            String id,
            String name,
            HazardKind kind,
            @Rounded(Rounding.LENGTH_NEAR) double chainageM,
            String landmark,
            boolean reported,
            Integer tracks,
            boolean lowGroundSign,
            @Rounded(Rounding.ANGLE_NEAR) Double angleRad,
            SketchGap sketch,
            Sentence origin,
            String known) {
        /** Whether a sketch of its road would say anything: where the ground below the combination counts. */
        public boolean mayBeSketched() {
            return kind.isOverGround();
        }

        /** At another rank. */
        public PlaceToSurvey at(int other) {
            return new PlaceToSurvey(
                    other,
                    id,
                    name,
                    kind,
                    chainageM,
                    landmark,
                    reported,
                    tracks,
                    lowGroundSign,
                    angleRad,
                    sketch,
                    origin,
                    known);
        }
    }

    public SurveyFirst {
        places = List.copyOf(places);
        humps = List.copyOf(humps);
    }

    /** Whether any place that waits has a sketch of its road. */
    public boolean hasSketches() {
        return places.stream().anyMatch(p -> p.sketch() != null);
    }

    /** How many rail crossings with so many tracks wait. */
    public long waiting(int tracks) {
        return places.stream()
                .filter(p -> p.tracks != null && p.tracks == tracks)
                .count();
    }
}
