package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.units.InputProblem;
import org.junit.jupiter.api.Test;

/** The rules of a plan, one situation each. Lengths: 21.1 m without the booster, 24.9 m with it trailing. */
class PlanRulesTest {
    private static final Rig RIG = PlanCase.rig("none", "trailing");
    private static final String NONE_1 = "down/none/1";
    private static final String NONE_2 = "down/none/2";
    private static final String TRAILING_1 = "down/trailing/1";
    private static final String TRAILING_2 = "down/trailing/2";
    private static final List<String> KEYS = List.of(NONE_1, NONE_2, TRAILING_1, TRAILING_2);

    private final List<Hazard> hazards = new ArrayList<>();
    private final List<HazardFindings> findings = new ArrayList<>();
    private final List<StoppingPlace> stops = new ArrayList<>();
    private List<String> wholeRoute = List.of();
    private PlanOptions options = PlanOptions.defaults();
    /** By "hazard configuration front rear": the verdict at that raise. */
    private Map<String, String> judged = Map.of();

    /** A hazard with one verdict for each of the four configurations. */
    private void hazard(Hazard hazard, String... verdicts) {
        raised(hazard, List.of(verdicts), null);
    }

    /** A hazard where every configuration that is not clear wants the same raise. */
    private void raised(Hazard hazard, List<String> verdicts, RaiseFinding raise) {
        List<ReportCell> cells = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            ConfigurationVerdict c = PlanCase.configurations(RIG, List.of()).get(i);
            // Clear by 4 cm, as a check has it: enough to pass at 10 mph and more.
            cells.add(
                    verdicts.get(i).equals("clear")
                            ? PlanCase.cell(c, "clear", null, 0.04)
                            : PlanCase.cell(c, verdicts.get(i), raise));
        }
        hazards.add(hazard);
        findings.add(PlanCase.findings(
                hazard, hazard.kind().word().equals("stretch") ? List.of(0.0, 200.0) : List.of(), cells));
    }

    private Plan plan() {
        findings.sort(Comparator.comparingDouble(HazardFindings::chainageM));
        RaiseJudge judge = (hazard, key, front, rear) -> Optional.ofNullable(
                        judged.get(hazard + " " + key + " " + front + " " + rear))
                .map(v -> new RaisedCheck.Raised(PlanCase.verdict(v), gap(0.08), null, null));
        return new PlanCase(
                        PlanCase.routeOf(hazards, stops),
                        RIG.stances().get(0),
                        PlanCase.report(RIG, findings, wholeRoute),
                        options,
                        judge)
                .plan();
    }

    private static GapFinding gap(double valueM) {
        return new GapFinding(
                valueM,
                0.07,
                0.05,
                0.02,
                Verdict.CLEAR,
                "trailer",
                0,
                0,
                "deck front",
                0,
                0,
                0,
                "center",
                "held",
                0,
                true,
                0);
    }

    private static List<Plan.Change> changes(Plan plan) {
        return plan.steps().stream()
                .filter(s -> s.change() != null)
                .map(Plan.Step::change)
                .toList();
    }

    private static Plan.HazardPassage passage(Plan plan, String hazard) {
        return plan.steps().stream()
                .filter(s -> s.passage() != null && s.passage().hazard().equals(hazard))
                .map(Plan.Step::passage)
                .findFirst()
                .orElseThrow();
    }

    private static List<String> blocks(Plan plan) {
        return plan.blocking().stream().map(Plan.Block::hazard).toList();
    }

    private void onlyNone1ThenOnlyNone2() {
        hazard(PlanCase.dip("H1", 500), "clear", "contact", "contact", "contact");
        hazard(PlanCase.dip("H2", 2000), "contact", "clear", "contact", "contact");
    }

    @Test
    void measuresTheCombinationFromBumperToTheLastTireOrBody() {
        // Bumper at 0.9 m; trailer's rear at -5 - 15.2 m; the booster's body ends 3.8 m behind the hinge there.
        assertEquals(21.1, CombinationLength.meters(RIG.stances().get(0), BoosterState.NONE), 1e-9);
        assertEquals(24.9, CombinationLength.meters(RIG.stances().get(0), BoosterState.TRAILING), 1e-9);
        Rig all = PlanCase.rig("none", "close-coupled", "carried");
        // Close-coupled axle at -5 - 15.9 m; the body ends 0.6 m behind it. Carried it lies within the deck.
        assertEquals(22.4, CombinationLength.meters(all.stances().get(0), BoosterState.CLOSE_COUPLED), 1e-9);
        assertEquals(21.1, CombinationLength.meters(all.stances().get(0), BoosterState.CARRIED), 1e-9);
    }

    @Test
    void changesTheNotchAtAStopBetween() {
        onlyNone1ThenOnlyNone2();
        stops.add(PlanCase.stop("P1", 1000, false, 22));

        Plan plan = plan();

        assertEquals(Outcome.THROUGH, plan.outcome());
        // A stop of 3 min and a notch of 15 min, the defaults.
        assertEquals(180 + 900, plan.seconds());
        assertEquals(
                "notch 1 to notch 2",
                changes(plan).get(0).actions().get(0).text().toString());
        assertEquals(
                List.of("depart", "passage", "change", "passage", "arrive"),
                plan.steps().stream().map(s -> s.step().word()).toList());
    }

    @Test
    void aStopShorterThanTheCombinationIsNoUse() {
        onlyNone1ThenOnlyNone2();
        stops.add(PlanCase.stop("P1", 1000, false, 21));

        Plan plan = plan();

        // One of the two, as dear as the other: the way in the first configuration is named.
        assertEquals(List.of("H2"), blocks(plan));
        assertTrue(
                plan.cautions().stream()
                        .anyMatch(c ->
                                c.toString().startsWith("P1 ") && c.toString().contains("shorter")),
                plan.cautions() + "");
    }

    @Test
    void aStopThatAHazardStillReachesIsNoUseAndThePlanSaysSo() {
        onlyNone1ThenOnlyNone2();
        // The rear of the longest configuration leaves H1 when the front is at 524.9 m.
        stops.add(PlanCase.stop("P1", 524.8, true, 100));

        Plan held = plan();
        assertEquals(Outcome.BLOCKED, held.outcome());
        assertTrue(
                held.cautions().stream()
                        .anyMatch(c ->
                                c.toString().startsWith("P1 ") && c.toString().contains("held by H1")),
                held.cautions() + "");

        stops.set(0, PlanCase.stop("P1", 525, true, 100));
        assertEquals(Outcome.THROUGH, plan().outcome());
    }

    @Test
    void theBoosterIsCoupledOnlyInASetUpAreaWithRoomBeyondIt() {
        hazard(PlanCase.bridge("B1", 500), "clear", "clear", "outside limits", "outside limits");
        hazard(PlanCase.bridge("B2", 2000), "outside limits", "outside limits", "clear", "clear");
        stops.add(PlanCase.stop("P1", 1000, false, 100));
        assertEquals(Outcome.BLOCKED, plan().outcome(), "a stopping place");

        // 24.9 m and 30 ft, 9.144 m.
        stops.set(0, PlanCase.stop("P1", 1000, true, 34.0));
        assertEquals(Outcome.BLOCKED, plan().outcome(), "too short");

        stops.set(0, PlanCase.stop("P1", 1000, true, 34.1));
        Plan plan = plan();
        assertEquals(Outcome.THROUGH, plan.outcome());
        assertEquals(
                List.of("couple booster", "regulator"),
                changes(plan).get(0).actions().stream()
                        .map(a -> a.action().word())
                        .toList());
        assertEquals(180 + 2700 + 120, plan.seconds());
        assertTrue(
                plan.cautions().stream().anyMatch(c -> c.toString().contains("somebody must have brought it")),
                plan.cautions() + "");
    }

    @Test
    void aStretchOverAStopHoldsOnBothSides() {
        hazard(PlanCase.dip("H1", 500), "clear", "contact", "contact", "contact");
        hazard(PlanCase.stretch("S1", 900, 200), "clear", "outside limits", "clear", "clear");
        hazard(PlanCase.dip("H2", 2000), "contact", "clear", "contact", "contact");
        stops.add(PlanCase.stop("P1", 1000, true, 100));

        assertEquals(List.of("H2"), blocks(plan()), "notch 2 is not allowed on the rest of the stretch");

        // The rear leaves the stretch when the front is 24.9 m beyond its end.
        stops.set(0, PlanCase.stop("P1", 1124.8, true, 100));
        assertEquals(Outcome.BLOCKED, plan().outcome());
        stops.set(0, PlanCase.stop("P1", 1125, true, 100));
        assertEquals(Outcome.THROUGH, plan().outcome());
    }

    @Test
    void aStretchThatNothingMayDriveBlocksOnceHoweverManyStopsLieOnIt() {
        hazard(PlanCase.stretch("S1", 900, 200), "contact", "contact", "contact", "contact");
        for (int i = 0; i < 5; i++) {
            stops.add(PlanCase.stop("P" + i, 920 + 30 * i, true, 100));
        }

        Plan plan = plan();

        assertEquals(List.of("S1"), blocks(plan));
        assertEquals(0, plan.changes());
        assertTrue(passage(plan, "S1").blocked());
    }

    @Test
    void theLimitsOfTheWholeRouteHoldFromStartToEnd() {
        wholeRoute = List.of("outside limits", "clear");
        hazard(PlanCase.bridge("B1", 500), "clear", "clear", "outside limits", "outside limits");
        stops.add(PlanCase.stop("P1", 100, true, 100));
        stops.add(PlanCase.stop("P2", 1000, true, 100));

        Plan plan = plan();
        // Either the route's limits or the bridge's: one of them, and the dearer way over the set-up areas is not
        // taken.
        assertEquals(1, plan.blocking().size());
        assertEquals(0, plan.changes());

        options = new PlanOptions(PlanTimes.defaults(), List.of(), null, false, List.of(), List.of(Plan.WHOLE_ROUTE));
        Plan aside = plan();
        assertEquals(Outcome.CONDITIONAL, aside.outcome());
        assertEquals(ConditionKind.SET_ASIDE, aside.conditions().get(0).what());
        assertEquals(Plan.WHOLE_ROUTE, aside.conditions().get(0).hazard());
    }

    @Test
    void placesCloseTogetherArePassedOnOneRaiseThatTheCheckMustConfirm() {
        List<String> contact = List.of("contact", "contact", "contact", "contact");
        raised(PlanCase.dip("H1", 500), contact, new RaiseFinding(0.05, 0, 0.08, 0.07));
        // The rear has left H1 at 524.9 m, and 30 ft is 9.144 m.
        raised(PlanCase.dip("H2", 534), contact, new RaiseFinding(0.02, 0.03, 0.08, 0.07));
        hazard(PlanCase.corner("C1", 590), "clear", "clear", "clear", "clear");

        assertEquals(1, plan().blocking().size(), "nobody confirmed the raise of both together");

        judged = Map.of("H1 down/none/2 0.05 0.03", "clear", "H2 down/none/2 0.05 0.03", "clear");
        Plan plan = plan();
        assertEquals(Outcome.THROUGH, plan.outcome());
        assertEquals(NONE_2, plan.steps().get(0).set().configuration(), "the only one that was confirmed");
        for (String hazard : List.of("H1", "H2", "C1")) {
            assertEquals(0.05, passage(plan, hazard).raise().frontM(), hazard);
            assertEquals(0.03, passage(plan, hazard).raise().rearM(), hazard);
            assertTrue(passage(plan, hazard).crawls(), hazard);
        }
        // Raised once and lowered once: the corner begins 45.72 m before its point and holds them together.
        assertEquals(
                List.of(true, false, false),
                List.of(
                        passage(plan, "H1").raises(),
                        passage(plan, "H2").raises(),
                        passage(plan, "C1").raises()));
        assertEquals(
                List.of(false, false, true),
                List.of(
                        passage(plan, "H1").lowers(),
                        passage(plan, "H2").lowers(),
                        passage(plan, "C1").lowers()));
        // At 3 mph, 1.34112 m/s: 21.1 m take 15.7 s, 91.44 + 21.1 m take 83.9 s; two stops, up and down.
        assertEquals(16 + 16 + 84 + 2 * 180 + 240 + 240, plan.seconds());

        options = new PlanOptions(PlanTimes.defaults(), List.of(), null, true, List.of(), List.of());
        assertEquals(List.of("H1", "H2"), blocks(plan()), "no raising");
    }

    @Test
    void placesWithRoomToStopBetweenAreRaisedOneByOne() {
        List<String> contact = List.of("contact", "contact", "contact", "contact");
        raised(PlanCase.dip("H1", 500), contact, new RaiseFinding(0.05, 0, 0.08, 0.07));
        raised(PlanCase.dip("H2", 534.1), contact, new RaiseFinding(0.02, 0.03, 0.08, 0.07));

        Plan plan = plan();

        assertEquals(Outcome.THROUGH, plan.outcome());
        assertEquals(0.05, passage(plan, "H1").raise().frontM());
        assertEquals(0.02, passage(plan, "H2").raise().frontM());
        assertTrue(passage(plan, "H1").lowers() && passage(plan, "H2").raises());
    }

    @Test
    void aRaiseForOnePlaceMayShutAnotherAndThenOneOfThemBlocks() {
        List<String> contact = List.of("contact", "contact", "contact", "contact");
        raised(PlanCase.dip("H1", 500), contact, new RaiseFinding(0.05, 0, 0.08, 0.07));
        hazard(PlanCase.dip("H2", 520), "clear", "clear", "clear", "clear");
        judged = Map.of("H2 down/none/1 0.05 0.0", "contact");

        Plan plan = plan();

        assertEquals(1, plan.blocking().size());
        assertTrue(plan.stopsAtBlocks());
    }

    @Test
    void tightPlacesArePassedOnlyWhenAcceptedAndAreThenConditions() {
        hazard(PlanCase.dip("H1", 500), "tight", "contact", "contact", "contact");
        assertEquals(Outcome.BLOCKED, plan().outcome());

        options = new PlanOptions(PlanTimes.defaults(), List.of(), null, false, List.of("H1"), List.of());
        Plan plan = plan();
        assertEquals(Outcome.CONDITIONAL, plan.outcome());
        assertEquals(ConditionKind.TIGHT, plan.conditions().get(0).what());
        assertTrue(
                plan.conditions().get(0).text().toString().contains("spotter"),
                plan.conditions().get(0).text().toString());
        assertEquals(NONE_1, plan.steps().get(0).set().configuration());
        assertEquals(Verdict.TIGHT, passage(plan, "H1").verdict());
    }

    @Test
    void aRouteWithoutHazardsIsNotCalledOpen() {
        Plan plan = plan();

        assertEquals(Outcome.UNJUDGED, plan.outcome());
        assertTrue(
                plan.cautions().get(0).toString().contains("no place was judged"),
                plan.cautions().get(0).toString());
        assertEquals(2, plan.steps().size());
        assertNull(plan.robustness());
    }

    @Test
    void keepsTheOneConfigurationItIsToldToKeep() {
        hazard(PlanCase.dip("H1", 500), "clear", "clear", "clear", "contact");
        options = new PlanOptions(PlanTimes.defaults(), List.of(), TRAILING_1, false, List.of(), List.of());
        assertEquals(TRAILING_1, plan().steps().get(0).set().configuration());

        options = new PlanOptions(PlanTimes.defaults(), List.of(), TRAILING_2, false, List.of(), List.of());
        assertEquals(List.of("H1"), blocks(plan()));
    }

    @Test
    void mistakesInTheOptionsAreAllTold() {
        hazard(PlanCase.dip("H1", 500), "clear", "clear", "clear", "contact");
        Report report = PlanCase.report(RIG, findings, List.of());
        List<InputProblem> found = PlanOptionsCheck.problems(
                report,
                new PlanOptions(
                        PlanTimes.defaults(),
                        List.of(NONE_1, "up/none/9"),
                        NONE_1,
                        false,
                        List.of("H1", "H9"),
                        List.of("H8", Plan.WHOLE_ROUTE)));

        assertEquals(
                List.of(
                        "/forbid/1 unknown-name",
                        "/fix fixed-and-forbidden",
                        "/acceptTight/0 not-tight",
                        "/acceptTight/1 unknown-name",
                        "/setAside/0 unknown-name",
                        "/setAside/1 unknown-name"),
                found.stream().map(p -> p.pointer() + " " + p.code()).toList());
        assertEquals(
                List.of("/forbid all-forbidden"),
                PlanOptionsCheck.problems(
                                report, new PlanOptions(PlanTimes.defaults(), KEYS, null, false, List.of(), List.of()))
                        .stream()
                        .map(p -> p.pointer() + " " + p.code())
                        .toList());
        options = new PlanOptions(PlanTimes.defaults(), KEYS, null, false, List.of(), List.of());
        assertThrows(IllegalArgumentException.class, this::plan);
        assertFalse(found.stream().anyMatch(p -> p.remedy().isBlank()));
    }
}
