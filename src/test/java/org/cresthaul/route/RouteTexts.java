package org.cresthaul.route;

import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A small sound route file to start from. Invented. */
public final class RouteTexts {
    private RouteTexts() {}

    /** Points of a level line, two meters apart, as far as {@code reachM} either way. */
    public static String levelPoints(int reachM) {
        return IntStream.rangeClosed(-reachM / 2, reachM / 2)
                .mapToObj(i -> "[\"" + 2 * i + " m\", \"0 m\"]")
                .collect(Collectors.joining(", ", "[", "]"));
    }

    public static final String ROUTE = """
            { "type": "FeatureCollection", "cresthaul": "route/1", "name": "Two legs", "note": "Invented for the tests.",
              "features": [
                { "type": "Feature", "properties": {"route": "County road"},
                  "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.09, 44.6], [-93.08, 44.601]]} },
                { "type": "Feature", "properties": {"route": "Mill road"},
                  "geometry": {"type": "LineString", "coordinates": [[-93.08, 44.6011], [-93.08, 44.62, 250.5]]} },
                { "type": "Feature",
                  "geometry": {"type": "Point", "coordinates": [-93.08, 44.61]},
                  "properties": {"hazard": "low-structure", "id": "H02", "name": "Mill bridge",
                    "survey": {"accuracy": "10 mm", "source": "level"}, "measured": "surveyed",
                    "profile": [{"line": "center", "points": [["-30 m", "100 m"], ["0 m", "99.6 m"], ["30 m", "100 m"]]}],
                    "soffit": [["-3 m", "104.2 m"], ["5 m", "104.1 m"]]} },
                { "type": "Feature",
                  "geometry": {"type": "Point", "coordinates": [-93.095, 44.6]},
                  "properties": {"hazard": "rail-crossing", "id": "H01", "name": "Quarry spur", "landmark": "grain silo",
                    "survey": {"accuracy": "10 mm", "source": "level and tape"},
                    "approachBefore": {"grade": "1.5 %", "accuracy": "0.2 %"},
                    "approachAfter": {"grade": "-1 %", "accuracy": "0.2 %"},
                    "profile": [
                      {"line": "left", "points": [["-12 m", "0.1 m"], ["-1 m", "0.3 m"], ["1 m", "0.3 m"], ["14 m", "0.05 m"]]},
                      {"line": "right", "points": [["-12 m", "0.1 m"], ["-1 m", "0.3 m"], ["1 m", "0.3 m"], ["14 m", "0.05 m"]]}],
                    "crossingNumber": "123456A", "emergencyPhone": "800-555-0100", "tracks": ["0 m", "4.3 m"], "signs": ["W10-5"]} },
                { "type": "Feature",
                  "geometry": {"type": "Point", "coordinates": [-93.08, 44.615]},
                  "properties": {"hazard": "low-structure", "id": "H03", "name": "Pipe rack", "measured": "posted",
                    "clearance": "14 ft 2 in", "extent": ["-3 m", "5 m"]} },
                { "type": "Feature",
                  "geometry": {"type": "Point", "coordinates": [-93.08, 44.618]},
                  "properties": {"hazard": "dip", "id": "H04", "name": "Ford"} },
                { "type": "Feature",
                  "geometry": {"type": "Point", "coordinates": [-93.08, 44.601]},
                  "properties": {"hazard": "corner", "id": "H05", "name": "Mill turn",
                    "survey": {"accuracy": "50 mm", "source": "tape"},
                    "template": {"turn": "left", "angle": "82 deg",
                      "approach": {"own": "9 m", "opposing": "4 m", "shoulder": "1 m"},
                      "exit": {"own": "9 m", "opposing": "4 m"},
                      "curb": {"radii": ["60 m", "30 m", "60 m"], "offset": "1 m"}, "apron": "0.5 m", "borrow": [],
                      "islands": [{"outline": [["20 m", "0.2 m"], ["25 m", "0.2 m"], ["25 m", "-0.2 m"]]}],
                      "obstacles": [{"name": "sign", "at": ["-20 m", "-14 m"], "radius": "0.1 m"}]}} },
                { "type": "Feature",
                  "geometry": {"type": "Point", "coordinates": [-93.0999, 44.6]},
                  "properties": {"stop": "set-up-area", "id": "P01", "name": "Gravel pit", "landmark": "weigh house",
                    "room": "250 ft"} },
                { "type": "Feature",
                  "geometry": {"type": "Point", "coordinates": [-93.08, 44.6055]},
                  "properties": {"stop": "stopping-place", "id": "P02", "name": "Mill lay-by", "room": "30 m"} }
              ] }
            """;
}
