package org.cresthaul.exchange.osm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.cresthaul.exchange.osm.MapCandidate.Kind;
import org.cresthaul.route.LonLat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Small maps written by hand along a road of 1000 m on the equator, where everything lies by hand geometry. */
class MapAlongTest {
    @TempDir
    private Path folder;

    private static LonLat at(double eastM, double northM) {
        return new LonLat(SmallMap.lon(eastM), SmallMap.lat(northM));
    }

    private MapAlong along(SmallMap map) throws Exception {
        return along(map, List.of(at(0, 0), at(1000, 0)));
    }

    private MapAlong along(SmallMap map, List<LonLat> line) throws Exception {
        return MapAlong.of(List.of(MapExtract.of(map.writeXml(folder))), List.of(line), MapProgress.UNTOLD);
    }

    private static List<String> told(MapAlong along) {
        return along.candidates().stream()
                .map(c -> c.kind().word() + " at " + Math.round(c.chainageM())
                        + (c.tracks() > 0 ? " with " + c.tracks() : ""))
                .toList();
    }

    /** A railway of two tracks, 11 m apart, over nodes 20 and 21 of the road. */
    private static SmallMap twoTracks(String... railTags) {
        SmallMap map = new SmallMap();
        List<Long> refs = new ArrayList<>();
        for (int i = 0; i <= 5; i++) {
            map.node(i + 1, 100 * i, 0);
            refs.add(i + 1L);
        }
        map.node(20, 540, 0, "railway", "level_crossing").node(21, 551, 0, "railway", "level_crossing");
        refs.addAll(List.of(20L, 21L));
        for (int i = 6; i <= 10; i++) {
            map.node(i + 1, 100 * i, 0);
            refs.add(i + 1L);
        }
        map.way(100, refs, "highway", "secondary", "name", "Hand Road");
        map.node(30, 540, -80).node(31, 540, 80).node(32, 551, -80).node(33, 551, 80);
        return map.way(200, List.of(30L, 20L, 31L), railTags).way(201, List.of(32L, 21L, 33L), railTags);
    }

    @Test
    void tracksNearOneAnotherAreOneCrossing() throws Exception {
        MapAlong along = along(twoTracks("railway", "rail"));

        assertEquals(List.of("rail-crossing at 540 with 2"), told(along));
        MapCandidate crossing = along.candidates().get(0);
        assertEquals("node 20, node 21", crossing.object());
        assertEquals(551, crossing.toM(), 0.01);
        assertTrue(crossing.raw().contains("railway=level_crossing"), crossing.raw());
        assertEquals(1767323045, crossing.timeS(), "2026-01-02T03:04:05Z");
        assertEquals(0, along.offRoadM());
        assertEquals(1000, along.line().lengthM(), 1e-3);
    }

    /** A rail 100 m north in 173.2 m east crosses the road, which runs east, at 30 degrees; square ones at 90. */
    @Test
    void howSharplyRailsAreCrossedIsTold() throws Exception {
        double east = 100 * Math.sqrt(3);
        SmallMap map = SmallMap.road()
                .node(30, 300 - east, -100)
                .node(31, 300 + east, 100)
                .way(200, List.of(30L, 4L, 31L), "railway", "rail")
                .node(32, 600 + east, -100)
                .node(33, 600 - east, 100)
                .way(201, List.of(32L, 7L, 33L), "railway", "rail")
                .node(34, 900, 100)
                .way(202, List.of(10L, 34L), "railway", "rail");
        for (List<LonLat> line : List.of(List.of(at(0, 0), at(1000, 0)), List.of(at(1000, 0), at(0, 0)))) {
            List<MapCandidate> found = along(map, line).candidates().stream()
                    .filter(c -> c.kind() == Kind.RAIL_CROSSING)
                    .sorted(Comparator.comparing(MapCandidate::id))
                    .toList();

            assertEquals(
                    List.of("map-n10", "map-n4", "map-n7"),
                    found.stream().map(MapCandidate::id).toList());
            // To the nanodegree that the map is written with.
            assertEquals(90, Math.toDegrees(found.get(0).crossedAtRad().orElseThrow()), 1e-4);
            assertEquals(30, Math.toDegrees(found.get(1).crossedAtRad().orElseThrow()), 1e-4);
            assertEquals(30, Math.toDegrees(found.get(2).crossedAtRad().orElseThrow()), 1e-4);
        }
    }

    @Test
    void tramsAndFormerRailsAreToldApart() throws Exception {
        assertEquals(List.of("rail-crossing at 540 with 2"), told(along(twoTracks("railway", "light_rail"))));
        SmallMap tram = SmallMap.road().node(30, 500, -80).node(31, 500, 80);
        assertEquals(
                List.of("tram-crossing at 500 with 1"),
                told(along(tram.way(200, List.of(30L, 6L, 31L), "railway", "tram"))));
        for (String former : List.of("disused", "abandoned")) {
            SmallMap map = SmallMap.road().node(30, 500, -80).node(31, 500, 80);
            assertEquals(
                    List.of("former-rail at 500 with 1"),
                    told(along(map.way(200, List.of(30L, 6L, 31L), "railway", former))));
        }
    }

    /** A crossing of the side road, 16 m from the line, is none of this route's. */
    @Test
    void aCrossingOfAnotherRoadIsNone() throws Exception {
        SmallMap map = SmallMap.road()
                .node(40, 500, 16, "railway", "level_crossing")
                .node(41, 500, 100)
                .way(101, List.of(6L, 40L, 41L), "highway", "residential")
                .node(30, 0, 16)
                .node(31, 1000, 16)
                .way(200, List.of(30L, 40L, 31L), "railway", "rail");

        assertEquals(List.of(), told(along(map)));
    }

    @Test
    void aTaggedNodeWithoutARailwayIsACrossing() throws Exception {
        SmallMap map = new SmallMap()
                .node(1, 0, 0)
                .node(2, 500, 0, "railway", "level_crossing")
                .node(3, 1000, 0)
                .way(100, List.of(1L, 2L, 3L), "highway", "tertiary");

        assertEquals(List.of("rail-crossing at 500 with 1"), told(along(map)));
    }

    @Test
    void aRailwayOnOneLevelWithoutANodeIsAnIncompleteMap() throws Exception {
        SmallMap level = SmallMap.road().node(30, 450, -50).node(31, 450, 50);
        assertEquals(
                List.of("map-incomplete at 450"), told(along(level.way(200, List.of(30L, 31L), "railway", "rail"))));
        SmallMap above = SmallMap.road().node(30, 450, -50).node(31, 450, 50);
        assertEquals(
                List.of("structure-over at 450"),
                told(along(above.way(200, List.of(30L, 31L), "railway", "rail", "bridge", "yes", "layer", "1"))));
        SmallMap below = SmallMap.road().node(30, 450, -50).node(31, 450, 50);
        assertEquals(
                List.of(),
                told(along(below.way(200, List.of(30L, 31L), "railway", "rail", "tunnel", "yes", "layer", "-1"))));
    }

    /** The road's own bridge over the railway: on a bridge, and no crossing. */
    @Test
    void aRoadOnABridgeCrossesNoRailway() throws Exception {
        SmallMap map =
                SmallMap.road("bridge", "yes", "layer", "1").node(30, 450, -50).node(31, 450, 50);

        MapAlong along = along(map.way(200, List.of(30L, 31L), "railway", "rail"));

        assertEquals(List.of("on-bridge at 500"), told(along));
        assertEquals(0, along.candidates().get(0).fromM(), 1e-6);
        assertEquals(1000, along.candidates().get(0).toM(), 1e-3);
    }

    /** A bridge from (400, -100) to (480, 100) passes over the equator at 440. */
    @Test
    void aBridgeAcrossIsOverTheRoadWhereItCrosses() throws Exception {
        SmallMap map = SmallMap.road().node(30, 400, -100).node(31, 480, 100);

        MapAlong along =
                along(map.way(300, List.of(30L, 31L), "highway", "primary", "bridge", "yes", "name", "High Road"));

        assertEquals(Kind.STRUCTURE_OVER, along.candidates().get(0).kind());
        assertEquals(440, along.candidates().get(0).chainageM(), 0.01);
        assertEquals(
                "Structure over the road, High Road", along.candidates().get(0).name());
    }

    /**
     * An outline from 430 to 450 m, a way that is drawn on it at 440 and one of a level higher; another bridge beside.
     */
    @Test
    void waysOnTheOutlineOfOneBridgeAreOneStructureWithAllThatTheySay() throws Exception {
        SmallMap map = SmallMap.road()
                .node(30, 430, -60)
                .node(31, 450, -60)
                .node(32, 450, 60)
                .node(33, 430, 60)
                .way(300, List.of(30L, 31L, 32L, 33L, 30L), "man_made", "bridge", "layer", "1", "maxheight", "3.9")
                .node(40, 440, -80)
                .node(41, 440, 80)
                .way(301, List.of(40L, 41L), "highway", "primary", "bridge", "yes", "name", "High Road", "note", "low")
                .node(42, 441, -80)
                .node(43, 441, 80)
                .way(302, List.of(42L, 43L), "railway", "rail", "bridge", "yes", "layer", "2")
                .node(44, 454, -80)
                .node(45, 454, 80)
                .way(303, List.of(44L, 45L), "highway", "primary", "bridge", "yes");

        for (boolean back : new boolean[] {false, true}) {
            List<MapCandidate> found = along(
                            map, back ? List.of(at(1000, 0), at(0, 0)) : List.of(at(0, 0), at(1000, 0)))
                    .candidates();

            assertEquals(
                    back
                            ? List.of("way 303", "way 302", "way 300, way 301")
                            : List.of("way 300, way 301", "way 302", "way 303"),
                    found.stream()
                            .sorted(Comparator.comparing(
                                            (MapCandidate c) -> c.object().equals("way 302") ? 1 : 0)
                                    .thenComparing(MapCandidate::chainageM))
                            .sorted(Comparator.comparing(
                                    MapCandidate::object, back ? Comparator.reverseOrder() : Comparator.naturalOrder()))
                            .map(MapCandidate::object)
                            .toList());
            MapCandidate bridge = found.stream()
                    .filter(c -> c.object().equals("way 300, way 301"))
                    .findFirst()
                    .orElseThrow();
            assertEquals(20, bridge.toM() - bridge.fromM(), 0.01);
            assertEquals("Structure over the road, High Road", bridge.name());
            assertTrue(bridge.raw().contains("maxheight=3.9") && bridge.raw().contains("note=low"), bridge.raw());
            assertTrue(bridge.value().isEmpty());
        }
    }

    /** Drawn as two ways that meet over the road; and two that only lie as near, and are two bridges. */
    @Test
    void piecesOfABridgeThatMeetOverTheRoadAreOne() throws Exception {
        SmallMap map = SmallMap.road().node(30, 440, -60).node(31, 440, 0).node(32, 440, 60);
        map.way(300, List.of(30L, 31L), "highway", "primary", "bridge", "yes")
                .way(301, List.of(31L, 32L), "highway", "primary", "bridge", "yes", "note", "second");
        assertEquals(List.of("structure-over at 440"), told(along(map)));
        assertTrue(along(map).candidates().get(0).raw().contains("note=second"));

        SmallMap two = SmallMap.road()
                .node(30, 440, -60)
                .node(31, 440, 60)
                .node(32, 440.5, -60)
                .node(33, 440.5, 60);
        two.way(300, List.of(30L, 31L), "highway", "primary", "bridge", "yes")
                .way(301, List.of(32L, 33L), "highway", "primary", "bridge", "yes");
        assertEquals(2, along(two).candidates().size());
    }

    @Test
    void aPowerLineAcrossIsOverTheRoad() throws Exception {
        SmallMap map = SmallMap.road()
                .node(30, 400, -100)
                .node(31, 480, 100)
                .node(32, 700, -90)
                .node(33, 700, 90);
        map.way(300, List.of(30L, 31L), "power", "line", "voltage", "110000");
        map.way(301, List.of(32L, 33L), "power", "cable");

        assertEquals(List.of("overhead-wire at 440"), told(along(map)));
    }

    /** A bridge that leaves the road at a node meets it there, and is not over it. */
    @Test
    void aBridgeThatBeginsAtTheRoadIsNotOverIt() throws Exception {
        SmallMap map = SmallMap.road().node(31, 480, 100);
        assertEquals(
                List.of(),
                told(along(map.way(300, List.of(6L, 31L), "highway", "primary", "bridge", "yes", "layer", "1"))));
    }

    @Test
    void limitsOfTheOtherDirectionAndOfOtherVehiclesAreLeftOut() throws Exception {
        SmallMap map = SmallMap.road(
                "maxheight",
                "4.2",
                "maxheight:backward",
                "3.0",
                "maxweight:bus",
                "12",
                "maxaxleload",
                "8",
                "maxwidth",
                "narrow lane",
                "source:maxheight",
                "survey");

        List<String> forward = along(map).candidates().stream()
                .map(c -> c.key() + " " + (c.value().isPresent() ? c.value().getAsDouble() : "none"))
                .toList();
        List<String> back = along(map, List.of(at(1000, 0), at(0, 0))).candidates().stream()
                .map(MapCandidate::key)
                .toList();

        assertEquals(List.of("maxaxleload 8000.0", "maxheight 4.2", "maxwidth none"), forward);
        assertEquals(List.of("maxaxleload", "maxheight", "maxheight:backward", "maxwidth"), back);
    }

    @Test
    void whatStandsInTheRoadIsListed() throws Exception {
        SmallMap map = new SmallMap()
                .node(1, 0, 0)
                .node(2, 100, 0, "traffic_calming", "hump")
                .node(3, 200, 0, "highway", "mini_roundabout")
                .node(4, 300, 0, "ford", "yes")
                .node(5, 400, 0, "barrier", "bollard")
                .node(6, 500, 0, "hazard", "low_ground_clearance")
                .node(7, 600, 0, "barrier", "height_restrictor", "maxheight", "2.1")
                .node(8, 1000, 0)
                .way(100, List.of(1L, 2L, 3L, 4L, 5L, 6L, 7L, 8L), "highway", "unclassified", "hgv", "no");

        assertEquals(
                List.of(
                        "hump at 100",
                        "mini-roundabout at 200",
                        "ford at 300",
                        "barrier at 400",
                        "ban at 500",
                        "low-ground-clearance at 500",
                        "barrier at 600",
                        "limit at 600"),
                told(along(map)).stream()
                        .sorted(Comparator.comparing((String s) -> Integer.parseInt(s.split(" at ")[1]))
                                .thenComparing(s -> s))
                        .toList());
    }

    /**
     * A road beside, 25 m away and joined to it at both ends, has a crossing; 3 m of noise (a fixed seed) does not
     * bring the track onto it, nor does it bring in a detour.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void aNoisyTrackStaysOnItsRoad(long seed) throws Exception {
        SmallMap map = SmallMap.road()
                .node(40, 30, 25)
                .node(41, 500, 25, "railway", "level_crossing")
                .node(42, 970, 25)
                .way(101, List.of(1L, 40L, 41L, 42L, 11L), "highway", "service");
        Random random = new Random(seed);
        List<LonLat> noisy = new ArrayList<>();
        for (int x = 0; x <= 1000; x += 12) {
            noisy.add(at(x + 3 * random.nextGaussian(), 3 * random.nextGaussian()));
        }

        MapAlong along = along(map, noisy);

        assertEquals(List.of(), told(along));
        assertEquals(0, along.offRoadM());
        assertTrue(along.farthestM() < 15, along.farthestM() + " m");
        assertEquals(1000, along.line().lengthM(), 15);
        assertTrue(along.legs().get(0).stream().allMatch(p -> p.latDeg() == 0));
    }

    /** To the end of a spur and back: what lies on it is met twice. */
    @Test
    void aSpurIsDrivenOutAndBack() throws Exception {
        SmallMap map = SmallMap.road()
                .node(40, 500, 60, "railway", "level_crossing")
                .node(41, 500, 120)
                .way(101, List.of(6L, 40L, 41L), "highway", "service");

        MapAlong along = along(map, List.of(at(0, 0), at(500, 0), at(500, 120), at(500, 0), at(1000, 0)));

        assertEquals(List.of("rail-crossing at 560 with 1", "rail-crossing at 680 with 1"), told(along));
        assertEquals(1240, along.line().lengthM(), 0.1);
        assertEquals(
                List.of("map-n40", "map-n40-2"),
                along.candidates().stream().map(MapCandidate::id).toList());
    }

    /** The road begins 450 m before the 180th meridian; the piece that crosses it is passed over by a bridge there. */
    @ParameterizedTest
    @ValueSource(doubles = {0, -93.4, 180 - 450 / 111_319.49})
    void aRoadAcrossTheLastMeridianIsLikeAnyOther(double westDeg) throws Exception {
        SmallMap map = new SmallMap()
                .from(westDeg)
                .node(1, 0, 0)
                .node(2, 200, 0, "railway", "level_crossing")
                .node(3, 400, 0)
                .node(4, 500, 0)
                .node(5, 1000, 0)
                .way(100, List.of(1L, 2L, 3L, 4L, 5L), "highway", "secondary")
                .node(30, 450, -100)
                .node(31, 450, 100)
                .way(300, List.of(30L, 31L), "highway", "primary", "bridge", "yes");

        MapAlong along =
                along(map, List.of(new LonLat(westDeg, 0), new LonLat(Flat.wrapped(westDeg + SmallMap.lon(1000)), 0)));

        assertEquals(List.of("rail-crossing at 200 with 1", "structure-over at 450"), told(along));
        assertEquals(1000, along.line().lengthM(), 1e-3);
        assertEquals(0, along.offRoadM());
    }

    @Test
    void whereTheMapHasNoRoadNothingIsKnown() throws Exception {
        // It says what it covers: else the road might end behind its edge (MapEndsTest).
        SmallMap map = SmallMap.road().bounds(-50, -200, 2000, 200);
        MapAlong along = along(map, List.of(at(0, 0), at(1000, 0), at(1400, 0)));

        assertEquals(1, along.candidates().size());
        assertEquals(Kind.OFF_MAP, along.candidates().get(0).kind());
        assertEquals(1000, along.candidates().get(0).fromM(), 31);
        assertEquals(1400, along.candidates().get(0).toM(), 0.1);
    }

    /** Right by 90 degrees, and 10 m on left by 90: a jog that ends up where it began, two bends. */
    @Test
    void aJogHasTwoBends() throws Exception {
        SmallMap map = new SmallMap()
                .node(1, 0, 0)
                .node(2, 300, 0)
                .node(3, 300, -10)
                .node(4, 600, -10)
                .way(100, List.of(1L, 2L, 3L, 4L), "highway", "tertiary");

        MapAlong along = along(map, List.of(at(0, 0), at(300, 0), at(300, -10), at(600, -10)));

        assertEquals(
                List.of("Sharp bend to the right, 90 degrees", "Sharp bend to the left, 90 degrees"),
                along.bends().stream().map(MapCandidate::name).toList());
        assertEquals(300, along.bends().get(0).chainageM(), 0.1);
        assertEquals(310, along.bends().get(1).chainageM(), 0.1);
    }
}
