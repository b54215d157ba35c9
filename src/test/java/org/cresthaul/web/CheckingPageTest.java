package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.cresthaul.server.LongRouteMeasure;
import org.cresthaul.server.Sample;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** A long check on the page: places appear while it runs, nothing is said of the route, and it can be stopped. */
class CheckingPageTest {
    private static final int HAZARDS = 60;

    private static Samples longRoute() throws Exception {
        Samples bundled = Samples.bundled();
        Sample alder = bundled.routes().stream()
                .filter(s -> s.id().equals("alder-county"))
                .findFirst()
                .orElseThrow();
        String route = LongRouteMeasure.longRoute(new String(alder.document(), StandardCharsets.UTF_8), HAZARDS, false);
        return new Samples(
                List.of(new Sample("long.route.geojson", route.getBytes(StandardCharsets.UTF_8))),
                bundled.rigs(),
                List.of());
    }

    /** By hazard, the words of its line: read at once, since the list grows. */
    private static Map<String, String> found(Browser browser) {
        List<?> lines = (List<?>) browser.run("return [...document.querySelectorAll('#checking-found li')]"
                + ".map(li => [li.dataset.hazard, li.innerText])");
        return lines.stream().map(line -> (List<?>) line).collect(Collectors.toMap(line -> (String) line.get(0), line ->
                (String) line.get(1)));
    }

    private static int running(TestServer server) {
        try {
            return TestServer.json(server.get("/api/health")).path("running").intValue();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void placesAreToldAsTheyAreJudgedUntilItIsStopped() throws Exception {
        try (TestServer server = new TestServer(longRoute());
                Browser browser = new Browser()) {
            browser.open(server.url());
            browser.await("a place is told", b -> !b.list("#checking-found li").isEmpty());
            Map<String, String> early = found(browser);
            browser.await("more are told", b -> b.list("#checking-found li").size() > early.size());
            // Most places that no configuration passes are known before most places are judged.
            String refused = browser.await("places that none passes are told", b -> {
                String told = b.find("#checking-refused").getText();
                return told.contains(" more. ") ? told : null;
            });
            Map<String, String> later = found(browser);
            String words = browser.find("#checking-words").getText();

            assertEquals(1, running(server));
            browser.find("#check-stop").sendKeys(Keys.ENTER);
            browser.await("it is gone", b -> !b.find("#checking").isDisplayed());

            assertTrue(words.matches("\\d+ of " + HAZARDS + " places judged in all 42 configurations .*"), words);
            assertTrue(
                    refused.matches(
                            "No configuration passes \\d+ places so far: (N\\d+ .+ \\(.+ mi\\), ){4}N\\d+ .+ \\(.+ mi\\)"
                                    + " and \\d+ more. There is no way through unless they are resolved."),
                    refused);
            early.forEach((hazard, line) -> assertEquals(line, later.get(hazard), "what was told stands"));
            assertTrue(later.values().stream().allMatch(line -> line.contains(": clear in ")), later.toString());
            assertTrue(later.size() < HAZARDS, "stopped before its end");
            assertTrue(!browser.find("#sheets").isDisplayed(), "nothing is said of the route");
            browser.await("the server works for nobody", b -> running(server) == 0);

            browser.open("about:blank");
            browser.open(server.url());
            browser.await("it is asked anew", b -> !b.list("#checking-found li").isEmpty());
            browser.open("about:blank");
            browser.await("left, it ends as well", b -> running(server) == 0);
            assertEquals(List.of(), browser.errors());
        }
    }
}
