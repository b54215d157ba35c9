package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.CheckFollower;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/** What was read once is not read again, and nothing else is taken for it. */
class KeptDocumentsTest {
    private final KeptDocuments kept = new KeptDocuments();

    private CheckRequest read(String route, String rig, String more) {
        return CheckRequest.read(Requests.check(route, rig, more).getBytes(StandardCharsets.UTF_8), kept);
    }

    @Test
    void theSameBytesAreTheSameRouteAndRig() {
        Haul first = read(RouteTexts.ROUTE, RigTexts.RIG, "").haul();
        Haul again = read(RouteTexts.ROUTE, RigTexts.RIG, ",\"margins\":{\"ground\":\"5 in\"}")
                .haul();
        assertSame(first.route(), again.route());
        assertSame(first.rig(), again.rig());
        assertNotEquals(first.margins(), again.margins());
    }

    @Test
    void anotherByteIsAnotherRoute() {
        Route first = read(RouteTexts.ROUTE, RigTexts.RIG, "").haul().route();
        String renamed = JsonEdit.edit(RouteTexts.ROUTE, "/name", "\"Another\"");
        Route other = read(renamed, RigTexts.RIG, "").haul().route();
        assertNotSame(first, other);
        assertEquals("Another", other.name());
    }

    /** Told as often as it is sent, the mistake of a route that comes with a rig that is known. */
    @Test
    void mistakesAreNotKept() {
        String wrong = JsonEdit.edit(RouteTexts.ROUTE, "/name", "3");
        read(RouteTexts.ROUTE, RigTexts.RIG, "");
        List<InputProblem> first = problems(wrong);
        assertEquals("/route/name", first.get(0).pointer());
        assertEquals(first, problems(wrong));
    }

    private List<InputProblem> problems(String route) {
        return assertThrows(Refusal.class, () -> read(route, RigTexts.RIG, "")).problems();
    }

    /** What was read with the limits of another file is not the route of its own file. */
    @Test
    void aRouteWithOtherLimitsIsNotKept() {
        CheckRequest own = read(RouteTexts.ROUTE, RigTexts.RIG, "");
        KeptDocuments others = new KeptDocuments();
        Inputs with = new Inputs(own.inputs().routeSha256(), own.inputs().rigSha256(), Optional.of("0"));
        others.keep(own.haul(), with);
        byte[] body = Requests.check(RouteTexts.ROUTE, RigTexts.RIG, "").getBytes(StandardCharsets.UTF_8);
        Haul haul = CheckRequest.read(body, others).haul();
        assertNotSame(own.haul().route(), haul.route());
        assertSame(own.haul().rig(), haul.rig());
    }

    @Test
    void aReportIsWrittenOnce() {
        CheckedReports reports = new CheckedReports();
        CheckRequest asked = read(RouteTexts.ROUTE, RigTexts.RIG, "");
        byte[] json = reports.json(asked, CheckFollower.NONE);
        assertArrayEquals(JsonAnswer.bytes(reports.of(asked)), json);
        assertSame(json, reports.json(asked, CheckFollower.NONE));
        CheckRequest wider = asked.of(new Haul(
                asked.haul().route(),
                asked.haul().rig(),
                asked.haul().stance(),
                new Margins(0.2, 0.2, 0.2, 0.2, 0.2, 0.2)));
        assertNotSame(json, reports.json(wider, CheckFollower.NONE));
        assertArrayEquals(JsonAnswer.bytes(reports.of(wider)), reports.json(wider, CheckFollower.NONE));
    }
}
