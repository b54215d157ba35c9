package org.cresthaul.web;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.cresthaul.server.LongRouteMeasure;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.openqa.selenium.Keys;

/**
 * What somebody waits for at the page with 200 hazards on 20,000 points, in a real browser: from opening the file to
 * the first verdict, to the sheet, to the plan; a press on the table or the map; a filter. What held the page for more
 * than 50 ms at a time is told with each, as the browser's own observer has it.
 */
public final class LongPageMeasure {
    /** Held by the page itself, so that nothing asks it meanwhile. */
    private static final String WATCH = """
            window.held = [];
            new PerformanceObserver(list => window.held.push(...list.getEntries().map(e => Math.round(e.duration))))
              .observe({ type: 'longtask', buffered: false });
            """;
    /** When something is first so, by the page's own clock. */
    private static final String WHEN = """
            const [what, script] = arguments;
            const since = performance.now();
            window.when = { ...window.when, [what]: null };
            const so = new Function(`return ${script}`);
            const look = () => {
              if (so()) { window.when[what] = performance.now() - since; } else { requestAnimationFrame(look); }
            };
            requestAnimationFrame(look);
            """;

    private final Browser browser;

    private LongPageMeasure(Browser browser) {
        this.browser = browser;
    }

    public static void main(String[] arguments) throws Exception {
        Samples samples = Samples.bundled();
        String sample = samples.routes().stream()
                .filter(s -> s.id().equals("alder-county"))
                .map(s -> new String(s.document(), StandardCharsets.UTF_8))
                .findFirst()
                .orElseThrow();
        Path file = Files.createTempFile("long", ".route.geojson");
        Files.writeString(file, LongRouteMeasure.longRoute(sample, 200, false));
        try (TestServer server = new TestServer(samples);
                Browser browser = new Browser()) {
            browser.resize(1400, 1000);
            browser.open(server.url());
            browser.await(
                    "the sample's plan is there",
                    b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
            new LongPageMeasure(browser).run(file);
        } finally {
            Files.delete(file);
        }
    }

    private void run(Path file) {
        browser.run(WATCH);
        when(
                "first verdict told",
                "document.querySelector('#checking:not([hidden]) #checking-found li[data-hazard^=N]') !== null");
        when("sheet", "document.querySelectorAll('#hazard-table tr[data-hazard^=N]').length === 200");
        when(
                "what blocks",
                "document.querySelectorAll('#hazard-table tr[data-hazard^=N]').length === 200"
                        + " && /Blocked at|No place blocks/.test(document.querySelector('#answer').textContent)");
        when(
                "plan",
                "document.querySelectorAll('#hazard-table tr[data-hazard^=N]').length === 200"
                        + " && document.querySelector('#route-plan').dataset.status === 'ready'");
        browser.find("#route-file").sendKeys(file.toString());
        told("first verdict told");
        told("sheet");
        browser.await(
                "a plan is under way",
                b -> !b.list("#plan-progress:not([hidden])").isEmpty());
        System.out.println("                       it says: "
                + browser.find("#plan-progress").getText());
        told("what blocks");
        told("plan");
        press("press on the table", "#hazard-table tr[data-hazard=N40] .hazard-open", "N40");
        press("press on the map", ".plan-hazard[data-hazard=N120]", "N120");
        press("press on the section", ".profile-hazard[data-hazard=N80]", "N80");
        when("filter by kind", "document.querySelectorAll('#hazard-table tbody tr').length < 200");
        browser.choose(browser.find("#list-kind"), "rail crossing");
        told("filter by kind");
        when("sort", "document.querySelector('th[data-sort=clearance]').getAttribute('aria-sort') !== 'none'");
        browser.find("th[data-sort=clearance] .sort").sendKeys(Keys.ENTER);
        told("sort");
        List<String> errors = browser.errors();
        if (!errors.isEmpty()) {
            throw new IllegalStateException(errors.toString());
        }
    }

    private void press(String what, String selector, String hazard) {
        browser.run("window.held.length = 0");
        when(
                what,
                "document.querySelector('#detail').dataset.hazard === '" + hazard
                        + "' && !['none', 'loading'].includes(document.querySelector('#passage').dataset.status)");
        browser.run(
                "document.querySelector(arguments[0]).dispatchEvent(new MouseEvent('click', {bubbles: true}))",
                selector);
        told(what);
    }

    private void when(String what, String script) {
        browser.run(WHEN, what, script);
    }

    private void told(String what) {
        Number ms = browser.await(what, b -> (Number) b.run("return window.when[arguments[0]]", what));
        Object held = browser.run("return window.held.splice(0).join(', ')");
        System.out.printf(Locale.ROOT, "%-22s %7.0f ms, held the page: %s%n", what, ms.doubleValue(), held);
    }
}
