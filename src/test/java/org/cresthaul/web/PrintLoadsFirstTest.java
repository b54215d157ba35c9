package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;

/** Everything that prints is there before it is printed, or the print says what it lacks. */
class PrintLoadsFirstTest extends OnSmallFiles {
    /**
     * A page of which nobody has seen the comparison, so that it is not loaded; what print would find is written down.
     */
    private static void openAtTheTop() {
        openPage(400);
        browser.run("window.print = () => { document.body.dataset.printed ="
                + " document.querySelector('#comparison').dataset.status + ' '"
                + " + document.querySelector('#route-plan').dataset.status; };");
    }

    /** The button and the keys ask for the comparison though nobody scrolled to it, and print when it is there. */
    @ParameterizedTest
    @ValueSource(strings = {"the button", "Ctrl+P"})
    void everythingThatPrintsIsLoadedFirst(String how) throws Exception {
        openAtTheTop();
        if (how.equals("Ctrl+P")) {
            browser.press(Keys.chord(Keys.CONTROL, "p"));
        } else {
            browser.run("document.querySelector('#print').click()");
        }
        String printed = browser.await("it is printed", b -> b.find("body").getDomAttribute("data-printed"));
        assertEquals("ready ready", printed);
        browser.resize(1280, 900);
    }

    /** The browser's own menu waits for nothing: that print names what is not on it, on its first page. */
    @Test
    void aPrintThatCouldNotWaitSaysWhatIsNotOnIt() throws Exception {
        openAtTheTop();
        browser.await(
                "the plan is made",
                b -> b.find("#route-plan").getDomAttribute("data-status").equals("ready"));
        browser.await(
                "the loads are there",
                b -> b.find("#loads").getDomAttribute("data-status").equals("ready"));
        assertEquals("none", browser.find("#comparison").getDomAttribute("data-status"), "nobody has looked at it");
        String printed = PrintedPage.text(browser.printed(8.5, 11));
        int told = printed.indexOf(
                PrintedPage.NOT_ON_IT + ", because it was not loaded: the configurations side by side.");
        assertTrue(told >= 0 && told < printed.indexOf("Hazards in order of travel"), printed.substring(0, 500));
        assertFalse(browser.find("#print-note").isDisplayed(), "on paper only");
        browser.resize(1280, 900);
    }
}
