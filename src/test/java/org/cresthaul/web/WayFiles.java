package org.cresthaul.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Set;

/** What people of the walks have in hand. Invented. */
final class WayFiles {
    /** A level road and a bridge over it, high enough: what the page opens on. */
    static final String SHORT_ROAD = """
            {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Short road", "note": "Invented for the tests.",
             "features": [
              {"type": "Feature", "properties": {"route": "County road"},
               "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}},
              {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.09, 44.6]},
               "properties": {"hazard": "low-structure", "id": "H02", "name": "Mill bridge",
                "survey": {"accuracy": "10 mm", "source": "level"}, "measured": "surveyed",
                "profile": [{"line": "center", "points": [["-40 m", "100 m"], ["40 m", "100 m"]]}],
                "soffit": [["-3 m", "104.8 m"], ["5 m", "104.8 m"]]}}]}
            """;

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Set<String> KEPT = Set.of("H02", "P02");
    private static final String CANDIDATE = """
            {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-100.77711, 42.707207]},
             "properties": {"hazard": "dip", "id": "M01", "name": "washout",
              "candidate": {"source": "map", "object": "way 7", "date": "2026-01-02", "license": "ODbL 1.0",
               "raw": "hazard=dip", "state": "open"}}}
            """;

    private WayFiles() {}

    /** One road of the Sorrel Valley sample, with a rail crossing and a set-up area, and a place that a map reports. */
    static String mill() throws Exception {
        ObjectNode route = (ObjectNode) JSON.readTree(
                Path.of("sample-routes/sorrel-valley.route.geojson").toFile());
        ArrayNode features = JSON.createArrayNode();
        for (JsonNode feature : route.path("features")) {
            JsonNode properties = feature.path("properties");
            if (KEPT.contains(properties.path("id").asText())) {
                if (properties.path("id").asText().equals("H02")) {
                    ((ObjectNode) properties).put("emergencyPhone", "800-555-0121");
                }
                features.add(feature);
            } else if (properties.path("route").asText().equals("Sorrel Valley Road")) {
                features.add(feature);
            }
        }
        features.add(JSON.readTree(CANDIDATE));
        route.put("name", "Mill lead");
        route.set("features", features);
        return JSON.writeValueAsString(route);
    }
}
