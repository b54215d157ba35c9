package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cresthaul.check.ManyCrossings;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.server.Sample;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The page on paper where many places wait for a survey: one table with an order, no section for each. */
class PrintWaitingTest {
    private static int count(String text, String words) {
        return text.split(words, -1).length - 1;
    }

    @ParameterizedTest
    @CsvSource({"24, true", "5, false"})
    void manyPlacesThatWaitAreOneTableAndFewStandByThemselves(int crossings, boolean together) throws Exception {
        Sample route =
                new Sample("many.route.geojson", ManyCrossings.text(crossings).getBytes(StandardCharsets.UTF_8));
        Sample rig = new Sample("small.rig.json", RigTexts.RIG.getBytes(StandardCharsets.UTF_8));
        try (TestServer server = new TestServer(new Samples(List.of(route), List.of(rig)));
                Browser browser = new Browser()) {
            browser.open(server.url());
            browser.await(
                    "the plan is made",
                    b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
            // On the screen each has its own place, with what can be done about it.
            assertEquals(
                    crossings,
                    browser.list("#plan-blocking li[data-hazard^=map-n]").size());
            assertEquals(
                    crossings,
                    browser.list("#plan-blocking .plan-aside[data-aside^=map-n]").stream()
                            .filter(b -> b.isDisplayed())
                            .count());
            assertEquals(
                    0,
                    browser.list(".on-paper").stream()
                            .filter(p -> p.isDisplayed())
                            .count());

            byte[] pdf = browser.printed(8.5, 11);

            Files.write(Path.of("target", "printed-waiting-" + crossings + ".pdf"), pdf);
            String text = PrintedPage.text(pdf);
            String one = crossings + " places wait for a survey. They stand in order under Survey first.";
            assertEquals(together ? 2 : 0, count(text, one), "beside what blocks and what was not checked");
            assertEquals(together ? 0 : crossings, count(text, "survey: nobody has surveyed this place"), text);
            assertTrue(text.contains("Survey first Not surveyed, or known only by report"), text);
            for (int i = 1; i <= crossings; i++) {
                assertTrue(
                        count(text, "map-n" + i + " Rail crossing") >= 2, "map-n" + i + " in its order and on the way");
            }
        }
    }
}
