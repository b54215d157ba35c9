package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The sample's invented base map, drawn beneath its route. */
class BaseMapPageTest {
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

    private static String style(String selector, String property) {
        return (String)
                browser.run("return getComputedStyle(document.querySelector('" + selector + "'))['" + property + "']");
    }

    @Test
    void isDrawnBeneathTheRouteInBothColorsAndThanked() throws Exception {
        page.open();
        browser.await(
                "the base map is drawn",
                b -> !b.list(".leaflet-basemap-pane path.base-minor-road").isEmpty());

        for (String layer : List.of("woods", "water", "minor-road", "middle-road", "major-road", "railway")) {
            String drawn = (String) browser.run("return [...document.querySelectorAll('.leaflet-basemap-pane path.base-"
                    + layer + "')].map(p => p.getAttribute('d')).join('')");
            assertTrue(drawn.length() > 20, layer + " is drawn as " + drawn);
        }
        assertEquals(6, browser.list(".base-place").size());
        assertTrue(browser.find(".plan-credit").getText().contains("invented"));
        assertEquals(List.of(), browser.errors());
        int basemap = Integer.parseInt(style(".leaflet-basemap-pane", "zIndex"));
        assertTrue(basemap < Integer.parseInt(style(".leaflet-overlay-pane", "zIndex")), "the route lies above it");

        Set<String> colors = new TreeSet<>();
        for (String scheme : List.of("light", "dark")) {
            browser.prefer(scheme);
            String road = style("path.base-minor-road", "stroke");
            colors.add(road);
            assertNotEquals(road, style(".route-line", "stroke"));
            assertNotEquals(style("path.base-woods", "fill"), style("#plan-map", "backgroundColor"));
            assertEquals(List.of(), browser.accessibilityViolations());
            browser.run("document.getElementById('plan').scrollIntoView()");
            Files.write(Path.of("target", "basemap-" + scheme + ".png"), browser.screen());
        }
        assertEquals(2, colors.size(), "light and dark differ: " + colors);
    }
}
