package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCandidate;
import org.cresthaul.route.RouteLine;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.route.TightTurns;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Problems;

/**
 * Reads a route file: GeoJSON (RFC 7946) with a route line, hazards and stopping places ({@code docs/file-formats.md},
 * {@code schema/route-1.schema.json}). A file is taken whole or refused with every mistake in it.
 */
public final class RouteFile {
    /** What a route file says of itself. */
    public static final String FORMAT = "route/1";
    /** Most features: legs, hazards and stopping places together. */
    public static final int MOST_FEATURES = 2000;
    /** Most surveyed points of all hazards together. */
    public static final int MOST_SURVEY_POINTS = 200_000;

    private RouteFile() {}

    /**
     * Reads a route file.
     *
     * @param document UTF-8
     * @throws InputRejected with every problem found
     */
    public static Route parse(byte[] document) throws InputRejected {
        Problems problems = new Problems();
        return finish(JsonText.read(document, problems), problems);
    }

    /** As {@link #parse(byte[])}. */
    public static Route parse(String document) throws InputRejected {
        Problems problems = new Problems();
        return finish(JsonText.read(document, problems), problems);
    }

    private static Route finish(JsonNode root, Problems problems) throws InputRejected {
        Optional<Route> route = read(root, "", problems);
        problems.throwIfAny();
        return route.orElseThrow();
    }

    /**
     * Reads a route that is part of a larger document.
     *
     * @param node as read by {@link JsonText}
     * @param pointer where the node stands in the document
     * @param problems receives every mistake
     * @return empty exactly when a problem was added, or when {@code node} is missing
     */
    public static Optional<Route> read(JsonNode node, String pointer, Problems problems) {
        if (node.isMissingNode()) {
            return Optional.empty();
        }
        int before = problems.count();
        JsonFields file = JsonFields.of(node, pointer, problems);
        file.word("type", List.of("FeatureCollection"));
        file.word("cresthaul", List.of(FORMAT));
        String name = file.text("name", JsonFields.LONGEST_NAME);
        String note = file.findText("note", JsonFields.LONGEST_NOTE).orElse("");
        Optional<String> permit = file.findText("permit", JsonFields.LONGEST_NAME);
        refuseCrs(file);
        file.find("bbox");
        Optional<WeightLimits> limits =
                file.findObject("limits").flatMap(l -> LimitsFile.read(l, Optional.empty(), Optional.empty()));
        LegReader legs = new LegReader(problems);
        List<HazardReader> hazards = new ArrayList<>();
        List<StopReader> stops = new ArrayList<>();
        List<WaypointReader> waypoints = new ArrayList<>();
        for (JsonFields feature : file.objects("features", 1, MOST_FEATURES)) {
            readFeature(feature, legs, hazards, stops, waypoints);
        }
        file.refuseOthers();
        requireARoute(file, hazards, legs, before);
        Optional<RouteLine> line = legs.line();
        refuseIdsTwice(
                Stream.of(
                                hazards.stream().map(HazardReader::place),
                                stops.stream().map(StopReader::place),
                                waypoints.stream().map(WaypointReader::place))
                        .flatMap(s -> s),
                problems);
        List<Hazard> placed = new ArrayList<>();
        hazards.forEach(h -> line.flatMap(h::placedOn).ifPresent(placed::add));
        List<StoppingPlace> placedStops = new ArrayList<>();
        stops.forEach(s -> line.flatMap(s::placedOn).ifPresent(placedStops::add));
        List<RouteCandidate> candidates = new ArrayList<>();
        int soFar = problems.count();
        hazards.forEach(h -> line.filter(l -> problems.count() == soFar)
                .flatMap(h::candidateOn)
                .ifPresent(candidates::add));
        List<HazardPlace> marked = new ArrayList<>();
        waypoints.forEach(w -> line.flatMap(w::placedOn).ifPresent(marked::add));
        if (problems.count() > before) {
            return Optional.empty();
        }
        placed.addAll(TightTurns.listUnsurveyed(line.orElseThrow(), placed));
        placed.sort(Comparator.comparingDouble((Hazard h) -> h.place().chainageM())
                .thenComparing(h -> h.place().id()));
        placedStops.sort(
                Comparator.comparingDouble((StoppingPlace p) -> p.place().chainageM())
                        .thenComparing(p -> p.place().id()));
        candidates.sort(
                Comparator.comparingDouble((RouteCandidate c) -> c.place().chainageM())
                        .thenComparing(c -> c.place().id()));
        marked.sort(Comparator.comparingDouble(HazardPlace::chainageM).thenComparing(HazardPlace::id));
        return Optional.of(new Route(
                name, note, line.orElseThrow(), legs.legs(), placed, placedStops, limits, permit, marked, candidates));
    }

    private static void requireARoute(JsonFields file, List<HazardReader> hazards, LegReader legs, int before) {
        if (hazards.stream().mapToInt(HazardReader::surveyPoints).sum() > MOST_SURVEY_POINTS) {
            file.problem(
                    "features",
                    "too-many",
                    "The hazards have more than " + MOST_SURVEY_POINTS + " surveyed points together.",
                    "Split the route, or thin the profiles.");
        }
        if (file.isThere() && legs.isEmpty() && file.problems().count() == before) {
            file.problem(
                    "features",
                    "no-route",
                    "No feature is the route.",
                    "Add a LineString feature with \"properties\": {\"route\": \"name of the leg\"}.");
        }
    }

    private static void refuseIdsTwice(Stream<PlaceReader> places, Problems problems) {
        Set<String> ids = new HashSet<>();
        places.filter(p -> !p.id().isEmpty() && !ids.add(p.id()))
                .forEach(p -> problems.add(
                        "id-twice",
                        "Two hazards or stopping places have the id \"" + p.id() + "\".",
                        p.idPointer(),
                        "Give each its own id."));
    }

    static void refuseCrs(JsonFields object) {
        if (object.has("crs")) {
            object.problem(
                    "crs",
                    "crs",
                    "RFC 7946 has no \"crs\": positions are WGS 84 longitude and latitude.",
                    "Convert the positions to WGS 84 and leave \"crs\" out.");
        }
    }

    private static void readFeature(
            JsonFields feature,
            LegReader legs,
            List<HazardReader> hazards,
            List<StopReader> stops,
            List<WaypointReader> waypoints) {
        feature.word("type", List.of("Feature"));
        refuseCrs(feature);
        feature.find("id");
        feature.find("bbox");
        JsonFields geometry = feature.object("geometry");
        JsonFields properties = feature.object("properties");
        List<String> kinds = Stream.of("route", "hazard", "stop", "place")
                .filter(properties::has)
                .toList();
        if (kinds.size() > 1) {
            properties.problem(
                    kinds.get(1),
                    "both-kinds",
                    "A feature is a leg of the route, a hazard, a stopping place or a waypoint, one of them.",
                    "Keep \"route\" on lines, and on a point one of \"hazard\", \"stop\" and \"place\".");
        } else if (kinds.contains("route")) {
            legs.read(geometry, properties);
        } else if (kinds.contains("hazard")) {
            hazards.add(new HazardReader(geometry, properties));
        } else if (kinds.contains("stop")) {
            stops.add(new StopReader(geometry, properties));
        } else if (kinds.contains("place")) {
            waypoints.add(new WaypointReader(geometry, properties));
        } else if (properties.isThere()) {
            feature.problem(
                    "properties",
                    "missing",
                    "This feature is neither a leg of the route, nor a hazard, nor a stopping place, nor a waypoint.",
                    "Add \"route\": \"name of the leg\" to a line, or to a point \"hazard\": \"rail-crossing\" (low-structure,"
                            + " overhead-wire, dip, crest, corner, posted-bridge, stretch) or \"stop\": \"stopping-place\" (set-up-area).");
        }
        feature.refuseOthers();
    }
}
