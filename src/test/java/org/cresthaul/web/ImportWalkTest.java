package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.cresthaul.exchange.osm.SmallMap;
import org.cresthaul.server.TestServer;
import org.cresthaul.store.FileKind;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.Revision;
import org.cresthaul.store.SqliteStore;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/**
 * A planner's way from files that are dropped to a route that is kept, found again and brought up to date with a newer
 * map: judged by what the store has at the end of each stage. All invented.
 */
class ImportWalkTest {
    private static final String TRACK = """
            <gpx version="1.1" creator="hand" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Levee road</name><trkseg>
            <trkpt lat="0" lon="0"/><trkpt lat="0" lon="0.002"/><trkpt lat="0" lon="0.004"/>
            <trkpt lat="0" lon="0.006"/><trkpt lat="0" lon="0.0089"/>
            </trkseg></trk></gpx>
            """;

    private static final String CROSSING = "map-n2";
    private static final String POSTED = "map-w101-maxheight";
    private static final String BRIDGE = "map-w300-over-w102";
    private static final String NEW_CROSSING = "map-n3";

    private final ObjectMapper json = new ObjectMapper();

    @TempDir
    private Path folder;

    private ProjectStore store;
    private TestServer server;
    private Browser browser;

    @BeforeEach
    void start() throws Exception {
        store = SqliteStore.in(folder);
        server = TestServer.keeping(store);
        browser = new Browser();
        open();
    }

    @AfterEach
    void stop() throws Exception {
        browser.close();
        server.close();
        store.close();
    }

    private void open() {
        browser.open(server.url());
        awaitSheet();
    }

    private void awaitSheet() {
        browser.await(
                "the sheet is shown",
                b -> !b.list("#hazard-table tbody tr").isEmpty()
                        && b.find("#busy").getText().isEmpty());
    }

    /** A crossing at 200 m, a posted height at 600 m, a bridge over the road at 800 m. */
    private static SmallMap map(String height, String... atFourHundred) {
        return new SmallMap()
                .node(1, 0, 0)
                .node(2, 200, 0, "railway", "level_crossing")
                .node(3, 400, 0, atFourHundred)
                .node(4, 600, 0)
                .node(5, 700, 0)
                .node(6, 1000, 0)
                .way(100, List.of(1L, 2L, 3L, 4L), "highway", "tertiary")
                .way(101, List.of(4L, 5L), "highway", "tertiary", "maxheight", height)
                .way(102, List.of(5L, 6L), "highway", "tertiary")
                .node(30, 800, -100)
                .node(31, 800, 100)
                .way(300, List.of(30L, 31L), "highway", "primary", "bridge", "yes");
    }

    private void drop(Map<String, byte[]> files) {
        Map<String, String> coded = new LinkedHashMap<>();
        files.forEach((name, bytes) -> coded.put(name, Base64.getEncoder().encodeToString(bytes)));
        browser.run(
                "const held = new DataTransfer();"
                        + "for (const [name, coded] of Object.entries(arguments[0])) {"
                        + "  held.items.add(new File([Uint8Array.from(atob(coded), c => c.charCodeAt(0))], name));"
                        + "}"
                        + "const on = document.querySelector('#hazards');"
                        + "for (const type of ['dragenter', 'dragover', 'drop']) {"
                        + "  on.dispatchEvent(new DragEvent(type, {bubbles: true, cancelable: true, dataTransfer: held}));"
                        + "}",
                coded);
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private void awaitImport(String status) {
        browser.await(
                "the import is " + status, b -> status.equals(b.find("#import").getDomAttribute("data-status")));
    }

    private void press(String selector) {
        browser.await(selector + " is there", b -> b.find(selector).isDisplayed());
        browser.find(selector).sendKeys(Keys.ENTER);
    }

    /** The latest revision, once it is one that is looked for. */
    private Revision saved(int atLeast) {
        return browser.await(
                "revision " + atLeast + " is saved",
                b -> store.listProjects().stream()
                        .filter(r -> r.number() >= atLeast)
                        .findFirst()
                        .orElse(null));
    }

    /** The hazards of the route that is kept, by their ids. */
    private Map<String, JsonNode> kept() throws Exception {
        Map<String, JsonNode> hazards = new TreeMap<>();
        for (JsonNode feature :
                json.readTree(file(FileKind.ROUTE).orElseThrow()).path("features")) {
            JsonNode properties = feature.path("properties");
            if (properties.has("hazard")) {
                hazards.put(properties.path("id").asText(), properties);
            }
        }
        return hazards;
    }

    private Optional<byte[]> file(FileKind kind) {
        return store.listProjects().get(0).files().stream()
                .filter(f -> f.kind() == kind)
                .map(Revision.KeptFile::sha256)
                .findFirst()
                .flatMap(store::findFile);
    }

    private void awaitKept(String what, String pointer, String value) {
        browser.await(what, b -> {
            try {
                return kept().values().stream()
                        .anyMatch(h -> value.equals(h.at(pointer).asText()));
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    private static String state(JsonNode hazard) {
        return hazard.at("/candidate/state").asText();
    }

    @Test
    void fromFilesThatAreDroppedToAnUpdateOfTheMap() throws Exception {
        // Dropped: a preview, and nothing kept of it.
        drop(Map.of("levee.gpx", text(TRACK), "county.osm", text(map("3.9").xml())));
        awaitImport("ready");
        assertEquals(List.of(), store.listProjects());

        // Kept, and saved as a project: candidates, all open, none surveyed, and the base map.
        press("#import-keep");
        browser.await(
                "it is checked",
                b -> !b.list("#hazard-table tr[data-hazard=" + CROSSING + "]").isEmpty());
        browser.run("document.querySelector('#projects > details').open = true");
        browser.await("it can be kept", b -> b.find("#project-new").isDisplayed());
        browser.find("#project-new").clear();
        browser.find("#project-new").sendKeys("Levee move");
        press("#project-begin button");
        saved(1);
        Map<String, JsonNode> first = kept();
        assertEquals(List.of(CROSSING, POSTED, BRIDGE), List.copyOf(first.keySet()));
        first.values().forEach(h -> assertTrue(state(h).equals("open") && !h.has("survey"), h.toString()));
        assertEquals(
                "basemap/1",
                json.readTree(file(FileKind.BASE_MAP).orElseThrow())
                        .path("cresthaul")
                        .asText());

        // One is dismissed, one is surveyed.
        String row = "#candidate-table tr[data-id='" + BRIDGE + "'] ";
        press(row + ".candidate-dismiss summary");
        browser.find(row + "input[name=by]").sendKeys("J. Doe");
        browser.find(row + "input[name=why]").sendKeys("Taken down, seen on foot", Keys.ENTER);
        awaitKept("it is dismissed", "/candidate/state", "dismissed");
        survey();
        awaitKept("the survey is saved", "/survey/source", "level, invented");
        Map<String, JsonNode> worked = kept();

        // Found again after reloading.
        browser.reload();
        awaitSheet();
        browser.await(
                "its route is there",
                b -> !b.list("#hazard-table tr[data-hazard=" + CROSSING + "]").isEmpty());

        // A newer map: another height, one crossing more. What is new and known is told, then kept.
        int before = store.listProjects().get(0).number();
        browser.run("document.querySelector('#import details').open = true");
        browser.find("#import-update").sendKeys(Keys.SPACE);
        drop(Map.of("newer.osm", text(map("3.6", "railway", "level_crossing").xml())));
        awaitImport("ready");
        Map<String, String> told = new TreeMap<>();
        browser.list("#import-candidates tbody tr")
                .forEach(r -> told.put(r.getDomAttribute("data-id"), r.getDomAttribute("data-status")));
        assertEquals(Map.of(CROSSING, "surveyed", POSTED, "known", BRIDGE, "dismissed", NEW_CROSSING, "new"), told);
        assertEquals(worked, kept(), "a preview keeps nothing");
        press("#import-keep");
        saved(before + 1);
        awaitKept("the new crossing is saved", "/id", NEW_CROSSING);
        Map<String, JsonNode> updated = kept();
        assertEquals(worked.get(CROSSING).path("survey"), updated.get(CROSSING).path("survey"));
        assertEquals(worked.get(CROSSING).path("profile"), updated.get(CROSSING).path("profile"));
        assertFalse(updated.get(CROSSING).path("profile").isMissingNode(), "there is a survey to be kept");
        assertEquals(worked.get(BRIDGE).path("candidate"), updated.get(BRIDGE).path("candidate"));
        assertEquals("dismissed", state(updated.get(BRIDGE)));
        assertTrue(updated.get(POSTED).at("/candidate/raw").asText().contains("3.6"), updated.toString());
        assertEquals("open", state(updated.get(NEW_CROSSING)));
        awaitSheet();
        assertEquals(
                List.of(),
                browser.list("#hazard-table tr[data-verdict=clear]").stream()
                        .map(r -> r.getDomAttribute("data-hazard"))
                        .filter(id -> !id.equals(CROSSING))
                        .toList(),
                "nothing is clear by hearsay");

        // What is none of it is refused, each for what it is, and nothing of the project changes.
        assertEquals(List.of(), browser.errors());
        Revision latest = store.listProjects().get(0);
        for (Map.Entry<String, byte[]> wrong : wrongFiles().entrySet()) {
            drop(Map.of("wrong.gpx", wrong.getValue()));
            awaitImport("failed");
            assertEquals(
                    List.of(wrong.getKey()),
                    browser.list("#import-outcome .problem-item").stream()
                            .map(p -> p.getDomAttribute("data-code"))
                            .toList());
            browser.list("#import-list .import-remove").get(0).sendKeys(Keys.ENTER);
            awaitImport("none");
        }
        Thread.sleep(2500);
        assertEquals(latest.number(), store.listProjects().get(0).number());
        assertEquals(latest.files(), store.listProjects().get(0).files());
        assertEquals(updated, kept());
        // A browser logs every request that is refused, and nothing else has gone wrong.
        assertEquals(
                List.of(),
                browser.errors().stream()
                        .filter(e -> !(e.contains("/api/import?id=") && e.contains("status of 422")))
                        .toList());
    }

    /** A gentle rise over the rails, within what the combination of the tests clears. */
    private void survey() {
        browser.run("document.querySelector('#hazard-table tr[data-hazard=" + CROSSING + "] .hazard-open').click()");
        browser.await("it is shown", b -> CROSSING.equals(b.find("#detail").getDomAttribute("data-hazard")));
        browser.run("document.querySelector('#survey-edit').open = true");
        browser.await(
                "its table is shown", b -> !b.list("#survey-rows tbody tr").isEmpty());
        browser.run(
                "const cell = document.querySelector('[data-cell=\"0,0\"]'); cell.focus();"
                        + "const data = new DataTransfer(); data.setData('text/plain', arguments[0]);"
                        + "cell.dispatchEvent(new ClipboardEvent('paste',"
                        + "  {bubbles: true, cancelable: true, clipboardData: data}));",
                "Distance (m)\tLeft (m)\tRight (m)\n-20\t100.00\t100.00\n0\t100.02\t100.02\n20\t100.00\t100.00\n");
        browser.find("#survey-accuracy").sendKeys(Keys.chord(Keys.CONTROL, "a"), "5 mm");
        browser.find("#survey-source").sendKeys(Keys.chord(Keys.CONTROL, "a"), "level, invented", Keys.TAB);
    }

    /** By what is said of each. */
    private static Map<String, byte[]> wrongFiles() throws Exception {
        ByteArrayOutputStream workbook = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(workbook)) {
            zip.putNextEntry(new ZipEntry("[Content_Types].xml"));
            zip.write(text("<Types/>"));
        }
        Map<String, byte[]> wrong = new LinkedHashMap<>();
        wrong.put("other-xml", text("<?xml version=\"1.0\"?><letter>Dear all</letter>"));
        wrong.put("picture", new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0, 0, 13});
        wrong.put("office-document", workbook.toByteArray());
        wrong.put("pdf", text("%PDF-1.7"));
        wrong.put("no-position", text("lon,lat\n44.6,-93.1\n44.6,-93.09\n44.602,-93.08\n"));
        return wrong;
    }
}
