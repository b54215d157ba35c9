package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.function.Supplier;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.Problems;

/** Reads a GeoJSON position: longitude, latitude and maybe an altitude, which nothing here uses. */
public final class PositionFields {
    private PositionFields() {}

    /** The position; null after a problem. The pointer is asked for only then: a line has a million of them. */
    public static LonLat read(JsonNode position, Supplier<String> pointer, Problems problems) {
        if (!position.isArray() || position.size() < 2 || position.size() > 3) {
            problems.add(
                    "wrong-position",
                    "A position is [longitude, latitude] and maybe an altitude, is "
                            + (position.isArray() ? "a list of " + position.size() : JsonFields.kindOf(position)) + ".",
                    pointer.get(),
                    "Write [longitude, latitude] in degrees, such as [-93.1, 44.6].");
            return null;
        }
        for (JsonNode number : position) {
            if (!number.isNumber() || !Double.isFinite(number.doubleValue())) {
                problems.add(
                        "wrong-position",
                        "A position holds numbers only.",
                        pointer.get(),
                        "Write [longitude, latitude] in degrees, such as [-93.1, 44.6].");
                return null;
            }
        }
        double lon = position.get(0).doubleValue();
        double lat = position.get(1).doubleValue();
        if (Math.abs(lon) > 180 || Math.abs(lat) > LonLat.MOST_LAT_DEG) {
            boolean swapped = Math.abs(lat) <= 180 && Math.abs(lon) <= LonLat.MOST_LAT_DEG;
            problems.add(
                    "out-of-range",
                    "[" + lon + ", " + lat + "] is not on a road of this earth.",
                    pointer.get(),
                    swapped
                            ? "Longitude comes first: write [" + lat + ", " + lon + "]?"
                            : "Longitude is within 180 degrees, latitude within 85.");
            return null;
        }
        return new LonLat(lon, lat);
    }
}
