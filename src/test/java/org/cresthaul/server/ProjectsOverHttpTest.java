package org.cresthaul.server;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.SmallDisk;
import org.cresthaul.store.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProjectsOverHttpTest {
    @TempDir
    Path folder;

    private static HttpResponse<String> put(TestServer server, String path, String ifMatch, String body)
            throws Exception {
        var request =
                server.request(path).header("Content-Type", "application/json").PUT(BodyPublishers.ofString(body));
        return server.send(ifMatch == null ? request : request.header("If-Match", ifMatch));
    }

    private static String sha256(String text) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(UTF_8)));
    }

    private static String address(HttpResponse<String> begun) throws Exception {
        assertEquals(201, begun.statusCode(), begun.body());
        String address = begun.headers().firstValue("Location").orElseThrow();
        assertEquals("/api/projects/" + TestServer.json(begun).path("id").textValue(), address);
        return address;
    }

    @Test
    void whatWasSavedIsThereAfterAStartByteForByte() throws Exception {
        // Odd blanks and a number that would be written otherwise stay as they are.
        String route = "\n " + RouteTexts.ROUTE.replaceFirst("\\{", "{ ") + "\n\n";
        String address;
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            HttpResponse<String> begun = server.post(
                    "/api/projects",
                    ProjectTexts.project("Mill road move", "begun", ProjectTexts.files(route, RigTexts.RIG)));
            address = address(begun);
            assertEquals("\"1\"", begun.headers().firstValue("ETag").orElseThrow());
            OpenApi.requireValid("Project", TestServer.json(begun));
        }
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            JsonNode all = TestServer.json(server.get("/api/projects"));
            OpenApi.requireValid("Projects", all);
            assertEquals(1, all.path("projects").size());
            JsonNode project = TestServer.json(server.get(address));
            assertEquals(all.at("/projects/0"), project);
            assertEquals("Mill road move", project.path("name").textValue());
            assertEquals("A. Planner", project.path("author").textValue());
            assertEquals("#hazard=H01", project.path("view").textValue());
            assertEquals(sha256(route), project.at("/files/0/sha256").textValue());
            assertEquals(route, server.get("/api/files/" + sha256(route)).body());
            assertEquals(
                    RigTexts.RIG,
                    server.get("/api/files/" + sha256(RigTexts.RIG)).body());
        }
    }

    @Test
    void savesOnTheRevisionThatWasLookedAt() throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            String address = address(server.post("/api/projects", ProjectTexts.BEGIN));
            String second =
                    ProjectTexts.project("Mill road move", "less", ProjectTexts.known(sha256(RouteTexts.ROUTE)));

            HttpResponse<String> saved = put(server, address, "\"1\"", second);
            assertEquals(200, saved.statusCode(), saved.body());
            assertEquals("\"2\"", saved.headers().firstValue("ETag").orElseThrow());
            assertEquals(2, TestServer.json(saved).path("revision").intValue());

            HttpResponse<String> since = put(server, address, "\"1\"", second);
            assertEquals(412, since.statusCode(), since.body());
            assertEquals("\"2\"", since.headers().firstValue("ETag").orElseThrow());
            JsonNode told = TestServer.json(since);
            OpenApi.requireValid("ProblemDetails", told);
            String detail = told.path("detail").textValue();
            assertTrue(detail.contains("from revision 1") && detail.contains("latest is revision 2"), detail);
            assertTrue(detail.contains("A. Planner") && detail.contains("less"), detail);

            JsonNode revisions = TestServer.json(server.get(address + "/revisions"));
            OpenApi.requireValid("Revisions", revisions);
            assertEquals(2, revisions.path("revisions").size());
            assertEquals(revisions.at("/revisions/0"), TestServer.json(server.get(address + "/revisions/1")));
            assertEquals(
                    "\"1\"",
                    server.get(address + "/revisions/1")
                            .headers()
                            .firstValue("ETag")
                            .orElseThrow());
        }
    }

    @Test
    void isRemovedAtTheRevisionThatWasLookedAtAndBroughtBack() throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            HttpResponse<String> begun = server.post("/api/projects", ProjectTexts.BEGIN);
            String address = address(begun);
            JsonNode project = TestServer.json(begun);
            assertEquals(428, server.send(server.request(address).DELETE()).statusCode());
            assertEquals(
                    412,
                    server.send(server.request(address)
                                    .header("If-Match", "\"2\"")
                                    .DELETE())
                            .statusCode());
            assertEquals(
                    404,
                    server.send(server.request("/api/projects/none")
                                    .header("If-Match", "\"1\"")
                                    .DELETE())
                            .statusCode());
            assertEquals(
                    422,
                    server.send(server.request(address + "?author=" + "a".repeat(201))
                                    .header("If-Match", "\"1\"")
                                    .DELETE())
                            .statusCode());
            assertEquals(
                    404,
                    server.post("/api/removed/" + project.path("id").textValue(), "")
                            .statusCode());

            JsonNode removed = TestServer.json(ProjectTexts.remove(server, project));
            OpenApi.requireValid("RemovedProject", removed);
            assertEquals("B. Clerk", removed.path("author").textValue());
            assertEquals(
                    0,
                    TestServer.json(server.get("/api/projects"))
                            .path("projects")
                            .size());
            assertEquals(removed, TestServer.json(server.get("/api/removed")).at("/removed/0"));
            assertEquals(200, server.get(address).statusCode(), "its address still opens it");

            HttpResponse<String> back =
                    server.post("/api/removed/" + project.path("id").textValue() + "?author=C.%20Other", "");
            assertEquals(200, back.statusCode(), back.body());
            assertEquals("\"2\"", back.headers().firstValue("ETag").orElseThrow());
            assertEquals("C. Other", TestServer.json(back).path("author").textValue());
            assertEquals(
                    1,
                    TestServer.json(server.get("/api/projects"))
                            .path("projects")
                            .size());
            assertEquals(
                    0,
                    TestServer.json(server.get("/api/removed")).path("removed").size());
        }
    }

    @ParameterizedTest
    @CsvSource(
            value = {"NONE,428", "*,428", "1,412", "W/\"1\",412", "\"1\" \"2\",412", "\"2\",412"},
            quoteCharacter = '~')
    void asksForExactlyOneRevision(String ifMatch, int status) throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            String address = address(server.post("/api/projects", ProjectTexts.BEGIN));

            HttpResponse<String> refused =
                    put(server, address, ifMatch.equals("NONE") ? null : ifMatch, ProjectTexts.BEGIN);

            assertEquals(status, refused.statusCode(), refused.body());
            assertEquals(
                    1, TestServer.json(server.get(address)).path("revision").intValue());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "[]|{\"name\": \" \", \"reason\": \"r\", \"files\": FILES}|/name",
                "[]|{\"name\": \"n\", \"files\": FILES}|/reason",
                "[]|{\"name\": \"n\", \"reason\": \"r\", \"more\": 1, \"files\": FILES}|/more",
                "[{\"kind\": \"song\", \"name\": \"s\", \"document\": {}}]|ALL|/files/0/kind",
                "[{\"kind\": \"rig\", \"name\": \"s\"}]|ALL|/files/0/document",
                "[{\"kind\": \"rig\", \"name\": \"s\", \"document\": {\"cresthaul\": \"route/1\"}}]|ALL|/files/0/document",
                "[{\"kind\": \"rig\", \"name\": \"s\", \"document\": []}]|ALL|/files/0/document",
                "[{\"kind\": \"rig\", \"name\": \"s\", \"sha256\": \"../../etc/passwd\"}]|ALL|/files/0/sha256",
                "[{\"kind\": \"rig\", \"name\": \"s\", \"sha256\": \"0000000000000000000000000000000000000000000000000000000000000000\"}]|ALL|/files/0/sha256"
            })
    void tellsWhatIsWrongAndKeepsNothing(String files, String body, String pointer) throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            String sent = body.equals("ALL") ? ProjectTexts.project("n", "r", files) : body.replace("FILES", files);

            HttpResponse<String> refused = server.post("/api/projects", sent);

            assertEquals(422, refused.statusCode(), refused.body());
            assertEquals(
                    pointer, TestServer.json(refused).at("/problems/0/pointer").textValue(), refused.body());
            assertEquals(0, store.listProjects().size());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/projects/none",
                "/api/projects/none/revisions",
                "/api/projects/none/revisions/1",
                "/api/projects/PROJECT/revisions/2",
                "/api/projects/PROJECT/revisions/0",
                "/api/projects/PROJECT/revisions/1'%20OR%201=1",
                "/api/projects/%27%20OR%20%271%27=%271",
                "/api/files/none",
                "/api/files/..%2F..%2Fprojects.db",
                "/projects.db"
            })
    void whatIsNotThereIsNotThere(String path) throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            String address = address(server.post("/api/projects", ProjectTexts.BEGIN));
            String id = address.substring(address.lastIndexOf('/') + 1);

            HttpResponse<String> none = server.get(path.replace("PROJECT", id));

            assertTrue(List.of(400, 404).contains(none.statusCode()), none.statusCode() + none.body());
            assertFalse(none.body().contains(folder.toString()));
        }
    }

    @Test
    void withoutAFolderNothingIsKept() throws Exception {
        try (TestServer server = TestServer.ofSmallFiles()) {
            assertEquals(404, server.get("/api/projects").statusCode());
            assertEquals(404, server.post("/api/projects", ProjectTexts.BEGIN).statusCode());
            assertFalse(TestServer.json(server.get("/api/settings"))
                    .path("projects")
                    .booleanValue());
        }
    }

    /** Of many who save on the same revision one does, and the others are told. */
    @Test
    void nobodySavesOverAnother() throws Exception {
        ExecutorService clients = Executors.newFixedThreadPool(8);
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            String address = address(server.post("/api/projects", ProjectTexts.BEGIN));
            String known = ProjectTexts.known(sha256(RouteTexts.ROUTE));
            for (int round = 1; round <= 40; round++) {
                String tag = "\"" + round + "\"";
                List<Callable<Integer>> saves = IntStream.range(0, 8)
                        .mapToObj(i -> (Callable<Integer>)
                                () -> put(server, address, tag, ProjectTexts.project("n", "by client " + i, known))
                                        .statusCode())
                        .toList();
                List<Integer> statuses = clients.invokeAll(saves).stream()
                        .map(ProjectsOverHttpTest::got)
                        .sorted()
                        .toList();
                assertEquals(List.of(200, 412, 412, 412, 412, 412, 412, 412), statuses);
            }
            assertEquals(
                    41, TestServer.json(server.get(address)).path("revision").intValue());
        } finally {
            clients.shutdownNow();
        }
    }

    private static <T> T got(Future<T> future) {
        try {
            return future.get();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void aFullDiskIsToldAndTheServerGoesOn() throws Exception {
        try (ProjectStore store = SmallDisk.of(folder, 60);
                TestServer server = TestServer.keeping(store)) {
            String address = address(server.post("/api/projects", ProjectTexts.BEGIN));
            String large = RouteTexts.ROUTE.replaceFirst("\\{", "{" + " ".repeat(400_000));
            String body = ProjectTexts.project("Mill road move", "more", ProjectTexts.files(large, RigTexts.RIG));

            HttpResponse<String> full = put(server, address, "\"1\"", body);

            assertEquals(507, full.statusCode(), full.body());
            OpenApi.requireValid("ProblemDetails", TestServer.json(full));
            assertFalse(full.body().contains(folder.toString()), full.body());
            assertEquals(507, server.post("/api/projects", body).statusCode());
            assertEquals(
                    1, TestServer.json(server.get(address)).path("revision").intValue());
            assertEquals(200, server.get("/api/health").statusCode());
            String small = ProjectTexts.project("Mill road move", "less", ProjectTexts.known(sha256(RouteTexts.ROUTE)));
            assertEquals(200, put(server, address, "\"1\"", small).statusCode(), "there is room for this one");
        }
    }

    @Test
    void aFolderThatCannotBeWrittenIsToldAndStillRead() throws Exception {
        String address;
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            address = address(server.post("/api/projects", ProjectTexts.BEGIN));
        }
        try (ProjectStore store = SmallDisk.readOnly(folder);
                TestServer server = TestServer.keeping(store)) {
            HttpResponse<String> refused = put(server, address, "\"1\"", ProjectTexts.BEGIN);

            assertEquals(503, refused.statusCode(), refused.body());
            assertEquals(
                    "urn:cresthaul:problem:not-writable",
                    TestServer.json(refused).path("type").textValue());
            assertFalse(refused.body().contains(folder.toString()), refused.body());
            assertEquals(
                    1, TestServer.json(server.get(address)).path("revision").intValue());
        }
        assertTrue(Files.exists(folder.resolve("projects.db")));
    }

    private static String[] headers(String names, String values) {
        String[] name = names.split(" ");
        String[] value = values.split(" ");
        return IntStream.range(0, 2 * name.length)
                .mapToObj(i -> i % 2 == 0 ? name[i / 2] : value[i / 2])
                .toArray(String[]::new);
    }

    /** A browser says where a request comes from; nothing but reading is done for another site. */
    @ParameterizedTest
    @CsvSource({
        "Sec-Fetch-Site, cross-site, 403",
        "Sec-Fetch-Site, same-site, 403",
        "Sec-Fetch-Site, same-origin, 201",
        "Sec-Fetch-Site, none, 201",
        "Origin, https://elsewhere.example, 403",
        "Origin, null, 403",
        "Origin, http://127.0.0.1, 403",
        "Origin, http://localhost:PORT, 403",
        "Origin, http://127.0.0.1:PORT, 201",
        "Sec-Fetch-Site Origin, same-origin https://haul.example, 201",
        "Sec-Fetch-Site Origin, cross-site http://127.0.0.1:PORT, 403"
    })
    void savesForItsOwnPageOnly(String header, String value, int status) throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            HttpResponse<String> answer = server.send(server.request("/api/projects")
                    .header("Content-Type", "application/json")
                    .headers(headers(header, value.replace("PORT", "" + server.port())))
                    .POST(BodyPublishers.ofString(ProjectTexts.BEGIN)));

            assertEquals(status, answer.statusCode(), answer.body());
            assertEquals(status == 201 ? 1 : 0, store.listProjects().size());
            assertTrue(answer.headers().map().keySet().stream()
                    .noneMatch(h -> h.toLowerCase(java.util.Locale.ROOT).startsWith("access-control")));
        }
    }
}
