package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The first sheet of a print holds the map, the strip map and the first places, upright and across. */
class FirstSheetTest {
    @RegisterExtension
    static final SampleSite SITE = new SampleSite();

    private static Browser browser;

    @BeforeAll
    static void start() throws Exception {
        browser = new Browser();
    }

    @AfterAll
    static void stop() throws IOException {
        browser.close();
    }

    @ParameterizedTest
    @CsvSource({
        "alder-county, 8.5, 11",
        "alder-county, 11, 8.5",
        "sorrel-valley, 8.5, 11",
        "sorrel-valley, 11, 8.5",
        "sorrel-valley, 11.6929, 8.2677",
        "sorrel-valley, 16.5354, 11.6929"
    })
    void theMapDoesNotStandAlone(String route, double width, double height) throws Exception {
        browser.open("about:blank");
        browser.open(SITE.url() + "#route=" + route + "&rig=lowbed-loaded");
        browser.await(
                "the plan is made",
                b -> b.find("#route-plan").getDomAttribute("data-status").equals("ready"));
        browser.run("document.querySelector('#comparison').scrollIntoView()");
        browser.await(
                "the comparison is there",
                b -> b.find("#comparison").getDomAttribute("data-status").equals("ready"));
        String first = browser.find("#hazard-table tbody tr .hazard-open").getText();
        String page = PrintedPage.pages(browser.printed(width, height)).get(0);
        assertFalse(page.contains(PrintedPage.NOT_ON_IT), page);
        assertTrue(page.contains("Strip map and profile"), page);
        assertTrue(page.contains(first), first + " in " + page);
    }
}
