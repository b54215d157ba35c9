package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.cresthaul.check.CheckFollower;
import org.cresthaul.check.KeptFindings;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.geometry.WorkStopped;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.junit.jupiter.api.Test;

/** How far a check has come is told while it runs, place by place, and is true at its end. */
class CheckProgressTest {
    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Asked after every cell: nothing goes back, and at the end all of it is there. */
    @Test
    void growsToTheWholeReport() throws Exception {
        Route route = RouteFile.parse(bytes(RouteTexts.ROUTE));
        Rig rig = RigFile.parse(bytes(RigTexts.RIG));
        CheckUnderway one = new CheckUnderway();
        assertEquals(new CheckUnderway.State("waiting", null, 0, 0, 0, List.of(), List.of(), 0, 0, null), one.state(0));
        List<CheckUnderway.State> seen = Collections.synchronizedList(new ArrayList<>());
        Report report = RouteCheck.check(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()),
                new Inputs("r", "g"),
                new KeptFindings(),
                new CheckFollower() {
                    @Override
                    public void begins(int places, int configurations) {
                        one.begins(places, configurations);
                        seen.add(one.state(0));
                    }

                    @Override
                    public synchronized void judges(String hazard) {
                        one.judges(hazard);
                        seen.add(one.state(0));
                    }

                    @Override
                    public synchronized void refused(Hazard place) {
                        one.refused(place);
                        seen.add(one.state(0));
                    }

                    @Override
                    public synchronized void judged(HazardFindings place) {
                        one.judged(place);
                        seen.add(one.state(0));
                    }
                });
        int configurations = report.configurations().size();
        int places = report.hazards().size();
        Set<String> none = report.hazards().stream()
                .filter(h -> h.cells().stream().allMatch(c -> c.verdict() != Verdict.CLEAR && c.raise() == null))
                .map(HazardFindings::id)
                .collect(Collectors.toSet());
        assertTrue(!none.isEmpty() && none.size() < places, none.toString());
        int cells = 0;
        int found = 0;
        int refused = 0;
        for (CheckUnderway.State state : seen) {
            assertEquals("checking", state.state());
            assertEquals(places, state.places());
            assertEquals(configurations, state.configurations());
            assertTrue(state.cells() >= cells && state.found().size() >= found, state.toString());
            cells = state.cells();
            found = state.found().size();
            assertTrue(none.containsAll(ids(state.passedByNone())), "told and then passed: " + state);
            assertTrue(ids(state.passedByNone()).size() >= refused, state.toString());
            refused = state.passedByNone().size();
        }
        assertEquals(none, ids(one.state(0).passedByNone()));
        assertTrue(
                seen.stream().anyMatch(s -> s.passedByNone().size() > s.found().size()), "before the place is judged");
        assertEquals(places * configurations, cells);
        assertTrue(seen.stream().anyMatch(s -> s.cells() > 0 && s.found().isEmpty()), "configuration by configuration");
        Map<String, String> told = new TreeMap<>();
        one.state(0).found().forEach(f -> told.put(f.hazard(), f.clear() + " " + f.best() + " " + f.chainageM()));
        Map<String, String> expected = new TreeMap<>();
        for (HazardFindings h : report.hazards()) {
            long clear =
                    h.cells().stream().filter(c -> c.verdict() == Verdict.CLEAR).count();
            expected.put(
                    h.id(),
                    clear + " "
                            + h.cells().stream()
                                    .map(ReportCell::verdict)
                                    .sorted()
                                    .findFirst()
                                    .orElseThrow()
                            + " " + h.chainageM());
        }
        assertEquals(expected, told);
        assertEquals(List.of(), one.state(places).found());
        assertEquals(1, one.state(places - 1).found().size());
    }

    private static Set<String> ids(List<CheckUnderway.Blocked> places) {
        return places.stream().map(CheckUnderway.Blocked::hazard).collect(Collectors.toSet());
    }

    /** Over HTTP, as long as the check runs and not a moment longer. */
    @Test
    void isToldUnderTheIdThatTheAskerGave() throws Exception {
        try (TestServer server = TestServer.ofSmallFiles()) {
            assertEquals("none", state(server, "one"));
            CompletableFuture<Integer> check = CompletableFuture.supplyAsync(() -> status(server, "/api/check?id=one"));
            List<String> states = new ArrayList<>();
            while (!check.isDone()) {
                JsonNode told = TestServer.json(server.get("/api/check/one"));
                OpenApi.requireValid("CheckProgress", told);
                states.add(told.path("state").textValue());
            }
            assertEquals(200, check.get());
            assertTrue(states.contains("checking"), states.toString());
            assertEquals("none", state(server, "one"));
        }
    }

    /** Every passage and every place that blocks is a question of its own; the same plan again asks none. */
    @Test
    void thePlanIsFollowedToItsLastQuestionAndMadeOnce() {
        CheckedReports reports = new CheckedReports();
        CheckUnderway first = new CheckUnderway();
        Plan plan = planned(reports, "", first);
        CheckUnderway.State end = first.state(0);
        long passages = plan.steps().stream().filter(s -> s.passage() != null).count();
        assertEquals("planning", end.state());
        assertTrue(passages > 2, "passages: " + passages);
        assertTrue(end.asked() >= passages + plan.blocking().size(), end.toString());
        assertEquals(end.asked(), end.answered());
        assertEquals(
                plan.blocking().stream().map(Plan.Block::hazard).toList(),
                end.blocked().stream().map(CheckUnderway.Blocked::hazard).toList());

        CheckUnderway again = new CheckUnderway();
        assertSame(plan, planned(reports, "", again));
        assertEquals(0, again.state(0).asked());
        assertNotSame(plan, planned(reports, ",\"plan\":{\"avoidRaising\":true}", new CheckUnderway()));
        assertNotSame(plan, planned(reports, ",\"margins\":{\"ground\":\"3 in\"}", new CheckUnderway()));
    }

    private static Plan planned(CheckedReports reports, String more, CheckUnderway follower) {
        CheckRequest.With<PlanRequest> asked =
                CheckRequest.read(bytes(Requests.check(more)), PlanRequest::read, new KeptDocuments());
        return asked.more().of(asked.check(), reports, follower).plan();
    }

    /** A plan that was stopped leaves nothing; the next one who asks has it made. */
    @Test
    void aPlanThatWasStoppedIsNotKept() {
        CheckedReports reports = new CheckedReports();
        CheckRequest asked = CheckRequest.read(bytes(Requests.check("")), new KeptDocuments());
        Plan plan = planned(new CheckedReports(), "", new CheckUnderway());
        assertThrows(
                WorkStopped.class,
                () -> reports.plan(asked, PlanOptions.defaults(), CheckFollower.NONE, () -> {
                    throw new WorkStopped();
                }));
        assertSame(plan, reports.plan(asked, PlanOptions.defaults(), CheckFollower.NONE, () -> plan));
        assertSame(plan, reports.plan(asked, PlanOptions.defaults(), CheckFollower.NONE, () -> {
            throw new IllegalStateException("made twice");
        }));
    }

    private static String state(TestServer server, String id) throws Exception {
        return TestServer.json(server.get("/api/check/" + id + "?from=abc"))
                .path("state")
                .textValue();
    }

    private static int status(TestServer server, String path) {
        try {
            return server.post(path, Requests.check("")).statusCode();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    /** The second of two that ask the same at once waits for the first; where that is stopped, it makes its own. */
    @Test
    void twoWhoAskTheSameAreAnsweredByOneCheck() throws Exception {
        for (boolean stopped : new boolean[] {false, true}) {
            CountDownLatch begun = new CountDownLatch(1);
            CountDownLatch end = new CountDownLatch(1);
            AtomicInteger made = new AtomicInteger();
            CheckedReports reports = new CheckedReports((asked, follower) -> {
                if (made.incrementAndGet() == 1) {
                    Report early = check(asked, CheckFollower.NONE);
                    follower.begins(7, 2);
                    follower.judged(early.hazards().get(1));
                    begun.countDown();
                    await(end);
                    if (stopped) {
                        throw new WorkStopped();
                    }
                }
                return check(asked, follower);
            });
            CheckRequest asked = CheckRequest.read(bytes(Requests.check("")), new KeptDocuments());
            CompletableFuture<Report> first =
                    CompletableFuture.supplyAsync(() -> reports.of(asked, new CheckUnderway()));
            begun.await();
            CheckUnderway waiting = new CheckUnderway();
            CompletableFuture<Report> second = CompletableFuture.supplyAsync(() -> reports.of(asked, waiting));
            while (!waiting.state(0).state().equals("checking")) {
                Thread.sleep(1);
            }
            assertEquals(7, waiting.state(0).places(), "it is told of the check that it waits for");
            List<CheckUnderway.Found> early = waiting.state(0).found();
            assertEquals(1, early.size());
            end.countDown();

            Report answer = second.get();
            assertEquals(stopped, first.handle((r, e) -> e != null).get());
            assertTrue(stopped || first.get() == answer, "the very same");
            assertEquals(stopped ? 2 : 1, made.get());
            List<String> told = waiting.state(0).found().stream()
                    .map(CheckUnderway.Found::hazard)
                    .toList();
            assertEquals(early.get(0).hazard(), told.get(0), "what was told stays where it was");
            assertEquals(answer.hazards().size(), told.size(), "the first tells the rest, or its own check does");
            assertEquals(told.size(), Set.copyOf(told).size(), "each once: " + told);
        }
    }

    private static Report check(CheckRequest asked, CheckFollower follower) {
        return RouteCheck.check(asked.haul(), asked.inputs(), new KeptFindings(), follower);
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
