package org.cresthaul.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.exchange.osm.MapAlong;
import org.cresthaul.exchange.osm.MapCandidate;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.Route;

/**
 * Bends of the map's roads that the line's own search for tight turns does not list, or lists elsewhere. Whatever
 * stands in a route file as a corner covers the turns of the line near it; turns that a bend would cover and is not are
 * written out beside it, so that none is lost.
 */
final class UnseenBends {
    /** A turn of the line this near to a bend is found where the bend is, meters. */
    private static final double THERE_M = 3;
    /** A turn of the line this near to a bend is that bend, found from where the line ends up, meters. */
    private static final double SAME_M = 20;
    /** A corner of a route file covers the turns this near, meters. */
    private static final double COVERED_M = 40;

    private UnseenBends() {}

    /** @param before the route as it is without them */
    static List<MapCandidate> of(MapAlong along, Route before) {
        List<Hazard> corners = before.hazards().stream()
                .filter(h -> h.kind() == HazardKind.CORNER)
                .toList();
        List<MapCandidate> all = new ArrayList<>();
        for (MapCandidate bend : along.bends()) {
            if (corners.stream().noneMatch(c -> apartM(c, bend) <= THERE_M)) {
                all.add(bend);
            }
        }
        List<MapCandidate> bends = List.copyOf(all);
        for (Hazard corner : corners) {
            double nearestM =
                    bends.stream().mapToDouble(b -> apartM(corner, b)).min().orElse(Double.POSITIVE_INFINITY);
            boolean covered = nearestM > SAME_M && nearestM <= COVERED_M;
            if (covered && corner.place().id().startsWith("turn-")) {
                double at = corner.place().chainageM();
                all.add(new MapCandidate(
                        MapCandidate.Kind.TURN,
                        "map-" + corner.place().id(),
                        corner.place().name(),
                        at,
                        at,
                        at,
                        "the route line",
                        0,
                        "",
                        "as the roads are drawn",
                        OptionalDouble.empty(),
                        0));
            }
        }
        return all;
    }

    private static double apartM(Hazard corner, MapCandidate bend) {
        return Math.abs(corner.place().chainageM() - bend.chainageM());
    }
}
