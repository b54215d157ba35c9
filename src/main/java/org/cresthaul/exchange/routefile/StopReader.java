package org.cresthaul.exchange.routefile;

import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.RouteLine;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.units.LengthLimits;

/** Reads one stopping place or set-up area of a route file, and then finds its place on the line. */
final class StopReader {
    static final List<String> KINDS = List.of(StoppingPlace.STOPPING_PLACE, StoppingPlace.SET_UP_AREA);
    /** Least and most room taken, meters. */
    static final LengthLimits ROOM = new LengthLimits(1, 2_000);

    private final PlaceReader place;
    private final boolean setUpArea;
    private final double roomM;
    private final boolean sound;

    StopReader(JsonFields geometry, JsonFields properties) {
        int before = properties.problems().count();
        place = new PlaceReader("stopping place", geometry, properties);
        setUpArea = properties.word("stop", KINDS).equals(StoppingPlace.SET_UP_AREA);
        roomM = properties.lengthM("room", ROOM);
        properties.refuseOthers();
        sound = properties.problems().count() == before;
    }

    /** Where it is said to be. */
    PlaceReader place() {
        return place;
    }

    /** The stop at its place on the line; empty after a problem, told now or before. */
    Optional<StoppingPlace> placedOn(RouteLine line) {
        Optional<HazardPlace> placed = place.placedOn(line);
        return sound ? placed.map(p -> new StoppingPlace(p, setUpArea, roomM)) : Optional.empty();
    }
}
