package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import org.cresthaul.server.Requests;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The truck over a hazard, on the page: it stands where the API has it, and is moved by keyboard. */
class PassagePageTest {
    @RegisterExtension
    static final SampleSite SITE = new SampleSite();

    private static SamplePage page;
    private static Browser browser;

    @BeforeAll
    static void start() throws Exception {
        page = new SamplePage(SITE);
        browser = page.browser();
    }

    @AfterAll
    static void stop() throws IOException {
        if (page != null) {
            page.close();
        }
    }

    @BeforeEach
    void openTheSample() throws IOException {
        page.open();
    }

    @Test
    void opensAHazardAndMovesTheTruckByKeyboard() throws Exception {
        String hazard = page.drawnHazard();
        browser.run("document.body.focus()");
        browser.tabTo(".hazard-open", 60);
        for (int i = 0;
                i < page.report().path("hazards").size() && !focusedHazard().equals(hazard);
                i++) {
            browser.press(Keys.ARROW_DOWN);
        }
        assertEquals(hazard, focusedHazard());
        browser.press(Keys.ENTER);
        browser.await(
                "the truck is drawn", b -> "ready".equals(b.find("#passage").getDomAttribute("data-status")));
        assertEquals(hazard, browser.find("#detail").getDomAttribute("data-hazard"));
        String configuration = browser.find("#detail").getDomAttribute("data-configuration");
        JsonNode passage = passage(hazard, configuration);

        // It opens at the tightest position, which is the report's clearance.
        int tightest = passage.path("tightest").intValue();
        assertShown(passage, tightest);
        assertEquals(SamplePage.governingM(page.cell(hazard, configuration)), page.shownM("#passage-clearance"));

        browser.tabTo("#passage-slider", 200);
        browser.press(Keys.ARROW_RIGHT);
        assertShown(passage, tightest + 1);
        browser.press(Keys.ARROW_LEFT, Keys.ARROW_LEFT);
        assertShown(passage, tightest - 1);
        browser.press(Keys.HOME);
        assertShown(passage, 0);
        browser.press(Keys.END);
        assertShown(passage, passage.path("positions").size() - 1);
    }

    private static String focusedHazard() {
        return (String) browser.run("return document.activeElement.closest('[data-hazard]')?.dataset.hazard ?? ''");
    }

    private static JsonNode passage(String hazard, String configuration) throws Exception {
        return TestServer.json(SITE.server()
                .post(
                        "/api/passage",
                        Requests.check(
                                page.route(),
                                page.rig(),
                                ",\"hazard\":\"" + hazard + "\",\"configuration\":\"" + configuration + "\"")));
    }

    private static void assertShown(JsonNode passage, int index) {
        JsonNode position = passage.path("positions").path(index);
        WebElement slider = browser.find("#passage-slider");

        assertEquals(Integer.toString(index), slider.getDomAttribute("data-index"));
        assertEquals(position.path("steerM").doubleValue(), SamplePage.number(slider, "data-steer-m"));
        assertEquals(position.path("groundM").doubleValue(), page.shownM("#passage-clearance"));
    }
}
