package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.report.Report;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;
import org.junit.jupiter.api.Test;

/** A report serves again for the same question, and for no other. */
class CheckedReportsTest {
    private final List<CheckRequest> checked = new ArrayList<>();
    private final CheckedReports reports = new CheckedReports((asked, follower) -> {
        checked.add(asked);
        return RouteCheck.check(asked.haul(), asked.inputs());
    });

    private static CheckRequest request(String route, String more) {
        return CheckRequest.read(
                Requests.check(route, RigTexts.RIG, more).getBytes(StandardCharsets.UTF_8), new KeptDocuments());
    }

    private Report of(String route, String more) {
        return reports.of(request(route, more));
    }

    @Test
    void theSameBytesAreCheckedOnce() {
        Report first = of(RouteTexts.ROUTE, "");

        assertSame(first, of(RouteTexts.ROUTE, ""));
        assertEquals(1, checked.size());
    }

    @Test
    void otherMarginsAnOtherRouteOrAnOtherSpellingAreCheckedAnew() {
        Report first = of(RouteTexts.ROUTE, "");
        Report wider = of(RouteTexts.ROUTE, ",\"margins\":{\"ground\":\"4 in\"}");

        assertNotSame(first, wider);
        assertEquals(0.1016, wider.margins().groundM(), 1e-12, "4 in of 25.4 mm");
        assertNotSame(first, of(RouteTexts.ROUTE + " ", ",\"margins\":{\"side\":\"1 in\"}"));
        assertEquals(3, checked.size());
    }

    @Test
    void noMoreThanFourAreKeptAndTheOneAskedForLastStays() {
        Report first = of(RouteTexts.ROUTE, "");
        for (int inches = 1; inches <= 3; inches++) {
            of(RouteTexts.ROUTE, ",\"margins\":{\"side\":\"" + inches + " in\"}");
        }
        assertSame(first, of(RouteTexts.ROUTE, ""));
        of(RouteTexts.ROUTE, ",\"margins\":{\"side\":\"4 in\"}");
        assertSame(first, of(RouteTexts.ROUTE, ""));
        assertEquals(5, checked.size());
        of(RouteTexts.ROUTE, ",\"margins\":{\"side\":\"1 in\"}");
        assertEquals(6, checked.size(), "1 in was asked for longest ago");
    }

    @Test
    void whatWasStoppedLeavesNothing() {
        List<CheckRequest> tries = new ArrayList<>();
        CheckedReports stopped = new CheckedReports((asked, follower) -> {
            tries.add(asked);
            throw new IllegalStateException("stopped");
        });
        CheckRequest asked = request(RouteTexts.ROUTE, "");

        assertThrows(IllegalStateException.class, () -> stopped.of(asked));
        assertThrows(IllegalStateException.class, () -> stopped.of(asked));
        assertEquals(2, tries.size());
    }
}
