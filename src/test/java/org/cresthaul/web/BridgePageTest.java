package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.server.Sample;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/** A bridge with a length and a permit's terms on the page. */
class BridgePageTest {
    @Test
    void tellsItsLengthTheAxlesOnItTogetherAndThePermitsTerms() throws Exception {
        String route = JsonEdit.edit(LimitsTexts.ROUTE, "/features/0/properties/extent", "[\"0 ft\", \"25 ft\"]");
        route = JsonEdit.edit(route, "/features/0/properties/limits/terms", "[\"alone\", \"crawl\"]");
        route = JsonEdit.edit(route, "/features/0/properties/limits/onBridge", "\"150,000 lb\"");
        Samples samples = new Samples(
                List.of(new Sample("small.route.geojson", route.getBytes(StandardCharsets.UTF_8))),
                List.of(new Sample("small.rig.json", WeightsTexts.RIG.getBytes(StandardCharsets.UTF_8))));
        try (TestServer server = TestServer.remembering(samples);
                Browser browser = new Browser()) {
            browser.resize(1280, 900);
            browser.open(server.url() + "#route=small&rig=small&hazard=B01");
            browser.await(
                    "the bridge is shown", b -> !b.list("#bridge-terms li").isEmpty());
            String together = browser.find("#bridge-together").getText();
            assertTrue(together.contains("axles over") && together.contains("of 150,000 lb"), together);
            assertTrue(browser.find("#result [data-side='bridge']").getText().contains("25 ft"));
            assertEquals(2, browser.list("#bridge-terms li").size());
            assertTrue(browser.find("#bridge-terms").getText().contains("alone: no other vehicle on the bridge"));
            browser.await(
                    "the plan is there",
                    b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
            String step = browser.find("#plan-steps li[data-hazard='B01']").getText();
            assertTrue(
                    step.contains("alone: no other vehicle on the bridge") && step.contains("At crawling speed"), step);
            assertEquals(List.of(), browser.errors());
        }
    }
}
