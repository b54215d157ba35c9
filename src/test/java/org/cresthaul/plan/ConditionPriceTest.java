package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.units.RoundedRecords;
import org.junit.jupiter.api.Test;

/**
 * A place that is only under conditions is avoided at small cost: a crossing with 37 s of warning, 32 s without the
 * reserve, which close-coupled takes 32.4 s to clear and uncoupled 31.3 s.
 */
class ConditionPriceTest {
    private static final Rig RIG = PlanCase.rig("close-coupled", "none");
    /** 22.4 m and 21.1 m are then cleared in the times of the title. */
    private static final double CRAWL_MPS = 1.137;

    private static final double WARNING_S = 37;

    private final List<Hazard> hazards = new ArrayList<>();
    private final List<HazardFindings> findings = new ArrayList<>();
    private final List<StoppingPlace> stops = new ArrayList<>();

    /** What each booster state meets; a gap in meters beyond what is required, or a verdict. */
    private void place(Hazard hazard, Object closeCoupled, Object none) {
        List<ReportCell> cells = new ArrayList<>();
        for (ConfigurationVerdict c : PlanCase.configurations(RIG, List.of())) {
            Object met = c.booster().word().equals("none") ? none : closeCoupled;
            cells.add(
                    met instanceof Double left
                            ? PlanCase.cell(c, "clear", null, left)
                            : PlanCase.cell(c, (String) met, null));
        }
        hazards.add(hazard);
        findings.add(PlanCase.findings(hazard, List.of(), cells));
    }

    private Plan plan(long openAndUncoupleS, List<String> acceptTight, boolean fewest) {
        PlanTimes d = PlanTimes.defaults();
        PlanTimes times = new PlanTimes(
                d.stop(),
                d.notch(),
                d.liftAxle(),
                d.regulator(),
                d.shim(),
                d.raise(),
                d.lower(),
                d.coupleBooster(),
                openAndUncoupleS / 2,
                d.closeCouple(),
                openAndUncoupleS / 2,
                d.loadBooster(),
                d.unloadBooster(),
                CRAWL_MPS);
        PlanOptions options =
                new PlanOptions(times, List.of(), null, false, acceptTight, List.of()).with(null, fewest, List.of());
        return new PlanCase(
                        PlanCase.routeOf(hazards, stops),
                        RIG.stances().get(0),
                        PlanCase.report(RIG, findings, List.of()),
                        options,
                        (h, c, f, r) -> Optional.empty())
                .plan();
    }

    private void crossing() {
        place(PlanCase.timedCrossing("H2", 2000, WARNING_S, 200), 0.04, 0.04);
    }

    /** Only close-coupled passes the bridge; uncoupled is the only way to be in time. */
    private void bridgeThenCrossing() {
        place(PlanCase.bridge("B1", 500), "clear", "outside limits");
        crossing();
        stops.add(PlanCase.stop("P1", 1000, true, 80));
    }

    @Test
    void theTimesAreThoseOfTheTitle() {
        RailCrossing crossing = (RailCrossing) PlanCase.timedCrossing("H2", 2000, WARNING_S, 200);
        CrossingTime close = CrossingTimes.of(crossing, "close", 22.4, CRAWL_MPS);
        CrossingTime none = CrossingTimes.of(crossing, "none", 21.1, CRAWL_MPS);
        assertEquals(32.4, RoundedRecords.of(close).clearSeconds(), 1e-9);
        assertEquals(31.3, RoundedRecords.of(none).clearSeconds(), 1e-9);
        assertTrue(!close.fits() && none.fits());
    }

    @Test
    void departsUncoupledWhereThatTakesALittleLonger() {
        // Uncoupled the dip is a crawl, which takes longer than all that close-coupled loses at the crossing.
        place(PlanCase.dip("D1", 500), 0.04, 0.001);
        crossing();

        Plan plan = plan(3600, List.of(), false);

        assertEquals(BoosterState.NONE, plan.steps().get(0).set().booster());
        assertEquals(0, plan.trades().get(0).conditions());
        Plan.Trade quicker = plan.trades().get(1);
        assertEquals(1, quicker.conditions());
        assertTrue(
                quicker.seconds() < plan.seconds()
                        && quicker.configurations().get(0).contains("close-coupled"),
                quicker.toString());
    }

    @Test
    void uncouplesOnTheWayWhereThatCostsLessThanTheConditionCounts() {
        bridgeThenCrossing();

        // A stop of 3 min and 16 min of work; the shorter combination crawls a second or so less.
        Plan plan = plan(16 * 60, List.of(), false);

        assertEquals(1, plan.changes());
        assertEquals(0, plan.trades().get(0).conditions());
        assertFalse(plan.trades().stream().noneMatch(t -> t.conditions() == 1 && t.seconds() < plan.seconds()));
    }

    @Test
    void staysCoupledWhereItCostsMoreAndTellsTheWayWithoutTheCondition() {
        bridgeThenCrossing();

        Plan plan = plan(18 * 60, List.of(), false);

        assertEquals(0, plan.changes());
        assertEquals(1, plan.trades().get(0).conditions());
        Plan.Trade without = plan.trades().stream()
                .filter(t -> t.conditions() == 0)
                .findFirst()
                .orElseThrow();
        assertEquals(1, without.changes());
        assertTrue(
                without.seconds() > plan.seconds()
                        && without.configurations().get(1).contains("none"),
                without.toString());
        assertEquals(0, plan(18 * 60, List.of(), true).trades().get(0).conditions(), "asked for");
    }

    /** A stretch that is tight from its beginning to its end is one condition, however many stops lie on it. */
    @Test
    void aStretchCountsOnceHoweverManyStopsLieOnIt() {
        Hazard stretch = PlanCase.stretch("S1", 300, 1500);
        List<ReportCell> cells = PlanCase.configurations(RIG, List.of()).stream()
                .map(c -> PlanCase.cell(c, c.booster().word().equals("none") ? "clear" : "tight", null))
                .toList();
        hazards.add(stretch);
        findings.add(PlanCase.findings(stretch, List.of(0.0, 1500.0), cells));
        place(PlanCase.bridge("B1", 100), "clear", "outside limits");
        findings.sort(java.util.Comparator.comparingDouble(HazardFindings::chainageM));
        for (int i = 0; i < 6; i++) {
            stops.add(PlanCase.stop("P" + i, 200 + 100 * i, true, 80));
        }

        assertEquals(0, plan(18 * 60, List.of("S1"), false).changes(), "six times over it would be worth uncoupling");
        assertEquals(1, plan(16 * 60, List.of("S1"), false).changes());
    }
}
