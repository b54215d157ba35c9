package org.cresthaul.view;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.Leg;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteLine;
import org.cresthaul.route.StoppingPlace;

/**
 * A route for drawing: its line with chainage, and where its hazards and stopping places lie.
 *
 * @param lengthM meters
 * @param line for each leg its points: longitude and latitude in degrees, chainage in meters
 */
public record RouteView(
        String name, double lengthM, List<List<List<Double>>> line, List<Spot> hazards, List<Stop> stops) {
    /**
     * One hazard.
     *
     * @param chainageM meters
     * @param lonLat degrees
     * @param heights what is known of heights there; null where nothing is
     */
    public record Spot(
            String id, HazardKind kind, String name, double chainageM, List<Double> lonLat, SpotHeights heights) {
        static Spot of(Hazard hazard) {
            var place = hazard.place();
            return new Spot(
                    place.id(),
                    hazard.kind(),
                    place.name(),
                    place.chainageM(),
                    List.of(place.position().lonDeg(), place.position().latDeg()),
                    SpotHeights.of(hazard));
        }
    }

    /**
     * One stopping place or set-up area.
     *
     * @param landmark null when the file names none
     * @param chainageM meters
     * @param lonLat degrees
     * @param roomM meters
     */
    public record Stop(
            String id, String kind, String name, String landmark, double chainageM, List<Double> lonLat, double roomM) {
        static Stop of(StoppingPlace stop) {
            var place = stop.place();
            return new Stop(
                    place.id(),
                    stop.word(),
                    place.name(),
                    place.landmark().orElse(null),
                    place.chainageM(),
                    List.of(place.position().lonDeg(), place.position().latDeg()),
                    stop.roomM());
        }
    }

    public static RouteView of(Route route) {
        return new RouteView(
                route.name(),
                route.lengthM(),
                route.legs().stream().map(leg -> points(route.line(), leg)).toList(),
                route.hazards().stream().map(Spot::of).toList(),
                route.stops().stream().map(Stop::of).toList());
    }

    private static List<List<Double>> points(RouteLine line, Leg leg) {
        List<List<Double>> points = new ArrayList<>();
        for (int i = leg.firstPoint(); i <= leg.lastPoint(); i++) {
            points.add(List.of(line.position(i).lonDeg(), line.position(i).latDeg(), line.chainageM(i)));
        }
        return points;
    }
}
