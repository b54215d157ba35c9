package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;
import org.junit.jupiter.api.Test;

/** What the command line has checked is not judged again when the page asks for it. */
class PreparedAnswersTest {
    private final AtomicInteger checks = new AtomicInteger();
    private final CheckedReports reports = new CheckedReports((asked, follower) -> {
        checks.incrementAndGet();
        return RouteCheck.check(asked.haul(), asked.inputs());
    });

    private static Haul haul(Margins margins) throws Exception {
        Rig rig = RigFile.parse(RigTexts.RIG);
        return new Haul(RouteFile.parse(RouteTexts.ROUTE), rig, rig.stances().get(0), margins);
    }

    /** As of a file. */
    private static String sha256(String text) throws Exception {
        byte[] sum = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().formatHex(sum);
    }

    private static Inputs inputs() throws Exception {
        return new Inputs(sha256(RouteTexts.ROUTE), sha256(RigTexts.RIG));
    }

    @Test
    void thePageFindsTheReport() throws Exception {
        ServerOptions options = new ServerOptions(Optional.empty(), 0, Optional.empty(), TestServer.small());
        WebServer started = WebServer.start(options, WorkGate.Limits.usual(), BodyGate.usual(), reports);
        try (TestServer server = new TestServer(started)) {
            started.check(haul(Margins.defaults()), inputs());
            assertEquals(1, checks.get());

            String page = Requests.check(RouteTexts.ROUTE, RigTexts.RIG, "");
            assertEquals(200, server.post("/api/check", page).statusCode());
            assertEquals(1, checks.get());

            String otherMargin = Requests.check(RouteTexts.ROUTE, RigTexts.RIG, ",\"margins\":{\"ground\":\"5 in\"}");
            assertEquals(200, server.post("/api/check", otherMargin).statusCode());
            assertEquals(2, checks.get());
        }
    }

    @Test
    void thePageFindsThePlan() throws Exception {
        WebServer.planAhead(new CheckRequest(haul(Margins.defaults()), inputs()), reports);
        assertEquals(1, checks.get());

        byte[] page =
                Requests.check(RouteTexts.ROUTE, RigTexts.RIG, ",\"plan\":{}").getBytes(StandardCharsets.UTF_8);
        CheckRequest.With<PlanRequest> asked = CheckRequest.read(page, PlanRequest::read, new KeptDocuments());
        PlanRequest.Planned first = asked.more().of(asked.check(), reports);

        assertEquals(1, checks.get());
        assertSame(
                first.plan(),
                PlanRequest.PLAIN
                        .of(new CheckRequest(haul(Margins.defaults()), inputs()), reports)
                        .plan());
    }
}
