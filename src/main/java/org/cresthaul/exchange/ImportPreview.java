package org.cresthaul.exchange;

import java.util.List;
import org.cresthaul.exchange.track.TrackNote;

/**
 * What an import has found, told before anything is kept. Component names are the keys of its JSON.
 *
 * @param pointsRead of all files
 * @param pointsKept of the line
 * @param withinM how far at most the line was moved by leaving out points
 */
public record ImportPreview(
        String name,
        List<Source> files,
        double lengthM,
        int pointsRead,
        int pointsKept,
        double withinM,
        List<Leg> legs,
        List<TrackNote> notes,
        List<Place> places,
        List<Turn> turns) {
    /** One of the files. */
    public record Source(String file, String format, int points, int places) {}

    /** A leg of the line. */
    public record Leg(String name, double fromM, double toM) {}

    /**
     * A place somebody marked.
     *
     * @param id null where it is too far from the line to be kept
     * @param chainageM null where it is not kept
     * @param offsetM to the right of travel, or how far off where it is not kept
     */
    public record Place(String id, String name, Double chainageM, double offsetM) {}

    /** A tight turn of the line; not surveyed. */
    public record Turn(String id, String name, double chainageM) {}
}
