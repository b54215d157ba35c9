package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.cresthaul.exchange.osm.SmallMap;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.exchange.track.TrackTexts;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.Route;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command from files to a route file, and its words. */
class ImportCommandTest {
    @TempDir
    private Path folder;

    private record Ran(int exitCode, String out, String err) {}

    private static Ran run(String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int ended = Cresthaul.run(
                arguments,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Ran(ended, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private String file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    @Test
    void writesARouteFileThatTheReaderTakes() throws Exception {
        Path out = folder.resolve("made.route.geojson");

        Ran ran = run("import", file("t.gpx", TrackTexts.GPX), "--out", out.toString());

        assertEquals(0, ran.exitCode, ran.err);
        Route route = RouteFile.parse(Files.readAllBytes(out));
        assertEquals("Quarry to mill", route.name());
        assertEquals("County road", route.legs().get(0).name());
        // 0.002 degrees of the equator, whose radius is 6,378,137 m (WGS 84).
        assertEquals(Math.toRadians(0.002) * 6_378_137, route.lengthM(), 1e-6);
        assertEquals("Gate", route.waypoints().get(0).name());
        assertEquals(Math.toRadians(0.001) * 6_378_137, route.waypoints().get(0).chainageM(), 1e-3);
        assertTrue(ran.out.contains("nothing of it is clear"), ran.out);
    }

    @Test
    void keepsNothingWithoutAFileToWrite() throws Exception {
        Ran ran = run("import", file("t.kml", TrackTexts.KML));

        assertEquals(0, ran.exitCode);
        assertTrue(ran.out.contains("Nothing was written"), ran.out);
        try (var files = Files.list(folder)) {
            assertEquals(1, files.count());
        }
    }

    @Test
    void tellsThePreviewAsJson() throws Exception {
        Ran ran = run("import", file("t.json", TrackTexts.GEOJSON), "--form", "json", "--simplify", "0 m");

        JsonNode preview = new ObjectMapper().readTree(ran.out);
        assertEquals(3, preview.path("pointsKept").asInt());
        assertEquals("GeoJSON", preview.path("files").path(0).path("format").asText());
        assertEquals("W01", preview.path("places").path(0).path("id").asText());
        assertFalse(ran.out.contains("\"verdict\""));
    }

    @Test
    void joinsFilesAndGivesAPlacePassedTwiceItsPassages() throws Exception {
        String there = file("a.csv", "lon,lat\n0,0\n0.001,0\n0.002,0\n");
        String back = file("b.csv", "lon,lat\n0.002,0.00001\n0.001,0\n0,0\n");
        String gate = file("c.gpx", "<gpx version='1.1'><wpt lat='0' lon='0.0005'><name>Gate</name></wpt></gpx>");
        Path out = folder.resolve("both.geojson");

        Ran ran = run("import", there, back, gate, "--name", "There and back", "--out", out.toString());

        assertEquals(0, ran.exitCode, ran.err);
        Route route = RouteFile.parse(Files.readAllBytes(out));
        assertEquals("There and back", route.name());
        assertEquals(2, route.legs().size());
        assertEquals(2, route.waypoints().size());
        double quarterM = Math.toRadians(0.0005) * 6_378_137;
        assertEquals(quarterM, route.waypoints().get(0).chainageM(), 0.01);
        assertEquals(7 * quarterM, route.waypoints().get(1).chainageM(), 1.2);
    }

    @Test
    void readsOtherCoordinates() throws Exception {
        // The source of this place stands in PlaneCoordinatesTest.
        String track = file("t.csv", "x,y\n630084,4833438\n630184,4833438\n");

        Ran ran = run("import", track, "--crs", "EPSG:32617");
        Ran unknown = run("import", track, "--crs", "feet");

        assertEquals(0, ran.exitCode, ran.err);
        assertTrue(ran.out.contains("Read as EPSG:32617, WGS 84 / UTM zone 17N: first east, then"), ran.out);
        assertEquals(2, unknown.exitCode);
        assertTrue(unknown.err.contains("EPSG:2263"), unknown.err);
    }

    /** A folder with two tracks, a map and what else lies around there. */
    private Path folderOfFiles() throws IOException {
        Path office = Files.createDirectories(folder.resolve("office"));
        Files.writeString(office.resolve("b.csv"), "lon,lat\n0,0\n0.003,0\n");
        Files.writeString(office.resolve("c.csv"), "lon,lat\n0.003,0\n0.0089,0\n");
        Files.writeString(office.resolve("permit.pdf"), "%PDF-1.7");
        Files.writeString(office.resolve(".hidden"), "%PDF-1.7");
        Files.createDirectories(office.resolve("older"));
        new SmallMap()
                .node(1, 0, 0)
                .node(2, 600, 0, "railway", "level_crossing")
                .node(3, 1000, 0)
                .way(100, List.of(1L, 2L, 3L), "highway", "tertiary")
                .writeXml(office);
        return office;
    }

    @Test
    void takesAFolderAndNamesWhatItLeavesOut() throws Exception {
        Path office = folderOfFiles();
        Path out = office.resolve("a.route.geojson");

        Ran ran = run("import", office.toString(), "--out", out.toString());
        // What was written there is no track of its own the next time.
        Ran again = run("import", office.toString(), "--form", "json");

        assertEquals(0, ran.exitCode, ran.err);
        Route route = RouteFile.parse(Files.readAllBytes(out));
        assertEquals(Math.toRadians(0.0089) * 6_378_137, route.lengthM(), 0.01);
        assertEquals(1, route.hazards().size());
        assertTrue(ran.out.contains("FILES LEFT OUT\n  permit.pdf: This is a PDF"), ran.out);
        assertFalse(ran.out.contains(".hidden"), ran.out);
        JsonNode preview = new ObjectMapper().readTree(again.out);
        assertEquals(route.lengthM(), preview.path("lengthM").asDouble(), 1e-9);
        List<String> left = new ArrayList<>();
        preview.path("leftOut")
                .forEach(f ->
                        left.add(f.path("file").asText() + " " + f.path("code").asText()));
        assertEquals(List.of("permit.pdf pdf", "a.route.geojson route-file"), left);
        assertEquals("b.csv", preview.at("/files/0/file").asText());
    }

    @Test
    void tracksOfAFolderGoByTheirTimesWhereAllHaveThem() throws Exception {
        Path office = Files.createDirectories(folder.resolve("timed"));
        Files.writeString(
                office.resolve("a.csv"), "lon,lat,time\n0.003,0,2026-05-01T10:00:00Z\n0.0089,0,2026-05-01T10:02:00Z\n");
        Files.writeString(
                office.resolve("b.csv"), "lon,lat,time\n0,0,2026-05-01T09:00:00Z\n0.003,0,2026-05-01T09:01:00Z\n");

        Ran ran = run("import", office.toString(), "--form", "json");

        JsonNode preview = new ObjectMapper().readTree(ran.out);
        assertEquals("b.csv", preview.at("/files/0/file").asText());
        assertEquals(Math.toRadians(0.0089) * 6_378_137, preview.path("lengthM").asDouble(), 1e-6);
    }

    @Test
    void aFolderWithoutATrackIsRefusedWithEveryReason() throws Exception {
        Path office = Files.createDirectories(folder.resolve("none"));
        Files.writeString(office.resolve("permit.pdf"), "%PDF-1.7");

        Ran ran = run("import", office.toString());

        assertEquals(2, ran.exitCode);
        assertTrue(ran.err.contains("permit.pdf") && ran.err.contains("This is a PDF"), ran.err);
        assertTrue(ran.err.contains("There is no track in this folder."), ran.err);
    }

    @Test
    void refusesEveryBadFileAtOnceAndWritesNothing() throws Exception {
        Path out = folder.resolve("none.geojson");
        Ran ran = run("import", file("a.gpx", "<gpx"), file("b.csv", "x"), "--out", out.toString());

        assertEquals(2, ran.exitCode);
        assertTrue(ran.err.contains("a.gpx") && ran.err.contains("b.csv"), ran.err);
        assertTrue(ran.err.contains("Nothing was imported."), ran.err);
        assertFalse(Files.exists(out));
    }

    @Test
    void neverWritesOverItsInput() throws Exception {
        String track = file("t.gpx", TrackTexts.GPX);
        Ran ran = run("import", track, "--out", track);
        assertEquals(2, ran.exitCode);
        assertEquals(TrackTexts.GPX, Files.readString(Path.of(track)));
    }

    /** A road of 1000 m with a height of 10 m and a side road's bridge over it: nothing of it is clear for any rig. */
    @Test
    void whatAMapSaysIsNeverClear() throws Exception {
        String map = SmallMap.road("maxheight", "10", "maxweight", "300")
                .node(30, 400, -100)
                .node(31, 480, 100)
                .way(300, List.of(30L, 31L), "highway", "primary", "bridge", "yes")
                .node(32, 700, -90)
                .node(33, 700, 90)
                .way(301, List.of(32L, 33L), "power", "minor_line")
                .writeXml(folder)
                .toString();
        String track = file("t.csv", "lon,lat\n0,0\n0.0089,0\n");
        String made = folder.resolve("made.geojson").toString();

        Ran ran = run("import", track, "--map", map, "--form", "json", "--out", made);

        assertEquals(0, ran.exitCode, ran.err);
        JsonNode candidates = new ObjectMapper().readTree(ran.out).path("candidates");
        assertEquals(4, candidates.size(), ran.out);
        assertEquals("new", candidates.path(0).path("status").asText());
        JsonNode base = new ObjectMapper().readTree(Files.readAllBytes(folder.resolve("made.basemap.geojson")));
        assertEquals(
                "\u00a9 OpenStreetMap contributors, ODbL 1.0",
                base.path("attribution").asText());
        assertEquals(
                List.of("middle-road", "major-road"),
                List.of(
                        base.at("/features/0/properties/layer").asText(),
                        base.at("/features/1/properties/layer").asText()));
        Ran check = run("check", made, "sample-routes/lowbed-loaded.rig.json", "--form", "json");
        JsonNode report = new ObjectMapper().readTree(check.out);
        assertEquals(1, check.exitCode, check.err);
        assertEquals(4, report.path("hazards").size());
        int cells = 0;
        for (JsonNode hazard : report.path("hazards")) {
            for (JsonNode cell : hazard.path("cells")) {
                String verdict = cell.path("verdict").asText();
                assertFalse(verdict.equals("clear"), hazard.path("id") + " " + cell);
                cells++;
            }
        }
        assertTrue(cells >= 120, cells + " cells");
        for (JsonNode configuration : report.path("configurations")) {
            assertFalse(configuration.path("verdict").asText().equals("clear"), configuration.toString());
        }
    }

    /**
     * Nobody knows what is in a gap: it is a place where nothing is known, and it comes once, however often imported.
     */
    @Test
    void aGapIsNeverClearAndComesOnce() throws Exception {
        String first = file("a.csv", "lon,lat\n0,0\n0.002,0\n");
        String then = file(
                "b.gpx",
                "<gpx version='1.1'><wpt lat='0' lon='0.001'><name>Gate</name></wpt><trk><trkseg>"
                        + "<trkpt lat='0' lon='0.004'/><trkpt lat='0' lon='0.006'/></trkseg></trk></gpx>");
        Path once = folder.resolve("once.geojson");
        Path twice = folder.resolve("twice.geojson");

        run("import", first, then, "--out", once.toString());
        Ran ran = run("import", first, then, "--update", once.toString(), "--out", twice.toString());

        assertEquals(0, ran.exitCode, ran.err);
        assertEquals(Files.readString(once), Files.readString(twice));
        Route route = RouteFile.parse(Files.readAllBytes(twice));
        assertEquals(1, route.waypoints().size());
        assertEquals(1, route.hazards().size());
        assertFalse(route.hazards().get(0).isSurveyed());
        // From 0.002 to 0.004 degrees of the equator.
        assertEquals(
                Math.toRadians(0.003) * 6_378_137,
                route.hazards().get(0).place().chainageM(),
                0.1);
    }

    /**
     * A jog of 90 degrees right and, 10 m on, 90 left runs on as it came: the line's search for turns, made for
     * wavering receivers, sees nothing, and the map's corners are there all the same.
     */
    @Test
    void aJogOfTheRoadIsListed() throws Exception {
        String map = new SmallMap()
                .node(1, 0, 0)
                .node(2, 500, 0)
                .node(3, 500, -10)
                .node(4, 990.7, -10)
                .way(100, List.of(1L, 2L, 3L, 4L), "highway", "tertiary")
                .writeXml(folder)
                .toString();
        double meter = Math.toDegrees(1 / 6_378_137.0);
        String track = file(
                "t.csv",
                "lon,lat\n0,0\n%1$.9f,0\n%1$.9f,%2$.9f\n0.0089,%2$.9f\n".formatted(500 * meter, -10 * meter * 1.0067));
        Path plain = folder.resolve("plain.geojson");
        Path mapped = folder.resolve("mapped.geojson");

        run("import", track, "--out", plain.toString());
        Ran ran = run("import", track, "--map", map, "--out", mapped.toString());

        assertEquals(0, ran.exitCode, ran.err);
        assertEquals(List.of(), RouteFile.parse(Files.readAllBytes(plain)).hazards());
        List<Hazard> corners = RouteFile.parse(Files.readAllBytes(mapped)).hazards();
        assertEquals(2, corners.size());
        assertEquals(500, corners.get(0).place().chainageM(), 0.5);
        assertEquals(510, corners.get(1).place().chainageM(), 0.5);
        assertTrue(corners.stream().noneMatch(Hazard::isSurveyed));
    }

    /** A height at 200 m, a jog at 500 m and 510 m, and a bridge over the road at 700 m: told as they are met. */
    @Test
    void candidatesAreToldInTheOrderOfTravel() throws Exception {
        String map = new SmallMap()
                .node(1, 0, 0)
                .node(2, 500, 0)
                .node(3, 500, -10)
                .node(4, 990.7, -10)
                .node(5, 200, 0, "railway", "level_crossing")
                .way(100, List.of(1L, 5L, 2L, 3L, 4L), "highway", "tertiary")
                .node(30, 700, -100)
                .node(31, 700, 100)
                .way(300, List.of(30L, 31L), "highway", "primary", "bridge", "yes")
                .writeXml(folder)
                .toString();
        double meter = Math.toDegrees(1 / 6_378_137.0);
        String track = file(
                "t.csv",
                "lon,lat\n0,0\n%1$.9f,0\n%1$.9f,%2$.9f\n0.0089,%2$.9f\n".formatted(500 * meter, -10 * meter * 1.0067));

        Ran ran = run("import", track, "--map", map, "--form", "json");

        List<Long> at = new ArrayList<>();
        new ObjectMapper()
                .readTree(ran.out)
                .path("candidates")
                .forEach(c -> at.add(Math.round(c.path("chainageM").asDouble() / 10) * 10));
        assertEquals(List.of(200L, 500L, 510L, 710L), at, ran.out);
    }

    /** Again with the same map: open candidates come anew, a survey and a dismissal stay, and nothing comes twice. */
    @Test
    void importingAgainLeavesSurveysAndDismissalsAlone() throws Exception {
        String map = new SmallMap()
                .node(1, 0, 0)
                .node(2, 200, 0, "railway", "level_crossing")
                .node(3, 400, 0, "railway", "level_crossing")
                .node(4, 600, 0, "railway", "level_crossing")
                .node(5, 1000, 0)
                .way(100, List.of(1L, 2L, 3L, 4L, 5L), "highway", "tertiary")
                .writeXml(folder)
                .toString();
        String track = file("t.csv", "lon,lat\n0,0\n0.0089,0\n");
        Path first = folder.resolve("first.geojson");
        run("import", track, "--map", map, "--out", first.toString());
        String text = Files.readString(first);
        String dismissed = "\"id\":\"map-n2\"";
        assertTrue(text.contains(dismissed) && text.contains("\"id\":\"map-n3\""), text);
        String[] lines = text.split("\n");
        for (int i = 0; i < lines.length; i++) {
            if (lines[i].contains(dismissed)) {
                lines[i] = lines[i].replace(
                        "\"state\":\"open\"", "\"state\":\"dismissed\",\"by\":\"J. Doe\",\"why\":\"track lifted\"");
            } else if (lines[i].contains("\"id\":\"map-n3\"")) {
                lines[i] = lines[i].replace("\"state\":\"open\"", "\"state\":\"surveyed\"")
                        .replace(
                                "\"name\":",
                                "\"survey\":{\"accuracy\":\"10 mm\",\"source\":\"level\"},\"profile\":[{\"line\":\"center\","
                                        + "\"points\":[[\"-9 m\",\"0 m\"],[\"9 m\",\"0.1 m\"]]}],\"name\":");
            }
        }
        String worked = file("worked.geojson", String.join("\n", lines));
        Path second = folder.resolve("second.geojson");

        Ran again =
                run("import", track, "--map", map, "--update", worked, "--form", "json", "--out", second.toString());

        assertEquals(0, again.exitCode, again.err);
        Route route = RouteFile.parse(Files.readAllBytes(second));
        assertEquals(
                List.of("dismissed", "surveyed", "open"),
                route.candidates().stream()
                        .map(c -> c.candidate().state().word())
                        .toList());
        assertEquals(2, route.hazards().size());
        assertEquals(1, route.findHazard("map-n3").orElseThrow().lines().size());
        JsonNode candidates = new ObjectMapper().readTree(again.out).path("candidates");
        assertEquals("dismissed", candidates.path(0).path("status").asText());
        assertEquals("surveyed", candidates.path(1).path("status").asText());
        assertEquals("known", candidates.path(2).path("status").asText());
    }
}
