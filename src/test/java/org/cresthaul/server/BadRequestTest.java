package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Requests that are wrong as HTTP: each is refused with its own status, in problem details, with no inside showing. */
class BadRequestTest {
    private static TestServer server;

    @BeforeAll
    static void start() {
        server = new TestServer(TestServer.small());
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    static Stream<Arguments> wrongRequests() {
        return Stream.of(
                arguments("GET", "/nothing", null, 404, "not-found"),
                arguments("GET", "/api/nothing", null, 404, "not-found"),
                arguments("GET", "/api/samples/routes/nothing", null, 404, "not-found"),
                arguments("GET", "/api/route/", null, 404, "not-found"),
                arguments("GET", "/web/index.html", null, 404, "not-found"),
                arguments("GET", "/META-INF/MANIFEST.MF", null, 404, "not-found"),
                arguments("GET", "/org/cresthaul/Main.class", null, 404, "not-found"),
                arguments("GET", "/cresthaul.properties", null, 404, "not-found"),
                arguments("GET", "/lib/leaflet", null, 404, "not-found"),
                arguments("GET", "/lib/leaflet/../../cresthaul.properties", null, 404, "not-found"),
                arguments("GET", "/lib/leaflet/../../../cresthaul.properties", null, 400, "bad-request"),
                arguments("GET", "/..%2f..%2fcresthaul.properties", null, 404, "not-found"),
                arguments("GET", "/%2e%2e/cresthaul.properties", null, 400, "bad-request"),
                arguments("GET", "/api/samples/routes/..%2f..%2fsmall", null, 404, "not-found"),
                arguments("POST", "/nothing", "{}", 404, "not-found"),
                arguments("GET", "/api/route", null, 405, "method-not-allowed"),
                arguments("DELETE", "/api/route", null, 405, "method-not-allowed"),
                arguments("PUT", "/api/route", "{}", 405, "method-not-allowed"),
                arguments("OPTIONS", "/api/route", null, 405, "method-not-allowed"),
                arguments("POST", "/api/version", "{}", 405, "method-not-allowed"),
                arguments("POST", "/openapi.json", "{}", 405, "method-not-allowed"),
                arguments("POST", "/lib/leaflet/leaflet.js", "{}", 405, "method-not-allowed"),
                arguments("QUERY", "/api/route", "{}", 405, "method-not-allowed"));
    }

    @ParameterizedTest
    @MethodSource("wrongRequests")
    void isRefusedByAddressOrMethod(String method, String path, String body, int status, String type) throws Exception {
        HttpResponse<String> response = server.send(server.request(path)
                .header("Content-Type", "application/json")
                .method(method, body == null ? BodyPublishers.noBody() : BodyPublishers.ofString(body)));

        requireProblem(response, status, type);
        if (status == 405) {
            String allow = response.headers().firstValue("Allow").orElse("");
            assertFalse(allow.isEmpty(), "a 405 answer says what is allowed");
            assertFalse(allow.contains(method), allow);
        }
    }

    @ParameterizedTest
    @MethodSource("wrongTypes")
    void takesNothingButJson(String contentType, String encoding) throws Exception {
        HttpRequest.Builder request = server.request("/api/route").POST(BodyPublishers.ofString("{}"));
        if (contentType != null) {
            request.header("Content-Type", contentType);
        }
        if (encoding != null) {
            request.header("Content-Encoding", encoding);
        }

        requireProblem(server.send(request), 415, "media-type");
    }

    static Stream<Arguments> wrongTypes() {
        return Stream.of(
                arguments(null, null),
                arguments("text/plain", null),
                arguments("application/x-www-form-urlencoded", null),
                arguments("multipart/form-data; boundary=x", null),
                arguments("application/json; charset=utf-16", null),
                arguments("application/jsonp", null),
                arguments("nonsense", null),
                arguments("application/json", "gzip"));
    }

    @ParameterizedTest
    @MethodSource("rightTypes")
    void takesJsonHoweverItIsSpelled(String contentType) throws Exception {
        HttpResponse<String> response = server.send(
                server.request("/api/route").header("Content-Type", contentType).POST(BodyPublishers.ofString("{}")));

        assertEquals(422, response.statusCode(), response.body());
    }

    static Stream<String> rightTypes() {
        return Stream.of(
                "application/json",
                "application/geo+json",
                "Application/JSON; Charset=\"UTF-8\"",
                "application/json;v=1");
    }

    @ParameterizedTest
    @MethodSource("brokenRequests")
    void answersWhatIsHardlyHttp(String raw, int status) throws Exception {
        String answer = exchange(raw);

        assertTrue(answer.startsWith("HTTP/1.1 " + status + " "), answer);
        assertTrue(answer.contains("application/problem+json"), answer);
        assertNoInside(answer);
    }

    static Stream<Arguments> brokenRequests() {
        String end = " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n";
        return Stream.of(
                arguments("GET / HTTP/1.1\r\n\r\n", 400),
                arguments("GARBAGE\r\n\r\n", 400),
                arguments("GET /../../etc/passwd" + end, 400),
                arguments("GET /%zz" + end, 400),
                arguments("GET /a%00b" + end, 400),
                arguments("NOSUCH /api/route" + end, 405),
                arguments("GET / HTTP/1.1\r\nHost: localhost\r\nX-Long: " + "x".repeat(20_000) + "\r\n\r\n", 431));
    }

    @ParameterizedTest
    @MethodSource("hosts")
    void answersOnlyToTheNamesOfTheLoopback(String host, int status) throws Exception {
        String answer = exchange("GET /api/version HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n");

        assertTrue(answer.startsWith("HTTP/1.1 " + status + " "), answer);
    }

    static Stream<Arguments> hosts() {
        return Stream.of(
                arguments("127.0.0.1", 200),
                arguments("localhost:8137", 200),
                arguments("LOCALHOST", 200),
                arguments("[::1]:80", 200),
                arguments("attacker.example", 421),
                arguments("attacker.example:8137", 421),
                arguments("127.0.0.1.attacker.example", 421),
                arguments("localhost.attacker.example", 421),
                arguments("192.0.2.7", 421));
    }

    @Test
    void refusesA500MegabyteBodyWithoutALength() throws Exception {
        HttpResponse<String> response = server.send(server.request("/api/route")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofInputStream(() -> new Blanks(500L << 20))));

        JsonNode problem = requireProblem(response, 413, "too-large");
        assertEquals("", problem.at("/problems/0/pointer").textValue());
        assertTrue(problem.at("/problems/0/message").textValue().contains("64 MiB"), problem.toString());
    }

    @Test
    void refusesA500MegabyteBodyThatSaysItsLength() throws Exception {
        HttpResponse<String> response = server.send(server.request("/api/route")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.fromPublisher(
                        BodyPublishers.ofInputStream(() -> new Blanks(500L << 20)), 500L << 20)));

        requireProblem(response, 413, "too-large");
    }

    @Test
    void refusesALongBodyBeforeItIsSentWhenAsked() throws Exception {
        String answer = exchange("POST /api/route HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                + "Content-Length: 5000000000\r\nExpect: 100-continue\r\n\r\n");

        assertTrue(answer.startsWith("HTTP/1.1 413 "), answer);
    }

    /** Sends {@code raw} as it is; the answer up to the end of the connection. */
    private static String exchange(String raw) throws Exception {
        try (Socket socket = new Socket("127.0.0.1", server.port())) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(raw.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            socket.shutdownOutput();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    static JsonNode requireProblem(HttpResponse<String> response, int status, String type) throws Exception {
        assertEquals(status, response.statusCode(), response.body());
        assertEquals(
                "application/problem+json",
                response.headers().firstValue("Content-Type").orElse(""));
        assertNoInside(response.body());
        JsonNode problem = TestServer.json(response);
        assertEquals("urn:cresthaul:problem:" + type, problem.path("type").textValue());
        assertEquals(status, problem.path("status").intValue());
        OpenApi.requireValid("ProblemDetails", problem);
        return problem;
    }

    static void assertNoInside(String body) {
        for (String inside : new String[] {"Exception", "\tat ", "org.cresthaul", "org.eclipse", "java.", "jackson"}) {
            assertFalse(body.contains(inside), body);
        }
    }
}
