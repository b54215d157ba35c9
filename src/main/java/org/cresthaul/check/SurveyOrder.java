package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.cresthaul.report.SketchGap;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.road.StandardHump;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.route.Sketch;

/** Which places of a route wait for a survey, in the order in which it is worth going there. */
final class SurveyOrder {
    private SurveyOrder() {}

    /**
     * What cannot be seen from a map may be anything: so an unknown number of tracks comes with the many, an unknown
     * angle with the sharp ones, and a place without a usable sketch between those whose sketch leaves less than must
     * be kept and those whose sketch leaves more.
     */
    private static Comparator<SurveyFirst.PlaceToSurvey> first(double keptM) {
        return Comparator.comparing(SurveyFirst.PlaceToSurvey::kind)
                .thenComparing(p -> !p.lowGroundSign())
                .thenComparing(p -> p.tracks() == null ? Integer.MIN_VALUE : -p.tracks())
                .thenComparing(p -> spareM(p, keptM))
                .thenComparing(p -> p.angleRad() == null ? 0 : p.angleRad())
                .thenComparing(SurveyFirst.PlaceToSurvey::reported)
                .thenComparing(SurveyFirst.PlaceToSurvey::chainageM)
                .thenComparing(SurveyFirst.PlaceToSurvey::id);
    }

    /** By how much the gap over the sketch is more than what must be kept; nothing where nobody knows. */
    private static double spareM(SurveyFirst.PlaceToSurvey place, double keptM) {
        SketchGap sketch = place.sketch();
        return sketch == null || sketch.gapM() == null ? 0 : sketch.gapM() - keptM;
    }

    /** The places alone; the ladders they ask for are {@link #waitingTracks}. */
    static List<SurveyFirst.PlaceToSurvey> places(Route route) {
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
    static List<SurveyFirst.PlaceToSurvey> places(Route route, Map<String, SketchGap> sketches, double keptM) {
        List<SurveyFirst.PlaceToSurvey> unordered = new ArrayList<>();
        for (Hazard hazard : route.hazards()) {
            Optional<Candidate> open =
                    route.findCandidate(hazard.place().id()).filter(c -> c.state() == Candidate.State.OPEN);
            if (!hazard.isSurveyed() || open.isPresent()) {
                unordered.add(place(hazard, open, sketches.get(hazard.place().id())));
            }
        }
        unordered.sort(first(keptM));
        List<SurveyFirst.PlaceToSurvey> ordered = new ArrayList<>();
        for (SurveyFirst.PlaceToSurvey place : unordered) {
            ordered.add(place.at(ordered.size() + 1));
        }
        return ordered;
    }

    private static SurveyFirst.PlaceToSurvey place(Hazard hazard, Optional<Candidate> open, SketchGap sketch) {
        Optional<RailCrossing> crossing = hazard instanceof RailCrossing rails ? Optional.of(rails) : Optional.empty();
        Optional<Candidate.Rails> said = crossing.isPresent() ? open.map(Candidate::rails) : Optional.empty();
        OptionalInt tracks = crossing.filter(c -> !c.tracksM().isEmpty())
                .map(c -> OptionalInt.of(c.tracksM().size()))
                .or(() -> said.map(Candidate.Rails::tracks))
                .orElse(OptionalInt.empty());
        boolean sign = crossing.filter(RailCrossing::hasLowGroundSign).isPresent()
                || said.filter(Candidate.Rails::lowGroundSign).isPresent();
        return new SurveyFirst.PlaceToSurvey(
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
    static List<Integer> waitingTracks(List<SurveyFirst.PlaceToSurvey> places) {
        return places.stream()
                .filter(p -> p.tracks() != null && p.tracks() <= StandardHump.MOST_TRACKS)
                .map(SurveyFirst.PlaceToSurvey::tracks)
                .distinct()
                .sorted()
                .toList();
    }
}
