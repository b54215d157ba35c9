package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;

/** The strip map over the longitudinal profile: nothing is printed over another, and heights stand where known. */
class StationsPageTest {
    @RegisterExtension
    static final SampleSite SITE = new SampleSite();

    private static final Set<String> KNOWN = Set.of("surveyed", "posted", "declared");

    private static Browser browser;

    @TempDir
    private static Path folder;

    @BeforeAll
    static void start() throws Exception {
        browser = new Browser();
    }

    @AfterAll
    static void stop() throws IOException {
        browser.close();
    }

    private static void open(String route) {
        browser.resize(1280, 900);
        browser.open("about:blank");
        browser.open(SITE.url() + "#route=" + route + "&rig=lowbed-loaded");
        awaitPlan();
    }

    private static void awaitPlan() {
        browser.await(
                "the plan is made",
                b -> b.find("#route-plan").getDomAttribute("data-status").equals("ready"));
    }

    /** Pairs of texts of the drawing whose boxes overlap by more than half a pixel, and texts that it cuts off. */
    @SuppressWarnings("unchecked")
    private static Map<String, Object> labels() {
        return (Map<String, Object>) browser.run("""
                const frame = document.querySelector('#profile svg.drawing').getBoundingClientRect();
                const boxes = [...document.querySelectorAll('#profile svg.drawing text')]
                  .map(t => ({ text: t.textContent, box: t.getBoundingClientRect() }));
                const wrong = [];
                boxes.forEach((a, i) => {
                  if (a.box.left < frame.left - 0.5 || a.box.right > frame.right + 0.5
                    || a.box.top < frame.top - 0.5 || a.box.bottom > frame.bottom + 0.5) {
                    wrong.push(`${a.text} is cut off`);
                  }
                  boxes.slice(i + 1).forEach(b => {
                    const x = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
                    const y = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
                    // A text's box is as high as its font: letters without descenders leave its lowest quarter.
                    if (x > 0.5 && y > a.box.height / 4) {
                      wrong.push(`${a.text} on ${b.text}`);
                    }
                  });
                });
                const places = [...document.querySelectorAll('#profile .profile-hazard')];
                return {
                  wrong, count: boxes.length, width: frame.width,
                  places: places.length,
                  named: places.filter(p => p.querySelector('text')).length,
                  reached: places.every(p => p.querySelector('title').textContent.startsWith(p.dataset.hazard + ' ')
                    && document.querySelector(`#hazard-table tr[data-hazard="${p.dataset.hazard}"]`) !== null),
                };""");
    }

    private static void assertApart(String when, int leastNamed) {
        Map<String, Object> labels = labels();
        assertEquals(List.of(), labels.get("wrong"), when + ", " + labels.get("count") + " texts");
        assertTrue(((Number) labels.get("named")).intValue() >= leastNamed, when + ": " + labels);
        assertEquals(true, labels.get("reached"), when + ": what has no name has a title and a row");
    }

    /** Named are two thirds of the places at least, or one for every 60 px where there are more. */
    private static void assertApartAtEverySize(String route, int places) throws Exception {
        for (int width : new int[] {320, 390, 768, 1400, 1680}) {
            browser.resize(width, 900);
            browser.await(
                    "drawn at " + width,
                    b -> Boolean.TRUE.equals(b.run("const s = document.querySelector('#profile svg.drawing');"
                            + " return Math.abs(s.getAttribute('width') - s.parentElement.clientWidth) < 1")));
            assertApart(route + " at " + width + " px", Math.min(places * 2 / 3, width / 60));
        }
        // A3 across is 420 mm wide; 12 mm are left blank on either side; 96 px are an inch.
        browser.resize((int) Math.round((420 - 24) / 25.4 * 96), 1000);
        browser.layOutForPrint(true);
        assertApart(route + " on A3", Math.min(places * 2 / 3, 10));
        browser.layOutForPrint(false);
        browser.resize(1280, 900);
    }

    @ParameterizedTest
    @ValueSource(strings = {"alder-county", "sorrel-valley"})
    void nothingIsPrintedOverAnother(String route) throws Exception {
        open(route);
        assertApartAtEverySize(route, 12);
        assertEquals(List.of(), browser.accessibilityViolations("#profile"));
    }

    @Test
    void nothingIsPrintedOverAnotherAmongTwoHundredPlaces() throws Exception {
        StringBuilder route = new StringBuilder("""
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Many washes",
                 "note": "Invented for the tests.", "features": [
                  {"type": "Feature", "properties": {"route": "County road"},
                   "geometry": {"type": "LineString", "coordinates": [[-93.5, 44.6], [-93.0, 44.6]]}}""");
        for (int i = 0; i < 200; i++) {
            route.append(String.format(Locale.ROOT, """
                    , {"type": "Feature", "geometry": {"type": "Point", "coordinates": [%.6f, 44.6]},
                      "properties": {"hazard": "dip", "id": "H%03d", "name": "Wash %d"}}
                    """, -93.499 + 0.498 * i / 199, i, i));
        }
        Path file = folder.resolve("many.route.geojson");
        Files.writeString(file, route.append("]}"));
        open("sorrel-valley");
        browser.find("#route-file").sendKeys(file.toString());
        browser.await("200 places", b -> b.list("#hazard-table tbody tr").size() == 200);
        assertEquals(200, ((Number) labels().get("places")).intValue());
        assertApartAtEverySize("200 places", 100);
        // A shorter stretch names more of what is in it.
        browser.run("document.querySelector('#profile .profile-hazard').focus()");
        for (int i = 0; i < 4; i++) {
            browser.press("+");
        }
        Map<String, Object> labels = labels();
        assertEquals(labels.get("places"), labels.get("named"), labels.toString());
        assertTrue(((Number) labels.get("places")).intValue() < 20, labels.toString());
    }

    /** What the file has, counted from the file: lines surveyed, undersides measured, posted or declared. */
    @ParameterizedTest
    @ValueSource(strings = {"alder-county", "sorrel-valley"})
    void groundAndStructuresStandOnlyWhereTheirHeightsAreKnown(String route) throws Exception {
        JsonNode file = new ObjectMapper()
                .readTree(Path.of("sample-routes/" + route + ".route.geojson").toFile());
        int ground = 0;
        int over = 0;
        for (JsonNode feature : file.path("features")) {
            JsonNode properties = feature.path("properties");
            ground += properties.path("profile").size() > 0 ? 1 : 0;
            over += KNOWN.contains(properties.path("measured").asText())
                            && (properties.has("soffit") || properties.has("clearance") || properties.has("wire"))
                    ? 1
                    : 0;
        }
        assertTrue(ground > 3 && over > 0, ground + " and " + over);
        open(route);
        assertEquals(
                ground, browser.list("#profile svg.drawing .station-ground").size());
        assertEquals(over, browser.list("#profile svg.drawing .soffit").size());
    }

    @Test
    void aWindowOfStationsIsChosenByKeysAndFollowsWhatIsOnShow() throws Exception {
        open("sorrel-valley");
        JsonNode hazards = shownHazards();
        String first = hazards.get(0).asText();
        String last = hazards.get(hazards.size() - 1).asText();
        String place = "#profile .profile-hazard[data-hazard='" + first + "']";
        browser.run("document.querySelector(arguments[0]).focus()", place);
        browser.press(Keys.ENTER);
        browser.await("it is on show", b -> first.equals(b.find("#detail").getDomAttribute("data-hazard")));
        browser.run("document.querySelector(arguments[0]).focus()", place);
        browser.press(Keys.ARROW_RIGHT);
        browser.press(Keys.ARROW_LEFT);
        assertEquals(first, browser.run("return document.activeElement.dataset.hazard"), "keys go along the road");
        browser.press("+");
        browser.press("+");
        browser.press("+");
        assertTrue(browser.find("#stations-shown").getText().contains(" to "));
        assertTrue(shownHazards().size() < hazards.size());
        assertTrue(shownHazards().toString().contains('"' + first + '"'), "the place on show stays in sight");
        assertEquals(true, browser.run("return document.activeElement.matches('#profile .profile-hazard')"));
        browser.press(Keys.PAGE_DOWN);
        browser.press(Keys.PAGE_DOWN);
        assertTrue(!shownHazards().toString().contains('"' + first + '"'), "the window has moved on");
        browser.find("#hazard-table tr[data-hazard='" + last + "'] .hazard-open")
                .click();
        browser.await("the window follows", b -> shownHazards().toString().contains('"' + last + '"'));
        browser.find("#stations-all").click();
        assertEquals(hazards, shownHazards());
        assertEquals("", browser.find("#stations-shown").getText());
    }

    private static JsonNode shownHazards() {
        try {
            return new ObjectMapper()
                    .readTree((String) browser.run("return JSON.stringify([...document.querySelectorAll("
                            + "'#profile .profile-hazard')].sort((a, b) => a.dataset.at - b.dataset.at)"
                            + ".map(p => p.dataset.hazard))"));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
