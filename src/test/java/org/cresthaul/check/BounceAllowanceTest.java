package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
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
        assertTrue(BounceAllowance.meters(
                        BounceAllowance.speedMps(inches * INCH + 1e-12).orElseThrow())
                <= inches * INCH + 1e-9);
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

    /** Of what the check leaves over the ground and under the structure the least, and only where it is clear. */
    @Test
    void everyClearDipCrestAndStructureOfTheSampleHasItInTheCheck() throws Exception {
        Report report = SampleHaul.of("alder-county", "lowbed-loaded").report();
        int fast = 0;
        int crawls = 0;
        int none = 0;
        for (HazardFindings hazard : report.hazards()) {
            for (ReportCell cell : hazard.cells()) {
                boolean sped = List.of("dip", "crest", "low-structure")
                                .contains(hazard.kind().word())
                        && cell.verdict() == Verdict.CLEAR;
                double leftM = Stream.of(cell.ground(), cell.overhead())
                        .filter(Objects::nonNull)
                        .flatMap(g -> g.deciding() == null ? Stream.of(g) : Stream.of(g, g.deciding()))
                        .mapToDouble(g -> g.valueM() - g.requiredM())
                        .min()
                        .orElse(0);
                if (!sped || leftM < 0.25 * INCH) {
                    assertNull(cell.mostMps(), hazard.id() + " " + cell.configuration());
                    none += sped ? 0 : 1;
                    crawls += sped ? 1 : 0;
                } else {
                    double mph = Math.min(55, 10 * Math.sqrt(leftM / INCH));
                    assertTrue(cell.mostMps() <= mph * MPH + 1e-9, hazard.id() + " " + cell.configuration());
                    assertEquals(mph * MPH, cell.mostMps(), 1.1e-3);
                    fast++;
                }
            }
        }
        assertTrue(fast > 50 && crawls > 5 && none > 100, fast + " " + crawls + " " + none);
    }
}
