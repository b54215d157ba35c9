package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.cresthaul.check.Report;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The speed that a reserve is enough for, by hand: 1 in at 10 mph, so 4 in at 20 mph and 1/4 in at 5 mph. */
class BounceAllowanceTest {
    private static final double INCH = 0.0254;
    private static final double MPH = 0.44704;

    @ParameterizedTest
    @CsvSource({"1, 10", "4, 20", "0.25, 5", "6.25, 25", "30.25, 55", "100, 55"})
    void growsWithTheSquareRootOfWhatIsLeft(double inches, double mph) {
        assertEquals(mph, BounceAllowance.speedMps(inches * INCH + 1e-12).orElseThrow() / MPH, 1e-6);
        assertTrue(BounceAllowance.meters(BounceAllowance.speedMps(inches * INCH + 1e-12).orElseThrow()) <= inches * INCH + 1e-9);
    }

    @Test
    void lessThanAQuarterInchIsACrawl() {
        assertTrue(BounceAllowance.speedMps(0.2499 * INCH).isEmpty());
        assertTrue(BounceAllowance.speedMps(0).isEmpty());
        assertTrue(BounceAllowance.speedMps(-1).isEmpty());
    }

    @Test
    void isToldInRoundFiguresAndNeverFaster() {
        assertEquals("20 mph", new RoundedFigures(UnitSystem.US_CUSTOMARY).speedDown(24.9 * MPH));
        assertEquals("25 mph", new RoundedFigures(UnitSystem.US_CUSTOMARY).speedDown(25 * MPH));
        assertEquals("35 km/h", new RoundedFigures(UnitSystem.METRIC).speedDown(24.8 * MPH));
    }

    private static Plan.Passage passage(Hazard hazard, String verdict, Double leftM) {
        Rig rig = PlanCase.rig("none");
        List<Report.Cell> cells = PlanCase.configurations(rig, List.of()).stream()
                .map(c -> leftM == null ? PlanCase.cell(c, verdict, null) : PlanCase.cell(c, verdict, null, leftM))
                .toList();
        Plan plan = new PlanCase(PlanCase.routeOf(List.of(hazard), List.of()), rig.stances().get(0),
                PlanCase.report(rig, List.of(PlanCase.findings(hazard, hazard.word().equals("stretch") ? List.of(0.0, 100.0) : List.of(), cells)), List.of()),
                PlanOptions.defaults(), (h, c, f, r) -> Optional.empty()).plan();
        return plan.steps().stream().map(Plan.Step::passage).filter(Objects::nonNull).findFirst().orElseThrow();
    }

    @Test
    void aClearDipHasItAndWhatIsNotKnownToBeEnoughIsCrawledOver() {
        Plan.Passage fast = passage(PlanCase.dip("D", 500), "clear", 4 * INCH);
        assertEquals(20, fast.mostMps() / MPH, 0.01);
        assertTrue(!fast.crawls() && fast.seconds() == 0);
        for (Plan.Passage slow : List.of(passage(PlanCase.dip("D", 500), "clear", 0.2 * INCH),
                passage(PlanCase.dip("D", 500), "clear", null), passage(PlanCase.crossing("X", 500), "clear", 4 * INCH))) {
            assertNull(slow.mostMps());
            assertTrue(slow.crawls() && slow.seconds() > 0, slow.toString());
        }
        Plan.Passage stretch = passage(PlanCase.stretch("S", 500, 100), "clear", null);
        assertNull(stretch.mostMps());
        assertTrue(!stretch.crawls());
    }
}
