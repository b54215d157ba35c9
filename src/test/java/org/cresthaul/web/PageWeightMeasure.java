package org.cresthaul.web;

import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;

/** What opening the page takes over the wire until the sample's plan is there, the first time and again. */
final class PageWeightMeasure {
    /**
     * Bytes with their headers, by what they are; and when the page first showed something and its largest part, ms.
     */
    private static final String WEIGHED = """
            const all = [...performance.getEntriesByType('resource'), ...performance.getEntriesByType('navigation')];
            const kind = name => (name.includes('/api/') ? 'answers' : name.endsWith('.js') ? 'scripts'
              : name.endsWith('.css') ? 'styles' : 'else');
            const sums = {};
            for (const { name, transferSize } of all) {
              sums[kind(name)] = (sums[kind(name)] ?? 0) + transferSize;
            }
            const first = Math.round(performance.getEntriesByName('first-contentful-paint')[0].startTime);
            let largest;
            const seen = new PerformanceObserver(() => {});
            seen.observe({ type: 'largest-contentful-paint', buffered: true });
            for (const paint of seen.takeRecords()) {
              largest = Math.round(paint.startTime) + ' ms, ' + paint.element?.tagName + ' ' + paint.element?.id
                + ' "' + (paint.element?.textContent ?? '').trim().slice(0, 40) + '"';
            }
            return JSON.stringify(sums) + ', ' + all.length + ' requests, '
              + Math.round(Object.values(sums).reduce((a, b) => a + b) / 1000) + ' KB; first paint after '
              + first + ' ms, the largest after ' + largest;""";

    private PageWeightMeasure() {}

    /** @param arguments the address of a server that runs; without one it starts a fresh one in this process */
    public static void main(String[] arguments) throws Exception {
        if (arguments.length > 0) {
            weigh(arguments[0]);
            return;
        }
        try (TestServer server = new TestServer(Samples.bundled())) {
            weigh(server.url());
        }
    }

    private static void weigh(String url) throws Exception {
        try (Browser browser = new Browser()) {
            for (String time : new String[] {"the first time", "again"}) {
                browser.open("about:blank");
                browser.open(url);
                browser.await(
                        "the plan is there",
                        b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
                System.out.println(time + ": " + browser.run(WEIGHED));
            }
        }
    }
}
