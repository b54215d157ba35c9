package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonQuantities;
import org.cresthaul.route.CrossingTraffic;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.PostedBridge;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.RoadHump;
import org.cresthaul.route.RouteCandidate;
import org.cresthaul.route.RouteLine;
import org.cresthaul.route.Stretch;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Problems;

/** Reads one hazard of a route file, and then finds its place on the line. */
final class HazardReader {
    static final List<String> KINDS = Stream.of(HazardKind.values())
            .filter(HazardKind::isMarked)
            .map(HazardKind::word)
            .toList();
    /** How far a stretch may reach from its point. */
    static final LengthLimits STRETCH = new LengthLimits(-100_000, 100_000);
    /** A stretch that ends this little beyond the route ends with it: lengths of roads are rounded. */
    static final double BEYOND_ROUTE_M = 10;

    private static final Pattern CROSSING_NUMBER = Pattern.compile("\\d{6}[A-Z]");
    private static final Pattern PHONE = Pattern.compile("\\+?\\d(?:[ ()-]{0,2}\\d){2,14}");

    private final JsonFields properties;
    private final Problems problems;
    private final PlaceReader place;
    private final ProfileReader profiles;
    /** For a corner alone. */
    private final Optional<CornerReader> corner;
    /** Makes the hazard once its place is known; null after a problem. */
    private final Function<HazardPlace, Hazard> make;

    private final Optional<CandidateReader> candidate;
    private final Optional<HazardKind> kind;
    private final boolean sound;

    HazardReader(JsonFields geometry, JsonFields properties) {
        this.properties = properties;
        problems = properties.problems();
        int before = problems.count();
        place = new PlaceReader("hazard", geometry, properties);
        String word = properties.word("hazard", KINDS);
        kind = Stream.of(HazardKind.values())
                .filter(k -> k.isMarked() && k.word().equals(word))
                .findFirst();
        corner = kind.equals(Optional.of(HazardKind.CORNER))
                ? Optional.of(new CornerReader(properties))
                : Optional.empty();
        candidate = CandidateReader.of(properties);
        profiles = corner.isPresent() ? null : new ProfileReader(properties);
        Function<HazardPlace, Hazard> made = kind.map(this::maker).orElse(null);
        if (kind.isPresent()) {
            properties.refuseOthers();
        }
        sound = problems.count() == before;
        make = sound ? made : null;
    }

    /** Reads what only this kind has; null for a corner, which its own reader makes. */
    private Function<HazardPlace, Hazard> maker(HazardKind kind) {
        return switch (kind) {
            case RAIL_CROSSING -> railCrossing();
            case LOW_STRUCTURE -> new OverheadReader(properties, profiles).structure();
            case OVERHEAD_WIRE -> new WireReader(properties, profiles).wire();
            case DIP, CREST -> place -> new RoadHump(place, kind, profiles.lines(), profiles.survey());
            case POSTED_BRIDGE -> postedBridge();
            case STRETCH -> stretch();
            case CORNER, LIMITS -> null;
        };
    }

    /** Where it is said to be. */
    PlaceReader place() {
        return place;
    }

    int surveyPoints() {
        return profiles == null ? 0 : profiles.pointCount();
    }

    /**
     * What is judged at its place on the line; empty after a problem, told now or before, and when it was dismissed.
     */
    Optional<Hazard> placedOn(RouteLine line) {
        if (candidate.isPresent() && candidate.get().isDismissed()) {
            return Optional.empty();
        }
        Optional<Hazard> made = madeOn(line);
        candidate.ifPresent(c -> made.ifPresent(c::requireStateOf));
        return made;
    }

    /** Where it comes from, when nobody here measured it; its place is told of once, by the hazard if there is one. */
    Optional<RouteCandidate> candidateOn(RouteLine line) {
        if (candidate.isEmpty() || !sound) {
            return Optional.empty();
        }
        return place.placedOn(line)
                .map(p -> new RouteCandidate(
                        p, kind.orElseThrow(), candidate.get().candidate()));
    }

    private Optional<Hazard> madeOn(RouteLine line) {
        Optional<HazardPlace> placed = place.placedOn(line);
        if (placed.isEmpty() || !sound) {
            return Optional.empty();
        }
        if (corner.isPresent()) {
            return corner.get().placed(placed.get(), line);
        }
        Hazard hazard = make.apply(placed.get());
        if (hazard instanceof Stretch stretch
                && (stretch.fromChainageM() < -BEYOND_ROUTE_M
                        || stretch.toChainageM() > line.lengthM() + BEYOND_ROUTE_M)) {
            properties.problem(
                    "extent",
                    "beyond-route",
                    "The stretch reaches beyond the route: from chainage "
                            + Math.round(stretch.fromChainageM()) + " m to " + Math.round(stretch.toChainageM())
                            + " m of " + Math.round(line.lengthM()) + " m.",
                    "Count from the hazard's point, in the direction of travel.");
            return Optional.empty();
        }
        return Optional.of(hazard);
    }

    private Optional<WeightLimits> limits(Optional<OptionalDouble> bridgeM) {
        for (String key : new String[] {"profile", "survey", "approachBefore", "approachAfter"}) {
            if (properties.has(key)) {
                properties.problem(
                        key,
                        "not-judged",
                        "This kind of hazard is judged by loads: \"" + key + "\" would count for nothing.",
                        "Leave it out, or add a hazard of another kind for the road.");
            }
        }
        return properties
                .findObject("limits")
                .flatMap(l ->
                        LimitsFile.read(l, Optional.of(place.name().isEmpty() ? "limits" : place.name()), bridgeM));
    }

    private Function<HazardPlace, Hazard> postedBridge() {
        Optional<LowStructure.Extent> extent = properties
                .findItems("extent", 2, 2)
                .flatMap(items -> ends(properties, items, ProfileReader.DISTANCE, "bridge"));
        // A mistake in the extent is told once; no bridge is made then.
        OptionalDouble lengthM = properties.has("extent")
                ? OptionalDouble.of(extent.map(e -> e.toM() - e.fromM()).orElse(0.0))
                : OptionalDouble.empty();
        Optional<WeightLimits> limits = limits(Optional.of(lengthM));
        return place -> new PostedBridge(place, extent, limits);
    }

    /** Start and end along travel from the hazard's point; empty after a problem, told now or before. */
    static Optional<LowStructure.Extent> ends(
            JsonFields properties, List<JsonNode> items, LengthLimits within, String what) {
        if (items.size() != 2) {
            return Optional.empty();
        }
        String at = properties.pointer("extent");
        double fromM = JsonQuantities.lengthM(items.get(0), at + "/0", "extent", within, properties.problems());
        double toM = JsonQuantities.lengthM(items.get(1), at + "/1", "extent", within, properties.problems());
        if (toM <= fromM) {
            properties
                    .problems()
                    .add("order", "The " + what + " runs backward.", at, "Write its start first, then its end.");
        }
        return toM > fromM ? Optional.of(new LowStructure.Extent(fromM, toM)) : Optional.empty();
    }

    private Function<HazardPlace, Hazard> stretch() {
        Optional<WeightLimits> limits = limits(Optional.empty());
        boolean replaces = properties.has("applies")
                && properties.word("applies", List.of("as well", "instead")).equals("instead");
        if (replaces && !properties.has("limits")) {
            properties.problem(
                    "applies",
                    "instead-of-nothing",
                    "Limits are replaced, but not by any.",
                    "Add \"limits\", or leave \"applies\" out.");
        }
        Optional<LowStructure.Extent> extent = ends(properties, properties.items("extent", 2, 2), STRETCH, "stretch");
        // Without its ends there is a problem, and nothing is made.
        if (replaces && limits.filter(WeightLimits::reported).isPresent()) {
            properties.problem(
                    "applies",
                    "reported-instead",
                    "Reported limits hold besides those of the route, never in their place.",
                    "Leave \"applies\" out, or read the sign and leave \"origin\" out.");
        }
        return place -> new Stretch(
                place, extent.orElseThrow().fromM(), extent.orElseThrow().toM(), limits, replaces);
    }

    private Function<HazardPlace, Hazard> railCrossing() {
        Optional<String> number = properties.findText("crossingNumber", JsonFields.LONGEST_NAME);
        number.filter(n -> !n.isEmpty() && !CROSSING_NUMBER.matcher(n).matches())
                .ifPresent(n -> properties.problem(
                        "crossingNumber",
                        "wrong-number",
                        "A crossing number has six digits and a capital letter, is \"" + n + "\".",
                        "Copy it from the blue emergency sign, such as \"123456A\"."));
        Optional<String> phone = properties.findText("emergencyPhone", JsonFields.LONGEST_NAME);
        phone.filter(n -> !n.isEmpty() && !PHONE.matcher(n).matches())
                .ifPresent(n -> properties.problem(
                        "emergencyPhone",
                        "wrong-number",
                        "A telephone number has 3 to 15 digits, is \"" + n + "\".",
                        "Copy it from the blue emergency sign, such as \"800-555-0100\"."));
        List<Double> tracksM = new ArrayList<>();
        List<JsonNode> tracks = properties.findItems("tracks", 0, 50).orElse(List.of());
        for (int i = 0; i < tracks.size(); i++) {
            String at = properties.pointer("tracks") + "/" + i;
            double trackM = JsonQuantities.lengthM(tracks.get(i), at, "A track", ProfileReader.DISTANCE, problems);
            if (!tracksM.isEmpty() && trackM <= tracksM.get(tracksM.size() - 1)) {
                problems.add(
                        "order",
                        "This track does not come after the one before it.",
                        at,
                        "List the tracks in the order of travel.");
            }
            tracksM.add(trackM);
        }
        List<String> signs = signs();
        Optional<CrossingTraffic> traffic = CrossingReader.traffic(properties);
        return place -> new RailCrossing(
                place, number, profiles.lines(), profiles.survey(), tracksM, signs, traffic.orElseThrow(), phone);
    }

    private List<String> signs() {
        List<String> signs = new ArrayList<>();
        List<JsonNode> items = properties.findItems("signs", 0, 20).orElse(List.of());
        for (int i = 0; i < items.size(); i++) {
            JsonNode item = items.get(i);
            if (!item.isTextual() || !PlaceReader.ID.matcher(item.textValue()).matches()) {
                problems.add(
                        "wrong-type",
                        "A sign is named by its code.",
                        properties.pointer("signs") + "/" + i,
                        "Write it as in \"W10-5\".");
            } else {
                signs.add(item.textValue());
            }
        }
        return signs;
    }
}
