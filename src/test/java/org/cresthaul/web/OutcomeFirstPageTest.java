package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** Whether there is a way is on the page before the plan is whole, and never more than is settled. */
class OutcomeFirstPageTest extends OnSmallFiles {
    /** As long as {@code window.told} says what is told of a plan under way, plans are held back. */
    private static final String HOLD = """
            const own = window.fetch;
            window.fetch = (path, asked) => {
              if (!window.told) {
                return own(path, asked);
              }
              if (String(path).includes('/api/plan')) {
                return new Promise(answer => {
                  window.letGo = () => { window.told = null; answer(own(path, asked)); };
                });
              }
              return String(path).includes('/api/check/')
                ? Promise.resolve(new Response(JSON.stringify(window.told),
                    { headers: { 'Content-Type': 'application/json' } }))
                : own(path, asked);
            };""";

    private static Map<String, Object> told(List<Map<String, Object>> blocked) {
        Map<String, Object> all = new HashMap<>(Map.of(
                "state",
                "planning",
                "cells",
                0,
                "places",
                0,
                "configurations",
                0,
                "found",
                List.of(),
                "asked",
                9,
                "answered",
                1));
        all.put("at", null);
        all.put("blocked", blocked);
        return all;
    }

    private static String answer() {
        return browser.find("#answer").getText();
    }

    @Test
    void placesThatBlockAreToldWhileWhatWouldOpenThemIsAsked() {
        browser.beforePages(HOLD);
        openPage(900);
        browser.await("the plan is there", b -> "ready".equals(b.find("#answer").getDomAttribute("data-status")));
        browser.run("window.told = arguments[0]", told(null));
        browser.run("document.querySelector('#plan-no-raising').closest('details').open = true");
        browser.find("#plan-no-raising").sendKeys(Keys.SPACE);
        browser.find("#plan-apply").sendKeys(Keys.ENTER);
        browser.await("it is being made", b -> b.find("#answer").getText().contains("being made"));
        assertFalse(answer().contains("block"), answer());

        browser.run(
                "window.told = arguments[0]",
                told(List.of(Map.of("hazard", "H7", "name", "Invented crossing", "chainageM", 1609.344))));
        browser.await(
                "what blocks is told", b -> answer().contains("Blocked at 1 place: H7 Invented crossing (1.00 mi)"));
        assertTrue(answer().contains("NOT FOR DRIVING"), answer());
        assertTrue(browser.run("return document.title").toString().startsWith("no way through: "));

        // A way without its conditions is no answer yet.
        browser.run("window.told = arguments[0]", told(List.of()));
        browser.await("that none does is told", b -> answer().contains("No place blocks every way"));
        assertTrue(answer().contains("being made"), answer());
        assertEquals(List.of(), browser.list("#answer .outcome"));
        assertTrue(browser.run("return document.title").toString().startsWith("being made: "));

        browser.run("window.letGo()");
        browser.await("the plan is there", b -> "ready".equals(b.find("#answer").getDomAttribute("data-status")));
        assertFalse(answer().contains("No place blocks"), answer());
        assertEquals(List.of(), browser.errors());
    }
}
