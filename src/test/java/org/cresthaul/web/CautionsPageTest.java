package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.Keys;

/**
 * What the page cautions about at a place in a setting happens there: by the report's data, not by its list of
 * cautions.
 */
class CautionsPageTest {
    @RegisterExtension
    static final SampleSite SITE = new SampleSite();

    private static SamplePage page;

    /** A place in one setting, as far as cautions go. */
    private record Deed(String kind, boolean raised, boolean escorted) {}

    private record Rule(String words, Predicate<Deed> belongs) {}

    private static final List<Rule> RULES = List.of(
            new Rule("Raised stance: crawling speed only", Deed::raised),
            new Rule("Nobody goes under a deck that is raised", Deed::raised),
            new Rule("Nobody enters an oncoming lane before they hold it", Deed::escorted),
            new Rule("392.11", d -> d.kind.equals("rail-crossing")),
            new Rule(
                    "Move toward the oncoming train at an angle away from the rails",
                    d -> d.kind.equals("rail-crossing")),
            new Rule("Heights change with every overlay", d -> d.kind.equals("low-structure")),
            new Rule("Watch the tail", d -> d.kind.equals("corner")),
            new Rule(
                    "The scales and the sign at the place decide",
                    d -> Set.of("posted-bridge", "stretch").contains(d.kind)));

    @BeforeAll
    static void start() throws Exception {
        page = new SamplePage(SITE);
        page.open();
    }

    @AfterAll
    static void stop() throws IOException {
        page.close();
    }

    private static Deed deed(String hazard, String configuration) {
        JsonNode cell = page.cell(hazard, configuration);
        return new Deed(
                page.hazard(hazard).path("kind").textValue(),
                cell.path("raise").isObject(),
                cell.at("/corner/escorts").asBoolean());
    }

    /** At every place one setting of each kind: raised or not, with escorts or without. */
    @Test
    void theResultOfACellCautionsAboutWhatHappensThere() {
        Browser browser = page.browser();
        TreeMap<String, Integer> seen = new TreeMap<>();
        for (JsonNode hazard : page.report().path("hazards")) {
            String id = hazard.path("id").textValue();
            browser.find("#hazard-table tr[data-hazard='" + id + "'] .hazard-open")
                    .sendKeys(Keys.ENTER);
            browser.await(id + " is open", b -> id.equals(b.find("#detail").getDomAttribute("data-hazard")));
            Set<String> kinds = new TreeSet<>();
            for (String button : buttons(browser)) {
                String first = button.split(" ")[0];
                Deed deed = deed(id, first);
                if (!kinds.add(deed.toString())) {
                    continue;
                }
                browser.await(first + " is clicked", b -> {
                    b.find("#matrix button[data-configurations='" + button + "']")
                            .click();
                    return true;
                });
                browser.await(
                        first + " is chosen", b -> List.of(button.split(" ")).contains(page.chosenConfiguration()));
                Deed shown = deed(id, page.chosenConfiguration());
                // In one go: the result is drawn anew whenever the page learns more.
                String told = (String) browser.run("return [...document.querySelectorAll('#result .cautions')]"
                        + ".map(list => list.innerText).join('\\n')");
                for (Rule rule : RULES) {
                    assertEquals(
                            rule.belongs.test(shown),
                            told.contains(rule.words),
                            id + " " + page.chosenConfiguration() + ": " + rule.words + " in\n" + told);
                    seen.merge(rule.words + " " + rule.belongs.test(shown), 1, Integer::sum);
                }
            }
        }
        // Each is met where it belongs and where it does not.
        assertEquals(2 * RULES.size(), seen.size(), seen.toString());
    }

    private static List<String> buttons(Browser browser) {
        Object all = browser.run("return [...document.querySelectorAll('#matrix button[data-configurations]')]"
                + ".map(button => button.dataset.configurations)");
        List<String> found = ((List<?>) all).stream().map(String.class::cast).toList();
        assertTrue(!found.isEmpty());
        return found;
    }
}
