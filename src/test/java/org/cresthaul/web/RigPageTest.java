package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import org.cresthaul.rig.RigTexts;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The rig, taped on the page: figures by keyboard, the drawing that echoes them, and the way back. */
class RigPageTest extends OnSmallFilesWithoutCorner {
    private static final ObjectMapper JSON = new ObjectMapper();
    /** A hundred and more are walked under Node.js; every one here is a check. */
    private static final int STEPS = 6;

    @BeforeEach
    void open() {
        openPage(900);
        // What is saved as a file is kept here instead, to be read.
        browser.run(
                "window.savedFiles = []; const make = URL.createObjectURL;"
                        + "URL.createObjectURL = blob => { blob.text().then(t => window.savedFiles.push(t)); return make(blob); };");
        browser.find("#rig-edit > summary").sendKeys(Keys.ENTER);
        browser.await("the rig is shown", b -> !b.list(".rig-input").isEmpty());
        browser.errors();
    }

    private static String row(String id) {
        return ".rig-input[data-row='" + id + "']";
    }

    private static String said(String id) {
        return browser.find(row(id)).getDomProperty("value");
    }

    private static void type(String id, String text) {
        browser.run(
                "const input = document.querySelector(arguments[0]); const group = input.closest('details:not(#rig-edit)');"
                        + "if (group) group.open = true;",
                row(id));
        WebElement field = browser.find(row(id));
        field.sendKeys(Keys.chord(Keys.CONTROL, "a"));
        field.sendKeys(text + Keys.ENTER);
    }

    private static void awaitForce(String what) {
        browser.await(
                what + " is in force",
                b -> b.find("#rig-state").getText().isEmpty()
                        && b.find("#busy").getText().isEmpty()
                        && b.find("#revisions").getText().contains(what));
    }

    private static JsonNode saved() throws Exception {
        return JSON.readTree(savedText());
    }

    private static String savedText() {
        browser.run("window.savedFiles.length = 0");
        browser.find("#rig-save").sendKeys(Keys.ENTER);
        return (String) browser.await("the file is saved", b -> b.run("return window.savedFiles[0]"));
    }

    private static List<String> answer() {
        return browser.list("#hazard-table tbody tr").stream()
                .map(r -> r.getDomAttribute("data-value-m"))
                .toList();
    }

    /** Metric in the file, feet and inches on the page: -3.4 m of the deck front is 3.4 m behind the kingpin. */
    @Test
    void aDistanceMovesWhatLiesBehindItAndTheAnswerIsAnother() throws Exception {
        List<String> before = answer();
        type("trailer/deckRear/along", "8.4 m");
        awaitForce("deck front to deck rear, 8.4 m");
        assertNotEquals(before, answer());
        JsonNode trailer = saved().at("/stances/0/trailer");
        // The deck was 7.4 m long: all behind its front is a meter farther back, and nothing ahead of that moved.
        assertEquals("-11.8 m", trailer.at("/deckRear/x").textValue());
        assertEquals("-3.4 m", trailer.at("/deckFront/x").textValue());
        assertEquals("-12.6 m", trailer.at("/axles/0/x").textValue());
        assertEquals("-15.4 m", trailer.at("/axles/2/x").textValue());
        assertEquals("-16.2 m", trailer.at("/boosterHinge/x").textValue());
        assertEquals("-16.2 m", trailer.at("/underside/0/x").textValue());
        assertEquals("-3.3 m", trailer.at("/underside/4/x").textValue());
        assertEquals("-10 m", trailer.at("/load/0/outline/0/x").textValue());

        browser.find("#route-undo").sendKeys(Keys.ENTER);
        browser.await("it is taken back", b -> answer().equals(before));
        browser.find("#route-redo").sendKeys(Keys.ENTER);
        awaitForce("deck front to deck rear, 8.4 m");
        assertEquals("-11.8 m", saved().at("/stances/0/trailer/deckRear/x").textValue());
        assertEquals(List.of(), browser.errors());
    }

    /** What is taken back is the very file, byte for byte. */
    @Test
    void whatIsTakenBackIsTheFileAsItWas() throws Exception {
        type("tractor/steer/along", "3 ft 1 in");
        awaitForce("front of the tractor to steer axle, 3 ft 1 in");
        // 37 in are 0.9398 m.
        assertEquals("0.9398 m", saved().at("/stances/0/tractor/underside/1/x").textValue());
        assertEquals("3 ft 1 in", said("tractor/steer/along"));
        type("booster/rear/along", "0.7 m");
        awaitForce("booster axle to rear end of booster, 0.7 m");
        assertEquals("-3.9 m", saved().at("/stances/0/booster/topside/0/x").textValue());
        browser.find("#route-undo").sendKeys(Keys.ENTER);
        browser.await("one is taken back", b -> !b.list("#route-redo").isEmpty());
        browser.find("#route-undo").sendKeys(Keys.ENTER);
        browser.await("both are taken back", b -> b.list("#route-undo").isEmpty());
        assertEquals(RigTexts.RIG, savedText());
    }

    @Test
    void aFigureThatIsNoneIsToldAtItsRowAndNothingIsLost() {
        List<String> before = answer();
        type("tractor/drive-1/along", "44");
        browser.await(
                "it is told",
                b -> b.find("#said-tractor-drive-1-along").getText().contains("is not a length"));
        assertEquals("44", said("tractor/drive-1/along"));
        assertEquals(before, answer());
        browser.find(row("tractor/drive-1/along")).sendKeys(Keys.ESCAPE);
        assertEquals("", browser.find("#said-tractor-drive-1-along").getText());

        // The server's own reader: a deck that is above the outline of its trailer.
        type("trailer/deckFront/height", "9 ft");
        browser.await(
                "the server's problem stands at its row",
                b -> b.find("#said-trailer-deckFront-height").getText().contains("The deck is"));
        assertEquals(
                "/rig/stances/0/trailer/deckFront/h",
                browser.find("#said-trailer-deckFront-height").getDomAttribute("data-pointer"));
        assertEquals("9 ft", said("trailer/deckFront/height"));
        assertEquals(before, answer());
        assertEquals(List.of(), browser.list("#route-undo"));

        // Another figure comes on top of it, and the first is still there; then back to what was.
        type("trailer/deckFront/along", "3.5 m");
        browser.await(
                "it is still not taken",
                b -> b.find("#busy").getText().isEmpty()
                        && b.find("#said-trailer-deckFront-height").getText().contains("The deck is"));
        assertEquals("9 ft", said("trailer/deckFront/height"));
        browser.find("#rig-give-up").sendKeys(Keys.ENTER);
        browser.await(
                "the rig is as it was", b -> b.find("#rig-state").getText().isEmpty());
        assertEquals("23.62 in", said("trailer/deckFront/height"));
        assertEquals("", browser.find("#problem").getText());
    }

    /** Two figures that only make sense together: the deck is higher, and its outline with it. */
    @Test
    void whatIsRefusedAloneIsTakenTogether() throws Exception {
        type("trailer/deckRear/height", "1.2 m");
        browser.await(
                "the deck is above the outline",
                b -> b.find("#said-trailer-deckRear-height").getText().contains("The deck is"));
        type("trailer/topside-0/height", "1.3 m");
        // 1.3 m at the rear end and 1 m at the deck front are 1.19 m at the deck rear.
        awaitForce("height of deck rear, 1.2 m");
        assertEquals("1.2 m", saved().at("/stances/0/trailer/deckRear/h").textValue());
        browser.find("#route-undo").sendKeys(Keys.ENTER);
        browser.await("all of it is one change", b -> b.list("#route-undo").isEmpty());
    }

    @Test
    void aFigureIsFoundInTheDrawingAndTheOtherWayRound() {
        browser.find(row("tractor/drive-1/along")).click();
        browser.await(
                "the drawing shows it",
                b -> "tractor/drive-1/along".equals(b.find(".tape-dim.chosen").getDomAttribute("data-row")));
        type("tractor/drive-1/along", "44 in");
        awaitForce("drive axle 1 to drive axle 2, 44 in");
        assertEquals("44 in", browser.find(".tape-dim.chosen .tape-figure").getText());
        assertTrue(
                browser.find(".tape-dim.chosen").getDomAttribute("aria-label").endsWith("44 in"));

        // By keyboard from the drawing: along it, then to the row.
        browser.run("document.querySelector('#rig-side .tape-dim[tabindex=\"0\"]').focus()");
        browser.press(Keys.END);
        String last = (String) browser.run("return document.activeElement.dataset.row");
        browser.press(Keys.ENTER);
        assertEquals(last, browser.run("return document.activeElement.dataset.row"));
        assertEquals(true, browser.run("return document.activeElement.matches('.rig-input')"));

        // A width in the view from above, with the mouse; its group opens.
        browser.find("#rig-above .tape-dim[data-row='trailer/plan/loadWidth/value']")
                .click();
        assertEquals("trailer/plan/loadWidth/value", browser.run("return document.activeElement.dataset.row"));
        assertTrue(browser.find(row("trailer/plan/loadWidth/value")).isDisplayed());
    }

    @Test
    void theFirstAndTheLastAxleAreDimensioned() {
        List<String> dims = browser.list("#rig-side .tape-dim").stream()
                .map(d -> d.getDomAttribute("data-row"))
                .toList();
        assertTrue(dims.containsAll(List.of(
                "tractor/steer/along",
                "tractor/steer/height",
                "trailer/trailer-2/along",
                "booster/axle/along",
                "booster/rear/along")));
        // As far as it is drawn it is in the file: 3.2 m from hinge to axle, 4.4 m from steer axle to drive axle.
        double ratio = ((Number) browser.run("const long = row => document.querySelector("
                        + "`.tape-dim[data-row='${row}'] .tape-line`).getBBox().width;"
                        + "return long('booster/axle/along') / long('tractor/drive-0/along')"))
                .doubleValue();
        assertEquals(3.2 / 4.4, ratio, 0.01);
    }

    @Test
    void changesAreTakenBackOneByOne() throws Exception {
        for (int i = 1; i <= STEPS; i++) {
            String typed = 1300 + i + " mm";
            type("tractor/drive-1/along", typed);
            awaitForce("drive axle 2, " + typed);
        }
        for (int i = STEPS; i >= 1; i--) {
            String now = i > 1 ? "drive axle 2, " + (1299 + i) + " mm" : "as it was opened";
            browser.find("#route-undo").sendKeys(Keys.ENTER);
            browser.await(
                    "step " + i + " is taken back",
                    b -> b.find("#revisions").getText().contains(now)
                            && b.find("#busy").getText().isEmpty());
        }
        assertEquals(RigTexts.RIG, savedText());
    }

    private static void ask(String change, String... figures) {
        browser.run("document.querySelector('#rig-changes').open = true");
        browser.find("#rig-change-kind").sendKeys(change);
        for (int i = 0; i < figures.length; i += 2) {
            browser.find("#rig-change [name=" + figures[i] + "]").sendKeys(figures[i + 1]);
        }
        browser.find("#rig-change button[type=submit]").sendKeys(Keys.ENTER);
    }

    /** Behind the last axle at 14.4 m a fourth at 1.4 m; the hinge at 15.2 m is then at 16.6 m. */
    @Test
    void whatIsAddedAsksForWhatIsMissing() throws Exception {
        ask("Add an axle behind the trailer axles, as the lift axle", "spacing", "1.4 m");
        assertEquals(
                "Hub over the ground is missing.",
                browser.find("#rig-change-said").getText());
        browser.find("#rig-change [name=radius]").sendKeys("0.42 m" + Keys.ENTER);
        awaitForce("one more of the trailer axles");
        JsonNode trailer = saved().at("/stances/0/trailer");
        assertEquals(4, trailer.path("axles").size());
        assertEquals("-15.8 m", trailer.at("/axles/3/x").textValue());
        assertEquals("-16.6 m", trailer.at("/boosterHinge/x").textValue());
        assertEquals(1, browser.list(row("trailer/trailer-3/along")).size());
        browser.find("#route-undo").sendKeys(Keys.ENTER);
        browser.await("it is one change", b -> b.list("#route-undo").isEmpty());
        assertEquals(RigTexts.RIG, savedText());
    }

    /** A second booster, taken out again, and the first too: the rig without one has other configurations. */
    @Test
    void whatIsPutOnAndTakenOffHasOtherConfigurations() throws Exception {
        int before = browser.list("#configuration-booster option").size();
        ask(
                "Add a booster behind",
                "hingeX",
                "0.7 m",
                "hingeH",
                "0.8 m",
                "axle",
                "2.5 m",
                "radius",
                "0.42 m",
                "overhang",
                "0.6 m",
                "under",
                "0.4 m",
                "over",
                "1 m",
                "pitch",
                "10 deg");
        awaitForce("one more booster");
        assertEquals("-3.9 m", saved().at("/stances/0/booster/nextHinge/x").textValue());
        assertEquals(2, browser.list(".rig-part[data-part^=booster]").size());
        ask("Take out booster 2");
        awaitForce("without booster 2");
        ask("Take out the booster");
        awaitForce("without the booster");
        assertEquals(0, browser.list(".rig-part[data-part^=booster]").size());
        assertTrue(browser.list("#configuration-booster option").size() < before);
        assertTrue(saved().at("/stances/0/plan/booster").isMissingNode());
    }

    @Test
    void whatIsBegunAnewCanBeTakenBack() throws Exception {
        browser.run("document.querySelector('#rig-changes').open = true");
        browser.find("#rig-begin [name=name]").sendKeys("Lowbed of the north yard");
        browser.find("#rig-begin [name=bare]").click();
        browser.find("#rig-begin button").sendKeys(Keys.ENTER);
        awaitForce("beginning Lowbed of the north yard");
        JsonNode rig = saved();
        assertEquals("Lowbed of the north yard", rig.path("name").textValue());
        assertTrue(rig.at("/stances/0/trailer/load").isMissingNode());
        assertTrue(browser.find("#rig-stance").getText().contains("Lowbed of the north yard"));
        browser.find("#route-undo").sendKeys(Keys.ENTER);
        browser.await(
                "the rig before is back", b -> !b.find("#rig-stance").getText().contains("north yard"));
    }

    /** By hand: axles of the trailer are 13 m behind the kingpin, that of the booster 18.4 m: 6.95 m for the piece. */
    @Test
    void whatIsOnScaleTicketsTellsThePiece() {
        browser.run("document.querySelector('#rig-tickets').open = true");
        ticket("steer", "5000 kg", "5119 kg");
        ticket("drive", "7 t", "18881 kg");
        ticket("trailer", "8 t", "18 t");
        assertEquals(
                "Not determined yet: both tickets of the booster.",
                browser.find("#rig-tickets-outcome").getText());
        ticket("booster-0", "2 t", "4 t");
        String told = browser.find("#rig-tickets-outcome").getText();
        assertTrue(told.contains("52,911 lb") && told.contains("22 ft 10 in behind the kingpin"), told);
        assertTrue(told.contains("Not determined by tickets: how high"), told);
        assertTrue(told.contains("weighs no piece"), told);
        assertEquals("true", browser.find("#rig-tickets-put").getDomAttribute("disabled"));
    }

    private static void ticket(String group, String empty, String loaded) {
        browser.find("#rig-tickets-form [name='" + group + "/empty']").sendKeys(empty);
        browser.find("#rig-tickets-form [name='" + group + "/loaded']").sendKeys(loaded);
    }

    @ParameterizedTest(name = "{0}, {1} px")
    @CsvSource({"light, 1280", "dark, 1280", "light, 390", "dark, 390"})
    void isAccessibleOpenAsItStands(String scheme, int width) throws Exception {
        browser.prefer(scheme);
        browser.resize(width, 900);
        browser.run("document.querySelectorAll('#rig-edit details').forEach(group => { group.open = true; })");
        browser.find("#rig-change-kind").sendKeys("Add a jeep");
        browser.find(row("trailer/deckFront/along")).click();
        type("tractor/drive-1/along", "44");
        assertEquals(List.of(), browser.accessibilityViolations());
        assertEquals(
                false,
                browser.run("return document.documentElement.scrollWidth > document.documentElement.clientWidth"));
        // What a list scrolls to makes the page no longer: it ends where its content does.
        assertEquals(
                false,
                browser.run("return document.documentElement.scrollHeight"
                        + " > Math.ceil(document.body.getBoundingClientRect().bottom + scrollY) + 1"));
        browser.prefer("light");
    }
}
