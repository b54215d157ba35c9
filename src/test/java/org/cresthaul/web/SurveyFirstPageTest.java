package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.Keys;

/** What to survey first, as the page shows it. */
class SurveyFirstPageTest {
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

    @Test
    void showsThePlacesInOrderAndTheLadderOfTheReport() throws Exception {
        page.open();
        JsonNode first = page.report().path("surveyFirst");
        assertEquals(1, first.path("places").size(), "the sample has one place that nobody surveyed");

        List<String> ids = browser.list("#survey-table tbody tr").stream()
                .map(r -> r.getDomAttribute("data-hazard"))
                .toList();
        assertEquals(List.of(first.at("/places/0/id").textValue()), ids);
        // One row for each notch, one column for each state that differs.
        JsonNode hump = first.at("/humps/0");
        String clear = hump.at("/rungs/0/clearM").asText();
        assertTrue(
                browser.list(".hump-ladder[data-tracks='1'] td[data-clear-m='" + clear + "']")
                                .size()
                        >= 1,
                clear);
        assertTrue(browser.find("#survey-first").getText().contains("no verdict on any place"));
        assertEquals(List.of(), browser.accessibilityViolations());
        for (String scheme : List.of("light", "dark")) {
            browser.prefer(scheme);
            browser.run("document.getElementById('survey-first').scrollIntoView()");
            Files.write(Path.of("target", "survey-first-" + scheme + ".png"), browser.screen());
        }

        browser.find("#survey-table .survey-open").sendKeys(Keys.ENTER);
        browser.await(
                "its detail opens", b -> ids.get(0).equals(b.find("#detail").getDomAttribute("data-hazard")));
    }
}
