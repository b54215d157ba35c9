package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/**
 * The page in a real browser, on the sample: it shows the numbers of the API, hides nothing, and tells mistakes with
 * their places.
 */
class PageTest {
    private static final ObjectMapper JSON = new ObjectMapper();

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
    void showsTheVerdictsOfTheApi() {
        String configuration = page.chosenConfiguration();
        List<WebElement> rows = browser.list("#hazard-table tbody tr");

        assertEquals(page.report().path("hazards").size(), rows.size());
        assertTrue(rows.size() >= 12, "the sample has 12 hazards or more");
        for (WebElement row : rows) {
            JsonNode cell = page.cell(row.getDomAttribute("data-hazard"), configuration);
            assertEquals(cell.path("verdict").textValue(), row.getDomAttribute("data-verdict"));
            assertEquals(SamplePage.governingM(cell), SamplePage.number(row, "data-value-m"));
            assertTrue(
                    row.getText()
                            .toLowerCase(Locale.ROOT)
                            .contains(cell.path("verdict").textValue()),
                    "the verdict is told in words: " + row.getText());
        }
    }

    @Test
    void showsWhatTheReportIsMadeFrom() {
        Map<String, String> shown = new TreeMap<>();
        browser.list("#title-block dd[data-field]")
                .forEach(dd -> shown.put(dd.getDomAttribute("data-field"), dd.getText()));

        assertTrue(shown.get("version").contains(page.report().path("version").textValue()), shown.toString());
        assertTrue(
                page.report()
                        .at("/route/sha256")
                        .textValue()
                        .startsWith(shown.get("route-sha256").substring(0, 8)),
                shown.toString());
        assertTrue(
                page.report()
                        .at("/rig/sha256")
                        .textValue()
                        .startsWith(shown.get("rig-sha256").substring(0, 8)),
                shown.toString());
        String notes = browser.find("#notes").getText();
        assertTrue(notes.contains("turning at its corners"), "the report judges corners, so the sheet does: " + notes);
        page.report().path("cautions").forEach(c -> assertTrue(notes.contains(c.textValue()), notes));
        page.report().path("hazards").forEach(h -> {
            if (!h.path("surveyed").booleanValue()) {
                assertEquals(
                        1,
                        browser.list("#not-checked li[data-hazard='"
                                        + h.path("id").textValue() + "']")
                                .size());
            }
        });
    }

    @Test
    void everyCellOfTheMatrixIsTheApis() {
        browser.await(
                "the plan, with which the matrix is drawn anew, is there",
                b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
        int compared = 0;
        for (JsonNode hazard : page.report().path("hazards")) {
            String id = hazard.path("id").textValue();
            browser.find("#hazard-table tr[data-hazard='" + id + "'] .hazard-open")
                    .sendKeys(Keys.ENTER);
            browser.await(id + " is open", b -> id.equals(b.find("#detail").getDomAttribute("data-hazard")));
            int covered = 0;
            for (WebElement button : browser.list("#matrix button[data-configurations]")) {
                Double shown = SamplePage.number(button, "data-value-m");
                assertEquals(
                        SamplePage.governingM(page.cell(id, button.getDomAttribute("data-configuration"))), shown, id);
                for (String configuration :
                        button.getDomAttribute("data-configurations").split(" ")) {
                    JsonNode cell = page.cell(id, configuration);
                    assertEquals(cell.path("verdict").textValue(), button.getDomAttribute("data-verdict"));
                    assertEquals(
                            eighths(shown),
                            eighths(SamplePage.governingM(cell)),
                            "reads alike: " + id + " " + configuration);
                    covered++;
                }
            }
            assertEquals(hazard.path("cells").size(), covered, "every configuration stands in the matrix of " + id);
            compared += covered;
        }
        assertTrue(compared > 100);
    }

    /** A gap as it reads: whole eighths of an inch, rounded down. */
    private static Long eighths(Double meters) {
        return meters == null ? null : (long) Math.floor(meters / (0.0254 / 8) + 1e-9);
    }

    @Test
    void neverShowsAnUnsurveyedHazardAsClear() {
        int unsurveyed = 0;
        for (JsonNode hazard : page.report().path("hazards")) {
            if (!hazard.path("surveyed").booleanValue()) {
                String id = hazard.path("id").textValue();
                for (WebElement mark : browser.list("[data-hazard='" + id + "'][data-verdict]")) {
                    assertEquals("not surveyed", mark.getDomAttribute("data-verdict"));
                }
                unsurveyed++;
            }
        }
        assertTrue(unsurveyed > 0, "the sample has a hazard that is not surveyed");
        assertNotEquals("clear", browser.find("#route-verdict").getDomAttribute("data-verdict"));
    }

    @Test
    void tellsTheMistakesOfAFileWithTheirPlaces() throws Exception {
        JsonNode mistaken = JSON.readTree(page.rig());
        ((ObjectNode) mistaken.at("/notches/0")).put("offset", 2);
        Path file = Files.createTempFile("mistaken", ".rig.json");
        try {
            Files.writeString(file, mistaken.toString());
            browser.find("#rig-file").sendKeys(file.toString());

            WebElement item = browser.await(
                    "the mistake is told", b -> b.find("#problem .problem-item[data-pointer='/rig/notches/0/offset']"));

            assertNotNull(item);
            assertEquals("unit-missing", item.getDomAttribute("data-code"));
            assertFalse(item.getText().isBlank());
        } finally {
            Files.delete(file);
        }
    }
}
