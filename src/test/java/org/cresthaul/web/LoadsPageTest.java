package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.cresthaul.server.Requests;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** Axle loads in a real browser, on the loaded rig of the sample: the figures are the API's, in words as in shapes. */
class LoadsPageTest {
    private static TestServer server;
    private static RememberedAnswers front;
    private static Browser browser;
    private static String route;
    private static String rig;

    @BeforeAll
    static void start() throws Exception {
        Samples bundled = Samples.bundled();
        Samples samples = new Samples(
                bundled.routes(),
                bundled.rigs().stream()
                        .filter(r -> r.id().equals("lowbed-loaded"))
                        .toList());
        server = TestServer.remembering(samples);
        front = new RememberedAnswers(server.url());
        route = new String(samples.routes().get(0).document(), StandardCharsets.UTF_8);
        rig = new String(samples.rigs().get(0).document(), StandardCharsets.UTF_8);
        browser = new Browser();
    }

    @AfterAll
    static void stop() throws IOException {
        if (browser != null) {
            browser.close();
        }
        if (server != null) {
            front.close();
            server.close();
        }
    }

    @BeforeEach
    void openTheSample() {
        browser.resize(1280, 900);
        browser.prefer("light");
        browser.open("about:blank");
        browser.errors();
        browser.open(front.url());
        choose("down/trailing/3");
    }

    private static void choose(String configuration) {
        browser.await(
                "the configurations are listed",
                b -> !b.list("input[name=configuration]").isEmpty());
        browser.run("document.querySelector('input[name=configuration][value=\"" + configuration + "\"]').click()");
        browser.await(
                configuration + " is ready",
                b -> "ready".equals(b.find("#loads").getDomAttribute("data-status"))
                        && b.find("#loads .result-head")
                                .getText()
                                .contains(configuration.startsWith("up") ? "2 axles" : "3 axles")
                        && b.find("#loads .result-head")
                                .getText()
                                .contains(
                                        configuration.contains("none")
                                                ? "no booster"
                                                : configuration.split("/")[1]));
    }

    private static JsonNode loads(String configuration, String more) throws Exception {
        return TestServer.json(server.post(
                "/api/loads", Requests.check(route, rig, ",\"configuration\":\"" + configuration + "\"" + more)));
    }

    private static double number(String selector, String attribute) {
        return Double.parseDouble(browser.find(selector).getDomAttribute(attribute));
    }

    @ParameterizedTest
    @CsvSource({"down/none/3", "up/none/3", "down/trailing/3", "up/close-coupled/1"})
    void everyAxleAndGroupIsTheApis(String configuration) throws Exception {
        choose(configuration);
        JsonNode answer = loads(configuration, "");

        assertEquals(answer.path("verdict").textValue(), browser.find("#loads").getDomAttribute("data-verdict"));
        JsonNode axles = answer.at("/sheet/axles");
        assertEquals(axles.size(), browser.list("#load-axles tbody tr").size());
        for (int i = 0; i < axles.size(); i++) {
            assertEquals(
                    axles.path(i).path("loadKg").doubleValue(),
                    number("#load-axles tr[data-axle='" + i + "']", "data-load-kg"));
        }
        for (JsonNode group : answer.at("/sheet/groups")) {
            String row = "#load-groups tr[data-group='" + group.path("group").textValue() + "']";
            assertEquals(group.path("verdict").textValue(), browser.find(row).getDomAttribute("data-verdict"));
            assertTrue(
                    browser.find(row).getText().contains(group.path("verdict").textValue()));
            assertTrue(browser.find("#load-view")
                    .getDomAttribute("aria-label")
                    .contains(group.path("label").textValue()));
        }
        assertEquals(
                answer.at("/sheet/axles").size(),
                browser.list("#load-view .bar-limit").size());
    }

    @Test
    void saysWhereThreeAxlesMustBeDown() {
        List<String> trailing = browser.list("#load-advice tbody tr").stream()
                .map(r -> r.getDomAttribute("data-text"))
                .toList();

        assertTrue(trailing.contains("2 or 3 axles down allowed"), trailing.toString());
        assertTrue(trailing.contains("3 axles down only"), trailing.toString());
        String thin = browser.list("#load-advice tbody tr").stream()
                .map(r -> r.getText())
                .filter(t -> t.contains("S01"))
                .findFirst()
                .orElseThrow();
        assertTrue(thin.contains("2 axles: over: gross weight on 6 axles"), thin);
    }

    @Test
    void aPlacesOwnLimitsCanBeHeldAgainst() {
        choose("down/none/3");
        assertEquals("clear", browser.find("#loads").getDomAttribute("data-verdict"));
        browser.run("const s = document.getElementById('loads-hazard'); s.value = 'B02';"
                + "s.dispatchEvent(new Event('change'))");

        browser.await(
                "B02's limits", b -> "outside limits".equals(b.find("#loads").getDomAttribute("data-verdict")));
        assertTrue(browser.find("#loads").getText().contains("over: group of 3 axles"));
    }

    @Test
    void aReadingThatDisagreesIsToldInWords() {
        choose("down/none/3");
        browser.find("#reading-trailer").sendKeys("75", Keys.ENTER);

        browser.await("the reading's answer", b -> !b.list("#load-readings li").isEmpty());
        assertEquals("false", browser.find("#load-readings li").getDomAttribute("data-agrees"));
        assertTrue(browser.find("#load-readings").getText().contains("heavier than declared"));
    }

    @Test
    void thePieceMovesByKeyboardAndTheLoadsFollow() throws Exception {
        choose("down/none/3");
        double before = number("#load-axles tr[data-axle='3']", "data-load-kg");
        browser.run("document.getElementById('piece-at').focus()");
        browser.press(Keys.END);

        browser.await(
                "the load has moved", b -> number("#load-axles tr[data-axle='3']", "data-load-kg") > before + 100);
        browser.run("document.getElementById('piece-back').click()");
        browser.await("it is back", b -> number("#load-axles tr[data-axle='3']", "data-load-kg") == before);
    }

    @Test
    void plotsSayTheWindowInWords() throws Exception {
        JsonNode answer = loads("up/trailing/3", "");
        choose("up/trailing/3");

        assertTrue(answer.at("/regulator/allowed").isArray());
        String words = browser.find("#load-regulator").getDomAttribute("aria-label");
        // The fitted plate ends at 21,000 lb: by the chart 45 psi + 8,600 of 11,400 lb x 45 psi = 78.9 psi.
        assertTrue(words.contains("Within limits from 48 psi to 75 psi"), words);
        assertEquals(words, browser.find("#load-regulator + .plot-words").getText());
        choose("up/none/3");
        assertTrue(browser.find("#load-position").getDomAttribute("aria-label").contains("nowhere: group of 2 axles"));
    }

    @ParameterizedTest
    @CsvSource({
        "light, 1280, down/trailing/3",
        "dark, 1280, up/none/3",
        "light, 320, up/none/3",
        "dark, 320, down/trailing/3"
    })
    void isAccessibleAndNeverWiderThanTheScreen(String scheme, int width, String configuration) throws Exception {
        browser.prefer(scheme);
        browser.resize(width, 900);
        choose(configuration);

        assertEquals(List.of(), browser.accessibilityViolations());
        assertEquals(
                true,
                browser.run("return document.documentElement.scrollWidth <= window.innerWidth"),
                "no wider than " + width);
        assertFalse(browser.list("#load-view [data-group]").isEmpty());
        assertEquals(List.of(), browser.errors());
    }
}
