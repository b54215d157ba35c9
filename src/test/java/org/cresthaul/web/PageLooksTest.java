package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** The page as it looks: accessible and never too wide, light and dark, from its own server alone. */
class PageLooksTest {
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

    @ParameterizedTest
    @CsvSource({"light, 1280", "dark, 1280", "light, 320", "dark, 320"})
    void isAccessibleAndNeverWiderThanTheScreen(String scheme, int width) throws Exception {
        browser.prefer(scheme);
        browser.resize(width, 900);
        assertNoHorizontalScrolling(width);
        assertEquals(List.of(), browser.accessibilityViolations());

        browser.find("#hazard-table tr[data-hazard='" + page.drawnHazard() + "'] .hazard-open")
                .sendKeys(Keys.ENTER);
        browser.await(
                "the truck is drawn", b -> "ready".equals(b.find("#passage").getDomAttribute("data-status")));
        assertNoHorizontalScrolling(width);
        assertEquals(List.of(), browser.accessibilityViolations());
    }

    private static void assertNoHorizontalScrolling(int width) {
        assertEquals((long) width, browser.run("return window.innerWidth"));
        Long content = (Long) browser.run("return document.documentElement.scrollWidth");
        assertTrue(content <= width, "the page is " + content + " px wide on a screen of " + width);
    }

    @Test
    void dependsOnTheColorSchemeOnlyForLooks() {
        String light = (String) browser.run("return getComputedStyle(document.body).backgroundColor");
        browser.prefer("dark");
        String dark = (String) browser.run("return getComputedStyle(document.body).backgroundColor");

        assertNotEquals(light, dark);
    }

    @Test
    void asksNobodyButItsOwnServer() throws Exception {
        browser.find("#hazard-table tr[data-hazard='" + page.drawnHazard() + "'] .hazard-open")
                .sendKeys(Keys.ENTER);
        browser.await(
                "the truck is drawn", b -> "ready".equals(b.find("#passage").getDomAttribute("data-status")));

        List<String> requests = browser.requests();

        assertTrue(requests.stream().anyMatch(r -> r.startsWith(SITE.url() + "api/check?id=")), requests.toString());
        for (String request : requests) {
            assertTrue(
                    request.startsWith(SITE.url()) || request.startsWith("data:") || request.startsWith("blob:"),
                    request);
        }
        assertEquals(List.of(), browser.errors(), "nothing failed to load, nothing was refused, nothing threw");
    }

    /** Leaves the sheet of the sample in target/; DEVELOPERS.md tells how it gets into the documents. */
    @Test
    void canBePictured() throws Exception {
        browser.await(
                "the plan is there", b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
        browser.run("window.scrollTo(0, 0)");
        byte[] picture = browser.screen();

        BufferedImage image = ImageIO.read(new ByteArrayInputStream(picture));
        assertTrue(image.getWidth() == 1280 && image.getHeight() == 900, image.getWidth() + " x " + image.getHeight());
        // The first screen alone: nobody loads megabytes to read what this is.
        assertTrue(picture.length <= 300_000, picture.length + " bytes");
        assertTrue(Files.size(Path.of("docs", "sample-sheet.png")) <= 300_000, "the picture in docs");
        Files.write(Path.of("target", "sample-sheet.png"), picture);
    }
}
