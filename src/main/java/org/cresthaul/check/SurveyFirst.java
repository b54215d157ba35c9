package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.cresthaul.language.Sentence;
import org.cresthaul.road.StandardHump;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.route.Sketch;
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
public record SurveyFirst(List<Place> places, List<HumpLadder> humps) {
    static final String LOW_GROUND_SIGN = "W10-5";

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
    public record Place(
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

        /** By how much the gap over the sketch is more than what must be kept; nothing where nobody knows. */
        private double spareM(double keptM) {
            return sketch == null || sketch.gapM() == null ? 0 : sketch.gapM() - keptM;
        }

        private Place at(int other) {
            return new Place(
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

    /**
     * What cannot be seen from a map may be anything: so an unknown number of tracks comes with the many, an unknown
     * angle with the sharp ones, and a place without a usable sketch between those whose sketch leaves less than must
     * be kept and those whose sketch leaves more.
     */
    private static Comparator<Place> first(double keptM) {
        return Comparator.comparing(Place::kind)
                .thenComparing(p -> !p.lowGroundSign)
                .thenComparing(p -> p.tracks == null ? Integer.MIN_VALUE : -p.tracks)
                .thenComparing(p -> p.spareM(keptM))
                .thenComparing(p -> p.angleRad == null ? 0 : p.angleRad)
                .thenComparing(Place::reported)
                .thenComparing(Place::chainageM)
                .thenComparing(Place::id);
    }

    public SurveyFirst {
        places = List.copyOf(places);
        humps = List.copyOf(humps);
    }

    /** The places alone; the ladders they ask for are {@link #waitingTracks}. */
    static List<Place> places(Route route) {
        return places(route, Map.of(), 0);
    }

    /** Hazards with a sketch that orders a survey: those that wait. */
    static Map<String, Sketch> sketches(Route route) {
        Map<String, Sketch> all = new LinkedHashMap<>();
        for (Hazard hazard : route.hazards()) {
            route.findCandidate(hazard.place().id())
                    .filter(c -> c.state() == Candidate.State.OPEN)
                    .flatMap(Candidate::sketch)
                    .ifPresent(s -> all.put(hazard.place().id(), s));
        }
        return all;
    }

    /**
     * The same.
     *
     * @param sketches the gaps over the sketches there are, by hazard
     * @param keptM how much of a gap must be left
     */
    static List<Place> places(Route route, Map<String, SketchGap> sketches, double keptM) {
        List<Place> unordered = new ArrayList<>();
        for (Hazard hazard : route.hazards()) {
            Optional<Candidate> open =
                    route.findCandidate(hazard.place().id()).filter(c -> c.state() == Candidate.State.OPEN);
            if (!hazard.isSurveyed() || open.isPresent()) {
                unordered.add(place(hazard, open, sketches.get(hazard.place().id())));
            }
        }
        unordered.sort(first(keptM));
        List<Place> ordered = new ArrayList<>();
        for (Place place : unordered) {
            ordered.add(place.at(ordered.size() + 1));
        }
        return ordered;
    }

    private static Place place(Hazard hazard, Optional<Candidate> open, SketchGap sketch) {
        Optional<RailCrossing> crossing = hazard instanceof RailCrossing rails ? Optional.of(rails) : Optional.empty();
        Optional<Candidate.Rails> said = crossing.isPresent() ? open.map(Candidate::rails) : Optional.empty();
        OptionalInt tracks = crossing.filter(c -> !c.tracksM().isEmpty())
                .map(c -> OptionalInt.of(c.tracksM().size()))
                .or(() -> said.map(Candidate.Rails::tracks))
                .orElse(OptionalInt.empty());
        boolean sign = crossing.filter(c -> c.signs().contains(LOW_GROUND_SIGN)).isPresent()
                || said.filter(Candidate.Rails::lowGroundSign).isPresent();
        return new Place(
                0,
                hazard.place().id(),
                hazard.place().name(),
                hazard.kind(),
                hazard.place().chainageM(),
                hazard.place().landmark().orElse(null),
                hazard.isSurveyed(),
                tracks.isPresent() ? (Integer) tracks.getAsInt() : null,
                sign,
                said.filter(r -> r.angleRad().isPresent())
                        .map(r -> (Double) r.angleRad().getAsDouble())
                        .orElse(null),
                sketch,
                open.map(Candidate::origin).orElse(null),
                hazard instanceof RouteCorner corner && corner.radiusM().isPresent()
                        ? "bends at about " + Math.round(corner.radiusM().get()) + " m ("
                                + Math.round(corner.radiusM().get() / 0.3048) + " ft)"
                        : null);
    }

    /** For which numbers of tracks a standard hump is to be looked at, fewest first. */
    static List<Integer> waitingTracks(List<Place> places) {
        return places.stream()
                .filter(p -> p.tracks != null && p.tracks <= StandardHump.MOST_TRACKS)
                .map(Place::tracks)
                .distinct()
                .sorted()
                .toList();
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
