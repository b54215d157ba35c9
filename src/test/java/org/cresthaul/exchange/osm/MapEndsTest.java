package org.cresthaul.exchange.osm;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.ImportPreview;
import org.cresthaul.exchange.RouteImport;
import org.cresthaul.exchange.osm.MapCandidate.Kind;
import org.cresthaul.exchange.track.TrackContent;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.exchange.track.TrackNote;
import org.cresthaul.route.Hazard;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Where a map, a track or a leg ends, nothing is lost: small maps written by hand along a road of 1000 m on the
 * equator, whole imports of them.
 */
class MapEndsTest {
    @TempDir
    private Path folder;

    private int files;

    private MapExtract extract(SmallMap map) throws Exception {
        return MapExtract.of(Files.writeString(folder.resolve("map" + ++files + ".osm"), map.xml()));
    }

    private MapExtract packed(SmallMap map) throws Exception {
        return MapExtract.of(Files.write(folder.resolve("map" + ++files + ".osm.pbf"), map.pbf()));
    }

    /** Along the road through places so many meters from its beginning. */
    private static TrackContent track(double... eastM) throws InputRejected {
        StringBuilder text = new StringBuilder("lon,lat\n");
        for (double x : eastM) {
            text.append(String.format(java.util.Locale.ROOT, "%.9f,0%n", SmallMap.lon(x)));
        }
        return TrackFile.parse(text.toString().getBytes(UTF_8), "track");
    }

    private static RouteImport.Imported imported(
            List<TrackContent> tracks, List<MapExtract> extracts, Optional<byte[]> update) throws InputRejected {
        return RouteImport.of(
                tracks, new RouteImport.Options("", 0.25, 250, extracts, List.of(), update, MapProgress.UNTOLD));
    }

    private static List<ImportPreview.Candidate> candidates(List<TrackContent> tracks, MapExtract... extracts)
            throws InputRejected {
        return imported(tracks, List.of(extracts), Optional.empty()).preview().candidates();
    }

    private static List<String> codes(RouteImport.Imported imported) {
        return imported.preview().notes().stream().map(TrackNote::code).toList();
    }

    private static List<String> told(List<ImportPreview.Candidate> candidates) {
        return candidates.stream()
                .map(c -> c.kind().word() + " at " + Math.round(c.chainageM()))
                .toList();
    }

    /** The road runs on as a whole way behind what the extract covers, but not what crosses it there. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void whatLiesOutsideOfTheExtractIsNotCovered(boolean pbf) throws Exception {
        SmallMap map = SmallMap.road().bounds(-50, -200, 600, 200);

        List<ImportPreview.Candidate> found = candidates(List.of(track(0, 1000)), pbf ? packed(map) : extract(map));

        assertEquals(List.of(Kind.OFF_MAP), found.stream().map(c -> c.kind()).toList());
        assertTrue(found.get(0).doubtful());
        assertEquals("Outside of the map extract", found.get(0).name());
        // Told from the last place that is held against the area on, 10 m at most before its edge.
        assertEquals(600, found.get(0).fromM(), 10.01);
        assertEquals(1000, found.get(0).toM(), 0.01);
    }

    @Test
    void theStretchOutsideOfTheExtractIsUnknownInTheRoute() throws Exception {
        RouteImport.Imported imported = imported(
                List.of(track(0, 1000)),
                List.of(extract(SmallMap.road().bounds(600, -200, 2000, 200))),
                Optional.empty());

        List<Hazard> hazards = imported.route().hazards();
        assertEquals(1, hazards.size());
        assertTrue(!hazards.get(0).isSurveyed());
        assertEquals(
                List.of("map-edge-0"),
                imported.route().candidates().stream().map(c -> c.place().id()).toList());
    }

    @Test
    void twoExtractsTogetherCoverWhatEachHasHalfOf() throws Exception {
        assertEquals(
                List.of(),
                told(candidates(
                        List.of(track(0, 1000)),
                        extract(SmallMap.road().bounds(-50, -200, 600, 200)),
                        extract(SmallMap.road().bounds(600, -200, 1050, 200)))));
    }

    @Test
    void anAreaMayReachAcrossTheLastMeridian() throws Exception {
        double westDeg = 180 - SmallMap.lon(400);
        MapCover cover = new MapCover();
        cover.add(westDeg, -1, -179, 1);
        assertTrue(cover.holds(new org.cresthaul.route.LonLat(179.999, 0)));
        assertTrue(cover.holds(new org.cresthaul.route.LonLat(-179.5, 0)));
        assertTrue(!cover.holds(new org.cresthaul.route.LonLat(-178.9, 0)));
        assertTrue(!cover.holds(new org.cresthaul.route.LonLat(0, 0)));
    }

    @Test
    void anExtractThatDoesNotSayWhatItCoversIsTold() throws Exception {
        RouteImport.Imported imported =
                imported(List.of(track(0, 1000)), List.of(extract(SmallMap.road())), Optional.empty());

        assertEquals(List.of("map-area"), codes(imported));
        assertEquals(List.of(), told(imported.preview().candidates()));
    }

    /**
     * The road ends with the map at 1000 m, the line goes on for 900 m: the edge of the map may be anywhere behind the
     * last side road, at 600 m.
     */
    @Test
    void aRoadThatLeavesTheMapIsUnknownFromItsLastSideRoadOn() throws Exception {
        SmallMap map = SmallMap.road().node(40, 600, 90).way(101, List.of(7L, 40L), "highway", "residential");

        List<ImportPreview.Candidate> out = candidates(List.of(track(0, 1000, 1900)), extract(map));
        List<ImportPreview.Candidate> in = candidates(List.of(track(1900, 1000, 0)), extract(map));

        assertEquals(List.of(Kind.OFF_MAP), out.stream().map(c -> c.kind()).toList());
        assertEquals(600, out.get(0).fromM(), 0.01);
        assertEquals(1900, out.get(0).toM(), 0.01);
        assertEquals(List.of(Kind.OFF_MAP), in.stream().map(c -> c.kind()).toList());
        assertEquals(0, in.get(0).fromM(), 0.01);
        assertEquals(1300, in.get(0).toM(), 0.01);
    }

    /** A yard of 100 m behind the end of a road is no edge of a map. */
    @Test
    void aYardBehindTheEndOfARoadIsUnknownAlone() throws Exception {
        List<ImportPreview.Candidate> found = candidates(
                List.of(track(0, 1000, 1100)), extract(SmallMap.road().bounds(-50, -200, 2000, 200)));

        assertEquals(1, found.size());
        assertEquals(1000, found.get(0).fromM(), 31);
        assertEquals(1100, found.get(0).toM(), 0.1);
    }

    /**
     * Where the extract does not say what it covers, the same yard may lie behind its edge, and the edge anywhere
     * behind the last side road, at 600 m; from the west as from the east.
     */
    @Test
    void aLineThatEndsJustPastTheEdgeOfASilentExtractIsUnknownFromTheLastSideRoadOn() throws Exception {
        SmallMap map = SmallMap.road().node(40, 600, 90).way(101, List.of(7L, 40L), "highway", "residential");

        List<ImportPreview.Candidate> out = candidates(List.of(track(0, 1000, 1100)), extract(map));
        List<ImportPreview.Candidate> in = candidates(List.of(track(1100, 1000, 0)), extract(map));

        assertEquals(List.of(Kind.OFF_MAP), out.stream().map(c -> c.kind()).toList());
        assertEquals(600, out.get(0).fromM(), 0.01);
        assertEquals(1100, out.get(0).toM(), 0.1);
        assertEquals(List.of(Kind.OFF_MAP), in.stream().map(c -> c.kind()).toList());
        assertEquals(0, in.get(0).fromM(), 0.01);
        assertEquals(500, in.get(0).toM(), 0.1);
    }

    /** "A map, nothing" would be no answer to who says so. */
    @Test
    void whatTheMapDoesNotHaveIsSaidByTheImport() throws Exception {
        RouteImport.Imported imported = imported(
                List.of(track(0, 1000, 1900)),
                List.of(extract(SmallMap.road().bounds(-50, -200, 1000, 200))),
                Optional.empty());

        assertEquals(
                List.of(
                        "reported by the import, since the map has no object there: the extract has no road under this"
                                + " part of the line",
                        "reported by the import, since the map has no object there: the extract says that it does not"
                                + " cover this part of the line"),
                imported.route().candidates().stream()
                        .map(c -> c.candidate().told().toString())
                        .toList());
    }

    /** A map with the road through to 1900 m takes the place of one that had no road there. */
    @Test
    void aLargerExtractTakesAwayWhatTheSmallerOneDidNotHave() throws Exception {
        byte[] first = imported(
                        List.of(track(0, 1000, 1900)),
                        List.of(extract(SmallMap.road().bounds(-50, -200, 1000, 200))),
                        Optional.empty())
                .document();
        assertTrue(new String(first, UTF_8).contains("map-edge-"));
        SmallMap larger = SmallMap.road().node(50, 1900, 0).way(110, List.of(11L, 50L), "highway", "secondary");

        RouteImport.Imported again = imported(
                List.of(track(0, 1000, 1900)),
                List.of(extract(larger.bounds(-50, -200, 2000, 200))),
                Optional.of(first));

        assertEquals(List.of(), again.route().candidates());
        assertEquals(List.of(), again.preview().missing());
    }

    /** Legs are joined within 30 m; the crossing at 500 m lies in the joint, on one of its ends, or in both legs. */
    @ParameterizedTest
    @ValueSource(strings = {"490 510", "500 500", "488 500", "500 515", "505 495"})
    void aCrossingWhereTwoLegsJoinIsFoundOnce(String joint) throws Exception {
        SmallMap map = SmallMap.road()
                .bounds(-50, -200, 1050, 200)
                .node(30, 500, -80)
                .node(31, 500, 80)
                .way(200, List.of(30L, 6L, 31L), "railway", "rail");
        double end = Double.parseDouble(joint.split(" ")[0]);
        double start = Double.parseDouble(joint.split(" ")[1]);

        List<ImportPreview.Candidate> found = candidates(List.of(track(0, end), track(start, 1000)), extract(map));

        assertEquals(List.of("rail-crossing at 500"), told(found));
    }

    /** The road is torn where the rails are: no node, no road, and rails all the same. */
    @Test
    void railsAcrossATearInTheRoadAreFound() throws Exception {
        SmallMap map = new SmallMap()
                .bounds(-50, -200, 1050, 200)
                .node(1, 0, 0)
                .node(2, 490, 0)
                .node(3, 505, 0)
                .node(4, 1000, 0)
                .way(100, List.of(1L, 2L), "highway", "secondary")
                .way(101, List.of(3L, 4L), "highway", "secondary")
                .node(30, 498, -80)
                .node(31, 498, 80)
                .way(200, List.of(30L, 31L), "railway", "rail");

        // Beside it, the tear itself is a stretch without a road, as long as the line lies on none.
        List<ImportPreview.Candidate> found = candidates(List.of(track(0, 250, 500, 750, 1000)), extract(map)).stream()
                .filter(c -> c.kind() != Kind.OFF_MAP)
                .toList();

        assertEquals(List.of("map-incomplete at 498"), told(found));
        assertEquals("way 200", found.get(0).object());
        assertTrue(found.get(0).doubtful());
    }

    /** A crossing on the first and on the last node of the line is on the route. */
    @Test
    void crossingsAtTheVeryEndsOfTheLineAreOnTheRoute() throws Exception {
        SmallMap map = SmallMap.road().bounds(-50, -200, 1050, 200);
        List<Long> first = new ArrayList<>(List.of(30L, 1L, 31L));
        map.node(30, 0, -80).node(31, 0, 80).way(200, first, "railway", "rail");
        map.node(32, 1000, -80).node(33, 1000, 80).way(201, List.of(32L, 11L, 33L), "railway", "rail");

        RouteImport.Imported imported = imported(List.of(track(0, 1000)), List.of(extract(map)), Optional.empty());

        assertEquals(
                List.of("rail-crossing at 0", "rail-crossing at 1000"),
                told(imported.preview().candidates()));
        assertEquals(2, imported.route().hazards().size());
        assertEquals(List.of(), codes(imported));
    }

    /** The line begins 20 m behind one crossing and ends 30 m before another; one 60 m off is none of its business. */
    @Test
    void crossingsJustOffTheEndsOfTheLineAreTold() throws Exception {
        SmallMap map = SmallMap.road()
                .bounds(-50, -200, 1050, 200)
                .node(30, 100, -80)
                .node(31, 100, 80)
                .way(200, List.of(30L, 2L, 31L), "railway", "rail")
                .node(32, 900, -80)
                .node(33, 900, 80)
                .way(201, List.of(32L, 10L, 33L), "railway", "rail");

        RouteImport.Imported near = imported(List.of(track(120, 870)), List.of(extract(map)), Optional.empty());
        RouteImport.Imported back = imported(List.of(track(870, 120)), List.of(extract(map)), Optional.empty());
        RouteImport.Imported far = imported(List.of(track(160, 840)), List.of(extract(map)), Optional.empty());

        assertEquals(List.of("rails-beyond", "rails-beyond"), codes(near));
        assertTrue(near.preview().notes().get(0).message().startsWith("20 m before the line begins"));
        assertTrue(near.preview().notes().get(1).message().startsWith("30 m behind the end of the line"));
        assertTrue(back.preview().notes().get(0).message().startsWith("30 m before the line begins"));
        assertEquals(List.of(), codes(far));
        assertEquals(List.of(), told(near.preview().candidates()));
    }

    /** The map of 2026-01-02 says 3.9 m; the one of 2025 that is imported behind it says 4.4 m. */
    @Test
    void anOlderMapDoesNotTakeThePlaceOfANewerOne() throws Exception {
        List<TrackContent> track = List.of(track(0, 1000));
        SmallMap lower = SmallMap.road("maxheight", "3.9").bounds(-50, -200, 1050, 200);
        SmallMap higher = SmallMap.road("maxheight", "4.4").bounds(-50, -200, 1050, 200);
        MapExtract older = MapExtract.of(
                Files.writeString(folder.resolve("older.osm"), higher.xml().replace("2026-01-02", "2025-01-02")));

        RouteImport.Imported first = imported(track, List.of(extract(lower)), Optional.empty());
        RouteImport.Imported again = imported(track, List.of(older), Optional.of(first.document()));
        RouteImport.Imported forward = imported(
                track,
                List.of(extract(lower)),
                Optional.of(imported(track, List.of(older), Optional.empty()).document()));

        assertEquals(List.of("map-older"), codes(again));
        assertEquals(first.route().candidates(), again.route().candidates());
        assertEquals(new String(first.document(), UTF_8), new String(again.document(), UTF_8));
        assertEquals(List.of(), codes(forward));
        assertEquals(
                List.of("maxheight=3.9"),
                forward.route().candidates().stream()
                        .map(c -> c.candidate().raw())
                        .toList());
    }
}
