package org.cresthaul.route;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.axleload.WeightLimits;

/**
 * A route and what lies on it.
 *
 * @param name what people call it
 * @param note free text; says so when the route is invented
 * @param line every leg, one after the other, joined straight where they do not meet
 * @param legs in the order of travel, at least one
 * @param hazards by chainage, identifiers distinct
 * @param stops stopping places and set-up areas by chainage, identifiers distinct from those of hazards as well
 * @param limits weight limits of the whole route, when the file has any
 * @param permit number of the permit it is driven under, when the file has it
 * @param waypoints places somebody marked, by chainage; nothing is judged there
 * @param candidates where hazards come from that nobody here measured, by chainage; those dismissed as well
 */
public record Route(
        String name,
        String note,
        RouteLine line,
        List<Leg> legs,
        List<Hazard> hazards,
        List<StoppingPlace> stops,
        Optional<WeightLimits> limits,
        Optional<String> permit,
        List<HazardPlace> waypoints,
        List<RouteCandidate> candidates) {
    /** A route without places that somebody marked. */
    public Route(
            String name,
            String note,
            RouteLine line,
            List<Leg> legs,
            List<Hazard> hazards,
            List<StoppingPlace> stops,
            Optional<WeightLimits> limits,
            Optional<String> permit) {
        this(name, note, line, legs, hazards, stops, limits, permit, List.of(), List.of());
    }

    /** A route whose file names no permit. */
    public Route(
            String name,
            String note,
            RouteLine line,
            List<Leg> legs,
            List<Hazard> hazards,
            List<StoppingPlace> stops,
            Optional<WeightLimits> limits) {
        this(name, note, line, legs, hazards, stops, limits, Optional.empty());
    }

    /** A route whose file says nothing of stopping places and weight limits. */
    public Route(String name, String note, RouteLine line, List<Leg> legs, List<Hazard> hazards) {
        this(name, note, line, legs, hazards, List.of(), Optional.empty());
    }

    public Route {
        legs = List.copyOf(legs);
        hazards = List.copyOf(hazards);
        stops = List.copyOf(stops);
        waypoints = List.copyOf(waypoints);
        candidates = List.copyOf(candidates);
        if (name.isBlank() || legs.isEmpty()) {
            throw new IllegalArgumentException("a route needs a name and a leg");
        }
        Set<String> ids = new HashSet<>();
        double lastM = 0;
        for (Hazard hazard : hazards) {
            if (!ids.add(hazard.place().id())) {
                throw new IllegalArgumentException(
                        "two hazards are called " + hazard.place().id());
            }
            if (hazard.place().chainageM() < lastM || hazard.place().chainageM() > line.lengthM()) {
                throw new IllegalArgumentException("hazards run by chainage, along the line");
            }
            lastM = hazard.place().chainageM();
        }
        lastM = 0;
        for (StoppingPlace stop : stops) {
            if (!ids.add(stop.place().id())) {
                throw new IllegalArgumentException(
                        "two places are called " + stop.place().id());
            }
            if (stop.place().chainageM() < lastM || stop.place().chainageM() > line.lengthM()) {
                throw new IllegalArgumentException("stopping places run by chainage, along the line");
            }
            lastM = stop.place().chainageM();
        }
    }

    /** The same route with other hazards, by chainage. */
    public Route withHazards(List<Hazard> others) {
        return new Route(name, note, line, legs, others, stops, limits, permit, waypoints, candidates);
    }

    /** The same route under other limits of the whole route. */
    public Route withLimits(WeightLimits others) {
        return new Route(name, note, line, legs, hazards, stops, Optional.of(others), permit, waypoints, candidates);
    }

    public double lengthM() {
        return line.lengthM();
    }

    /** Where a hazard comes from, when nobody here measured it. */
    public Optional<Candidate> findCandidate(String id) {
        return candidates.stream()
                .filter(c -> c.place().id().equals(id))
                .map(RouteCandidate::candidate)
                .findFirst();
    }

    public Optional<Hazard> findHazard(String id) {
        return hazards.stream().filter(h -> h.place().id().equals(id)).findFirst();
    }
}
