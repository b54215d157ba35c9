package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.ImageIO;
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
import org.openqa.selenium.WebElement;

/** The page in a real browser, on the sample: it shows the numbers of the API, works by keyboard, and hides nothing. */
class PageTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static TestServer server;
    private static Browser browser;
    private static String route;
    private static String rig;
    private static JsonNode report;

    @BeforeAll
    static void start() throws Exception {
        Samples samples = Samples.bundled();
        server = new TestServer(samples);
        route = new String(samples.routes().get(0).document(), StandardCharsets.UTF_8);
        rig = new String(samples.rigs().get(0).document(), StandardCharsets.UTF_8);
        report = TestServer.json(server.post("/api/check", Requests.check(route, rig, "")));
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
    void openTheSample() throws IOException {
        browser.resize(1280, 900);
        browser.prefer("light");
        browser.open("about:blank");
        browser.requests();
        browser.errors();
        browser.open(server.url());
        browser.await("the sample's report is shown", b -> b.find("#sheets").isDisplayed()
                && !b.list("#hazard-table tbody tr").isEmpty());
    }

    private static JsonNode hazard(String id) {
        for (JsonNode hazard : report.path("hazards")) {
            if (hazard.path("id").textValue().equals(id)) {
                return hazard;
            }
        }
        throw new AssertionError("the report has no hazard " + id);
    }

    private static JsonNode cell(String hazard, String configuration) {
        for (JsonNode cell : hazard(hazard).path("cells")) {
            if (cell.path("configuration").textValue().equals(configuration)) {
                return cell;
            }
        }
        throw new AssertionError("no cell " + configuration + " at " + hazard);
    }

    /** A hazard whose ground is judged, so that a truck can be seen to move over it. */
    private static String drawnHazard() {
        for (JsonNode hazard : report.path("hazards")) {
            if (hazard.at("/cells/0/ground").isObject() && hazard.path("kind").textValue().equals("rail-crossing")) {
                return hazard.path("id").textValue();
            }
        }
        throw new AssertionError("the sample has no surveyed crossing");
    }

    /** The gap that decides a cell: the one that is least against what it needs; none when nothing is known. */
    private static Double governingM(JsonNode cell) {
        Double least = null;
        double spare = Double.POSITIVE_INFINITY;
        for (String side : new String[] {"ground", "overhead", "corner"}) {
            JsonNode gap = cell.path(side);
            if (gap.isObject() && gap.path("valueM").doubleValue() - gap.path("requiredM").doubleValue() < spare) {
                spare = gap.path("valueM").doubleValue() - gap.path("requiredM").doubleValue();
                least = gap.path("valueM").doubleValue();
            }
        }
        return least;
    }

    private static Double number(WebElement element, String attribute) {
        String text = element.getDomAttribute(attribute);
        return text == null ? null : Double.valueOf(text);
    }

    private static Double shownM(String selector) {
        return number(browser.find(selector), "data-value-m");
    }

    private static String chosenConfiguration() {
        return browser.find("#route-verdict").getDomAttribute("data-configuration");
    }

    @Test
    void showsTheVerdictsOfTheApi() {
        String configuration = chosenConfiguration();
        List<WebElement> rows = browser.list("#hazard-table tbody tr");

        assertEquals(report.path("hazards").size(), rows.size());
        assertTrue(rows.size() >= 12, "the sample has 12 hazards or more");
        for (WebElement row : rows) {
            JsonNode cell = cell(row.getDomAttribute("data-hazard"), configuration);
            assertEquals(cell.path("verdict").textValue(), row.getDomAttribute("data-verdict"));
            assertEquals(governingM(cell), number(row, "data-value-m"));
            assertTrue(row.getText().toLowerCase(Locale.ROOT).contains(cell.path("verdict").textValue()),
                    "the verdict is told in words: " + row.getText());
        }
    }

    @Test
    void showsWhatTheReportIsMadeFrom() {
        Map<String, String> shown = new TreeMap<>();
        browser.list("#title-block dd[data-field]")
                .forEach(dd -> shown.put(dd.getDomAttribute("data-field"), dd.getText()));

        assertTrue(shown.get("version").contains(report.path("version").textValue()), shown.toString());
        assertTrue(report.at("/route/sha256").textValue().startsWith(shown.get("route-sha256").substring(0, 8)),
                shown.toString());
        assertTrue(report.at("/rig/sha256").textValue().startsWith(shown.get("rig-sha256").substring(0, 8)),
                shown.toString());
        String notes = browser.find("#notes").getText();
        assertTrue(notes.contains("turning at its corners"), "the report judges corners, so the sheet does: " + notes);
        report.path("cautions").forEach(c -> assertTrue(notes.contains(c.textValue()), notes));
        report.path("hazards").forEach(h -> {
            if (!h.path("surveyed").booleanValue()) {
                assertEquals(1, browser.list("#not-checked li[data-hazard='" + h.path("id").textValue() + "']").size());
            }
        });
    }

    @Test
    void opensAHazardAndMovesTheTruckByKeyboard() throws Exception {
        String hazard = drawnHazard();
        browser.run("document.body.focus()");
        browser.tabTo(".hazard-open", 60);
        for (int i = 0; i < report.path("hazards").size() && !focusedHazard().equals(hazard); i++) {
            browser.press(Keys.ARROW_DOWN);
        }
        assertEquals(hazard, focusedHazard());
        browser.press(Keys.ENTER);
        browser.await("the truck is drawn", b -> "ready".equals(b.find("#passage").getDomAttribute("data-status")));
        assertEquals(hazard, browser.find("#detail").getDomAttribute("data-hazard"));
        String configuration = browser.find("#detail").getDomAttribute("data-configuration");
        JsonNode passage = passage(hazard, configuration);

        // It opens at the tightest position, which is the report's clearance.
        int tightest = passage.path("tightest").intValue();
        assertShown(passage, tightest);
        assertEquals(governingM(cell(hazard, configuration)), shownM("#passage-clearance"));

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
        return TestServer.json(server.post("/api/passage", Requests.check(route, rig,
                ",\"hazard\":\"" + hazard + "\",\"configuration\":\"" + configuration + "\"")));
    }

    private static void assertShown(JsonNode passage, int index) {
        JsonNode position = passage.path("positions").path(index);
        WebElement slider = browser.find("#passage-slider");

        assertEquals(Integer.toString(index), slider.getDomAttribute("data-index"));
        assertEquals(position.path("steerM").doubleValue(), number(slider, "data-steer-m"));
        assertEquals(position.path("groundM").doubleValue(), shownM("#passage-clearance"));
    }

    /** Read in one go: the drawing is made anew when its width changes. */
    private static Object placeOfTractor() {
        return browser.run("return document.querySelector('#corner-view g[data-unit=tractor]').getAttribute('transform')");
    }

    @Test
    void drivesTheCombinationRoundACorner() throws Exception {
        browser.find("#hazard-table tr[data-hazard='C3'] .hazard-open").sendKeys(Keys.ENTER);
        browser.await("the way round is drawn", b -> "ready".equals(b.find("#corner").getDomAttribute("data-status")));
        String configuration = browser.find("#detail").getDomAttribute("data-configuration");
        JsonNode view = TestServer.json(server.post("/api/corner", Requests.check(route, rig,
                ",\"hazard\":\"C3\",\"configuration\":\"" + configuration + "\"")));

        assertEquals(view.path("swept").size(), browser.list("#corner-view path.swept").size());
        for (WebElement swept : browser.list("#corner-view path.swept")) {
            assertTrue(swept.getDomAttribute("d").length() > 200, "an area is drawn");
        }
        int tightest = view.path("tightest").intValue();
        assertEquals(Integer.toString(tightest), browser.find("#corner-slider").getDomAttribute("data-index"));
        List<WebElement> marks = browser.list("#corner-marks .corner-mark");
        assertTrue(marks.size() >= 2, "the wheel goes over and is straight again");
        assertEquals(marks.size(), browser.list("#corner-view circle.mark").size());
        marks.get(0).sendKeys(Keys.ENTER);
        assertEquals(view.at("/marks/0/position").asText(), browser.find("#corner-slider").getDomAttribute("data-index"));
        browser.find("#corner-tightest").sendKeys(Keys.ENTER);
        Object before = placeOfTractor();
        // Back over the step before: the slider stands just before its buttons.
        browser.press(Keys.chord(Keys.SHIFT, Keys.TAB));
        browser.press(Keys.chord(Keys.SHIFT, Keys.TAB));
        assertEquals(true, browser.run("return document.activeElement.matches('#corner-slider')"));
        browser.press(Keys.HOME);
        WebElement slider = browser.find("#corner-slider");
        assertEquals("0", slider.getDomAttribute("data-index"));
        assertEquals(view.at("/positions/0/stationM").doubleValue(), number(slider, "data-station-m"));
        assertNotEquals(before, placeOfTractor());
        browser.press(Keys.PAGE_UP, Keys.ARROW_RIGHT);
        assertEquals("11", browser.find("#corner-slider").getDomAttribute("data-index"));

        int rows = 0;
        for (WebElement row : browser.list("#corner-comparison tbody tr")) {
            JsonNode cell = cell("C3", row.getDomAttribute("data-configuration"));
            assertEquals(cell.path("verdict").textValue(), row.getDomAttribute("data-verdict"));
            assertEquals(cell.at("/corner/valueM").doubleValue(), number(row, "data-value-m"));
            rows++;
        }
        assertEquals(6, rows, "two axle states, three booster states");
        assertEquals(governingM(cell("C3", configuration)),
                number(browser.find("#result [data-side=corner] .result-value"), "data-value-m"));

        // What encroaches is hatched and labeled with its size.
        browser.find("#hazard-table tr[data-hazard='C2'] .hazard-open").sendKeys(Keys.ENTER);
        browser.await("the roundabout is drawn", b -> "C2".equals(b.find("#detail").getDomAttribute("data-hazard"))
                && "ready".equals(b.find("#corner").getDomAttribute("data-status")));
        browser.find("#corner-comparison tr[data-configuration^='up/trailing'] button").sendKeys(Keys.ENTER);
        browser.await("the encroachment is drawn", b -> !b.list("#corner-view path.encroachment").isEmpty());
        assertTrue(browser.find("#corner-view .encroachment-label").getText().endsWith(" over"));
        assertEquals(List.of(), browser.accessibilityViolations());
        assertEquals(List.of(), browser.errors());
        browser.resize(320, 800);
        // A scroll bar down the side may take some of the 320 px.
        assertEquals(true, browser.run("return document.documentElement.scrollWidth <= window.innerWidth"));
    }

    @Test
    void tellsAtACornerHowFarTheChosenConfigurationGoesBack() {
        browser.find("#hazard-table tr[data-hazard='C3'] .hazard-open").sendKeys(Keys.ENTER);
        browser.await("the way round is drawn", b -> "ready".equals(b.find("#corner").getDomAttribute("data-status")));
        int compared = 0;
        for (JsonNode state : report.at("/reversing/states")) {
            String prefix = state.path("lift").textValue() + "/" + state.path("booster").textValue() + "/";
            browser.find("#corner-comparison tr[data-configuration^='" + prefix + "'] button").sendKeys(Keys.ENTER);
            // The rows are made anew once the way round is there.
            browser.await(prefix + " is told", b -> b.find("#detail").getDomAttribute("data-configuration").startsWith(prefix)
                    && "ready".equals(b.find("#corner").getDomAttribute("data-status"))
                    && b.find("#backing-up").getText().contains(state.path("label").textValue()));
            for (String pivot : List.of("free", "locked", "lockedLight")) {
                List<WebElement> shown = browser.list("#backing-up [data-backing=" + pivot + "]");
                JsonNode way = state.path(pivot);
                assertEquals(way.isObject() ? 1 : 0, shown.size(), prefix + pivot);
                if (way.isObject()) {
                    double valueM = way.path("limitMetM").doubleValue();
                    assertEquals(valueM, number(shown.get(0), "data-value-m"));
                    assertEquals(way.path("coupling").textValue(), shown.get(0).getDomAttribute("data-coupling"));
                    String words = shown.get(0).getText();
                    assertTrue(words.startsWith((int) Math.floor(valueM / 0.3048) + " ft"), words);
                    assertTrue(words.contains("until the " + way.path("coupling").textValue()), words);
                    compared++;
                }
            }
        }
        assertEquals(10, compared, "six states, two of them with the pivot locked and locked without air");
        String told = browser.find("#backing-up").getText();
        report.at("/reversing/cautions").forEach(c -> assertTrue(told.contains(c.textValue()), told));
    }

    @Test
    void tellsNoNumberOfBackingUpWhereNothingIsKnown() throws Exception {
        JsonNode bare = JSON.readTree(rig);
        bare.path("stances").forEach(stance -> ((ObjectNode) stance).remove("plan"));
        Path file = Files.createTempFile("bare", ".rig.json");
        try {
            Files.writeString(file, bare.toString());
            browser.find("#rig-file").sendKeys(file.toString());
            browser.await("C3 is not judged", b -> b.list("#hazard-table tr[data-hazard='C3'][data-verdict='not surveyed']").size() == 1);
            browser.find("#hazard-table tr[data-hazard='C3'] .hazard-open").sendKeys(Keys.ENTER);

            String told = browser.await("backing up is told", b -> b.find("#backing-up")).getText();

            assertTrue(told.contains("how far it can be backed is not known"), told);
            assertEquals(List.of(), browser.list("#backing-up [data-backing]"));
            assertEquals(List.of(), browser.accessibilityViolations());
        } finally {
            Files.delete(file);
        }
    }

    @Test
    void everyCellOfTheMatrixIsTheApis() {
        int compared = 0;
        for (JsonNode hazard : report.path("hazards")) {
            String id = hazard.path("id").textValue();
            browser.find("#hazard-table tr[data-hazard='" + id + "'] .hazard-open").sendKeys(Keys.ENTER);
            browser.await(id + " is open", b -> id.equals(b.find("#detail").getDomAttribute("data-hazard")));
            int covered = 0;
            for (WebElement button : browser.list("#matrix button[data-configurations]")) {
                Double shown = number(button, "data-value-m");
                assertEquals(governingM(cell(id, button.getDomAttribute("data-configuration"))), shown, id);
                for (String configuration : button.getDomAttribute("data-configurations").split(" ")) {
                    JsonNode cell = cell(id, configuration);
                    assertEquals(cell.path("verdict").textValue(), button.getDomAttribute("data-verdict"));
                    assertEquals(eighths(shown), eighths(governingM(cell)), "reads alike: " + id + " " + configuration);
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
        for (JsonNode hazard : report.path("hazards")) {
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

    @ParameterizedTest
    @CsvSource({"light, 1280", "dark, 1280", "light, 320", "dark, 320"})
    void isAccessibleAndNeverWiderThanTheScreen(String scheme, int width) throws Exception {
        browser.prefer(scheme);
        browser.resize(width, 900);
        assertNoHorizontalScrolling(width);
        assertEquals(List.of(), browser.accessibilityViolations());

        browser.find("#hazard-table tr[data-hazard='" + drawnHazard() + "'] .hazard-open").sendKeys(Keys.ENTER);
        browser.await("the truck is drawn", b -> "ready".equals(b.find("#passage").getDomAttribute("data-status")));
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
        browser.find("#hazard-table tr[data-hazard='" + drawnHazard() + "'] .hazard-open").sendKeys(Keys.ENTER);
        browser.await("the truck is drawn", b -> "ready".equals(b.find("#passage").getDomAttribute("data-status")));

        List<String> requests = browser.requests();

        assertTrue(requests.stream().anyMatch(r -> r.endsWith("/api/check")), requests.toString());
        for (String request : requests) {
            assertTrue(request.startsWith(server.url()) || request.startsWith("data:") || request.startsWith("blob:"),
                    request);
        }
        assertEquals(List.of(), browser.errors(), "nothing failed to load, nothing was refused, nothing threw");
    }

    /** Leaves the sheet of the sample in target/; DEVELOPERS.md tells how it gets into the documents. */
    @Test
    void canBePictured() throws Exception {
        browser.await("the plan is there", b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
        browser.run("window.scrollTo(0, 0)");
        byte[] picture = browser.screen();

        BufferedImage image = ImageIO.read(new ByteArrayInputStream(picture));
        assertTrue(image.getWidth() == 1280 && image.getHeight() == 900, image.getWidth() + " x " + image.getHeight());
        // The first screen alone: nobody loads megabytes to read what this is.
        assertTrue(picture.length <= 300_000, picture.length + " bytes");
        assertTrue(Files.size(Path.of("docs", "sample-sheet.png")) <= 300_000, "the picture in docs");
        Files.write(Path.of("target", "sample-sheet.png"), picture);
    }

    @Test
    void tellsTheMistakesOfAFileWithTheirPlaces() throws Exception {
        JsonNode mistaken = JSON.readTree(rig);
        ((ObjectNode) mistaken.at("/notches/0")).put("offset", 2);
        Path file = Files.createTempFile("mistaken", ".rig.json");
        try {
            Files.writeString(file, mistaken.toString());
            browser.find("#rig-file").sendKeys(file.toString());

            WebElement item = browser.await("the mistake is told",
                    b -> b.find("#problem .problem-item[data-pointer='/rig/notches/0/offset']"));

            assertNotNull(item);
            assertEquals("unit-missing", item.getDomAttribute("data-code"));
            assertFalse(item.getText().isBlank());
        } finally {
            Files.delete(file);
        }
    }
}
