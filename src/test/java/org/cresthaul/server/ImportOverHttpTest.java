package org.cresthaul.server;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.cresthaul.exchange.BaseMapFile;
import org.cresthaul.exchange.osm.LongExtract;
import org.cresthaul.exchange.osm.SmallMap;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.exchange.track.TrackTexts;
import org.cresthaul.route.Route;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Imports over HTTP: what is answered, what is refused, and that nothing stays behind. */
class ImportOverHttpTest {
    /** Three crossings at nodes 2, 3 and 4 of a road of 1000 m on the equator; invented. */
    private static final SmallMap MAP = new SmallMap()
            .node(1, 0, 0)
            .node(2, 200, 0, "railway", "level_crossing")
            .node(3, 400, 0, "railway", "level_crossing")
            .node(4, 600, 0, "railway", "level_crossing")
            .node(5, 1000, 0)
            .way(100, List.of(1L, 2L, 3L, 4L, 5L), "highway", "tertiary");

    private static final byte[] TRACK = "lon,lat\n0,0\n0.0089,0\n".getBytes(UTF_8);
    private static final Path TEMPORARY = Path.of(System.getProperty("java.io.tmpdir"));

    private static TestServer server;
    private Set<String> before;

    @BeforeAll
    static void start() {
        server = TestServer.ofSmallFiles();
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    @BeforeEach
    void look() throws IOException {
        before = folders();
    }

    @AfterEach
    void nothingIsLeft() throws Exception {
        for (int i = 0; i < 50 && !folders().equals(before); i++) {
            Thread.sleep(100);
        }
        assertEquals(before, folders());
    }

    private static Set<String> folders() throws IOException {
        try (Stream<Path> all = Files.list(TEMPORARY)) {
            return all.map(p -> p.getFileName().toString())
                    .filter(n -> n.startsWith("cresthaul-import"))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    private static byte[] gzip(byte[] bytes) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(bytes);
        }
        return packed.toByteArray();
    }

    private static JsonNode imported(ImportForm form) throws Exception {
        HttpResponse<String> response = server.send(form.request(server));
        assertEquals(200, response.statusCode(), response.body());
        JsonNode answer = TestServer.json(response);
        OpenApi.requireValid("Import", answer);
        assertFalse(response.body().contains("\"verdict\""), response.body());
        return answer;
    }

    private static JsonNode refused(int status, String kind, ImportForm form) throws Exception {
        HttpResponse<String> response = server.send(form.request(server));
        BadRequestTest.requireProblem(response, status, kind);
        return TestServer.json(response);
    }

    private static Route route(JsonNode answer) throws Exception {
        return RouteFile.parse(answer.path("route").textValue().getBytes(UTF_8));
    }

    @Test
    void everyFormatOfTracksBecomesTheSameRoute() throws Exception {
        List<byte[]> all = new ArrayList<>(TrackTexts.each());
        all.add(imported(new ImportForm().file("file", "x", TrackTexts.utf8(TrackTexts.GPX)))
                .path("route")
                .textValue()
                .getBytes(UTF_8));
        for (byte[] track : all) {
            // The name says nothing, and may be any.
            JsonNode answer = imported(new ImportForm().file("whatever", "../../fa\u00e7ade.bin", track));

            // 0.002 degrees of the equator, whose radius is 6,378,137 m (WGS 84).
            assertEquals(Math.toRadians(0.002) * 6_378_137, route(answer).lengthM(), 1e-6);
            assertEquals("fa\u00e7ade.bin", answer.at("/preview/files/0/file").textValue());
            assertEquals(route(answer).lengthM(), answer.at("/line/lengthM").doubleValue(), 0);
            assertTrue(answer.at("/preview/map").isNull());
            assertTrue(answer.path("baseMap").isNull());
        }
    }

    @Test
    void everyFormatOfMapsIsToldByItsContent() throws Exception {
        byte[] xml = MAP.xml().getBytes(UTF_8);
        for (byte[] map : List.of(xml, gzip(xml), MAP.pbf())) {
            JsonNode answer =
                    imported(new ImportForm().file("file", "a.gpx", map).file("file", "b.osm.pbf", TRACK));

            List<String> ids = new ArrayList<>();
            answer.at("/preview/candidates").forEach(c -> {
                ids.add(c.path("id").textValue());
                assertEquals("new", c.path("status").textValue());
            });
            assertEquals(List.of("map-n2", "map-n3", "map-n4"), ids);
            assertEquals(3, route(answer).hazards().size());
            assertTrue(route(answer).hazards().stream().noneMatch(h -> h.isSurveyed()));
            assertTrue(answer.at("/preview/map/attribution").textValue().contains("OpenStreetMap contributors"));
            JsonNode base = new ObjectMapper()
                    .readTree(BaseMapFile.requireForm(
                            answer.path("baseMap").textValue().getBytes(UTF_8)));
            assertEquals("middle-road", base.at("/features/0/properties/layer").textValue());
            assertEquals(1, base.path("features").size());
        }
    }

    /** The road is cut between two extracts that both have it: what is in both is one. */
    @Test
    void severalMapsAreOne() throws Exception {
        byte[] east = SmallMap.road()
                .node(30, 700, -100)
                .node(31, 700, 100)
                .way(300, List.of(30L, 31L), "highway", "primary", "bridge", "yes")
                .xml()
                .getBytes(UTF_8);
        byte[] west = SmallMap.road()
                .node(40, 300, -100)
                .node(41, 300, 100)
                .way(301, List.of(40L, 41L), "highway", "primary", "bridge", "yes")
                .xml()
                .getBytes(UTF_8);

        JsonNode answer = imported(new ImportForm()
                .file("file", "east.osm", east)
                .file("file", "west.osm", gzip(west))
                .file("file", "t.csv", TRACK));

        List<Long> at = new ArrayList<>();
        answer.at("/preview/candidates")
                .forEach(c -> at.add(Math.round(c.path("chainageM").doubleValue())));
        assertEquals(List.of(300L, 700L), at);
        assertEquals("east.osm, west.osm", answer.at("/preview/map/file").textValue());
    }

    @Test
    void updatesARouteAndLeavesWhatPeopleDecided() throws Exception {
        byte[] map = MAP.pbf();
        String first = imported(new ImportForm().file("file", "m", map).file("file", "t", TRACK))
                .path("route")
                .textValue();
        String decided = Stream.of(first.split("\n"))
                .map(l -> l.contains("\"id\":\"map-n2\"")
                        ? l.replace(
                                "\"state\":\"open\"",
                                "\"state\":\"dismissed\",\"by\":\"J. Doe\",\"why\":\"track lifted\"")
                        : l)
                .collect(Collectors.joining("\n"));

        // Without a track, along the route itself.
        JsonNode again = imported(
                new ImportForm().file("file", "m", map).file("update", "open.geojson", decided.getBytes(UTF_8)));

        List<String> status = new ArrayList<>();
        again.at("/preview/candidates").forEach(c -> status.add(c.path("status").textValue()));
        assertEquals(List.of("dismissed", "known", "known"), status);
        assertEquals(2, route(again).hazards().size());
        assertEquals(0, again.at("/preview/missing").size());
        assertEquals(
                List.of("dismissed", "open", "open"),
                route(again).candidates().stream()
                        .map(c -> c.candidate().state().word())
                        .toList());
    }

    /** The map has lost the second crossing, which was dismissed, and the third, which was open. */
    @Test
    void listsWhatTheMapHasNoLongerAndKeepsIt() throws Exception {
        String first = imported(new ImportForm().file("file", "m", MAP.pbf()).file("file", "t", TRACK))
                .path("route")
                .textValue();
        String decided = Stream.of(first.split("\n"))
                .map(l -> l.contains("\"id\":\"map-n3\"")
                        ? l.replace("\"state\":\"open\"", "\"state\":\"dismissed\",\"by\":\"J. Doe\",\"why\":\"seen\"")
                        : l)
                .collect(Collectors.joining("\n"));
        byte[] less = MAP.xml()
                .replaceAll("(<node id=\"[34]\"[^>]*>)<tag k=\"railway\"[^>]*>", "$1")
                .getBytes(UTF_8);

        JsonNode again = imported(
                new ImportForm().file("file", "m", less).file("update", "open.geojson", decided.getBytes(UTF_8)));

        assertEquals(1, again.at("/preview/candidates").size());
        assertEquals(
                List.of("map-n3 dismissed", "map-n4 open"),
                Stream.of(0, 1)
                        .map(i -> again.at("/preview/missing/" + i))
                        .map(m ->
                                m.path("id").textValue() + " " + m.path("state").textValue())
                        .toList());
        assertEquals(
                List.of("open", "dismissed", "open"),
                route(again).candidates().stream()
                        .map(c -> c.candidate().state().word())
                        .toList());
        assertEquals(2, route(again).hazards().size());
    }

    @Test
    void putsTracksInTheOrderOfTheirTimes() throws Exception {
        String later = "lon,lat,time\n0.002,0,2026-05-01T10:10:00Z\n0.004,0,2026-05-01T10:20:00Z\n";
        String earlier = "lon,lat,time\n0,0,2026-05-01T10:00:00Z\n0.002,0,2026-05-01T10:09:00Z\n";

        JsonNode answer = imported(new ImportForm()
                .file("file", "a.csv", later.getBytes(UTF_8))
                .file("file", "b.csv", earlier.getBytes(UTF_8))
                .field("order", "time")
                .field("name", "Both"));

        assertEquals("b.csv", answer.at("/preview/files/0/file").textValue());
        assertEquals("Both", route(answer).name());
        assertEquals(Math.toRadians(0.004) * 6_378_137, route(answer).lengthM(), 1e-6);
    }

    /** CN Tower and a place 100 m east of it, in zone 17 (the source stands in PlaneCoordinatesTest). */
    @Test
    void readsOtherCoordinatesAndSaysSo() throws Exception {
        byte[] track = "easting,northing\n630084,4833438\n630184,4833438\n".getBytes(UTF_8);

        JsonNode answer = imported(new ImportForm().file("file", "t.csv", track).field("crs", "EPSG:32617"));

        // The scale in the middle of a zone is 0.9996, and 130 km beside it 1.0002.
        assertEquals(100, route(answer).lengthM(), 0.06);
        assertEquals("crs", answer.at("/preview/notes/0/code").textValue());
        refused(422, "bad-input", new ImportForm().file("file", "t.csv", track));
        refused(422, "bad-input", new ImportForm().file("file", "t.csv", track).field("crs", "17"));
        refused(422, "bad-input", new ImportForm().file("file", "t.csv", track).field("crs", "EPSG:2263"));
    }

    static Stream<byte[]> hostile() throws IOException {
        byte[] pbf = MAP.pbf();
        return Stream.of(
                new byte[0],
                "<!DOCTYPE gpx [<!ENTITY a 'b'>]><gpx version='1.1'>&a;</gpx>".getBytes(UTF_8),
                TrackTexts.zip("../../doc.kml", TrackTexts.KML),
                TrackTexts.zip("doc.kml", "<kml>" + " ".repeat(65 * 1024 * 1024)),
                new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10},
                "%PDF-1.7".getBytes(UTF_8),
                gzip(TrackTexts.utf8(TrackTexts.GPX)),
                "<gpx version='1.1'><trk><trkseg>".getBytes(UTF_8),
                "{\"type\": \"FeatureCollection\"".getBytes(UTF_8),
                Arrays.copyOf(pbf, pbf.length / 2),
                "<osm version='0.6'><node id='x' lon='0' lat='0'/></osm>".getBytes(UTF_8),
                gzip(("<osm>" + " ".repeat(40 * 1024 * 1024) + "</osm>").getBytes(UTF_8)));
    }

    @ParameterizedTest
    @MethodSource("hostile")
    void refusesAFileByItsName(byte[] file) throws Exception {
        JsonNode details = refused(
                422,
                "bad-input",
                new ImportForm().file("file", "good.csv", TRACK).file("file", "bad.one", file));

        assertEquals(1, details.path("problems").size(), details.toString());
        String message = details.at("/problems/0/message").textValue();
        assertTrue(message.startsWith("bad.one: "), message);
        assertFalse(details.toString().contains(TEMPORARY.toString() + "/"), details.toString());
    }

    @Test
    void tellsTheProblemsOfAllFilesAtOnce() throws Exception {
        JsonNode details = refused(
                422,
                "bad-input",
                new ImportForm().file("file", "a.pdf", "%PDF-".getBytes(UTF_8)).file("file", "b.gpx", new byte[0]));

        assertEquals(2, details.path("problems").size(), details.toString());
    }

    @Test
    void refusesFormsThatAreNone() throws Exception {
        refused(422, "bad-input", new ImportForm().field("name", "Nothing else"));
        refused(422, "bad-input", new ImportForm().file("file", "t", TRACK).field("paint", "red"));
        refused(422, "bad-input", new ImportForm().file("file", "t", TRACK).field("simplify", "5"));
        refused(422, "bad-input", new ImportForm().file("file", "t", TRACK).field("order", "reverse"));
        refused(422, "bad-input", new ImportForm().file("file", "m", MAP.pbf()));
        refused(400, "bad-request", new ImportForm().file("file", "t", TRACK).field("name", "n".repeat(2000)));
        ImportForm many = new ImportForm();
        for (int i = 0; i < 65; i++) {
            many.file("file", "t" + i, TRACK);
        }
        refused(400, "bad-request", many);

        byte[] whole = new ImportForm().file("file", "t", TRACK).bytes();
        BadRequestTest.requireProblem(
                server.send(server.request("/api/import")
                        .header("Content-Type", ImportForm.TYPE)
                        .POST(java.net.http.HttpRequest.BodyPublishers.ofByteArray(
                                Arrays.copyOf(whole, whole.length - 8)))),
                400,
                "bad-request");
        BadRequestTest.requireProblem(server.post("/api/import", "{}"), 415, "media-type");
        BadRequestTest.requireProblem(
                server.send(new ImportForm()
                        .file("file", "t", TRACK)
                        .request(server)
                        .header("Sec-Fetch-Site", "cross-site")),
                403,
                "other-site");
    }

    /** Found by a fuzzer: parameters that are named and have no value. */
    @ParameterizedTest
    @ValueSource(strings = {"name", "name; filename", "name=file; filename"})
    void refusesAPartWhoseParametersHaveNoValue(String parameters) throws Exception {
        String body =
                "----hand--\r\nContent-Disposition: form-data; " + parameters + "\r\n\r\nno track\r\n----hand----\r\n";

        BadRequestTest.requireProblem(server.postForm(body.getBytes(UTF_8)), 422, "bad-input");
    }

    private static JsonNode progress(String id) throws Exception {
        JsonNode state = TestServer.json(server.get("/api/import/" + id));
        OpenApi.requireValid("ImportProgress", state);
        return state;
    }

    private static void awaitMap(String id) throws Exception {
        for (int i = 0; i < 600; i++) {
            JsonNode state = progress(id);
            if (state.path("state").textValue().equals("map")) {
                assertEquals("long.osm.gz", state.path("file").textValue());
                return;
            }
            Thread.sleep(50);
        }
        throw new AssertionError("the map is never read");
    }

    /** The server's own list of what is under way is empty within a second. */
    private static void requireGone(String id) throws Exception {
        long from = System.nanoTime();
        while (!progress(id).path("state").textValue().equals("none")) {
            assertTrue(System.nanoTime() - from < 1_000_000_000L, "still under way after 1 s");
            Thread.sleep(20);
        }
        assertTrue(TestServer.json(server.get("/api/health")).path("running").intValue() == 0);
    }

    @Test
    void anImportEndsWhenItIsStoppedAndWhenNobodyWaits() throws Exception {
        byte[] body = new ImportForm()
                .file("file", "t.csv", TRACK)
                .file("file", "long.osm.gz", LongExtract.bytes())
                .bytes();

        CompletableFuture<HttpResponse<String>> answer = CompletableFuture.supplyAsync(() -> {
            try {
                return server.send(server.request("/api/import?id=one")
                        .header("Content-Type", ImportForm.TYPE)
                        .POST(java.net.http.HttpRequest.BodyPublishers.ofByteArray(body)));
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        });
        awaitMap("one");
        assertEquals(
                "{\"stopped\":true}",
                server.send(server.request("/api/import/one").DELETE()).body());
        requireGone("one");
        BadRequestTest.requireProblem(answer.get(), 503, "busy");
        assertEquals(
                "{\"stopped\":false}",
                server.send(server.request("/api/import/one").DELETE()).body());

        try (Socket socket = new Socket("127.0.0.1", server.port())) {
            OutputStream out = socket.getOutputStream();
            out.write(("POST /api/import?id=two HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: " + ImportForm.TYPE
                            + "\r\nContent-Length: " + body.length + "\r\n\r\n")
                    .getBytes(UTF_8));
            out.write(body);
            out.flush();
            awaitMap("two");
        }
        requireGone("two");
    }
}
