package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpClient;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Run sheets and statements, asked for over HTTP in every form. */
class PapersOverHttpTest {
    private static TestServer server;

    @BeforeAll
    static void start() throws Exception {
        server = new TestServer(TestServer.small());
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    private static HttpResponse<byte[]> ask(String address, String more) throws Exception {
        return HttpClient.newHttpClient()
                .send(
                        server.request(address)
                                .header("Content-Type", "application/json")
                                .method("POST", BodyPublishers.ofString(Requests.check(more)))
                                .build(),
                        BodyHandlers.ofByteArray());
    }

    @ParameterizedTest
    @CsvSource({
        "/api/runsheet, letter, 612, 792",
        "/api/runsheet, a4, 595.28, 841.89",
        "/api/statement, letter, 612, 792",
        "/api/statement, a4, 595.28, 841.89"
    })
    void aPdfIsOfThePaperAskedFor(String address, String paper, float widthPt, float heightPt) throws Exception {
        HttpResponse<byte[]> response = ask(address, ",\"form\":\"pdf\",\"paper\":\"" + paper + "\"");

        assertEquals(200, response.statusCode());
        assertEquals(
                "application/pdf", response.headers().firstValue("Content-Type").orElseThrow());
        try (PDDocument document = Loader.loadPDF(response.body())) {
            // Letter is 8.5 x 11 in, A4 210 x 297 mm (ISO 216); a point is 1/72 in.
            PDRectangle page = document.getPage(0).getMediaBox();
            assertEquals(widthPt, page.getWidth(), 0.02);
            assertEquals(heightPt, page.getHeight(), 0.02);
            assertTrue(new PDFTextStripper().getText(document).contains("NOT FOR DRIVING"));
        }
        assertArrayEquals(
                response.body(),
                ask(address, ",\"form\":\"pdf\",\"paper\":\"" + paper + "\"").body());
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/runsheet", "/api/statement"})
    void htmlNeedsNothingElse(String address) throws Exception {
        HttpResponse<byte[]> response = ask(address, ",\"form\":\"html\"");
        String html = new String(response.body(), StandardCharsets.UTF_8);

        assertEquals(200, response.statusCode());
        assertEquals(
                "text/html;charset=utf-8",
                response.headers().firstValue("Content-Type").orElseThrow().toLowerCase(Locale.ROOT));
        assertTrue(html.startsWith("<!doctype html>"), html.substring(0, 40));
        assertTrue(html.contains("NOT FOR DRIVING"));
        for (String outside : new String[] {"<script", " src=", "<link", "url(", "@import"}) {
            assertTrue(!html.contains(outside), outside);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/runsheet", "/api/statement"})
    void aBaseMapIsDrawnBeneathInHtmlAndPdfAndThankedFor(String address) throws Exception {
        // A run sheet has maps where there is a way.
        String past = ",\"plan\":{\"setAside\":[\"H01\",\"H02\",\"H03\",\"H04\",\"H05\"]}";
        String map = past + ",\"baseMap\":" + Requests.BASE_MAP;
        for (String form : new String[] {"html", "pdf", "json"}) {
            String asked = ",\"form\":\"" + form + "\"";
            byte[] without = ask(address, asked + past).body();
            HttpResponse<byte[]> with = ask(address, asked + map);

            assertEquals(200, with.statusCode());
            assertEquals(form.equals("json"), Arrays.equals(without, with.body()), form);
            assertArrayEquals(with.body(), ask(address, asked + map).body());
        }
        assertTrue(new String(ask(address, ",\"form\":\"html\"" + map).body(), StandardCharsets.UTF_8)
                .contains("Base map: invented for a test."));
    }

    @Test
    void aBaseMapThatIsNoneIsRefusedAtItsPlace() throws Exception {
        HttpResponse<byte[]> response =
                ask("/api/statement", ",\"baseMap\":" + Requests.BASE_MAP.replace("44.6150", "144.6150"));
        JsonNode problem = new ObjectMapper().readTree(response.body());

        assertEquals(422, response.statusCode());
        assertEquals(
                "/baseMap/features/0/geometry/coordinates/0/1",
                problem.at("/problems/0/pointer").asText());
    }

    @ParameterizedTest
    @CsvSource({"form, doc", "paper, a3", "units, cubits"})
    void whatIsNotThereIsRefusedWithItsPlace(String member, String value) throws Exception {
        HttpResponse<byte[]> response = ask("/api/runsheet", ",\"" + member + "\":\"" + value + "\"");
        JsonNode problem = new ObjectMapper().readTree(response.body());

        assertEquals(422, response.statusCode());
        assertEquals("/" + member, problem.at("/problems/0/pointer").asText());
    }

    @Test
    void theCardForBackingUpHasNoFigureWhereNothingIsKnown() throws Exception {
        String bare = JsonEdit.edit(RigTexts.RIG, "/stances/0/plan", "absent");
        JsonNode sheet = TestServer.json(server.post("/api/runsheet", Requests.check(RouteTexts.ROUTE, bare, "")));

        OpenApi.requireValid("RunSheet", sheet);
        int told = 0;
        for (JsonNode card : sheet.path("cards")) {
            if (card.path("title").asText().equals("Backing up")) {
                for (JsonNode line : card.path("lines")) {
                    assertEquals(0, line.path("figures").size(), line.toString());
                    assertTrue(!line.path("text").asText().matches(".*\\d.*"), line.toString());
                    told += line.path("text").asText().endsWith("how far it can be backed is not known.") ? 1 : 0;
                }
            }
        }
        assertTrue(told > 0, sheet.path("cards").toString());
    }

    @Test
    void metricIsMetric() throws Exception {
        JsonNode sheet = new ObjectMapper()
                .readTree(ask("/api/statement", ",\"units\":\"metric\"").body());

        assertEquals("metric", sheet.path("units").asText());
        assertTrue(
                sheet.at("/envelope/0/value/text").asText().contains(" m"),
                sheet.at("/envelope/0").toString());
    }
}
