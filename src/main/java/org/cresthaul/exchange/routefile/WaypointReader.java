package org.cresthaul.exchange.routefile;

import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.RouteLine;

/** Reads a place somebody marked on the route: it has a name and nothing is judged there. */
final class WaypointReader {
    static final List<String> KINDS = List.of("waypoint");

    private final PlaceReader place;
    private final boolean sound;

    WaypointReader(JsonFields geometry, JsonFields properties) {
        int before = properties.problems().count();
        place = new PlaceReader("place", geometry, properties);
        properties.word("place", KINDS);
        properties.refuseOthers();
        sound = properties.problems().count() == before;
    }

    /** Where it is said to be. */
    PlaceReader place() {
        return place;
    }

    /** Its place on the line; empty after a problem, told now or before. */
    Optional<HazardPlace> placedOn(RouteLine line) {
        Optional<HazardPlace> placed = place.placedOn(line);
        return sound ? placed : Optional.empty();
    }
}
