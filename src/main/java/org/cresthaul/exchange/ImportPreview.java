package org.cresthaul.exchange;

import java.util.List;
import org.cresthaul.exchange.osm.MapCandidate;
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
        List<LeftOut> leftOut,
        double lengthM,
        int pointsRead,
        int pointsKept,
        double withinM,
        List<Leg> legs,
        List<TrackNote> notes,
        List<PlaceOnLine> places,
        List<Turn> turns,
        MapTie map,
        List<Candidate> candidates,
        List<Missing> missing,
        List<RasterUse> rasters) {
    /**
     * What an elevation raster was good for: sketches of the road at open candidates, none of them a survey.
     *
     * @param told what it is: format, cells, unit, coordinates
     * @param spacingM between its cells, where they are farthest apart along the sketches; null where there are none
     * @param tooCoarse whether its cells are too far apart to show a hump, so that nothing is ordered by it
     * @param sketches how many places it sketches
     * @param without at how many it has no heights
     */
    public record RasterUse(String file, String told, Double spacingM, boolean tooCoarse, int sketches, int without) {}

    /**
     * How the line fits the map; null where none was given.
     *
     * @param farthestM how far the tracks lie from the line along the map's roads, at most
     * @param offRoadM how much of the line no road of the map explains
     * @param attribution to be shown with what comes from the map
     */
    public record MapTie(String file, double farthestM, double offRoadM, String attribution) {
        static final String ATTRIBUTION = "Map data \u00a9 OpenStreetMap contributors, ODbL 1.0";
    }

    /**
     * Something a map has along the route; not surveyed, and never clear.
     *
     * @param value of a limit, meters or kilograms; null where its text cannot be used
     * @param doubtful whether the map itself leaves open what is there, or has a text that cannot be used
     * @param status new, known (open before, and updated), surveyed or dismissed before (and left alone)
     */
    public record Candidate(
            String id,
            MapCandidate.Kind kind,
            String name,
            double chainageM,
            double fromM,
            double toM,
            List<Double> lonLat,
            String object,
            String key,
            String raw,
            Double value,
            int tracks,
            String status,
            boolean doubtful) {}

    /**
     * A candidate that came from a map before and is not in the maps given now. It is kept as it is: they may not reach
     * there, or somebody has changed the map.
     *
     * @param state open, surveyed or dismissed
     */
    public record Missing(String id, String name, String object, String state) {}

    /** A file among others of which nothing is in the route. */
    public record LeftOut(String file, String code, String message, String remedy) {}

    /** The same with files that were left out. */
    public ImportPreview leavingOut(List<LeftOut> files) {
        return new ImportPreview(
                name,
                this.files,
                files,
                lengthM,
                pointsRead,
                pointsKept,
                withinM,
                legs,
                notes,
                places,
                turns,
                map,
                candidates,
                missing,
                rasters);
    }

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
    public record PlaceOnLine(String id, String name, Double chainageM, double offsetM) {}

    /** A tight turn of the line; not surveyed. */
    public record Turn(String id, String name, double chainageM, List<Double> lonLat) {}
}
