package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/**
 * The line of the route, drawn and changed on the page by keyboard and on the map. One visit of the page goes through
 * all of it; every part leaves the route as it was.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class LinePageTest extends OnSmallFiles {
    @BeforeAll
    static void open() {
        openPage(1000);
        browser.await("the forms are open", b -> {
            boolean isOpen = !b.list("#line-edit[open]").isEmpty();
            if (!isOpen) {
                press("#line-edit > summary");
            }
            return isOpen;
        });
        browser.errors();
    }

    private static void press(String selector) {
        browser.find(selector).sendKeys(Keys.ENTER);
    }

    private static void fill(String selector, String text) {
        WebElement field = browser.find(selector);
        field.clear();
        field.sendKeys(text);
    }

    private static void mode(String mode) {
        press(".line-mode[data-mode=" + mode + "]");
        browser.await(
                "the mode is " + mode,
                b -> b.find("#line").getDomAttribute("data-mode").equals(mode));
    }

    /** Waits for the line to have so many points, as the page counts them. */
    private static void awaitPoints(int count) {
        browser.await(
                "the line has " + count + " points",
                b -> b.find("#line-point").getText().contains(" of " + count)
                        && !b.find("#line-said").getText().startsWith("Judging"));
    }

    private static void undoAll() {
        browser.await("all is undone", b -> {
            List<WebElement> undo = b.list("#route-undo:not(:disabled)");
            undo.forEach(u -> u.sendKeys(Keys.ENTER));
            return undo.isEmpty() && b.list("#busy:not(:empty)").isEmpty();
        });
    }

    private static String refused() {
        return browser.await("it is refused", b -> {
            String text = b.find("#line-refused").getText();
            return text.isEmpty() ? null : text;
        });
    }

    @Test
    @Order(1)
    void aPointIsMovedPutInAndTakenOutByKeyboard() throws Exception {
        mode("points");
        // The legs begin 11 m apart: five positions, none in two of them.
        awaitPoints(5);
        press("#line-after");
        browser.await("the next point", b -> b.find("#line-point").getText().startsWith("Point 2 of 5"));
        String before = browser.find("#line-point").getText();

        press(".line-nudge[data-toward=north]");
        press(".line-nudge[data-toward=north]");
        browser.await(
                "two steps are one change",
                b -> b.list("#route-undo").size() == 1
                        && b.find("#line-said").getText().equals("Point 2 is moved."));
        assertFalse(browser.find("#line-point").getText().equals(before));
        press("#route-undo");
        browser.await("it is back", b -> b.find("#line-point").getText().equals(before));

        // On the map the same arrows move the point that has the focus.
        browser.run("document.querySelector('.line-handle[data-chosen=true]').parentElement.focus()");
        browser.press(Keys.ARROW_DOWN);
        browser.await("it is moved on the map", b -> b.list("#route-undo").size() == 1);
        assertEquals(
                true, browser.run("return document.activeElement.matches('#plan-map .line-place')"), "the focus stays");
        undoAll();

        press("#line-insert");
        awaitPoints(6);
        press("#line-remove");
        awaitPoints(5);
        undoAll();

        fill("#line-number", "2" + Keys.ENTER);
        browser.await("the second point", b -> b.find("#line-point").getText().equals(before));
        fill("#line-typed [name=coordinates]", "here");
        browser.find("#line-typed [name=coordinates]").sendKeys(Keys.ENTER);
        browser.await(
                "it is told at its field",
                b -> b.find("#line-at-coordinates").getText().contains("no point on earth"));
        assertEquals("here", browser.find("#line-typed [name=coordinates]").getDomProperty("value"));
        fill("#line-typed [name=coordinates]", "44.61, -93.09");
        browser.find("#line-typed [name=coordinates]").sendKeys(Keys.ENTER);
        assertTrue(refused().startsWith("H01 Quarry spur: the line would run more than 30 m beside it."), refused());
        assertEquals(List.of(), browser.list("#route-undo"));
        assertEquals(List.of(), browser.accessibilityViolations());
        assertEquals(List.of(), browser.errors());
    }

    @Test
    @Order(2)
    void aPointIsDraggedOnTheMap() {
        mode("points");
        fill("#line-number", "5" + Keys.ENTER);
        browser.await("the last point", b -> b.find("#line-point").getText().startsWith("Point 5 of 5"));
        press("#line-show");

        String at = browser.find("#line-point").getText();
        // Along the line: what hangs on it is as near as before.
        browser.drag(".line-handle[data-chosen=true]", 0, -12);
        browser.await(
                "it is where it was dragged",
                b -> !b.find("#line-point").getText().equals(at)
                        && b.find("#line-note").getText().startsWith("Point 5 is moved."));
        press("#route-undo");
        browser.await("it is back", b -> b.find("#line-point").getText().equals(at));
        assertEquals(List.of(), browser.errors());
    }

    /** What is passed a second time by a leg that was drawn on is not surveyed that time, and never clear. */
    @Test
    @Order(3)
    void aLegIsDrawnOnAndAnotherRouteDrawn() throws Exception {
        mode("on");
        fill("#line-typed [name=coordinates]", "44.612, -93.08");
        browser.find("#line-typed [name=coordinates]").sendKeys(Keys.ENTER);
        browser.await("it is drawn", b -> b.find("#line-point").getText().startsWith("2 points drawn"));
        fill("#line-typed [name=bearing]", "NE");
        fill("#line-typed [name=distance]", "500 ft");
        browser.find("#line-typed [name=distance]").sendKeys(Keys.ENTER);
        browser.await("it is drawn", b -> b.find("#line-point").getText().startsWith("3 points drawn"));
        fill("#line-name", "Back to the mill");
        press("#line-finish");
        browser.await(
                "the leg is there",
                b -> b.find("#line-told").getText().contains("passes H03 Pipe rack once more")
                        && b.find("#line-told").getText().contains("passes H04 Ford once more"));
        Object clear = browser.run(
                "return [...document.querySelectorAll('#hazard-table tbody tr')]"
                        + ".filter(row => row.textContent.includes('passed again') && row.dataset.verdict !== 'not surveyed').length");
        assertEquals(0L, clear);
        undoAll();

        mode("new");
        browser.run("const map = document.getElementById('plan-map'), box = map.getBoundingClientRect();"
                + "for (const part of [0.3, 0.6]) for (const type of ['mousedown', 'mouseup', 'click']) {"
                + "  map.dispatchEvent(new MouseEvent(type, {bubbles: true, clientX: box.left + box.width * part,"
                + "    clientY: box.top + box.height / 2}));"
                + "}");
        browser.await("both are drawn", b -> b.find("#line-point").getText().startsWith("2 points drawn"));
        assertEquals(2, browser.list(".line-dot").size());
        fill("#line-name", "My own road");
        press("#line-finish");
        browser.await(
                "it is the route",
                b -> b.find("#title-block [data-field=route]").getText().contains("My own road")
                        && b.list("#hazard-table tbody tr[data-hazard=H01]").isEmpty());
        awaitPoints(2);
        undoAll();
        browser.await(
                "the route before is back",
                b -> b.find("#title-block [data-field=route]").getText().contains("Two legs"));
        assertEquals(List.of(), browser.errors());
    }

    @Test
    @Order(4)
    void whatGoesWithACutAndATurnIsToldBeforeItGoes() throws Exception {
        mode("points");
        browser.list(".line-part > summary").forEach(s -> s.sendKeys(Keys.ENTER));
        fill("#line-cut [name=cut]", "90 mi" + Keys.ENTER);
        browser.await(
                "it is told at its field", b -> b.find("#line-at-cut").getText().contains("no place on this line"));
        fill("#line-cut [name=cut]", "44.6165, -93.08" + Keys.ENTER);
        browser.await("what goes is told", b -> b.find("#line-goes").getText().contains("H04 Ford"));
        assertEquals(List.of(), browser.list("#route-undo"));
        press("#line-do");
        browser.await(
                "it is cut",
                b -> b.list("#hazard-table tbody tr[data-hazard=H04]").isEmpty()
                        && !b.list("#hazard-table tbody tr[data-hazard=H03]").isEmpty());
        undoAll();

        press("#line-reverse button");
        assertTrue(refused().contains("Say whether the way back"), refused());
        browser.find("#line-reverse [value=same]").sendKeys(Keys.SPACE);
        press("#line-reverse button");
        browser.await(
                "what is taken off is told",
                b -> b.find("#line-goes").getText().contains("H05 Mill turn: its template"));
        assertEquals(List.of(), browser.accessibilityViolations());
        press("#line-do");
        browser.await("it is turned", b -> b.find("#line-said").getText().equals("The line runs the other way."));
        // In one question to the page, which may draw its rows anew between two.
        assertEquals(
                List.of("H04", "not surveyed"),
                browser.run("return [document.querySelector('#hazard-table tbody tr').dataset.hazard,"
                        + " document.querySelector('#hazard-table tr[data-hazard=H05]').dataset.verdict]"));
        undoAll();
        assertEquals(List.of(), browser.errors());
    }

    @Test
    @Order(5)
    void anotherRouteIsJoinedFromAFile() throws Exception {
        Path file = Files.createTempFile("more", ".route.geojson");
        Files.writeString(
                file,
                "{\"type\": \"FeatureCollection\", \"cresthaul\": \"route/1\", \"name\": \"More\", \"features\": ["
                        + "{\"type\": \"Feature\", \"properties\": {\"route\": \"Far road\"}, \"geometry\": {"
                        + "\"type\": \"LineString\", \"coordinates\": [[-93.08, 44.6202], [-93.08, 44.63]]}}]}",
                StandardCharsets.UTF_8);
        browser.find("#line-file").sendKeys(file.toString());
        browser.await("it is told", b -> b.find("#line-asked").getText().contains("gap of 22 m"));
        press("#line-do");
        awaitPoints(7);
        undoAll();
        Files.writeString(file, "{}");
        browser.find("#line-file").sendKeys(file.toString());
        browser.await(
                "it is refused at its row",
                b -> b.find("#line-at-join").getText().contains("no route file"));
        Files.delete(file);
    }

    @Test
    @Order(6)
    void isAccessibleInTheDarkAndOnAPhone() throws Exception {
        browser.prefer("dark");
        browser.resize(390, 844);
        assertEquals(List.of(), browser.accessibilityViolations());
        assertEquals(
                false,
                browser.run("return document.documentElement.scrollWidth > document.documentElement.clientWidth"));
        press(".line-mode[data-mode=off]");
        browser.await("it is done", b -> b.list(".line-handle").isEmpty());
        browser.prefer("light");
    }
}
