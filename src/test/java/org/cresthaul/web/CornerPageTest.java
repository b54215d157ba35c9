package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.cresthaul.server.Requests;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** A corner on the page: the way round as the API has it, what encroaches, and how far it goes back. */
class CornerPageTest {
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

    /** Read in one go: the drawing is made anew when its width changes. */
    private static Object placeOfTractor() {
        return browser.run(
                "return document.querySelector('#corner-view g[data-unit=tractor]').getAttribute('transform')");
    }

    @Test
    void drivesTheCombinationRoundACorner() throws Exception {
        browser.find("#hazard-table tr[data-hazard='C3'] .hazard-open").sendKeys(Keys.ENTER);
        browser.await(
                "the way round is drawn", b -> "ready".equals(b.find("#corner").getDomAttribute("data-status")));
        String configuration = browser.find("#detail").getDomAttribute("data-configuration");
        JsonNode view = TestServer.json(SITE.server()
                .post(
                        "/api/corner",
                        Requests.check(
                                page.route(),
                                page.rig(),
                                ",\"hazard\":\"C3\",\"configuration\":\"" + configuration + "\"")));

        assertEquals(
                view.path("swept").size(),
                browser.list("#corner-view path.swept").size());
        for (WebElement swept : browser.list("#corner-view path.swept")) {
            assertTrue(swept.getDomAttribute("d").length() > 200, "an area is drawn");
        }
        double room = view.at("/least/roomM").doubleValue();
        List<WebElement> least = browser.list("#corner-view .least-room");
        assertEquals(room >= 0 ? 1 : 0, least.size(), "the least room is marked, or the encroachment is");
        for (WebElement mark : least) {
            assertEquals(room, SamplePage.number(mark, "data-room-m"));
        }
        List<Double> widths = new ArrayList<>();
        view.path("widths").forEach(w -> widths.add(w.path("widthM").doubleValue()));
        List<WebElement> drawn = browser.list("#corner-view .lane-width");
        assertTrue(!drawn.isEmpty(), "lane widths are drawn");
        for (WebElement width : drawn) {
            assertTrue(widths.contains(SamplePage.number(width, "data-width-m")), widths.toString());
        }
        int tightest = view.path("tightest").intValue();
        assertEquals(Integer.toString(tightest), browser.find("#corner-slider").getDomAttribute("data-index"));
        List<WebElement> marks = browser.list("#corner-marks .corner-mark");
        assertTrue(marks.size() >= 2, "the wheel goes over and is straight again");
        assertEquals(marks.size(), browser.list("#corner-view circle.mark").size());
        marks.get(0).sendKeys(Keys.ENTER);
        assertEquals(
                view.at("/marks/0/position").asText(),
                browser.find("#corner-slider").getDomAttribute("data-index"));
        browser.find("#corner-tightest").sendKeys(Keys.ENTER);
        Object before = placeOfTractor();
        // Back over the step before: the slider stands just before its buttons.
        browser.press(Keys.chord(Keys.SHIFT, Keys.TAB));
        browser.press(Keys.chord(Keys.SHIFT, Keys.TAB));
        assertEquals(true, browser.run("return document.activeElement.matches('#corner-slider')"));
        browser.press(Keys.HOME);
        WebElement slider = browser.find("#corner-slider");
        assertEquals("0", slider.getDomAttribute("data-index"));
        assertEquals(view.at("/positions/0/stationM").doubleValue(), SamplePage.number(slider, "data-station-m"));
        assertNotEquals(before, placeOfTractor());
        browser.press(Keys.PAGE_UP, Keys.ARROW_RIGHT);
        assertEquals("11", browser.find("#corner-slider").getDomAttribute("data-index"));

        int rows = 0;
        for (WebElement row : browser.list("#corner-comparison tbody tr")) {
            JsonNode cell = page.cell("C3", row.getDomAttribute("data-configuration"));
            assertEquals(cell.path("verdict").textValue(), row.getDomAttribute("data-verdict"));
            assertEquals(cell.at("/corner/valueM").doubleValue(), SamplePage.number(row, "data-value-m"));
            rows++;
        }
        assertEquals(6, rows, "two axle states, three booster states");
        assertEquals(
                SamplePage.governingM(page.cell("C3", configuration)),
                SamplePage.number(browser.find("#result [data-side=corner] .result-value"), "data-value-m"));

        JsonNode swings = page.cell("C3", configuration).at("/corner/swings");
        List<WebElement> units = browser.list("#corner-facts .corner-swings tbody tr");
        assertEquals(swings.size(), units.size());
        for (int i = 0; i < units.size(); i++) {
            assertTrue(
                    units.get(i)
                            .getText()
                            .startsWith(swings.at("/" + i + "/unit").textValue()),
                    units.get(i).getText());
        }
        assertEquals(List.of(), browser.accessibilityViolations());
        assertEquals(List.of(), browser.errors());
        browser.resize(320, 800);
        // A scroll bar down the side may take some of the 320 px.
        assertEquals(true, browser.run("return document.documentElement.scrollWidth <= window.innerWidth"));
    }

    /** Fernholt square with eight feet less around it, alone on its road. */
    @Test
    void whatEncroachesIsHatchedAndLabeledWithItsSize() throws Exception {
        ObjectNode narrow = (ObjectNode) JSON.readTree(page.route());
        for (Iterator<JsonNode> each = narrow.withArray("features").elements(); each.hasNext(); ) {
            JsonNode feature = each.next();
            String id = feature.at("/properties/id").asText();
            if (id.equals("C2")) {
                ((ObjectNode) feature.at("/properties/template/roundabout"))
                        .put("outer", "56 ft")
                        .put("curb", "50 ft");
            } else if (feature.at("/geometry/type").asText().equals("Point")) {
                each.remove();
            }
        }
        Path file = Files.createTempFile("narrow", ".route.geojson");
        try {
            Files.writeString(file, narrow.toString());
            browser.find("#route-file").sendKeys(file.toString());
            browser.await(
                    "the square blocks",
                    b -> b.list("#hazard-table tr[data-hazard='C2'][data-verdict='contact']")
                                            .size()
                                    == 1
                            && b.list("#hazard-table tr[data-hazard='C3']").isEmpty());
            browser.find("#hazard-table tr[data-hazard='C2'] .hazard-open").sendKeys(Keys.ENTER);
            browser.await(
                    "the roundabout is drawn",
                    b -> "C2".equals(b.find("#detail").getDomAttribute("data-hazard"))
                            && "ready".equals(b.find("#corner").getDomAttribute("data-status")));
            browser.find("#corner-comparison tr[data-configuration^='up/trailing'] button")
                    .sendKeys(Keys.ENTER);
            browser.await(
                    "the encroachment is drawn",
                    b -> !b.list("#corner-view path.encroachment").isEmpty());
            assertTrue(
                    browser.find("#corner-view .encroachment-label").getText().endsWith(" over"));
            assertEquals(List.of(), browser.accessibilityViolations());
            assertEquals(List.of(), browser.errors());
        } finally {
            Files.delete(file);
        }
    }

    @Test
    void tellsAtACornerHowFarTheChosenConfigurationGoesBack() {
        browser.find("#hazard-table tr[data-hazard='C3'] .hazard-open").sendKeys(Keys.ENTER);
        browser.await(
                "the way round is drawn", b -> "ready".equals(b.find("#corner").getDomAttribute("data-status")));
        int compared = 0;
        for (JsonNode state : page.report().at("/reversing/states")) {
            String prefix =
                    state.path("lift").textValue() + "/" + state.path("booster").textValue() + "/";
            browser.find("#corner-comparison tr[data-configuration^='" + prefix + "'] button")
                    .sendKeys(Keys.ENTER);
            // The rows are made anew once the way round is there.
            browser.await(
                    prefix + " is told",
                    b -> b.find("#detail").getDomAttribute("data-configuration").startsWith(prefix)
                            && "ready".equals(b.find("#corner").getDomAttribute("data-status"))
                            && b.find("#backing-up")
                                    .getText()
                                    .contains(state.path("label").textValue()));
            for (String pivot : List.of("free", "locked", "lockedLight")) {
                List<WebElement> shown = browser.list("#backing-up [data-backing=" + pivot + "]");
                JsonNode way = state.path(pivot);
                assertEquals(way.isObject() ? 1 : 0, shown.size(), prefix + pivot);
                if (way.isObject()) {
                    double valueM = way.path("limitMetM").doubleValue();
                    assertEquals(valueM, SamplePage.number(shown.get(0), "data-value-m"));
                    assertEquals(way.path("coupling").textValue(), shown.get(0).getDomAttribute("data-coupling"));
                    String words = shown.get(0).getText();
                    assertTrue(words.startsWith((int) Math.floor(valueM / 0.3048) + " ft"), words);
                    assertTrue(
                            words.contains("until the " + way.path("coupling").textValue()), words);
                    compared++;
                }
            }
        }
        assertEquals(10, compared, "six states, two of them with the pivot locked and locked without air");
        String told = browser.find("#backing-up").getText();
        page.report().at("/reversing/cautions").forEach(c -> assertTrue(told.contains(c.textValue()), told));
    }

    @Test
    void tellsNoNumberOfBackingUpWhereNothingIsKnown() throws Exception {
        JsonNode bare = JSON.readTree(page.rig());
        bare.path("stances").forEach(stance -> ((ObjectNode) stance).remove("plan"));
        Path file = Files.createTempFile("bare", ".rig.json");
        try {
            Files.writeString(file, bare.toString());
            browser.find("#rig-file").sendKeys(file.toString());
            browser.await(
                    "C3 is not judged",
                    b -> b.list("#hazard-table tr[data-hazard='C3'][data-verdict='not surveyed']")
                                    .size()
                            == 1);
            browser.find("#hazard-table tr[data-hazard='C3'] .hazard-open").sendKeys(Keys.ENTER);

            String told = browser.await("backing up is told", b -> b.find("#backing-up"))
                    .getText();

            assertTrue(told.contains("how far it can be backed is not known"), told);
            assertEquals(List.of(), browser.list("#backing-up [data-backing]"));
            assertEquals(List.of(), browser.accessibilityViolations());
        } finally {
            Files.delete(file);
        }
    }
}
