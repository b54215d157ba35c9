package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
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
 * @param notes what else a person has to know of the map
 */
public record MapAlong(
        List<List<LonLat>> legs,
        RouteLine line,
        List<MapCandidate> candidates,
        List<MapCandidate> bends,
        double farthestM,
        double offRoadM,
        List<MapNote> notes) {
    private static final double LOOKED_M = 100;
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
        RailFinds rails = new RailFinds(path);
        List<MapCandidate> found = new ArrayList<>();
        found.addAll(rails.list());
        found.addAll(new StructureFinds(path).list());
        found.addAll(new RoadFinds(path).list());
        found.addAll(new OffMap(path, strip.cover()).list());
        return new MapAlong(
                path.legs(),
                path.line(),
                numbered(found),
                numbered(new BendFinds(path).list()),
                farthestM(legs, path.line()),
                path.offRoadM(),
                notes(extracts, strip.cover(), new BeyondEnds(path, rails)));
    }

    private static List<MapNote> notes(List<MapExtract> extracts, MapCover cover, BeyondEnds beyond) {
        List<MapNote> all = new ArrayList<>();
        for (String extract : cover.silent()) {
            all.add(new MapNote(
                    extract,
                    "map-area",
                    "This extract does not say which area it covers. Past its edge roads may run on without what crosses"
                            + " them: look whether the route stays well inside of it."));
        }
        String names = extracts.stream().map(MapExtract::name).collect(Collectors.joining(", "));
        beyond.told().forEach(t -> all.add(new MapNote(names, "rails-beyond", t)));
        return List.copyOf(all);
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
