package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** Changes in no project: there after a reload, offered on a fresh start, and gone when somebody forgets them. */
class LeftWorkPageTest extends OnSmallFiles {
    private static void unfold(String id) {
        browser.run("document.querySelector(arguments[0]).open = true", id);
    }

    private static void press(String selector) {
        browser.await(
                selector + " can be pressed",
                b -> b.find(selector).isDisplayed() && b.find(selector).isEnabled());
        browser.find(selector).sendKeys(Keys.ENTER);
    }

    private static String names() {
        return browser.find("#place-table").getDomProperty("textContent");
    }

    private static void addStop(String name) {
        unfold("#place-edit");
        browser.choose(browser.find("#place-kind"), "stopping place");
        browser.find("#place-add [name=name]").sendKeys(name);
        browser.find("#place-at").sendKeys("0.1 mi");
        browser.find("#place-add [name=more]").sendKeys("200 ft");
        browser.find("#place-at").sendKeys(Keys.ENTER);
        browser.await(name + " is in the table", b -> names().contains(name));
    }

    private static void awaitKept() {
        browser.await(
                "the address names what is kept",
                b -> browser.run("return location.hash").toString().contains("work=page-"));
        // What is written a moment later is written before the page goes as well.
        browser.await(
                "it is kept",
                b -> Boolean.TRUE.equals(
                        browser.run(
                                "return Object.keys(localStorage).some("
                                        + "key => key.startsWith('cresthaul.history.page-') && location.hash.includes(key.slice(18)))")));
    }

    private static void awaitSheet() {
        browser.await(
                "the report is shown", b -> !b.list("#hazard-table tbody tr").isEmpty());
    }

    @Test
    void changesAreThereAfterAReloadAndOnAFreshStart() throws Exception {
        openPage(900);
        browser.forget(server.url());
        addStop("First pull-off");
        addStop("Second pull-off");
        awaitKept();
        assertTrue(browser.find("#revisions").getText().contains("kept in this browser only"));
        browser.reload();
        awaitSheet();
        browser.await("both are there", b -> names().contains("Second pull-off"));
        assertTrue(names().contains("First pull-off"));
        press("#route-undo");
        browser.await("the second is gone", b -> !names().contains("Second pull-off"));
        press("#route-undo");
        browser.await("the first is gone", b -> !names().contains("First pull-off"));
        press("#route-redo");
        browser.await("the first is back", b -> names().contains("First pull-off"));
        browser.await(
                "it is kept so",
                b -> Boolean.TRUE.equals(browser.run("return Object.keys(localStorage)"
                        + ".filter(key => key.startsWith('cresthaul.history.page-'))"
                        + ".some(key => JSON.parse(localStorage[key]).files.route.text.includes('First pull-off'))")));

        openPage(900);
        WebElement offer = browser.await("it is offered", b -> b.find("#left-work-take"));
        assertTrue(browser.find("#left-work").getText().contains("in no project"));
        assertEquals(List.of(), browser.accessibilityViolations());
        assertTrue(!names().contains("First pull-off"));
        offer.sendKeys(Keys.ENTER);
        browser.await("it is on the page", b -> names().contains("First pull-off"));
        assertTrue(!browser.find("#left-work").isDisplayed());
        assertTrue(browser.find("#route-redo").isDisplayed(), "what was undone can be made again");

        openPage(900);
        press("#left-work-forget");
        browser.await("nothing is offered", b -> !b.find("#left-work").isDisplayed());
        openPage(900);
        assertTrue(!browser.find("#left-work").isDisplayed());
        assertEquals(List.of(), browser.errors());
    }

    @Test
    void aLineThatIsBeingDrawnIsThereAfterAReload() {
        openPage(900);
        browser.forget(server.url());
        unfold("#line-edit");
        press(".line-mode[data-mode=new]");
        for (String point : List.of("44.6, -93.1", "44.61, -93.1", "44.62, -93.09")) {
            browser.await(
                    "a point can be written",
                    b -> b.find("#line-typed [name=coordinates]").isDisplayed());
            browser.find("#line-typed [name=coordinates]").sendKeys(point, Keys.ENTER);
        }
        browser.await("three points", b -> b.find("#line-point").getText().startsWith("3 points drawn"));
        awaitKept();
        browser.reload();
        awaitSheet();
        browser.await("three points", b -> b.find("#line-point").getText().startsWith("3 points drawn"));
        press("#line-undraw");
        browser.await("two are left", b -> b.find("#line-point").getText().startsWith("2 points drawn"));
        assertEquals(List.of(), browser.errors());
    }

    /** What cannot be read is in no route: it is there again all the same, told at its field, and can be put right. */
    @Test
    void measuresOfACornerThatCannotBeReadAreThereAfterAReload() {
        openPage(900);
        browser.forget(server.url());
        openCorner();
        WebElement own = browser.find("#corner-exit-own");
        own.clear();
        own.sendKeys("wide");
        awaitCorner("unread");
        awaitKept();
        browser.reload();
        awaitSheet();
        openCorner();
        awaitCorner("unread");
        assertEquals("wide", browser.find("#corner-exit-own").getDomProperty("value"));
        assertTrue(browser.find("#corner-at-exit-own").getText().contains("is no length"));
        assertTrue(
                browser.find("#corner-form-answer").getText().contains("No answer"),
                "nothing is said of a corner that is not in the route yet");
        press("#corner-form-reset");
        awaitCorner("same");
        assertEquals("9 m", browser.find("#corner-exit-own").getDomProperty("value"));
        assertEquals(List.of(), browser.errors());
    }

    private static void openCorner() {
        browser.run("document.querySelector('#hazard-table tr[data-hazard=H05] .hazard-open').click()");
        browser.await(
                "the corner is on show",
                b -> !b.list("#corner-edit").isEmpty() && b.find("#corner-edit").isDisplayed());
        unfold("#corner-edit");
    }

    private static void awaitCorner(String status) {
        browser.await(
                "the corner's form is " + status,
                b -> status.equals(b.find("#corner-form").getDomAttribute("data-status")));
    }
}
