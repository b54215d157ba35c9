package org.cresthaul.server;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.InputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The description and the server say the same. */
class OpenApiTest {
    private static final JsonNode DOCUMENT = OpenApi.document();

    @TempDir
    Path folder;

    @Test
    void describesExactlyTheRoutesThereAre() {
        Set<String> served = new TreeSet<>();
        WorkGate gate = new WorkGate(new WorkGate.Limits(1, 0, 0, 1, 1000, 1000));
        gate.close();
        ServerOptions options = new ServerOptions(Optional.empty(), 0, Optional.empty(), TestServer.small());
        for (Endpoint e : new Api(options, gate, BodyGate.usual(), new CheckedReports()).endpoints()) {
            served.add(e.method().name() + " " + e.path());
        }
        Set<String> described = new TreeSet<>();
        DOCUMENT.path("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(operation -> {
                    if (!operation.getKey().equals("parameters")) {
                        described.add(operation.getKey().toUpperCase(Locale.ROOT) + " " + path.getKey());
                    }
                }));

        assertEquals(served, described);
    }

    @Test
    void everyDescribedRouteAnswersAsDescribed() throws Exception {
        int answered = 0;
        try (ProjectStore store = SqliteStore.in(folder);
                TestServer server = TestServer.keeping(store)) {
            JsonNode project = TestServer.json(server.post("/api/projects", ProjectTexts.BEGIN));
            String paper = server.post(
                            "/api/statement?project=" + project.path("id").textValue(),
                            Requests.bodyFor("/api/statement"))
                    .headers()
                    .firstValue("Location")
                    .orElseThrow();
            for (var path : DOCUMENT.path("paths").properties()) {
                String address = path.getKey()
                        .replace("{id}", "small")
                        .replace("{project}", project.path("id").textValue())
                        .replace("{number}", "1")
                        .replace("/api/papers/{paper}", paper)
                        .replace("{sha256}", project.at("/files/0/sha256").textValue());
                JsonNode get = path.getValue().path("get");
                HttpResponse<String> response;
                JsonNode operation;
                if (get.isObject()) {
                    operation = get;
                    response = server.get(address);
                } else if (address.equals("/api/verify")) {
                    operation = path.getValue().path("post");
                    response =
                            server.post(address, server.get(paper + "/record").body());
                } else if (address.startsWith("/api/removed/")) {
                    operation = path.getValue().path("post");
                    assertEquals(200, ProjectTexts.remove(server, project).statusCode());
                    response = server.post(address, "");
                } else {
                    operation = path.getValue().path("post");
                    response = address.equals("/api/import")
                            ? server.send(new ImportForm()
                                    .file("file", "t.csv", "lon,lat\n0,0\n0.001,0\n0.002,0\n".getBytes(UTF_8))
                                    .request(server))
                            : server.post(address, Requests.bodyFor(address));
                }
                assertEquals(200, response.statusCode(), address + ": " + response.body());
                JsonNode schema = operation.at("/responses/200/content/application~1json/schema");
                assertTrue(schema.isObject(), address);
                OpenApi.requireValid(schema, TestServer.json(response));
                answered++;
            }
        }
        assertEquals(DOCUMENT.path("paths").size(), answered);
        assertTrue(answered > 0);
    }

    @Test
    void refusesWithEveryStatusThatItDescribesAndNoOther() {
        Set<String> described = new TreeSet<>();
        DOCUMENT.path("paths")
                .forEach(path -> path.forEach(
                        operation -> operation.path("responses").fieldNames().forEachRemaining(described::add)));

        assertEquals(
                Set.of("200", "201", "400", "403", "404", "412", "413", "415", "422", "428", "503", "507"), described);
    }

    @Test
    void headAnswersLikeGetWithoutABody() throws Exception {
        try (TestServer server = new TestServer(TestServer.small())) {
            HttpResponse<String> get = server.get("/api/samples");
            HttpResponse<String> head =
                    server.send(server.request("/api/samples").method("HEAD", BodyPublishers.noBody()));

            assertEquals(200, head.statusCode());
            assertEquals("", head.body());
            assertEquals(
                    get.headers().firstValue("Content-Type"), head.headers().firstValue("Content-Type"));
        }
    }

    @Test
    void examplesAreValid() {
        List<String> checked = new ArrayList<>();
        checkExamples(DOCUMENT, "", checked);

        assertTrue(checked.size() >= 5, checked.toString());
    }

    private static void checkExamples(JsonNode node, String at, List<String> checked) {
        if (node.path("schema").isObject() && node.has("example")) {
            OpenApi.requireValid(node.path("schema"), node.path("example"));
            checked.add(at);
        }
        if (node.path("schema").isObject() && node.path("examples").isObject()) {
            node.path("examples").forEach(example -> OpenApi.requireValid(node.path("schema"), example.path("value")));
            checked.add(at);
        }
        node.properties().forEach(child -> checkExamples(child.getValue(), at + "/" + child.getKey(), checked));
    }

    @Test
    void schemasAreSchemas() throws Exception {
        var meta = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(com.networknt.schema.SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        int count = 0;
        for (var schema : DOCUMENT.at("/components/schemas").properties()) {
            var errors = meta.validate(schema.getValue());
            assertTrue(errors.isEmpty(), schema.getKey() + ": " + errors);
            count++;
        }
        assertTrue(count > 10);
    }

    @Test
    void schemasRefuseWhatTheyShould() throws Exception {
        JsonNode wrong = new ObjectMapper().readTree("{\"version\": \"1\", \"more\": 1}");

        assertThrows(AssertionError.class, () -> OpenApi.requireValid("Version", wrong));
    }

    @Test
    void everyReferenceResolves() {
        List<String> references = new ArrayList<>();
        collect(DOCUMENT, references);

        assertFalse(references.isEmpty());
        for (String reference : references) {
            assertTrue(
                    reference.startsWith("#/")
                            && DOCUMENT.at(reference.substring(1)).isObject(),
                    reference);
        }
    }

    private static void collect(JsonNode node, List<String> references) {
        if (node.path("$ref").isTextual()) {
            references.add(node.path("$ref").textValue());
        }
        node.forEach(child -> collect(child, references));
    }

    @Test
    void isServedAsItStands() throws Exception {
        try (TestServer server = new TestServer(TestServer.small());
                InputStream in = OpenApiTest.class.getResourceAsStream("/openapi.json")) {
            assertEquals(
                    new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8),
                    server.get("/openapi.json").body());
        }
    }
}
