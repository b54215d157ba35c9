package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.cresthaul.server.Requests;
import org.cresthaul.server.Sample;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** Conditions settled on the page by keyboard, kept in its address, and what a plan leaves told as the API has it. */
class SettledPageTest {
    private static final String ASIDE = "#route=sorrel-valley&rig=lowbed-loaded&aside=H02";
    private static final String CONDITION = "#plan-conditions li[data-hazard='H02'][data-what='set aside']";

    private static Samples samples;
    private static TestServer server;
    private static Browser browser;

    @BeforeAll
    static void start() throws Exception {
        samples = Samples.bundled();
        server = TestServer.remembering(samples);
        browser = new Browser();
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
    void begin() {
        browser.resize(1280, 900);
        browser.open("about:blank");
        browser.errors();
    }

    private static void open(String fragment) {
        browser.open(server.url() + fragment);
        browser.await(
                "the plan is there", b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
    }

    private static JsonNode plan(String options) throws Exception {
        return TestServer.json(server.post(
                "/api/plan",
                Requests.check(
                        text(samples.routes(), "sorrel-valley"), text(samples.rigs(), "lowbed-loaded"), options)));
    }

    private static String text(List<Sample> among, String id) {
        return among.stream()
                .filter(s -> s.id().equals(id))
                .map(s -> new String(s.document(), StandardCharsets.UTF_8))
                .findFirst()
                .orElseThrow();
    }

    private static void fill(String name, String value) {
        WebElement field = browser.find(CONDITION + " input[name='" + name + "']");
        field.clear();
        field.sendKeys(value);
    }

    @Test
    void aConditionIsSettledKeptInTheAddressAndTakenBack() throws Exception {
        open(ASIDE);
        assertEquals("way through under conditions", browser.find("#route-plan").getDomAttribute("data-outcome"));
        browser.find(CONDITION + " summary").sendKeys(Keys.ENTER);
        fill("by", "J. Doe, dispatch");
        fill("date", "28 Nov");
        fill("agreed", "surveyed <b>again</b> on 27 November");
        browser.find(CONDITION + " input[name='agreed']").sendKeys(Keys.ENTER);
        // A date in words is not taken; nothing is settled yet.
        assertEquals(
                true,
                browser.run("return document.querySelector(\"" + CONDITION
                        + " input[name='date']\").validity.patternMismatch"));
        fill("date", "2026-11-28");
        browser.find(CONDITION + " input[name='date']").sendKeys(Keys.ENTER);
        browser.await(
                "it is settled",
                b -> !b.list(CONDITION + "[data-settled='true']").isEmpty());

        String shown = browser.find(CONDITION).getText();
        assertTrue(
                shown.contains("Settled by J. Doe, dispatch on 2026-11-28: surveyed <b>again</b> on 27 November"),
                shown);
        JsonNode answer = plan(
                ",\"plan\":{\"setAside\":[\"H02\"],\"settled\":[{\"hazard\":\"H02\",\"what\":\"set aside\","
                        + "\"by\":\"J. Doe, dispatch\",\"date\":\"2026-11-28\",\"agreed\":\"surveyed <b>again</b> on 27 November\"}]}");
        assertEquals("J. Doe, dispatch", answer.at("/conditions/0/settled/by").asText());
        assertEquals(
                answer.path("outcome").asText(), browser.find("#route-plan").getDomAttribute("data-outcome"));
        browser.await("the address follows", b -> ((String) b.run("return location.hash")).contains("settled="));

        String link = (String) browser.run("return location.hash");
        browser.open("about:blank");
        open(link);
        browser.await(
                "the link has it",
                b -> !b.list(CONDITION + "[data-settled='true']").isEmpty());
        browser.find(CONDITION + " .plan-unsettle").sendKeys(Keys.ENTER);
        browser.await(
                "it is open again",
                b -> b.list(CONDITION + "[data-settled='true']").isEmpty()
                        && !b.list(CONDITION + " summary").isEmpty());
        assertEquals(List.of(), browser.errors());
    }

    @Test
    void whatIsLeftTheBandOfARaiseAndSpeedsAreTold() throws Exception {
        open("#route=sorrel-valley&rig=lowbed-loaded");
        JsonNode answer = plan("");
        String least = browser.find("#plan-least").getText();
        assertTrue(
                least.contains("at " + answer.at("/least/shareAt").asText())
                        && least.contains("at " + answer.at("/least/lengthAt").asText()),
                least);
        JsonNode band = null;
        int slower = 0;
        for (JsonNode step : answer.path("steps")) {
            band = step.path("step").asText().equals("raise") ? step.at("/lift/band") : band;
            slower += step.at("/passage/mostMps").isNumber() ? 1 : 0;
        }
        WebElement told = browser.find(".step-band");
        assertEquals(band.path("fromM").asDouble(), Double.parseDouble(told.getDomAttribute("data-from-m")), 1e-9);
        assertEquals(band.path("toM").asDouble(), Double.parseDouble(told.getDomAttribute("data-to-m")), 1e-9);
        assertTrue(told.getText().contains("Aim at"), told.getText());
        assertEquals(
                (long) slower,
                browser.run("return [...document.querySelectorAll('#plan-steps p')]"
                        + ".filter(p => p.textContent.includes('a bounce may take what is left')).length"));
        assertTrue(slower > 0);
    }
}
