package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cresthaul.rig.JeepTexts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** A jeep that may be left off, from the form that says so to the plans side by side and the sheet without it. */
class CombinationsPageTest extends OnSmallFilesWithoutCorner {
    @TempDir
    private Path folder;

    private static List<String> stances() {
        return browser.list("#stance-choice option").stream()
                .map(o -> o.getDomProperty("value"))
                .toList();
    }

    private static void checkedAs(String stance) {
        browser.await(
                "checked is " + stance,
                b -> b.find("#title-block dd[data-field=stance]").getText().equals(stance)
                        && "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
    }

    @Test
    void fromTheFormToTheSheetWithoutIt() throws Exception {
        Path file = folder.resolve("jeep.rig.json");
        Files.writeString(file, JeepTexts.with(JeepTexts.JEEP));
        openPage(900);
        browser.find("#rig-file").sendKeys(file.toString());
        browser.await(
                "the rig is in force",
                b -> b.find(".inputs-summary").getDomProperty("textContent").contains("jeep.rig.json"));
        checkedAs("loaded");
        assertEquals(List.of("loaded"), stances());
        assertFalse(browser.find("#combinations").isDisplayed());

        browser.run("document.querySelector('#rig details').open = true;"
                + "document.querySelector('#rig-changes').open = true");
        browser.choose(browser.find("#rig-change-kind"), "Let the jeep be left off");
        browser.find("#rig-change button[type=submit]").sendKeys(Keys.ENTER);
        browser.await("it may be left off", b -> stances().equals(List.of("loaded", "loaded, without jeep")));
        checkedAs("loaded");

        browser.find("#combinations-compare").sendKeys(Keys.ENTER);
        browser.await(
                "both are planned", b -> b.list("#combination-table tbody tr").size() == 2);
        assertEquals(
                List.of("loaded", "loaded, without jeep"),
                browser.list("#combination-table tbody tr").stream()
                        .map(r -> r.getDomAttribute("data-stance"))
                        .toList());
        List<String> outcomes = browser.list("#combination-table tbody tr").stream()
                .map(r -> r.getDomAttribute("data-outcome"))
                .toList();

        assertEquals(List.of(), browser.accessibilityViolations("#comparison"));
        browser.run("document.querySelector('#combinations').scrollIntoView()");
        Files.write(Path.of("target/combinations.png"), browser.screen());
        // The sheet without it, and the table stays: it is about both.
        browser.find("#combination-table .combination-show").sendKeys(Keys.ENTER);
        checkedAs("loaded, without jeep");
        assertEquals(2, browser.list("#combination-table tbody tr").size());
        assertEquals(outcomes.get(1), browser.find("#route-plan").getDomAttribute("data-outcome"));
        assertTrue(browser.find("#rig-stance").getText().contains("Checked is \"loaded, without jeep\""));
        browser.await(
                "the address follows",
                b -> ((String) b.run("return decodeURIComponent(location.hash)")).contains("loaded, without jeep"));

        // Another question, and what was compared is gone.
        browser.run("document.querySelector('#plan-no-raising').closest('details').open = true");
        browser.find("#plan-no-raising").sendKeys(Keys.SPACE);
        browser.find("#plan-apply").sendKeys(Keys.ENTER);
        browser.await(
                "it is asked anew", b -> b.list("#combination-table tbody tr").isEmpty());
        assertEquals(List.of(), browser.errors());
    }
}
