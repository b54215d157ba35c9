package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.TreeSet;
import java.util.regex.Pattern;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.Test;

/** What a server rehearses when it starts is what the page asks when it opens. */
class OpeningRequestsTest extends OnSmallFiles {
    /** Prepared by themselves, or asked of the sheet that is there by then. */
    private static final Pattern LATER = Pattern.compile("api/(check|plan|loads|passage|corner|comparison)\\b.*");

    @Test
    void theRehearsalIsThePlay() throws Exception {
        browser.requests();
        openPage(900);
        browser.await(
                "the plan is there", b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
        TreeSet<String> asked = new TreeSet<>();
        for (String address : browser.requests()) {
            if (address.startsWith(server.url())) {
                asked.add(address.substring(server.url().length()));
            }
        }
        asked.removeIf(path -> LATER.matcher(path).matches());
        assertEquals(new TreeSet<>(TestServer.rehearsed()), asked);
    }
}
