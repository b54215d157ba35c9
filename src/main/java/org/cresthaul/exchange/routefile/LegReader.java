package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.route.Geodesic;
import org.cresthaul.route.Leg;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RouteLine;
import org.cresthaul.units.Problems;

/** Gathers the legs of a route file into one line. */
final class LegReader {
    /** Farthest that a leg (or a part of a MultiLineString) may start from the end of the one before it, meters. */
    static final double WIDEST_GAP_M = 30;
    /** Longest route taken, meters. */
    static final double LONGEST_ROUTE_M = 5_000_000;

    private final Problems problems;
    private final RouteLine.Builder builder = new RouteLine.Builder();
    private final List<Leg> legs = new ArrayList<>();
    private LonLat last;
    private int read;
    private boolean sound = true;
    /** A position that strays is far from both its neighbors; it is told once. */
    private boolean strayed;

    LegReader(Problems problems) {
        this.problems = problems;
    }

    /** Whether no leg was found, sound or not. */
    boolean isEmpty() {
        return read == 0;
    }

    List<Leg> legs() {
        return legs;
    }

    /** The line of all legs; empty when there is none or one had a mistake. */
    Optional<RouteLine> line() {
        return sound && !legs.isEmpty() ? Optional.of(builder.build()) : Optional.empty();
    }

    void read(JsonFields geometry, JsonFields properties) {
        read++;
        int before = problems.count();
        String name = properties.text("route", JsonFields.LONGEST_NAME);
        properties.refuseOthers();
        String type = geometry.word("type", List.of("LineString", "MultiLineString"));
        RouteFile.refuseCrs(geometry);
        geometry.find("bbox");
        int first = -1;
        int end = -1;
        JsonNode coordinates = geometry.find("coordinates");
        String at = geometry.pointer("coordinates");
        if (type.equals("LineString")) {
            int[] span = part(coordinates, at);
            first = span[0];
            end = span[1];
        } else if (type.equals("MultiLineString")) {
            if (!coordinates.isArray() || coordinates.isEmpty()) {
                problems.add(
                        "wrong-type",
                        "The coordinates of a MultiLineString are a list of lines.",
                        at,
                        "Write [[[longitude, latitude], ...], ...].");
            }
            for (int i = 0; coordinates.isArray() && i < coordinates.size(); i++) {
                int[] span = part(coordinates.get(i), at + "/" + i);
                first = i == 0 ? span[0] : first;
                end = span[1];
            }
        }
        geometry.refuseOthers();
        if (sound && problems.count() == before && geometry.isThere() && end <= first) {
            problems.add("no-length", "The leg has no length.", at, "Give at least two different positions.");
        }
        sound &= problems.count() == before && geometry.isThere();
        if (sound) {
            legs.add(new Leg(name, first, end, builder.chainageM(first), builder.chainageM(end)));
        }
    }

    /** Adds one line; returns the indices of its first and last point, -1 when it has a mistake. */
    private int[] part(JsonNode positions, String at) {
        int[] span = {-1, -1};
        if (!positions.isArray() || positions.size() < 2) {
            problems.add(
                    "wrong-type",
                    "A line needs a list of at least two positions.",
                    at,
                    "Write [[longitude, latitude], [longitude, latitude], ...].");
            return span;
        }
        int i = 0;
        for (JsonNode item : positions) {
            int index = i++;
            LonLat position = PositionFields.read(item, () -> at + "/" + index, problems);
            if (position == null) {
                sound = false;
                continue;
            }
            requireNear(position, index, at);
            last = position;
            if (sound) {
                int point = builder.add(position);
                span[0] = index == 0 ? point : span[0];
                span[1] = point;
            }
        }
        return span;
    }

    private void requireNear(LonLat position, int index, String at) {
        double jumpM =
                last == null ? 0 : Geodesic.roughM(last.lonDeg(), last.latDeg(), position.lonDeg(), position.latDeg());
        if (index == 0 && jumpM > WIDEST_GAP_M) {
            problems.add(
                    "leg-gap",
                    "This line starts " + Math.round(jumpM) + " m from where the one before it ends.",
                    at + "/0",
                    "List legs in the order of travel, each drawn in the direction of travel, within "
                            + (int) WIDEST_GAP_M + " m of each other.");
            sound = false;
            return;
        }
        boolean far = jumpM > RouteLine.LONGEST_JUMP_M;
        if (far && !strayed) {
            problems.add(
                    "position-far",
                    "This position is " + Math.round(jumpM / 1000) + " km from the one before it.",
                    at + "/" + index,
                    "Neighbors on a road are within 100 km; longitude comes first.");
            sound = false;
        } else if (sound && builder.lengthM() > LONGEST_ROUTE_M) {
            problems.add(
                    "route-long",
                    "The route is longer than 5000 km.",
                    at + "/" + index,
                    "Split it into several routes.");
            sound = false;
        }
        strayed = far && !strayed;
    }
}
