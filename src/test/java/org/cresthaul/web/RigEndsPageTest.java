package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.server.Sample;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/**
 * The sample rigs, taped at their ends: with a booster, with a jeep, with two boosters, each from its first axle to its
 * last.
 */
class RigEndsPageTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static TestServer server;
    private static Browser browser;

    @BeforeAll
    static void start() throws Exception {
        Sample route = new Sample("small.route.geojson", RouteTexts.ROUTE.getBytes(StandardCharsets.UTF_8));
        server = TestServer.remembering(
                new Samples(List.of(route), Samples.bundled().rigs(), List.of()));
        browser = new Browser();
    }

    @AfterAll
    static void stop() throws Exception {
        browser.close();
        server.close();
    }

    /** In force; a server that is busy with other checks is asked again, as its answer says. */
    private static boolean isInForce(Browser b) {
        b.list("#rig-again").forEach(again -> again.sendKeys(Keys.ENTER));
        return !b.list("#rig-save").isEmpty();
    }

    /**
     * The expected place is the one before by hand: the distance that is typed, behind the mark it is measured from.
     */
    @ParameterizedTest(name = "{0}: {2}")
    @CsvSource({
        "lowbed-empty, tractor trailer booster rig, booster/axle/along, 8 ft 2 in, /stances/0/booster/axle/x, -8 ft 2 in",
        "lowbed-with-jeep, tractor jeep-0 trailer booster rig, jeep-0/jeep-0/along, 12 ft 1 in,"
                + " /stances/0/jeeps/0/axles/0/x, -12 ft 1 in",
        "lowbed-with-two-boosters, tractor jeep-0 trailer booster boostersBehind-0 rig, boostersBehind-0/axle/along,"
                + " 8 ft 3 in, /stances/0/boostersBehind/0/axle/x, -8 ft 3 in"
    })
    void isTapedFromItsFirstAxleToItsLast(
            String rig, String parts, String row, String typed, String pointer, String expected) throws Exception {
        browser.open("about:blank");
        browser.open(server.url() + "#rig=" + rig);
        browser.await(
                "the rig is checked", b -> !b.list("#hazard-table tbody tr").isEmpty());
        browser.run(
                "window.savedFiles = []; const make = URL.createObjectURL;"
                        + "URL.createObjectURL = blob => { blob.text().then(t => window.savedFiles.push(t)); return make(blob); };");
        browser.find("#rig-edit > summary").sendKeys(Keys.ENTER);
        browser.await("the rig is shown", b -> !b.list(".rig-input").isEmpty());
        assertEquals(
                List.of(parts.split(" ")),
                browser.list(".rig-part").stream()
                        .map(p -> p.getDomAttribute("data-part"))
                        .toList());
        List<String> drawn = browser.list("#rig-side .tape-dim").stream()
                .map(d -> d.getDomAttribute("data-row"))
                .toList();
        assertTrue(drawn.containsAll(List.of("tractor/steer/along", row)), drawn.toString());

        WebElement field = browser.find(".rig-input[data-row='" + row + "']");
        field.sendKeys(Keys.chord(Keys.CONTROL, "a"));
        field.sendKeys(typed + Keys.ENTER);
        browser.await("it is in force", RigEndsPageTest::isInForce);
        browser.find("#rig-save").sendKeys(Keys.ENTER);
        JsonNode saved =
                JSON.readTree((String) browser.await("the file is saved", b -> b.run("return window.savedFiles[0]")));
        assertEquals(expected, saved.at(pointer).textValue());
        assertEquals(
                typed,
                browser.find("#rig-side .tape-dim[data-row='" + row + "'] .tape-figure")
                        .getText());
        assertEquals(List.of(), browser.errors());
    }
}
