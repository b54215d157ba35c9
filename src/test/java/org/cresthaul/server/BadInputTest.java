package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Documents that are wrong: each is refused with the place to mend, and nothing is checked. */
class BadInputTest {
    private static TestServer server;

    @BeforeAll
    static void start() {
        server = new TestServer(TestServer.small());
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    static Stream<Arguments> unreadable() {
        String deep = "[".repeat(1_000_000) + "]".repeat(1_000_000);
        return Stream.of(
                arguments("nothing", "", 400, "line", false),
                arguments("half an object", "{\"route\": {", 400, "line 1", true),
                arguments("a comma too many", "{\n \"route\": {},\n}", 400, "line 3, column", true),
                arguments("NaN", "{\n \"route\": {\"x\": NaN}}", 400, "line 2, column", true),
                arguments("Infinity", "{\"x\": -Infinity}", 400, "line 1, column", true),
                arguments("single quotes", "{'route': {}}", 400, "line 1, column", true),
                arguments("text after the end", Requests.check("") + "{}", 400, "after the end", true),
                arguments("plain words", "route and rig", 400, "line 1", true),
                arguments("deep nesting", "{\"route\":" + deep + "}", 422, "24 levels", true),
                arguments("a long number", "{\"x\": 1" + "0".repeat(1_000_000) + "}", 422, "too long", true),
                arguments("a long text", "{\"x\": \"" + "x".repeat(1_000_000) + "\"}", 422, "too long", true),
                arguments("a long key", "{\"" + "x".repeat(1_000_000) + "\": 1}", 422, "too long", true));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("unreadable")
    void refusesWhatCannotBeRead(String name, String body, int status, String said, boolean saysWhere)
            throws Exception {
        for (String path : new String[] {"/api/check", "/api/passage", "/api/route"}) {
            HttpResponse<String> response = server.post(path, body);
            JsonNode problem =
                    BadRequestTest.requireProblem(response, status, status == 400 ? "not-json" : "bad-input");

            String message = problem.at("/problems/0/message").textValue();
            assertTrue(!saysWhere || message.contains(said), path + ": " + message);
        }
    }

    static Stream<Arguments> mistakes() {
        return Stream.of(
                arguments("no members", "{}", "/route", "missing"),
                arguments("no rig", "{\"route\":" + RouteTexts.ROUTE + "}", "/rig", "missing"),
                arguments("a list", "[]", "", "wrong-type"),
                arguments("null", "null", "", "wrong-type"),
                arguments("route null", "{\"route\": null, \"rig\":" + RigTexts.RIG + "}", "/route", "wrong-type"),
                arguments("unknown member", Requests.check(",\"stanse\":\"loaded\""), "/stanse", "unknown-key"),
                arguments(
                        "a member twice",
                        Requests.check(",\"stance\":\"loaded\",\"stance\":\"empty\""),
                        "/stance",
                        "key-twice"),
                arguments("no such stance", Requests.check(",\"stance\":\"flying\""), "/stance", "unknown-stance"),
                arguments("stance a number", Requests.check(",\"stance\":1"), "/stance", "wrong-type"),
                arguments(
                        "bare margin",
                        Requests.check(",\"margins\":{\"ground\":2}"),
                        "/margins/ground",
                        "unit-missing"),
                arguments(
                        "negative margin",
                        Requests.check(",\"margins\":{\"ground\":\"-2 in\"}"),
                        "/margins/ground",
                        "out-of-range"),
                arguments(
                        "unknown margin",
                        Requests.check(",\"margins\":{\"sides\":\"2 in\"}"),
                        "/margins/sides",
                        "unknown-key"),
                arguments("1e308 for an offset", rig("\"0 in\"", "1e308"), "/rig/notches/2/offset", "unit-missing"),
                arguments("1e308 meters", rig("\"0 in\"", "\"1e308 m\""), "/rig/notches/2/offset", "not-a-quantity"),
                arguments(
                        "a number beyond a double", rig("\"0 in\"", "1e999"), "/rig/notches/2/offset", "out-of-range"),
                arguments("NaN as a text", rig("\"0 in\"", "\"NaN m\""), "/rig/notches/2/offset", "not-a-quantity"),
                arguments(
                        "unknown rig field",
                        rig("\"ride\"", "\"color\": \"red\", \"ride\""),
                        "/rig/color",
                        "unknown-key"),
                arguments(
                        "a rig key twice", rig("\"ride\"", "\"name\": \"again\", \"ride\""), "/rig/name", "key-twice"),
                arguments(
                        "no radius",
                        rig("\"radius\": \"500 mm\"", "\"radius\": \"0 m\""),
                        "/rig/stances/0/tractor/steer/radius",
                        "out-of-range"),
                arguments(
                        "two points at one distance",
                        route("[\"-1 m\", \"0.3 m\"]", "[\"-12 m\", \"0.3 m\"]"),
                        "/route/features/3/properties/profile/0/points/1/0",
                        null),
                arguments(
                        "a profile that runs back",
                        route("[\"-1 m\", \"0.3 m\"]", "[\"-13 m\", \"0.3 m\"]"),
                        "/route/features/3/properties/profile/0/points/1/0",
                        null),
                arguments(
                        "a hazard off the line",
                        route("[-93.095, 44.6]", "[-93.095, 44.7]"),
                        "/route/features/3/geometry/coordinates",
                        null),
                arguments(
                        "a position nowhere",
                        route("[-93.095, 44.6]", "[-193.095, 44.6]"),
                        "/route/features/3/geometry/coordinates",
                        "out-of-range"),
                arguments(
                        "latitude first",
                        route("[-93.095, 44.6]", "[44.6, -93.095]"),
                        "/route/features/3/geometry/coordinates",
                        "out-of-range"));
    }

    private static String rig(String instead, String of) {
        return Requests.check(RouteTexts.ROUTE, changed(RigTexts.RIG, instead, of), "");
    }

    private static String route(String instead, String of) {
        return Requests.check(changed(RouteTexts.ROUTE, instead, of), RigTexts.RIG, "");
    }

    private static String changed(String text, String from, String to) {
        int at = text.indexOf(from);
        assertTrue(at >= 0, "the text to change is there: " + from);
        return text.substring(0, at) + to + text.substring(at + from.length());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mistakes")
    void namesThePlace(String name, String body, String pointer, String code) throws Exception {
        JsonNode problem = BadRequestTest.requireProblem(server.post("/api/check", body), 422, "bad-input");

        List<String> found = new ArrayList<>();
        problem.path("problems")
                .forEach(p -> found.add(p.path("pointer").textValue() + " "
                        + (code == null ? "" : p.path("code").textValue())));
        assertTrue(found.contains(pointer + " " + (code == null ? "" : code)), problem.toPrettyString());
    }

    @Test
    void tellsTheMistakesOfBothFilesAtOnce() throws Exception {
        String body = Requests.check(
                changed(RouteTexts.ROUTE, "\"1.5 %\"", "1.5"), changed(RigTexts.RIG, "\"0 in\"", "0"), ",\"more\":1");

        JsonNode problem = BadRequestTest.requireProblem(server.post("/api/check", body), 422, "bad-input");

        List<String> pointers = new ArrayList<>();
        problem.path("problems").forEach(p -> pointers.add(p.path("pointer").textValue()));
        assertTrue(
                pointers.containsAll(
                        List.of("/route/features/3/properties/approachBefore/grade", "/rig/notches/2/offset", "/more")),
                pointers.toString());
        assertEquals(
                pointers.size() + " places must be corrected.",
                problem.path("detail").textValue());
    }

    static Stream<Arguments> passages() {
        return Stream.of(
                arguments("", 200, null, null),
                arguments(",\"line\":\"right\",\"leveling\":\"settled\",\"frontRaise\":\"2 in\"", 200, null, null),
                arguments(",\"line\":\"middle\"", 422, "/line", "unknown-name"),
                arguments(",\"leveling\":\"floating\"", 422, "/leveling", "unknown-word"),
                arguments(",\"leveling\":\"settled\",\"rearRaise\":\"1 in\"", 422, "/leveling", "unknown-name"),
                arguments(",\"frontRaise\":\"30 in\"", 422, "/frontRaise", "out-of-range"),
                arguments(",\"rearRaise\":\"10 in\"", 422, "/rearRaise", "out-of-range"),
                arguments(",\"rearRaise\":\"-1 in\"", 422, "/rearRaise", "out-of-range"),
                arguments(",\"frontRaise\":2", 422, "/frontRaise", "unit-missing"),
                arguments(",\"speed\":\"2 mph\"", 422, "/speed", "unknown-key"));
    }

    @ParameterizedTest
    @MethodSource("passages")
    void readsWhatAPassageIsAskedFor(String more, int status, String pointer, String code) throws Exception {
        HttpResponse<String> response = server.post("/api/passage", Requests.passage(more));

        assertEquals(status, response.statusCode(), response.body());
        if (status != 200) {
            JsonNode problem = BadRequestTest.requireProblem(response, status, "bad-input");
            assertEquals(pointer, problem.at("/problems/0/pointer").textValue(), problem.toString());
            assertEquals(code, problem.at("/problems/0/code").textValue(), problem.toString());
        } else {
            OpenApi.requireValid("Passage", TestServer.json(response));
        }
    }

    @ParameterizedTest
    @MethodSource("passageNames")
    void refusesAPassageOfWhatIsNotThere(String hazard, String configuration, String pointer, String code)
            throws Exception {
        String body = Requests.check(",\"hazard\":\"" + hazard + "\",\"configuration\":\"" + configuration + "\"");

        JsonNode problem = BadRequestTest.requireProblem(server.post("/api/passage", body), 422, "bad-input");

        assertEquals(pointer, problem.at("/problems/0/pointer").textValue());
        assertEquals(code, problem.at("/problems/0/code").textValue());
    }

    static Stream<Arguments> passageNames() {
        return Stream.of(
                arguments("H99", "down/none/3", "/hazard", "unknown-name"),
                arguments("H01", "down/none/9", "/configuration", "unknown-name"),
                arguments("H04", "down/none/3", "/hazard", "not-surveyed"),
                arguments("", "down/none/3", "/hazard", "blank"));
    }

    @Test
    void refusesARouteOfTwoMillionPoints() throws Exception {
        StringBuilder points = new StringBuilder(48_000_000);
        for (int i = 0; i < 2_000_000; i++) {
            points.append(i == 0 ? "" : ",")
                    .append("[-93.")
                    .append(1_000_000 + i)
                    .append(",44.6]");
        }
        String route = changed(RouteTexts.ROUTE, "[-93.1, 44.6], [-93.09, 44.6], [-93.08, 44.601]", points.toString());

        JsonNode problem = BadRequestTest.requireProblem(
                server.post("/api/check", Requests.check(route, RigTexts.RIG, "")), 422, "bad-input");

        assertEquals(
                "/route/features/0/geometry/coordinates/1000000",
                problem.at("/problems/0/pointer").textValue());
        assertEquals("too-many", problem.at("/problems/0/code").textValue());
    }

    @Test
    void refusesMoreWorkThanOneRequestMayAskFor() throws Exception {
        StringBuilder fords = new StringBuilder();
        for (int i = 0; i < 700; i++) {
            fords.append(",{\"type\":\"Feature\",\"geometry\":{\"type\":\"Point\",\"coordinates\":[-93.08,44.618]},")
                    .append("\"properties\":{\"hazard\":\"dip\",\"id\":\"F")
                    .append(i)
                    .append("\",\"name\":\"Ford\"}}");
        }
        String route = RouteTexts.ROUTE.stripTrailing().replaceFirst("] }$", fords + "]}");

        JsonNode problem = BadRequestTest.requireProblem(
                server.post("/api/check", Requests.check(route, RigTexts.RIG, "")), 422, "bad-input");

        // 704 hazards in 32 configurations are 22,528 cells.
        assertEquals("/route/features", problem.at("/problems/0/pointer").textValue());
        assertEquals("too-much-work", problem.at("/problems/0/code").textValue());
        assertEquals(200, server.post("/api/route", route).statusCode());
    }

    /** Seven lines of 10,000 points in 32 configurations: 67 s by the estimate, though only one cell for each. */
    @Test
    void refusesManyPointsInManyConfigurationsByTheirCost() throws Exception {
        StringBuilder lines = new StringBuilder();
        for (int line = 0; line < 7; line++) {
            lines.append(line == 0 ? "" : ",")
                    .append("{\"line\":\"")
                    .append(line)
                    .append("\",\"points\":[");
            for (int i = 0; i < 10_000; i++) {
                lines.append(i == 0 ? "" : ",").append("[\"").append(i - 5_000).append(" mm\",\"0 m\"]");
            }
            lines.append("]}");
        }
        String crest = ",{\"type\":\"Feature\",\"geometry\":{\"type\":\"Point\",\"coordinates\":[-93.08,44.618]},"
                + "\"properties\":{\"hazard\":\"crest\",\"id\":\"F\",\"name\":\"Crest\",\"survey\":{\"accuracy\":\"5 mm\","
                + "\"source\":\"level\"},\"profile\":[" + lines + "]}}";
        String route = RouteTexts.ROUTE.stripTrailing().replaceFirst("] }$", crest + "]}");

        JsonNode problem = BadRequestTest.requireProblem(
                server.post("/api/plan", Requests.check(route, RigTexts.RIG, "")), 422, "bad-input");

        assertEquals("too-much-work", problem.at("/problems/0/code").textValue());
        assertTrue(problem.at("/problems/0/message").textValue().contains(" s of one processor"));
    }

    @Test
    void refusesAnotherEncoding() throws Exception {
        HttpResponse<String> response = server.send(server.request("/api/check")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(Requests.check(""), StandardCharsets.UTF_16LE)));

        BadRequestTest.requireProblem(response, 400, "not-json");
    }
}
