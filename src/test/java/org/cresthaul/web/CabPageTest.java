package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.cresthaul.server.Requests;
import org.cresthaul.server.Sample;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.WebElement;

/** The driver's cab page in a real browser: it says what the run sheet says, keeps it, and needs no signal. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class CabPageTest {
    private static final String PHONE = "800-555-0121";
    private static String route;
    private static String rig;
    private static TestServer server;
    private static Browser browser;
    private static String english;
    private static String spanish;

    /** The valley has a way through without conditions; one of its crossings is given a telephone number. */
    @BeforeAll
    static void start() throws Exception {
        Samples samples = Samples.bundled();
        route = text(samples.routes(), "sorrel-valley")
                .replaceFirst("(\"crossingNumber\": *\"000021X\")", "$1, \"emergencyPhone\": \"" + PHONE + "\"");
        rig = text(samples.rigs(), "lowbed-loaded");
        server = TestServer.remembering(new Samples(
                List.of(new Sample("valley.route.geojson", route.getBytes(StandardCharsets.UTF_8))),
                List.of(new Sample("lowbed.rig.json", rig.getBytes(StandardCharsets.UTF_8))),
                List.of()));
        browser = new Browser();
        browser.resize(390, 844);
        browser.open(server.url());
        browser.await(
                "the plan is there", b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
        english = keep("en");
        spanish = keep("es");
    }

    private static String text(List<Sample> samples, String id) {
        return new String(
                samples.stream()
                        .filter(s -> s.id().equals(id))
                        .findFirst()
                        .orElseThrow()
                        .document(),
                StandardCharsets.UTF_8);
    }

    /** Keeps the run sheet from the planner's page; the address of its cab page. */
    private static String keep(String language) {
        browser.run(
                "document.getElementById('papers-status').replaceChildren();"
                        + "const choice = document.getElementById('sheet-language'); choice.value = arguments[0];"
                        + "document.getElementById('runsheet-cab').click()",
                language);
        return browser.await(
                "the sheet is kept", b -> b.find("#runsheet-cab-link").getDomProperty("href"));
    }

    @AfterAll
    static void stop() throws IOException {
        if (browser != null) {
            browser.close();
        }
        if (server != null) {
            server.close();
        }
    }

    @BeforeEach
    void atThePhone() {
        browser.resize(390, 844);
        browser.prefer("light");
        browser.errors();
    }

    private static void open(String address, String view) {
        browser.open("about:blank");
        browser.open(address + "&view=" + view);
        browser.await(view + " is shown", b -> !b.list("#cab h1").isEmpty());
    }

    private static JsonNode sheet(String language) throws Exception {
        return TestServer.json(
                server.post("/api/runsheet", Requests.check(route, rig, ",\"language\":\"" + language + "\"")));
    }

    private static List<JsonNode> entries(JsonNode sheet) {
        List<JsonNode> entries = new ArrayList<>();
        sheet.path("legs").forEach(leg -> leg.path("entries").forEach(entries::add));
        return entries;
    }

    @ParameterizedTest
    @CsvSource({"en", "es"})
    @Order(1)
    void everyPlaceSaysWhatTheRunSheetSays(String language) throws Exception {
        JsonNode sheet = sheet(language);
        List<JsonNode> entries = entries(sheet);
        assertTrue(entries.size() > 10, "the sheet has steps");
        open(language.equals("en") ? english : spanish, "next");
        assertEquals(language, browser.find("html").getDomAttribute("lang"));
        int said = 0;
        for (int i = 0; i < entries.size(); i++) {
            String at = Integer.toString(i);
            browser.run("location.hash = location.hash.replace(/&view=.*/, '') + '&view=place&at=' + arguments[0]", at);
            WebElement place = browser.await(
                    "place " + at,
                    b -> b.list("#cab-place[data-step='" + at + "']").stream()
                            .findFirst()
                            .orElse(null));
            String shown = place.getDomProperty("textContent");
            for (String part : List.of("comes", "before", "through", "after", "gauges")) {
                for (JsonNode line : entries.get(i).path(part)) {
                    assertTrue(shown.contains(line.path("text").textValue()), line + "\n" + shown);
                    said++;
                }
            }
            for (JsonNode caution : entries.get(i).path("cautions")) {
                assertTrue(shown.contains(caution.textValue()), caution + "\n" + shown);
            }
            assertTrue(shown.contains(entries.get(i).at("/chainage/text").textValue()), shown);
        }
        assertTrue(said > 50, said + " lines");
        open(language.equals("en") ? english : spanish, "cards");
        String cards = browser.find("#cab").getDomProperty("textContent");
        sheet.path("setUps")
                .forEach(card -> card.path("lines")
                        .forEach(line ->
                                assertTrue(cards.contains(line.path("text").textValue()), line.toString())));
    }

    @Test
    @Order(2)
    void stuckOnACrossingSaysPeopleFirstAndWhomToCall() throws Exception {
        JsonNode sheet = sheet("en");
        String people = card(sheet, "stuck").at("/lines/0/text").textValue();
        open(english, "next");
        browser.find("#cab-stuck-open").click();
        browser.await("the stuck page", b -> !b.list("#cab-stuck").isEmpty());
        assertEquals(people, browser.find("#cab-stuck p").getText(), "people stand first");
        assertEquals("H02", browser.find("#cab-stuck").getDomAttribute("data-hazard"), "the next crossing");
        assertEquals("000021X", browser.find("#cab-stuck [data-number]").getDomAttribute("data-number"));
        assertEquals("tel:8005550121", browser.find("#cab-call").getDomAttribute("href"));
        assertEquals("tel:911", browser.find("#cab-call-911").getDomAttribute("href"));

        browser.run("const c = document.getElementById('cab-crossing'); c.value = 'H04';"
                + "c.dispatchEvent(new Event('change'))");
        browser.await("H04", b -> "H04".equals(b.find("#cab-stuck").getDomAttribute("data-hazard")));
        assertEquals("000022X", browser.find("#cab-stuck [data-number]").getDomAttribute("data-number"));
        assertTrue(browser.list("#cab-call").isEmpty(), "no number is made up");
        assertTrue(browser.find("#cab-no-phone").getText().contains("not in the route file"));
    }

    private static JsonNode card(JsonNode sheet, String about) {
        for (JsonNode card : sheet.path("cards")) {
            if (card.path("about").textValue().equals(about)) {
                return card;
            }
        }
        throw new AssertionError("no card " + about);
    }

    @ParameterizedTest
    @CsvSource({"light, 390", "dark, 390", "light, 320", "dark, 320"})
    @Order(3)
    void isAccessibleNeverTooWideAndEverythingIsLargeEnoughToPress(String scheme, int width) throws Exception {
        browser.prefer(scheme);
        browser.resize(width, 844);
        for (String view : List.of("next", "place&at=3", "places", "cards", "stuck", "sheets")) {
            open(spanish, view);
            browser.run("document.querySelectorAll('details').forEach(d => { d.open = true; })");
            assertEquals(List.of(), browser.accessibilityViolations(), view);
            Long content = (Long) browser.run("return document.documentElement.scrollWidth");
            assertTrue(content <= width, view + " is " + content + " px wide");
            assertEquals(
                    List.of(),
                    browser.run("return [...document.querySelectorAll('button, a[href], select, summary,"
                            + " input:not([type=checkbox]), .cab-tick')].filter(n => {"
                            + " const r = n.getBoundingClientRect(); return r.width < 44 || r.height < 44; })"
                            + ".map(n => n.outerHTML)"),
                    view);
        }
        assertEquals(List.of(), browser.errors());
    }

    @Test
    @Order(4)
    void aPositionTellsHowFarItIsAndMovesNothing() throws Exception {
        JsonNode line = TestServer.json(server.post("/api/route", route)).at("/line/0");
        JsonNode point = line.get(1);
        List<JsonNode> entries = entries(sheet("en"));
        int next = 0;
        while (entries.get(next).path("chainageM").doubleValue() <= point.get(2).doubleValue()) {
            next++;
        }
        browser.locate(server.url(), point.get(0).doubleValue(), point.get(1).doubleValue(), 5);
        open(english, "next");
        for (int i = 0; i < next; i++) {
            browser.find("#cab-passed").click();
        }
        browser.find("#cab-locate").click();
        String left = browser.await(
                "the distance is told", b -> b.find("#cab-position").getDomAttribute("data-left-m"));
        assertEquals(
                entries.get(next).path("chainageM").doubleValue() - point.get(2).doubleValue(),
                Double.parseDouble(left),
                1.0);
        assertEquals(Integer.toString(next), browser.find("#cab-next").getDomAttribute("data-step"));

        browser.locate(server.url(), point.get(0).doubleValue(), point.get(1).doubleValue() + 1, 5);
        browser.await(
                "a phone elsewhere is told no distance",
                b -> b.find("#cab-position").getText().contains("not on the route")
                        && b.find("#cab-position").getDomAttribute("data-left-m") == null);
        browser.find("#cab-locate").click();
        for (int i = 0; i < next; i++) {
            browser.find("#cab-back").click();
        }
    }

    /** Last of all: the server is gone for good. */
    @Test
    @Order(9)
    void withTheServerGoneSheetAndTicksAreStillThere() throws Exception {
        open(english, "place&at=0");
        browser.await(
                "the worker has the page", b -> (Boolean) b.run("return navigator.serviceWorker.controller !== null"));
        List<WebElement> boxes = browser.list("#cab-place [data-tick]");
        assertTrue(boxes.size() >= 2, "there is something to tick");
        boxes.get(0).click();
        server.close();

        open(english, "place&at=0");
        List<WebElement> again = browser.list("#cab-place [data-tick]");
        assertTrue(again.get(0).isSelected(), "the tick is kept");
        assertFalse(again.get(1).isSelected());
        open(spanish, "place&at=0");
        assertFalse(browser.find("#cab-place [data-tick]").isSelected(), "of another sheet nothing is ticked");
        for (String view : List.of("next", "places", "cards", "stuck", "sheets")) {
            open(english, view);
            assertTrue(
                    browser.find("#cab-name").getText().startsWith("Sorrel Valley"),
                    browser.find("body").getText());
        }
        assertEquals(2, browser.list("li[data-sheet]").size());
        String colored = (String) browser.run("return getComputedStyle(document.body).backgroundColor");
        assertFalse(colored.isEmpty() || colored.equals("rgba(0, 0, 0, 0)"), "the styles are there: " + colored);
    }
}
