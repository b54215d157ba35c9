package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.CrossingTraffic;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.RailCrossing;
import org.junit.jupiter.api.Test;

/**
 * Where the deck goes up and down, by driving the combination past every place of invented routes that nest and
 * overlap.
 */
class LiftStopsTest {
    private static final double FOOT_M = 0.3048;
    private static final int ROUTES = 5000;
    private static final Rig RIG = PlanCase.rig("none", "trailing");
    private static final RaiseFinding RAISE = new RaiseFinding(0.05, 0, 0.08, 0.07);
    private static final RaiseJudge ALWAYS_CLEAR = (hazard, configuration, front, rear) ->
            Optional.of(new RaisedCheck.Raised(Verdict.CLEAR, gap(), null, null));

    private static GapFinding gap() {
        return new GapFinding(
                0.1, 0.05, 0.05, 0, Verdict.CLEAR, "trailer", 0, 0, "", 0, 0, 0, "center", "held", 0, true, 0);
    }

    /** A place by the rules of docs/model.md: from where the front comes to it to where the rear leaves it. */
    private record Reach(String id, double fromM, double toM, boolean crossing, double atM, OptionalDouble storageM) {
        boolean holds(double frontM, double lengthM) {
            return frontM > fromM + 1e-3 && frontM - lengthM < toM - 1e-3;
        }

        /** Whether some part of the combination is within 15 ft of a rail, or over the stop line beyond the storage. */
        boolean isInTheWay(double frontM, double lengthM) {
            double railM = 2.5 * FOOT_M;
            double lineM = atM + railM + storageM.orElse(1e9);
            return crossing
                    && (frontM > atM - railM - 15 * FOOT_M + 1e-3 && frontM - lengthM < atM + railM + 15 * FOOT_M - 1e-3
                            || frontM > lineM + 1e-3 && frontM - lengthM < lineM - 1e-3);
        }
    }

    private record Road(List<Reach> reaches, Plan plan) {}

    private final List<Hazard> hazards = new ArrayList<>();
    private final List<HazardFindings> findings = new ArrayList<>();
    private final List<Reach> reaches = new ArrayList<>();

    private void place(Hazard hazard, double before, double after, boolean raised) {
        hazards.add(hazard);
        List<ReportCell> cells = PlanCase.configurations(RIG, List.of()).stream()
                .map(c -> PlanCase.cell(c, raised ? "contact" : "clear", raised ? RAISE : null))
                .toList();
        boolean surveyed = before < 0 || after > 0;
        findings.add(PlanCase.findings(hazard, surveyed ? List.of(before, after) : List.of(), cells));
        double at = hazard.place().chainageM();
        boolean crossing = hazard instanceof RailCrossing;
        double least = crossing ? 17.5 * FOOT_M : hazard.kind().word().equals("corner") ? 150 * FOOT_M : 0;
        reaches.add(new Reach(
                hazard.place().id(),
                at + Math.min(before, -least),
                at + Math.max(after, least),
                crossing,
                at,
                crossing ? ((RailCrossing) hazard).traffic().storageM() : OptionalDouble.empty()));
    }

    private static Hazard crossing(String id, double atM, OptionalDouble storageM) {
        return new RailCrossing(
                PlanCase.place(id, atM),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                List.of(0.0),
                List.of(),
                new CrossingTraffic(
                        Optional.empty(),
                        OptionalDouble.empty(),
                        storageM,
                        OptionalDouble.empty(),
                        OptionalDouble.empty()));
    }

    private Road road() {
        findings.sort(java.util.Comparator.comparingDouble(HazardFindings::chainageM));
        Report report = PlanCase.report(RIG, findings, List.of());
        PlanCase it = new PlanCase(
                PlanCase.routeOf(hazards, List.of()),
                RIG.stances().get(0),
                report,
                new PlanOptions(PlanTimes.defaults(), List.of(), null, false, List.of(), List.of()),
                ALWAYS_CLEAR);
        return new Road(List.copyOf(reaches), it.plan());
    }

    private static List<Plan.Step> lifts(Plan plan, String step) {
        return plan.steps().stream().filter(s -> s.step().word().equals(step)).toList();
    }

    /** The reporter's case: a posted bridge 25 m before a crossing with a survey of 40 m to either side. */
    @Test
    void theDeckStaysUpUntilTheRearHasLeftTheCrossingItWasRaisedFor() {
        place(crossing("X", 500, OptionalDouble.of(200)), -40, 40, true);
        place(PlanCase.bridge("B", 475), 0, 0, false);
        Plan plan = road().plan();

        double lengthM = plan.steps().get(0).set().lengthM();
        assertEquals(
                List.of("depart", "raise", "passage", "passage", "lower", "arrive"),
                plan.steps().stream().map(s -> s.step().word()).toList());
        assertEquals("X", plan.steps().get(2).passage().hazard());
        assertEquals("B", plan.steps().get(3).passage().hazard());
        Plan.Step lower = plan.steps().get(4);
        assertEquals("X", lower.lift().lastLeft());
        assertEquals(540 + lengthM, lower.chainageM(), 1e-3);
        assertNull(lower.lift().lacks());
        assertTrue(plan.steps().get(2).passage().lowers());
        assertFalse(plan.steps().get(3).passage().lowers());
    }

    @Test
    void aLoweringStopAcrossTheNextStopLineGoesOnBeyondItOrIsACondition() {
        place(crossing("X", 500, OptionalDouble.of(20)), -10, 10, true);
        Plan beyond = road().plan();
        double lengthM = beyond.steps().get(0).set().lengthM();
        Plan.Step lower = lifts(beyond, "lower").get(0);
        // The stop line is 20 m beyond the last rail, 2.5 ft from the track's center: it would be under the
        // combination.
        assertEquals(520 + 2.5 * FOOT_M + lengthM, lower.chainageM(), 1e-3);
        assertNull(lower.lift().lacks());

        hazards.clear();
        findings.clear();
        reaches.clear();
        place(crossing("X", 500, OptionalDouble.of(30)), -10, 10, true);
        place(PlanCase.bridge("B", 550), 0, 0, false);
        Plan blocked = road().plan();
        // The bridge is met before the rear is past the stop line, but there is room to stop between crossing and
        // bridge.
        assertNotNull(lifts(blocked, "lower").get(0).lift().lacks());
        assertTrue(
                blocked.conditions().stream()
                        .anyMatch(c ->
                                c.what() == ConditionKind.DOWN && c.hazard().equals("X")),
                blocked.conditions().toString());
    }

    @Test
    void stopsThatDoNotExistAreConditions() {
        place(PlanCase.dip("D1", 5), -10, 10, true);
        place(PlanCase.dip("D2", PlanCase.LINE.lengthM() - 5), -10, 10, true);
        Plan plan = road().plan();

        assertEquals(Outcome.CONDITIONAL, plan.outcome());
        assertEquals(
                List.of(ConditionKind.UP, ConditionKind.DOWN),
                plan.conditions().stream().map(Plan.Condition::what).toList());
        assertEquals(
                List.of("D1", "D2"),
                plan.conditions().stream().map(Plan.Condition::hazard).toList());
    }

    @Test
    void roomThatNobodyWroteDownIsNoRoom() {
        place(crossing("X", 500, OptionalDouble.empty()), -10, 10, true);
        Plan plan = road().plan();
        assertNotNull(lifts(plan, "lower").get(0).lift().lacks());
        assertEquals(
                List.of(ConditionKind.DOWN),
                plan.conditions().stream().map(Plan.Condition::what).toList());
    }

    @Test
    void drivenPastEveryPlaceTheDeckIsUpWhereItWasRaisedForAndStandsInNobodysWay() {
        SplittableRandom random = new SplittableRandom(20261128);
        int nested = 0;
        int lacking = 0;
        int lifts = 0;
        for (int i = 0; i < ROUTES; i++) {
            hazards.clear();
            findings.clear();
            reaches.clear();
            double at = random.nextInt(20) == 0 ? 5 : random.nextDouble(60, 3000);
            for (int k = 0, n = 2 + random.nextInt(5); k < n; k++) {
                double before = -random.nextDouble(60);
                double after = random.nextDouble(60);
                boolean raised = random.nextInt(3) > 0;
                String id = "H" + k;
                switch (random.nextInt(6)) {
                    case 0, 1 ->
                        place(
                                crossing(
                                        id,
                                        at,
                                        random.nextInt(4) == 0
                                                ? OptionalDouble.empty()
                                                : OptionalDouble.of(random.nextDouble(5, 120))),
                                before,
                                after,
                                raised);
                    case 2, 3 -> place(PlanCase.dip(id, at), before, after, raised);
                    case 4 -> place(PlanCase.bridge(id, at), 0, 0, false);
                    default -> place(PlanCase.corner(id, at), 0, 0, false);
                }
                at = Math.min(PlanCase.LINE.lengthM(), at + random.nextDouble(random.nextInt(4) == 0 ? 300 : 60));
            }
            Road road = road();
            assertDrivable(road, "route " + i + ": " + road.reaches);
            for (Plan.Step s : lifts(road.plan, "raise")) {
                List<Reach> on = road.reaches.stream()
                        .filter(r -> s.lift().hazards().contains(r.id))
                        .toList();
                String lastMet = s.lift().hazards().get(s.lift().hazards().size() - 1);
                nested += s.lift().lastLeft().equals(lastMet) ? 0 : 1;
                lifts++;
                assertEquals(on.size(), s.lift().hazards().size());
            }
            lacking += (int) road.plan.conditions().stream()
                    .filter(Plan.Condition::isOfLift)
                    .count();
        }
        System.out.println(ROUTES + " routes, " + lifts + " raises, " + nested
                + " with a place left last that is not met last, " + lacking + " without a place shown");
        assertTrue(lifts > 5000 && nested > 1000 && lacking > 500, lifts + " " + nested + " " + lacking);
    }

    private static void assertDrivable(Road road, String what) {
        Plan plan = road.plan;
        double lengthM = plan.steps().get(0).set().lengthM();
        assertEquals(0, plan.changes(), what);
        boolean up = false;
        double last = 0;
        Plan.Step raising = null;
        List<double[]> ups = new ArrayList<>();
        for (Plan.Step step : plan.steps()) {
            assertTrue(step.chainageM() >= last - 1e-9, what + " backward at " + step);
            last = step.chainageM();
            if (step.step() == StepKind.RAISE) {
                assertFalse(up, what);
                up = true;
                raising = step;
            } else if (step.step() == StepKind.LOWER) {
                assertTrue(up, what);
                up = false;
                ups.add(new double[] {raising.chainageM(), step.chainageM()});
            }
            if (step.lift() != null) {
                assertStands(road, step, lengthM, what);
            }
            if (step.passage() != null) {
                assertEquals(
                        up,
                        step.passage().raise() != null,
                        what + " " + step.passage().hazard());
            }
        }
        assertFalse(up, what);
        // Wherever the front is, every place passed raised that holds the combination has the deck up.
        for (Reach r : road.reaches) {
            Plan.HazardPassage p = plan.steps().stream()
                    .map(Plan.Step::passage)
                    .filter(q -> q != null && q.hazard().equals(r.id))
                    .findFirst()
                    .orElseThrow();
            if (p.raise() == null) {
                continue;
            }
            double end = Math.min(r.toM + lengthM, PlanCase.LINE.lengthM());
            for (double x = Math.max(0, r.fromM); x < end; x += 0.5) {
                double front = x;
                if (r.holds(front, lengthM)) {
                    assertTrue(
                            ups.stream().anyMatch(u -> u[0] <= front + 1e-3 && front <= u[1] + 1e-3),
                            what + ": at " + front + " m the deck is down over " + r.id);
                }
            }
        }
    }

    private static boolean isFree(Road road, double frontM, double lengthM) {
        return frontM >= -1e-3
                && frontM <= PlanCase.LINE.lengthM() + 1e-3
                && road.reaches.stream().noneMatch(r -> r.holds(frontM, lengthM) || r.isInTheWay(frontM, lengthM));
    }

    private static void assertStands(Road road, Plan.Step step, double lengthM, String what) {
        Plan.Lift lift = step.lift();
        boolean raise = step.step() == StepKind.RAISE;
        List<Reach> on =
                road.reaches.stream().filter(r -> lift.hazards().contains(r.id)).toList();
        double meets = on.stream().mapToDouble(Reach::fromM).min().orElseThrow();
        double leaves = on.stream().mapToDouble(Reach::toM).max().orElseThrow() + lengthM;
        if (lift.lacks() == null) {
            for (double t = 0; t <= 1; t += 0.125) {
                double front = lift.fromChainageM() + t * (lift.toChainageM() - lift.fromChainageM());
                assertTrue(isFree(road, front, lengthM), what + ": stands in the way at " + front + " m: " + lift);
                assertTrue(raise ? front <= meets + 1e-3 : front >= leaves - 1e-3, what + " " + lift);
            }
            return;
        }
        boolean unknown = !raise && on.stream().anyMatch(r -> r.crossing && r.storageM.isEmpty());
        if (unknown) {
            return;
        }
        // Nowhere between what comes before and what comes after is there a place to stand.
        double from = raise
                ? road.reaches.stream()
                        .filter(r -> r.fromM < meets && !on.contains(r))
                        .mapToDouble(r -> r.toM + lengthM)
                        .max()
                        .orElse(0)
                : leaves;
        double to = raise
                ? meets
                : road.reaches.stream()
                        .filter(r -> r.fromM > meets && !on.contains(r))
                        .mapToDouble(Reach::fromM)
                        .min()
                        .orElse(PlanCase.LINE.lengthM());
        for (double x = from + 0.01; x < to - 0.01; x += 0.1) {
            assertFalse(isFree(road, x, lengthM), what + ": could stand at " + x + " m: " + step);
        }
    }
}
