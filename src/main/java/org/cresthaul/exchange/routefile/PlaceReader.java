package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.PassPoint;
import org.cresthaul.route.RouteLine;
import org.cresthaul.units.Problems;

/** Reads what a point on the route says of itself, a hazard or a stopping place, and finds its place on the line. */
final class PlaceReader {
    /** Farthest that a point may be off the line, meters. */
    static final double FARTHEST_OFF_M = 30;

    static final Pattern ID = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,39}");

    private final String what;
    private final JsonFields properties;
    private final Problems problems;
    private final String coordinatesPointer;
    private final LonLat position;
    private final String id;
    private final String name;
    private final Optional<String> landmark;
    private final OptionalInt passage;
    private final boolean sound;

    /** @param what the point is, for messages: "hazard" */
    PlaceReader(String what, JsonFields geometry, JsonFields properties) {
        this.what = what;
        this.properties = properties;
        problems = properties.problems();
        int before = problems.count();
        coordinatesPointer = geometry.pointer("coordinates");
        position = point(geometry);
        id = readId();
        name = properties.text("name", JsonFields.LONGEST_NAME);
        landmark = properties.findText("landmark", JsonFields.LONGEST_NAME);
        passage = properties.findInteger("passage", 1, 100);
        sound = problems.count() == before;
    }

    /** As in the file; empty when it is missing or wrong. */
    String id() {
        return id;
    }

    String idPointer() {
        return properties.pointer("id");
    }

    /** As in the file; empty when it is missing or wrong. */
    String name() {
        return name;
    }

    private String readId() {
        String text = properties.text("id", JsonFields.LONGEST_NAME);
        if (!text.isEmpty() && !ID.matcher(text).matches()) {
            properties.problem(
                    "id",
                    "wrong-id",
                    "The id \"" + text + "\" is not made of letters, digits, '.', '_', '-'.",
                    "Write a short one, such as \"H03\".");
            return "";
        }
        return text;
    }

    private LonLat point(JsonFields geometry) {
        geometry.word("type", List.of("Point"));
        RouteFile.refuseCrs(geometry);
        geometry.find("bbox");
        JsonNode coordinates = geometry.find("coordinates");
        geometry.refuseOthers();
        return geometry.isThere() ? PositionFields.read(coordinates, () -> coordinatesPointer, problems) : null;
    }

    /** The place on the line; empty after a problem, told now or before. */
    Optional<HazardPlace> placedOn(RouteLine line) {
        if (position == null) {
            return Optional.empty();
        }
        List<PassPoint> passages = line.passagesWithin(position, FARTHEST_OFF_M);
        if (passages.isEmpty()) {
            problems.add(
                    "off-route",
                    "The " + what + " is " + Math.round(line.roughDistanceM(position))
                            + " m off the route line; at most 30 m is taken.",
                    coordinatesPointer,
                    "Move the point to the line, or the line to the road.");
            return Optional.empty();
        }
        if (passage.isEmpty() && passages.size() > 1) {
            problems.add(
                    "passed-twice",
                    "The route passes this place " + passages.size() + " times, at chainages "
                            + passages.stream()
                                    .limit(10)
                                    .map(p -> Math.round(p.chainageM()) + " m")
                                    .collect(Collectors.joining(", "))
                            + ".",
                    properties.pointer(),
                    "Say which time is meant with \"passage\": 1 (or 2, ...), and list the " + what
                            + " once for each time the truck meets it: the direction of travel differs.");
            return Optional.empty();
        }
        int which = passage.orElse(1);
        if (which > passages.size()) {
            properties.problem(
                    "passage",
                    "no-such-passage",
                    "The route passes this place " + passages.size() + " times, not " + which + ".",
                    "Count the times from the start of the route.");
            return Optional.empty();
        }
        PassPoint at = passages.get(which - 1);
        return sound
                ? Optional.of(new HazardPlace(id, name, landmark, position, at.chainageM(), at.offsetM()))
                : Optional.empty();
    }
}
