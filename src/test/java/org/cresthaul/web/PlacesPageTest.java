package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** Hazards and stopping places of the route, added, moved and taken out on the page, by keyboard and on the map. */
class PlacesPageTest extends OnSmallFilesWithoutCorner {
    @BeforeEach
    void open() {
        openPage(900);
        browser.find("#place-edit > summary").sendKeys(Keys.ENTER);
        browser.await(
                "the places are shown", b -> !b.list("#place-table tbody tr").isEmpty());
        browser.errors();
    }

    private static List<String> places() {
        return browser.list("#place-table tbody tr").stream()
                .map(row -> row.getDomAttribute("data-id"))
                .toList();
    }

    private static void add(String kind, String name, String at, String more) {
        browser.find("#place-kind").sendKeys(kind);
        fill("#place-add [name=name]", name);
        fill("#place-add [name=at]", at);
        if (!more.isEmpty()) {
            fill("#place-add [name=more]", more);
        }
        browser.find("#place-add [name=name]").sendKeys(Keys.ENTER);
    }

    private static void fill(String selector, String text) {
        WebElement field = browser.find(selector);
        field.clear();
        field.sendKeys(text);
    }

    private static void await(String what, List<String> ids) {
        browser.await(what, b -> places().equals(ids));
    }

    @Test
    void whatIsAddedIsJudgedAndCanBeTakenBack() {
        List<String> before = places();
        List<String> judged = browser.list("#hazard-table tbody tr").stream()
                .map(row -> row.getDomAttribute("data-hazard"))
                .toList();

        add("dip", "Ford by the oak", "0.2 mi", "");
        browser.await("the dip is a place", b -> places().size() == before.size() + 1);
        browser.await(
                "the form is ready for the next",
                b -> b.find("#place-said").getText().equals("Ford by the oak is added."));
        assertEquals("dip", browser.find("#place-kind").getDomProperty("value"), "the kind stays as it was chosen");
        String id =
                places().stream().filter(p -> !before.contains(p)).findFirst().orElseThrow();
        assertEquals(
                "not surveyed",
                browser.find("#hazard-table tr[data-hazard=" + id + "]").getDomAttribute("data-verdict"));

        add("stopping place", "Gravel lot", "0.3 mi", "200 ft");
        browser.await("the lot is a place", b -> places().size() == before.size() + 2);
        assertTrue(browser.list(".plan-stop").stream()
                .anyMatch(s -> s.getDomAttribute("aria-label").contains("Gravel lot")));

        browser.find("#route-undo").sendKeys(Keys.ENTER);
        browser.await("the lot is gone", b -> places().size() == before.size() + 1);
        browser.find("#route-redo").sendKeys(Keys.ENTER);
        browser.await("the lot is back", b -> places().size() == before.size() + 2);
        browser.find("#route-undo").sendKeys(Keys.ENTER);
        browser.await("the lot is gone again", b -> places().size() == before.size() + 1);
        browser.find("#route-undo").sendKeys(Keys.ENTER);
        await("the dip is gone", before);
        assertEquals(
                judged,
                browser.list("#hazard-table tbody tr").stream()
                        .map(row -> row.getDomAttribute("data-hazard"))
                        .toList());
        assertEquals(List.of(), browser.errors());
    }

    /** Whatever can be chosen is taken by the program, and no hazard of it is more than not surveyed. */
    @Test
    void everyKindCanBeAddedAndNoneIsClear() {
        List<String> kinds = browser.list("#place-kind option").stream()
                .map(WebElement::getText)
                .toList();
        for (int i = 0; i < kinds.size(); i++) {
            List<String> before = places();
            add(
                    kinds.get(i),
                    "New place " + i,
                    "0.2" + i + " mi",
                    kinds.get(i).contains("stop") || kinds.get(i).contains("set-up") ? "300 ft" : "");
            int number = before.size() + 1;
            browser.await(kinds.get(i) + " is a place", b -> places().size() == number);
            String id = places().stream()
                    .filter(p -> !before.contains(p))
                    .findFirst()
                    .orElseThrow();
            // In one question to the page, which may draw its rows anew between two.
            Object others = browser.run(
                    "return [...document.querySelectorAll(`#hazard-table tr[data-hazard=${arguments[0]}]`)]"
                            + ".map(row => row.dataset.verdict).filter(verdict => verdict !== 'not surveyed')",
                    id);
            assertEquals(List.of(), others);
        }
        assertEquals(9, kinds.size());
        assertEquals(List.of(), browser.errors());
    }

    @Test
    void aPlaceIsMovedNamedAndTakenOut() {
        add("crest", "Mill rise", "0.2 mi", "");
        browser.await("it is there", b -> b.find("#place-table").getText().contains("Mill rise"));
        String row = "#place-table tr[data-id="
                + browser.list("#place-table tbody tr").stream()
                        .filter(r -> r.getText().contains("Mill rise"))
                        .findFirst()
                        .orElseThrow()
                        .getDomAttribute("data-id")
                + "] ";
        assertTrue(browser.find(row + "td").getText().startsWith("0.20"));

        browser.find(row + "summary").sendKeys(Keys.ENTER);
        fill(row + "[name=name]", "Mill hill");
        fill(row + "[name=at]", "0.3 mi");
        browser.find(row + "[name=name]").sendKeys(Keys.ENTER);
        browser.await(
                "it is moved and named",
                b -> b.find(row).getText().contains("Mill hill")
                        && b.find(row + "td").getText().startsWith("0.30"));

        List<String> with = places();
        browser.find(row + ".place-remove").sendKeys(Keys.ENTER);
        browser.await("it is taken out", b -> places().size() == with.size() - 1);
        assertEquals(List.of(), browser.errors());
    }

    @Test
    void aPlaceBesideTheRouteIsToldAndTheRouteStays() {
        List<String> before = places();
        add("dip", "Nowhere", "900 mi", "");
        browser.await("it is told", b -> b.find("#problem").getText().contains("900 mi"));
        // Thirty meters from the line is what the program takes.
        add("dip", "Elsewhere", "1.0, 1.0", "");
        browser.await("the server refuses it", b -> b.find("#problem").getText().contains("/features/"));
        assertEquals(before, places());
        assertEquals(List.of(), browser.list("#route-undo"));
    }

    @Test
    void aPressOnTheMapFillsInWhere() {
        browser.find("#place-pick").sendKeys(Keys.ENTER);
        assertEquals("true", browser.find("#place-pick").getDomAttribute("aria-pressed"));
        browser.run("const map = document.getElementById('plan-map'), box = map.getBoundingClientRect();"
                + "for (const type of ['mousedown', 'mouseup', 'click']) {"
                + "  map.dispatchEvent(new MouseEvent(type, {bubbles: true, clientX: box.left + box.width / 3,"
                + "    clientY: box.top + box.height / 3}));"
                + "}");
        browser.await(
                "the place is filled in",
                b -> b.find("#place-at").getDomProperty("value").endsWith(" mi"));
        assertEquals("false", browser.find("#place-pick").getDomAttribute("aria-pressed"));
    }

    @ParameterizedTest(name = "{0}, {1} px")
    @CsvSource({"light, 1280", "dark, 1280", "light, 390"})
    void isAccessibleOpenAsItStands(String scheme, int width) throws Exception {
        browser.prefer(scheme);
        browser.resize(width, 900);
        browser.find("#place-table tbody tr summary").sendKeys(Keys.ENTER);
        assertEquals(List.of(), browser.accessibilityViolations());
        assertEquals(
                false,
                browser.run("return document.documentElement.scrollWidth > document.documentElement.clientWidth"));
        browser.prefer("light");
    }
}
