package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.net.http.HttpClient;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Papers that are issued for a project are kept as they were answered, and can be made again from their record. */
class IssuedPapersTest {
    @TempDir
    Path folder;

    private static HttpResponse<byte[]> issue(TestServer server, String path, String form) throws Exception {
        return issue(server, path, form, "");
    }

    private static HttpResponse<byte[]> issue(TestServer server, String path, String form, String more)
            throws Exception {
        return HttpClient.newHttpClient()
                .send(
                        server.request(path)
                                .header("Content-Type", "application/json")
                                .POST(BodyPublishers.ofString(Requests.check(
                                        RouteTexts.ROUTE, WeightsTexts.RIG, ",\"form\":\"" + form + "\"" + more)))
                                .build(),
                        BodyHandlers.ofByteArray());
    }

    private static HttpResponse<byte[]> bytes(TestServer server, String path) throws Exception {
        return HttpClient.newHttpClient().send(server.request(path).GET().build(), BodyHandlers.ofByteArray());
    }

    private static String project(TestServer server) throws Exception {
        return TestServer.json(server.post("/api/projects", ProjectTexts.BEGIN))
                .path("id")
                .textValue();
    }

    private record Verified(int exitCode, String out) {}

    private static Verified verify(Path record) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
        int exitCode = org.cresthaul.cli.Cresthaul.run(new String[] {"verify", record.toString()}, stream, stream);
        return new Verified(exitCode, out.toString(StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @CsvSource({"statement,json", "statement,pdf", "statement,html", "runsheet,pdf", "runsheet,json"})
    void isKeptAsItWasAnsweredAndMadeAgainFromItsRecord(String paper, String form) throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            String id = project(server);
            HttpResponse<byte[]> issued = issue(server, "/api/" + paper + "?project=" + id, form);
            assertEquals(200, issued.statusCode());
            String address = issued.headers().firstValue("Location").orElseThrow();

            HttpResponse<byte[]> kept = bytes(server, address);
            assertArrayEquals(issued.body(), kept.body());
            assertEquals(
                    issued.headers().firstValue("Content-Type"), kept.headers().firstValue("Content-Type"));
            JsonNode papers = TestServer.json(server.get("/api/projects/" + id + "/papers"));
            OpenApi.requireValid("IssuedPapers", papers);
            assertEquals(paper, papers.at("/papers/0/paper").textValue());
            assertEquals(1, papers.at("/papers/0/revision").intValue());
            HttpResponse<byte[]> record = bytes(server, address + "/record");
            OpenApi.requireValid("PaperRecord", TestServer.json(server.get(address + "/record")));
            assertTrue(new String(record.body(), StandardCharsets.UTF_8).contains(RouteTexts.ROUTE), "byte for byte");

            Verified again = verify(Files.write(folder.resolve("record.json"), record.body()));

            assertEquals(0, again.exitCode, again.out);
            assertTrue(again.out.contains("Identical"), again.out);
        }
    }

    /** The record holds the map byte for byte; without it, or with another, the paper is not the same. */
    @ParameterizedTest
    @ValueSource(strings = {"pdf", "html"})
    void aPaperWithABaseMapIsMadeAgainFromItsRecord(String form) throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            String map = ",\"baseMap\":" + Requests.BASE_MAP;
            String address = issue(server, "/api/statement?project=" + project(server), form, map)
                    .headers()
                    .firstValue("Location")
                    .orElseThrow();
            String record = server.get(address + "/record").body();
            assertTrue(record.contains(map), "byte for byte");

            Verified same = verify(Files.writeString(folder.resolve("record.json"), record));
            assertEquals(0, same.exitCode, same.out);
            for (String other : List.of(
                    record.replace(map, ""),
                    record.replace("invented for a test", "drawn by J. Doe"),
                    record.replace("44.6150", "44.6050"))) {
                Verified differs = verify(Files.writeString(folder.resolve("other.json"), other));
                assertEquals(1, differs.exitCode, differs.out);
            }
        }
    }

    @Test
    void whatWasChangedInARecordIsFound() throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            String id = project(server);
            String address = issue(server, "/api/statement?project=" + id, "json")
                    .headers()
                    .firstValue("Location")
                    .orElseThrow();
            String record = server.get(address + "/record").body();
            int paper = record.indexOf(",\"document\":");

            // The same route under another name: the statement tells it, with the hash.
            String renamed =
                    record.substring(0, paper).replaceFirst("\"name\": *\"Two legs\"", "\"name\": \"Three legs\"")
                            + record.substring(paper);
            assertFalse(renamed.equals(record));
            Verified other = verify(Files.writeString(folder.resolve("other.json"), renamed));
            assertEquals(1, other.exitCode, other.out);
            assertTrue(other.out.contains("NOT identical") && other.out.contains("/route/sha256"), other.out);
            assertTrue(other.out.contains("Three legs"), other.out);

            String hash = record.replaceFirst("\"sha256\":\"[0-9a-f]{8}", "\"sha256\":\"00000000");
            Verified forged = verify(Files.writeString(folder.resolve("forged.json"), hash));
            assertEquals(1, forged.exitCode, forged.out);
            assertTrue(forged.out.contains("does not have the hash"), forged.out);

            assertEquals(2, verify(Files.writeString(folder.resolve("none.json"), RouteTexts.ROUTE)).exitCode);
            Verified broken = verify(Files.writeString(
                    folder.resolve("broken.json"),
                    record.substring(0, paper).replaceFirst("\"rig\":", "\"rigs\":") + "}"));
            assertEquals(2, broken.exitCode, broken.out);
        }
    }

    @Test
    void aRecordThatIsSentIsMadeAgainAndCompared() throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            String address = issue(server, "/api/statement?project=" + project(server), "json")
                    .headers()
                    .firstValue("Location")
                    .orElseThrow();
            String record = server.get(address + "/record").body();
            JsonNode same = TestServer.json(server.post("/api/verify", record));
            OpenApi.requireValid("Verification", same);
            assertTrue(same.path("identical").booleanValue(), same.toString());
            assertEquals(0, same.path("differing").intValue());

            int paper = record.indexOf(",\"document\":");
            String renamed =
                    record.substring(0, paper).replaceFirst("\"name\": *\"Two legs\"", "\"name\": \"Three legs\"")
                            + record.substring(paper);
            JsonNode other = TestServer.json(server.post("/api/verify", renamed));
            OpenApi.requireValid("Verification", other);
            assertFalse(other.path("identical").booleanValue());
            assertEquals(
                    other.path("differing").intValue(),
                    other.path("differences").size());
            assertTrue(other.toString().contains("/route/sha256")
                    && other.toString().contains("Three legs"));

            HttpResponse<String> none = server.post("/api/verify", RouteTexts.ROUTE);
            assertEquals(422, none.statusCode());
            assertEquals(
                    "no-record", TestServer.json(none).at("/problems/0/code").textValue());
        }
    }

    @Test
    void withoutAProjectNothingIsKept() throws Exception {
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            String id = project(server);
            assertTrue(issue(server, "/api/statement", "json")
                    .headers()
                    .firstValue("Location")
                    .isEmpty());
            assertEquals(
                    404, issue(server, "/api/statement?project=none", "json").statusCode());
            assertEquals(0, store.listPapers(id).size());
            assertEquals(404, server.get("/api/papers/none").statusCode());
            assertEquals(404, server.get("/api/papers/none/record").statusCode());
            assertEquals(404, server.get("/api/projects/none/papers").statusCode());
        }
    }
}
