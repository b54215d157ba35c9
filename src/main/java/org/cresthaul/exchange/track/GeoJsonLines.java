package org.cresthaul.exchange.track;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.Locale;
import org.cresthaul.exchange.crs.PlaneCoordinates;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.exchange.track.TrackNote.Done;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Problems;

/**
 * Reads the lines and points of GeoJSON as tools write it: a collection, a feature or a bare geometry; types in any
 * case; with a "crs" of the EPSG dataset, or one that is longitude and latitude on WGS 84 after all.
 */
final class GeoJsonLines {
    private final String file;
    private final Gathering into;
    /** A route file: its points are hazards and stops, which are kept with --update and are no waypoints. */
    private boolean ours;

    private GeoJsonLines(String file, int crs) throws InputRejected {
        this.file = file;
        into = new Gathering(file, crs == 0 ? null : PlaneCoordinates.of(crs));
    }

    static TrackContent read(byte[] document, String file, int crs) throws InputRejected {
        Problems problems = new Problems();
        boolean marked = document.length > 3 && (document[0] & 0xFF) == 0xEF && (document[1] & 0xFF) == 0xBB;
        JsonNode root = JsonText.read(marked ? Arrays.copyOfRange(document, 3, document.length) : document, problems);
        problems.throwIfAny();
        if (root.path("cresthaul").isTextual()
                && !root.path("cresthaul").asText().startsWith("route/")) {
            throw Refusals.of(
                    "other-file",
                    "This is a " + Gathering.plain(root.path("cresthaul").asText())
                            + " file of this program, not a track.",
                    "Give a track or a route file.");
        }
        boolean own = root.path("cresthaul").isTextual();
        GeoJsonLines reader = new GeoJsonLines(file, own ? 0 : coordinates(root.path("crs"), crs));
        reader.ours = root.path("cresthaul").isTextual();
        reader.object(root, "");
        return reader.into.content(reader.ours ? TrackContent.ROUTE_FILE : "GeoJSON");
    }

    /** What the file itself says counts, then what was said of it; 0 for longitude and latitude on WGS 84. */
    private static int coordinates(JsonNode crs, int said) throws InputRejected {
        if (crs.isMissingNode() || crs.isNull()) {
            return said;
        }
        String name = crs.path("properties").path("name").asText("");
        int code = PlaneCoordinates.code(name);
        if (name.endsWith("CRS84") || code == 4326) {
            return 0;
        }
        if (code == 0) {
            throw Refusals.of(
                    "crs",
                    "The file is in other coordinates than WGS 84: \"" + Gathering.plain(name) + "\".",
                    "Export it in longitude and latitude, WGS 84, or name its coordinates by their EPSG code.");
        }
        return code;
    }

    private void object(JsonNode node, String name) throws InputRejected {
        switch (node.path("type").asText("").toLowerCase(Locale.ROOT)) {
            case "featurecollection" -> {
                into.name(node.path("name").asText(""));
                for (JsonNode feature : node.path("features")) {
                    object(feature, "");
                }
            }
            case "feature" -> {
                JsonNode properties = node.path("properties");
                String own =
                        properties.path("name").asText(properties.path("route").asText(""));
                object(node.path("geometry"), own);
            }
            case "geometrycollection" -> {
                for (JsonNode geometry : node.path("geometries")) {
                    object(geometry, name);
                }
            }
            case "linestring" -> {
                into.legName(name);
                line(node.path("coordinates"));
                into.endLeg();
            }
            case "multilinestring" -> {
                into.legName(name);
                for (JsonNode line : node.path("coordinates")) {
                    line(line);
                }
                into.endLeg();
            }
            case "point" -> {
                if (!ours) {
                    JsonNode at = node.path("coordinates");
                    into.place(name, text(at.path(0)), text(at.path(1)), 0);
                }
            }
            case "" ->
                throw Refusals.of(
                        "not-geojson",
                        "This JSON is not GeoJSON: it has no \"type\".",
                        "Give a GeoJSON line, GPX, KML or CSV.");
            default ->
                into.note(new TrackNote(
                        file,
                        Done.LEFT_OUT,
                        "not-a-line",
                        0,
                        0,
                        "A " + Gathering.plain(node.path("type").asText()) + " is neither a line nor a point."));
        }
    }

    private void line(JsonNode positions) throws InputRejected {
        for (JsonNode position : positions) {
            into.point(text(position.path(0)), text(position.path(1)), null, 0);
        }
        into.endPart();
    }

    private static String text(JsonNode number) {
        return number.isNumber() ? number.asText() : null;
    }
}
