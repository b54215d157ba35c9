package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RouteLine;
import org.cresthaul.units.InputRejected;

/**
 * What an extract of OpenStreetMap has along a route: the line on the roads it was driven on, and candidates for
 * hazards on them.
 *
 * @param legs the positions of each leg as the map's roads run
 * @param line through all of them
 * @param candidates in the order of travel
 * @param bends sharp bends of the roads as they are drawn, in the order of travel
 * @param farthestM how far the line that was given is from the one through the map, at most, meters
 * @param offRoadM how much of the line no road of the map explains, meters
 */
public record MapAlong(
        List<List<LonLat>> legs,
        RouteLine line,
        List<MapCandidate> candidates,
        List<MapCandidate> bends,
        double farthestM,
        double offRoadM) {
    private static final double LOOKED_M = 100;
    /** A shorter piece off the roads is where two pieces on them meet, meters. */
    private static final double LEAST_OFF_M = 30;

    private static final int MOST_LOOKED = 2000;

    /**
     * Reads each extract two or three times; none is ever held.
     *
     * @param extracts at least one; an object that is in several is taken once, as it was changed last
     */
    public static MapAlong of(List<MapExtract> extracts, List<List<LonLat>> legs, MapProgress progress)
            throws InputRejected {
        List<MapFile> files =
                extracts.stream().map(e -> new MapFile(e, progress)).toList();
        MapStrip strip = MapStrip.of(files, legs.stream().flatMap(List::stream).toList());
        DrivenPath path = DrivenPath.of(new RoadNet(strip), legs);
        List<MapCandidate> found = new ArrayList<>();
        found.addAll(new RailFinds(path).list());
        found.addAll(new StructureFinds(path).list());
        found.addAll(new RoadFinds(path).list());
        found.addAll(offMap(path));
        return new MapAlong(
                path.legs(),
                path.line(),
                numbered(found),
                numbered(new BendFinds(path).list()),
                farthestM(legs, path.line()),
                path.offRoadM());
    }

    private static List<MapCandidate> offMap(DrivenPath path) {
        List<MapCandidate> found = new ArrayList<>();
        for (int i = 1; i < path.size(); i++) {
            int first = i - 1;
            while (i < path.size() && path.spot(i).edge() < 0) {
                i++;
            }
            double fromM = path.chainageM(first);
            double toM = path.chainageM(Math.max(first, i - 1));
            if (toM - fromM >= LEAST_OFF_M) {
                found.add(new MapCandidate(
                        MapCandidate.Kind.OFF_MAP,
                        "map-off-" + Math.round(fromM),
                        "No road in the map extract",
                        (fromM + toM) / 2,
                        fromM,
                        toM,
                        "nothing",
                        0,
                        "",
                        "the extract has no road under this part of the line",
                        OptionalDouble.empty(),
                        0));
            }
        }
        return found;
    }

    /** An object that is met several times has as many candidates, numbered in the order of travel. */
    private static List<MapCandidate> numbered(List<MapCandidate> all) {
        List<MapCandidate> found = new ArrayList<>(all);
        found.sort(Comparator.comparingDouble(MapCandidate::chainageM).thenComparing(MapCandidate::id));
        Map<String, Integer> met = new HashMap<>();
        List<MapCandidate> told = new ArrayList<>();
        for (MapCandidate candidate : found) {
            String id = candidate.id().length() <= 36
                    ? candidate.id()
                    : candidate.id().substring(0, 27) + "."
                            + Integer.toHexString(candidate.id().hashCode());
            int time = met.merge(id, 1, Integer::sum);
            told.add(candidate.withId(time == 1 ? id : id + "-" + time));
        }
        return List.copyOf(told);
    }

    private static double farthestM(List<List<LonLat>> legs, RouteLine line) {
        double farthest = 0;
        for (List<LonLat> leg : legs) {
            for (int i = 0; i < leg.size(); i += 1 + leg.size() / MOST_LOOKED) {
                LonLat place = leg.get(i);
                double nearest = line.passagesWithin(place, LOOKED_M).stream()
                        .mapToDouble(p -> Math.abs(p.offsetM()))
                        .min()
                        .orElse(LOOKED_M);
                farthest = Math.max(farthest, nearest);
            }
        }
        return farthest;
    }
}
