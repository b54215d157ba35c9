package org.cresthaul.server;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.Leg;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteLine;

/**
 * A route for drawing: its line with chainage, and where its hazards lie.
 *
 * @param lengthM metres
 * @param line for each leg its points: longitude and latitude in degrees, chainage in metres
 */
record RouteView(String name, double lengthM, List<List<List<Double>>> line, List<Spot> hazards) {
    /**
     * One hazard.
     *
     * @param chainageM metres
     * @param lonLat degrees
     */
    record Spot(String id, String kind, String name, double chainageM, List<Double> lonLat) {
        static Spot of(Hazard hazard) {
            var place = hazard.place();
            return new Spot(place.id(), hazard.word(), place.name(), place.chainageM(),
                    List.of(place.position().lonDeg(), place.position().latDeg()));
        }
    }

    static RouteView of(Route route) {
        return new RouteView(
                route.name(),
                route.lengthM(),
                route.legs().stream().map(leg -> points(route.line(), leg)).toList(),
                route.hazards().stream().map(Spot::of).toList());
    }

    private static List<List<Double>> points(RouteLine line, Leg leg) {
        List<List<Double>> points = new ArrayList<>();
        for (int i = leg.firstPoint(); i <= leg.lastPoint(); i++) {
            points.add(List.of(line.position(i).lonDeg(), line.position(i).latDeg(), line.chainageM(i)));
        }
        return points;
    }
}
