package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/**
 * One person's way over the page, by mouse, by finger, or by keys alone: nothing is done but what a hand can do, and
 * everything that it does is counted. Scripts only look.
 */
final class Walk {
    /** With what the page is used. */
    enum Hand {
        MOUSE,
        FINGER,
        KEYS
    }

    /** What stops a way across the page: a person who presses Tab so often has given up. */
    private static final int LONGEST_WAY = 900;

    /**
     * How many Tabs lead from the focus to an element, negative backward; null where none leads there. Of a group of
     * radio buttons one is a stop.
     */
    private static final String STOPS_AWAY = """
            const isStop = node => node.tabIndex >= 0 && !node.disabled
              && node.checkVisibility({ visibilityProperty: true })
              && (node.type !== 'radio' || node.checked
                || !document.querySelector(`input[name="${node.name}"]:checked`));
            const stops = [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex]')]
              .filter(isStop);
            const to = stops.indexOf(document.querySelector(arguments[0]));
            const now = document.activeElement;
            const from = stops.indexOf(now);
            if (to < 0) { return null; }
            if (from >= 0) { return to - from; }
            const before = stops.filter(stop => now !== document.body
              && (now.compareDocumentPosition(stop) & Node.DOCUMENT_POSITION_PRECEDING)).length;
            return to - before + 1;
            """;

    private final Browser browser;
    private final Hand hand;
    private final String name;
    private final List<String> lostAfter = new ArrayList<>();
    private int presses;
    private int typedFields;
    private String last = "";

    Walk(Browser browser, Hand hand, String name) {
        this.browser = browser;
        this.hand = hand;
        this.name = name;
    }

    /** Clicks and taps, or every key pressed that is no letter of what is typed. */
    int presses() {
        return presses;
    }

    /** Fields that something was typed into or chosen in. */
    int fields() {
        return typedFields;
    }

    /** Steps after which whoever uses keys alone stood nowhere on the page. */
    List<String> lostAfter() {
        return List.copyOf(lostAfter);
    }

    /** Presses a button, a link, a box or the head of something folded. */
    void press(String selector) {
        if (hand == Hand.KEYS) {
            // What is drawn anew meanwhile is looked at again.
            String tag = browser.await(
                    "can be pressed: " + selector, b -> awaitReady(selector).getTagName());
            boolean isBox = tag.equals("input");
            tabTo(selector);
            key(isBox ? Keys.SPACE : Keys.ENTER);
        } else {
            point(selector);
        }
        last = selector;
    }

    /** What is drawn anew just as the hand comes down is aimed at again. */
    private void point(String selector) {
        browser.await("can be pressed: " + selector, b -> {
            WebElement element = awaitReady(selector);
            if (hand == Hand.FINGER) {
                b.tap(element);
            } else {
                element.click();
            }
            return true;
        });
        presses++;
    }

    /** Opens what is folded, when it is. */
    void unfold(String details) {
        browser.await(details + " is there", b -> b.find(details).isDisplayed());
        if (browser.find(details).getDomAttribute("open") == null) {
            press(details + " > summary");
        }
    }

    /** Writes a text over what a field holds. */
    void fill(String selector, String text) {
        awaitReady(selector);
        if (hand == Hand.KEYS) {
            tabTo(selector);
        } else {
            point(selector);
        }
        browser.keysWith(Keys.CONTROL, "a");
        browser.keys(text);
        typedFields++;
        last = selector;
    }

    /** Enter, in the field that was written last. */
    void enter() {
        key(Keys.ENTER);
    }

    /** Keys in the element that has the focus: arrows on the map, say. */
    void key(CharSequence key) {
        browser.keys(key);
        presses++;
    }

    /** Takes a choice by what it begins with, as letters find it in a list. */
    void choose(String selector, String beginning) {
        WebElement field = awaitReady(selector);
        if (hand == Hand.KEYS) {
            tabTo(selector);
            browser.keys(beginning);
        } else {
            browser.choose(field, beginning);
            presses += 2;
        }
        typedFields++;
        last = selector;
    }

    /** Gives a file; the window of the system that finds it is counted as one press. */
    void file(String selector, Path file) {
        if (hand == Hand.KEYS) {
            tabTo(selector);
        }
        browser.find(selector).sendKeys(file.toString());
        presses++;
        last = selector;
    }

    /** Brings the focus to an element by Tab alone. */
    void tabTo(String selector) {
        for (int tries = 0; tries < 8; tries++) {
            if (isFocused(selector)) {
                return;
            }
            if (!last.isEmpty() && (Boolean) browser.run("return document.activeElement === document.body")) {
                lostAfter.add(last);
                last = "";
            }
            Long away = (Long) browser.run(STOPS_AWAY, selector);
            if (away == null || Math.abs(away) > LONGEST_WAY) {
                throw new AssertionError("Tab does not lead to " + selector + " (" + away + ")");
            }
            int steps = (int) Math.max(1, Math.abs(away));
            CharSequence[] keys = new CharSequence[steps];
            Arrays.fill(keys, Keys.TAB);
            if (away >= 0) {
                browser.keys(keys);
            } else {
                browser.keysWith(Keys.SHIFT, keys);
            }
            presses += steps;
        }
        throw new AssertionError("Tab goes past " + selector + "; the focus is on "
                + browser.run("return document.activeElement.outerHTML.slice(0, 200)"));
    }

    /** Another page is on show: nobody has been anywhere on it. */
    void onAnotherPage() {
        last = "";
    }

    private boolean isFocused(String selector) {
        return (Boolean)
                browser.run("return document.activeElement === document.querySelector(arguments[0])", selector);
    }

    private WebElement awaitReady(String selector) {
        return browser.await(selector + " can be used (after " + last + ")", b -> {
            WebElement element = b.find(selector);
            return element.isDisplayed() && element.isEnabled() ? element : null;
        });
    }

    /**
     * Looks at the page as it stands: nothing too wide, nothing too small to press, nothing that axe finds in the part
     * that is new; and a picture of it, to be looked at.
     */
    void look(String state, String part) throws Exception {
        Files.createDirectories(Path.of("target/ways"));
        Files.write(Path.of("target/ways/" + name + "-" + state + ".png"), browser.screen());
        assertEquals(
                true,
                browser.run("return document.documentElement.scrollWidth <= window.innerWidth"),
                state + " scrolls sideways");
        int least = hand == Hand.FINGER ? Targets.BY_FINGER : Targets.BY_MOUSE;
        assertEquals(List.of(), Targets.smallerThan(browser, least), state);
        // By keys the page is the same as by mouse, and axe takes its time.
        if (hand != Hand.KEYS) {
            assertEquals(List.of(), browser.accessibilityViolations(part), state);
        }
    }
}
