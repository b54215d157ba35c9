package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The measures of a corner, typed beside a drawing to scale that carries them; the answer follows. One visit. */
class CornerFormPageTest extends OnSmallFiles {
    private static final String CURB = "#corner-curb-radii-1";

    @BeforeAll
    static void open() {
        openPage(1000);
        open("H05", "#corner-edit");
        browser.await(
                "it is drawn", b -> !b.list("#corner-template .template-dim").isEmpty());
        browser.errors();
    }

    private static void type(String selector, String text) {
        WebElement field = browser.find(selector);
        field.clear();
        field.sendKeys(text);
    }

    private static void await(String status) {
        browser.await(
                "it is " + status,
                b -> b.find("#corner-form").getDomAttribute("data-status").equals(status));
    }

    private static String told(String at) {
        return browser.await("it is told at its field", b -> {
            String text = b.find("#corner-at-" + at).getText();
            return text.isEmpty() ? null : text;
        });
    }

    private static void open(String hazard, String details) {
        browser.run(
                "document.querySelector(`#hazard-table tr[data-hazard=${arguments[0]}] .hazard-open`).click()", hazard);
        browser.await("it is open", b -> {
            boolean isOpen = !b.list(details + "[open]").isEmpty();
            if (!isOpen) {
                b.find(details + " > summary").sendKeys(Keys.ENTER);
            }
            return isOpen;
        });
    }

    /** A corner that nobody has measured is drawn over the map, point by point, and judged by that. */
    @Test
    void anUnmeasuredCornerIsDrawnOverTheMap() throws Exception {
        browser.find("#place-edit > summary").sendKeys(Keys.ENTER);
        browser.find("#place-kind").sendKeys("corner");
        type("#place-add [name=name]", "Mill turn again");
        type("#place-add [name=at]", "44.601, -93.08");
        browser.find("#place-add [name=name]").sendKeys(Keys.ENTER);
        browser.await(
                "it is there", b -> !b.list("#hazard-table tr[data-hazard=C01]").isEmpty());
        open("C01", "#outline-edit");
        browser.find("#outline-draw").sendKeys(Keys.ENTER);
        browser.await(
                "points are taken", b -> b.find("#outline-count").getText().startsWith("0 points"));
        int count = 0;
        // Twelve meters either side of the line, from 100 m before the corner to 100 m behind it.
        double[][] ring = {{-97.3, -25.8}, {12, -10.4}, {12, 100}, {-12, 100}, {-12, 10.4}, {-100.7, -2}};
        for (double[] point : ring) {
            String at =
                    String.format(Locale.ROOT, "%.7f, %.7f", 44.601 + point[1] * 9e-6, -93.08 + point[0] * 1.261e-5);
            type("#outline-typed [name=coordinates]", at);
            browser.find("#outline-typed [name=coordinates]").sendKeys(Keys.ENTER);
            String now = ++count + (count == 1 ? " point" : " points") + " drawn.";
            browser.await(now, b -> b.find("#outline-count").getText().equals(now));
        }
        assertEquals(ring.length, browser.list(".line-dot").size(), "they are on the map");
        browser.find("#outline-shape [name=source]").sendKeys("base map", Keys.ENTER);
        browser.await(
                "its accuracy is asked for",
                b -> b.find("#outline-at-accuracy").getText().startsWith("How far may an edge be off?"));
        assertEquals(List.of(), browser.accessibilityViolations());
        browser.find("#outline-shape [name=accuracy]").sendKeys("1 m", Keys.ENTER);
        browser.await(
                "it is in the list", b -> b.find("#outline-list").getText().contains("pavement"));
        browser.await(
                "it is judged",
                b -> !"not surveyed"
                        .equals(b.find("#hazard-table tr[data-hazard=C01]").getDomAttribute("data-verdict")));
        browser.await("nothing runs", b -> !b.list("#outline-draw:enabled").isEmpty());
        aPointIsDraggedAndMovedByKeys();
        browser.find("#outline-draw").sendKeys(Keys.ENTER);
        for (int i = 0; i < 2; i++) {
            browser.await("nothing runs", b -> b.list("#busy:not(:empty)").isEmpty());
            browser.find("#route-undo").sendKeys(Keys.ENTER);
        }
        browser.await(
                "it is gone", b -> b.list("#hazard-table tr[data-hazard=C01]").isEmpty());
        assertEquals(List.of(), browser.errors());
        open("H05", "#corner-edit");
    }

    /** Of the pavement that was drawn; each is one step back. */
    private static void aPointIsDraggedAndMovedByKeys() throws Exception {
        browser.run("document.querySelector('#plan-map').scrollIntoView({block: 'center'})");
        browser.await("every point has a handle", b -> b.list(".outline-handle").size() == 6);
        // Drawn anew, the map goes where the corner is: pixels are decimeters then, not tens of meters.
        press("#outline-draw");
        press("#outline-draw");
        browser.await(
                "every point has a handle again", b -> b.list(".outline-handle").size() == 6);
        String before = handle(2);
        browser.drag(".outline-handle[data-point='2']", 9, 0);
        browser.await("it is in the route", b -> changes().startsWith("Last change: moving a point of the pavement"));
        browser.await("it is where it was let go", b -> !handle(2).equals(before));
        back();
        browser.await("it is back", b -> handle(2).equals(before));

        // By keys alone: to the next point, and a step that is seen.
        browser.run("document.querySelector('.outline-handle[data-chosen=true]').parentElement.focus()");
        browser.keys(Keys.PAGE_DOWN);
        browser.await(
                "the next is on show",
                b -> "3".equals(b.find(".outline-handle[data-chosen='true']").getDomAttribute("data-point")));
        assertEquals(List.of(), browser.accessibilityViolations());
        browser.keysWith(Keys.SHIFT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
        browser.await("it is in the route", b -> changes().startsWith("Last change: moving a point of the pavement"));
        back();
    }

    private static void press(String selector) {
        browser.await("nothing runs", b -> b.find(selector).isEnabled());
        browser.find(selector).sendKeys(Keys.ENTER);
    }

    private static String changes() {
        return browser.find("#revisions").getText();
    }

    /** Where the handle of a point is on the map. */
    private static String handle(int point) {
        return (String) browser.run(
                "return document.querySelector(`.outline-handle[data-point='${arguments[0]}']`)?.parentElement.style.transform"
                        + " ?? ''",
                point);
    }

    private static void back() {
        browser.await("nothing runs", b -> b.list("#busy:not(:empty)").isEmpty());
        browser.await("it can be undone", b -> b.find("#route-undo").isEnabled());
        browser.find("#route-undo").sendKeys(Keys.ENTER);
        browser.await("it is undone", b -> changes().startsWith("Last change: drawing pavement"));
        browser.await("nothing runs", b -> !b.list("#outline-draw:enabled").isEmpty());
    }

    @Test
    void measuresAreTypedJudgedRefusedAndTakenBack() throws Exception {
        // What was typed stands in the drawing, and leads to its field and back.
        WebElement dim = browser.find("#corner-template .template-dim[data-path='curb.radii.1']");
        assertEquals("R 30 m", dim.findElement(By.tagName("text")).getText());
        dim.sendKeys(Keys.ENTER);
        assertEquals("curb.radii.1", browser.run("return document.activeElement.dataset.path"));
        browser.await(
                "it is marked in the drawing",
                b -> !b.list("#corner-template .template-dim.chosen[data-path='curb.radii.1']")
                        .isEmpty());
        assertEquals(List.of(), browser.accessibilityViolations());

        type(CURB, "25 m");
        browser.await(
                "the answer before is gone",
                b -> b.find("#corner-form-answer").getText().contains("No answer"));
        await("same");
        browser.await("there is an answer", b -> b.find("#corner-form-answer").getDomAttribute("data-verdict") != null);
        assertEquals(1, browser.list("#route-undo").size());

        type("#corner-exit-own", "wide");
        await("unread");
        assertTrue(told("exit-own").contains("is no length"));
        type("#corner-exit-own", "90 m");
        await("refused");
        assertTrue(told("exit-own").contains("40"), told("exit-own"));
        assertEquals("90 m", browser.find("#corner-exit-own").getDomProperty("value"));
        assertEquals(1, browser.list("#route-undo").size(), "the route stays as it was");
        // The browser notes that the program refused it.
        browser.errors();

        browser.prefer("dark");
        browser.resize(390, 844);
        assertEquals(List.of(), browser.accessibilityViolations());
        assertEquals(
                false,
                browser.run("return document.documentElement.scrollWidth > document.documentElement.clientWidth"));
        browser.prefer("light");
        browser.resize(1280, 1000);

        browser.find("#corner-form-reset").sendKeys(Keys.ENTER);
        await("same");
        assertEquals("9 m", browser.find("#corner-exit-own").getDomProperty("value"));
        browser.find("#corner-add").sendKeys(Keys.ENTER);
        type("#corner-obstacles-1-along", "-40");
        await("unread");
        assertEquals("This is needed.", told("obstacles-1-left"));
        type("#corner-obstacles-1-left", "60");
        type("#corner-obstacles-1-radius", "1");
        await("same");

        for (int i = 0; i < 2; i++) {
            browser.find("#route-undo").sendKeys(Keys.ENTER);
            int left = 1 - i;
            browser.await(
                    "it is taken back",
                    b -> b.list("#route-undo").size() == Math.min(1, left)
                            && b.list("#busy:not(:empty)").isEmpty());
        }
        browser.await(
                "the curb is as it was",
                b -> b.find(CURB).getDomProperty("value").equals("30 m"));
        assertEquals(List.of(), browser.errors());
    }
}
