package org.cresthaul.exchange.track;

import java.util.List;

/**
 * What one file holds.
 *
 * @param format what it is, for people: "GPX 1.1"
 * @param name what the file calls itself; empty where it does not
 */
public record TrackContent(
        String file, String format, String name, List<TrackLeg> legs, List<MarkedPlace> places, List<TrackNote> notes) {
    /** The format of a route file of this program. */
    public static final String ROUTE_FILE = "route file";

    public TrackContent {
        legs = List.copyOf(legs);
        places = List.copyOf(places);
        notes = List.copyOf(notes);
    }

    public int points() {
        return legs.stream().mapToInt(TrackLeg::points).sum();
    }
}
