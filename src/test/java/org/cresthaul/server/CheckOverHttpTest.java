package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What the server answers is what the check found, byte for byte. */
class CheckOverHttpTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static TestServer server;

    @BeforeAll
    static void start() {
        server = new TestServer(TestServer.small());
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    private static String sha256(String text) throws Exception {
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().formatHex(digest);
    }

    @Test
    void answersTheReportOfTheCheck() throws Exception {
        Route route = RouteFile.parse(RouteTexts.ROUTE);
        Rig rig = RigFile.parse(RigTexts.RIG);
        byte[] expected = JsonAnswer.bytes(RouteCheck.check(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()),
                new Inputs(sha256(RouteTexts.ROUTE), sha256(RigTexts.RIG))));

        HttpResponse<String> response = server.post("/api/check", Requests.check(""));

        assertEquals(200, response.statusCode());
        assertArrayEquals(expected, response.body().getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void hashesTheFilesAsTheyWereSent() throws Exception {
        JsonNode report = TestServer.json(server.post("/api/check", Requests.check("")));
        String request = Requests.check(" " + RouteTexts.ROUTE, RigTexts.RIG, "");
        JsonNode spaced = TestServer.json(server.post("/api/check", request));

        assertEquals(sha256(RouteTexts.ROUTE), report.at("/route/sha256").textValue());
        assertEquals(sha256(RigTexts.RIG), report.at("/rig/sha256").textValue());
        assertEquals(sha256(" " + RouteTexts.ROUTE), spaced.at("/route/sha256").textValue());
    }

    @Test
    void hashesFilesWithNamesOutsideAscii() throws Exception {
        String rig = RigTexts.RIG.replace("Two-axle lowbed", "Tieflader Süd, 2 ¼ Achsen \uD83D\uDE9B");

        JsonNode report = TestServer.json(server.post("/api/check", Requests.check(RouteTexts.ROUTE, rig, "")));

        assertEquals(sha256(rig), report.at("/rig/sha256").textValue());
        assertEquals(
                "Tieflader Süd, 2 ¼ Achsen \uD83D\uDE9B", report.at("/rig/name").textValue());
    }

    @Test
    void usesTheMarginsAskedFor() throws Exception {
        String tight = server.post("/api/check", Requests.check("")).body();
        String wide = server.post("/api/check", Requests.check(",\"margins\":{\"ground\":\"5 in\"}"))
                .body();

        assertNotEquals(tight, wide);
        JsonNode margins = JSON.readTree(wide).path("margins");
        assertEquals(0.127, margins.path("groundM").doubleValue(), 1e-9);
        assertEquals(0.0762, margins.path("overheadM").doubleValue(), 1e-9);
    }

    @Test
    void answersTheSameBytesWhoeverAsksAndUnderEveryLocale() throws Exception {
        byte[] first = server.post("/api/check", Requests.check("")).body().getBytes(StandardCharsets.UTF_8);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            List<CompletableFuture<byte[]>> others = IntStream.range(0, 8)
                    .mapToObj(i -> CompletableFuture.supplyAsync(CheckOverHttpTest::ask))
                    .toList();
            for (CompletableFuture<byte[]> other : others) {
                assertArrayEquals(first, other.get());
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    private static byte[] ask() {
        try {
            return server.post("/api/check", Requests.check("")).body().getBytes(StandardCharsets.UTF_8);
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void thePassagesTightestPositionIsTheCellsClearance() throws Exception {
        JsonNode report = TestServer.json(server.post("/api/check", Requests.check("")));
        int compared = 0;
        for (JsonNode hazard : report.path("hazards")) {
            for (JsonNode cell : hazard.path("cells")) {
                if (cell.path("ground").isObject() && cell.path("overhead").isNull()) {
                    JsonNode gap = cell.path("ground");
                    JsonNode passage = TestServer.json(server.post(
                            "/api/passage",
                            Requests.check(",\"hazard\":\"" + hazard.path("id").textValue() + "\",\"configuration\":\""
                                    + cell.path("configuration").textValue() + "\",\"line\":\""
                                    + gap.path("line").textValue() + "\",\"leveling\":\""
                                    + gap.path("leveling").textValue() + "\"")));
                    JsonNode tightest = passage.path("positions")
                            .path(passage.path("tightest").intValue());

                    assertEquals(
                            gap.path("valueM").doubleValue(),
                            tightest.path("groundM").doubleValue(),
                            1e-9);
                    assertEquals(
                            gap.path("steerM").doubleValue(),
                            tightest.path("steerM").doubleValue(),
                            1e-9);
                    assertEquals(gap.path("unit"), tightest.at("/groundAt/unit"));
                    compared++;
                }
            }
        }
        assertTrue(compared > 0);
    }

    @Test
    void howFarItGoesBackIsNullWhereThatIsNotKnown() throws Exception {
        String bare = JsonEdit.edit(RigTexts.RIG, "/stances/0/plan", "absent");
        JsonNode known = TestServer.json(server.post("/api/check", Requests.check("")));
        JsonNode unknown = TestServer.json(server.post("/api/check", Requests.check(RouteTexts.ROUTE, bare, "")));

        OpenApi.requireValid("Report", known);
        OpenApi.requireValid("Report", unknown);
        int states = known.at("/reversing/states").size();
        assertEquals(8, states, "two axle states, four booster states");
        assertEquals(states, unknown.at("/reversing/states").size());
        for (int i = 0; i < states; i++) {
            JsonNode told = known.at("/reversing/states/" + i);
            JsonNode untold = unknown.at("/reversing/states/" + i);
            boolean trailing = told.path("booster").textValue().equals("trailing");
            assertTrue(
                    told.path("unknown").isNull() && told.at("/free/limitMetM").isNumber(), told.toString());
            assertEquals(
                    trailing ? "pivot" : "kingpin", told.at("/free/coupling").textValue());
            assertEquals(trailing, told.path("locked").isObject());
            assertTrue(
                    untold.path("unknown").isTextual()
                            && untold.path("free").isNull()
                            && untold.path("locked").isNull()
                            && untold.path("lockedLight").isNull(),
                    untold.toString());
        }
    }

    @Test
    void tellsOfTheBaseMapAndLetsItsImagesIn() throws Exception {
        Tiles tiles = new Tiles("https://{s}.tiles.example.org/{z}/{x}/{y}.png", "Example survey office");
        try (TestServer mapped =
                new TestServer(new ServerOptions(Optional.empty(), 0, Optional.of(tiles), TestServer.small()))) {
            HttpResponse<String> response = mapped.get("/api/settings");

            assertEquals(
                    "{\"tiles\":{\"url\":\"https://{s}.tiles.example.org/{z}/{x}/{y}.png\","
                            + "\"attribution\":\"Example survey office\"},\"projects\":false}",
                    response.body());
            assertTrue(response.headers()
                    .firstValue("Content-Security-Policy")
                    .orElse("")
                    .contains("img-src 'self' data: https://*.tiles.example.org;"));
        }
    }

    @Test
    void everyAnswerForbidsWhatThePageDoesNotNeed() throws Exception {
        // CSP level 3, section 2.3.1: the hash of what stands between the tags of the one style a paper carries.
        byte[] style = ("\n" + Files.readString(Path.of("src/main/resources/paper/paper.css")))
                .getBytes(StandardCharsets.UTF_8);
        String hash = Base64.getEncoder()
                .encodeToString(MessageDigest.getInstance("SHA-256").digest(style));
        for (String path : new String[] {"/api/version", "/lib/leaflet/leaflet.css", "/nothing"}) {
            var headers = server.get(path).headers();

            assertEquals(
                    "default-src 'self'; style-src 'self' 'sha256-" + hash + "'; img-src 'self' data:; "
                            + "object-src 'none'; base-uri 'none'; "
                            + "form-action 'none'; frame-ancestors 'none'",
                    headers.firstValue("Content-Security-Policy").orElse(""),
                    path);
            assertEquals("nosniff", headers.firstValue("X-Content-Type-Options").orElse(""), path);
            assertEquals("no-referrer", headers.firstValue("Referrer-Policy").orElse(""), path);
            assertEquals("no-cache", headers.firstValue("Cache-Control").orElse(""), path);
            assertTrue(headers.firstValue("Server").isEmpty(), path);
            assertTrue(headers.firstValue("Access-Control-Allow-Origin").isEmpty(), path);
        }
    }

    /** What a browser has of the page is not sent again; anything else is, and each file has a tag of its own. */
    @Test
    void aFileOfThePageIsSentOnce() throws Exception {
        List<String> tags = new ArrayList<>();
        for (String path : List.of("/", "/app.js", "/lib/leaflet/leaflet.css")) {
            HttpResponse<String> first = server.get(path);
            String tag = first.headers().firstValue("ETag").orElseThrow();
            tags.add(tag);

            HttpResponse<String> again = server.send(
                    server.request(path).header("If-None-Match", tag).GET());
            assertEquals(304, again.statusCode(), path);
            assertEquals("", again.body(), path);
            assertEquals("no-cache", again.headers().firstValue("Cache-Control").orElse(""), path);

            HttpResponse<String> other = server.send(
                    server.request(path).header("If-None-Match", "W/\"00\"").GET());
            assertEquals(200, other.statusCode(), path);
            assertEquals(first.body(), other.body(), path);
        }
        assertEquals(3, Set.copyOf(tags).size());
    }
}
