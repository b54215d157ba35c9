package org.cresthaul.check;

import java.util.Locale;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;

/** A straight invented road with rail crossings that a map reports and nobody surveyed, as an import leaves them. */
public final class ManyCrossings {
    /** Kilometers apart, at about 78.7 km to a degree of longitude there. */
    private static final double APART_DEG = 0.0127;

    private ManyCrossings() {}

    /** Each fifth has two tracks and each seventh a sign of low ground clearance; angles differ. */
    public static String text(int crossings) {
        StringBuilder text = new StringBuilder(
                "{\"type\": \"FeatureCollection\", \"cresthaul\": \"route/1\", \"name\": \"Many crossings\","
                        + " \"note\": \"Invented.\", \"features\": [{\"type\": \"Feature\", \"properties\":"
                        + " {\"route\": \"Straight\"}, \"geometry\": {\"type\": \"LineString\", \"coordinates\": [");
        // Short pieces, so that the line keeps to the parallel on which the crossings lie.
        for (int i = 0; i <= crossings + 1; i++) {
            text.append(i == 0 ? "" : ",").append(String.format(Locale.ROOT, "[%.4f, 44.6]", -93.1 + i * APART_DEG));
        }
        text.append("]}}");
        for (int i = 1; i <= crossings; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    ",{\"type\": \"Feature\", \"geometry\": {\"type\": \"Point\", \"coordinates\": [%.4f, 44.6]},"
                            + " \"properties\": {\"hazard\": \"rail-crossing\", \"id\": \"map-n%d\","
                            + " \"name\": \"Rail crossing\", \"candidate\": {\"source\": \"map\", \"object\": \"node %d\","
                            + " \"date\": \"2026-01-02\", \"license\": \"invented\", \"raw\": \"railway=level_crossing\","
                            + " \"state\": \"open\", \"tracks\": %d, \"angle\": \"%d deg\"%s}}}",
                    -93.1 + i * APART_DEG,
                    i,
                    i,
                    i % 5 == 0 ? 2 : 1,
                    90 - (i * 7) % 45,
                    i % 7 == 0 ? ", \"lowGroundSign\": \"posted\"" : ""));
        }
        return text.append("]}").toString();
    }

    public static Route route(int crossings) {
        try {
            return RouteFile.parse(text(crossings));
        } catch (InputRejected e) {
            throw new IllegalArgumentException(e);
        }
    }
}
