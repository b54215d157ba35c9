package org.cresthaul.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoadCase;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.Notch;
import org.cresthaul.rig.Outline;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.LowStructure;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * At a low structure the sheet tells what stands on the sign or was surveyed, the load at this notch, and both gaps.
 */
class StructureHeightsTest {
    private static final double ROUNDED_M = 0.002;

    @ParameterizedTest
    @CsvSource({"sorrel-valley, 1", "alder-county, 3"})
    void bothHeightsAndBothGapsAreTold(String route, int least) {
        RoadCase c = RoadCase.sample(route, "lowbed-loaded");
        Plan plan = c.plan(PlanOptions.defaults());
        double loadM = c.stance().trailer().load().stream()
                .mapToDouble(Outline::highestM)
                .max()
                .orElseThrow();
        List<RunSheet.Entry> entries =
                RunSheet.of(plan, c.report(), c.route(), c.stance(), UnitSystem.US_CUSTOMARY).legs().stream()
                        .flatMap(l -> l.entries().stream())
                        .filter(e -> e.kind() == HazardKind.LOW_STRUCTURE)
                        .toList();
        for (RunSheet.Entry entry : entries) {
            Plan.HazardPassage p = plan.steps().stream()
                    .map(Plan.Step::passage)
                    .filter(Objects::nonNull)
                    .filter(x -> x.hazard().equals(entry.id()))
                    .findFirst()
                    .orElseThrow();
            LowStructure structure =
                    (LowStructure) c.route().findHazard(entry.id()).orElseThrow();
            SheetLine heights = entry.comes().stream()
                    .filter(l -> l.code() == SheetTopic.HEIGHTS)
                    .findFirst()
                    .orElseThrow();
            List<Double> told =
                    heights.figures().stream().map(SheetLine.Figure::value).toList();
            assertEquals(structure.leastHeightM().isPresent() ? 2 : 1, told.size(), heights.text());
            structure.leastHeightM().ifPresent(m -> assertEquals(m, told.get(0), 1e-9, heights.text()));
            // The load stands between the deck's ends: a notch lifts it by part of its step, a raise by part of its
            // own.
            double stepM = c.rig().notches().stream()
                    .filter(n -> n.name().equals(p.set().notch()))
                    .findFirst()
                    .map(Notch::offsetM)
                    .orElseThrow();
            double raiseM = p.raise() == null
                    ? 0
                    : Math.max(p.raise().frontEndM(), p.raise().frontM())
                            + p.raise().rearM();
            double heightM = told.get(told.size() - 1);
            assertTrue(
                    heightM >= loadM + Math.min(0, stepM) - ROUNDED_M
                            && heightM <= loadM + Math.max(0, stepM) + raiseM + ROUNDED_M,
                    heights.text() + ": " + heightM + ", load " + loadM + ", notch " + stepM + ", raise " + raiseM);
            ReportCell cell = c.report().hazards().stream()
                    .filter(h -> h.id().equals(entry.id()))
                    .flatMap(h -> h.cells().stream())
                    .filter(x -> x.configuration().equals(p.set().configuration()))
                    .findFirst()
                    .orElseThrow();
            assertEquals(
                    (cell.ground() == null ? 0 : 1) + (cell.overhead() == null ? 0 : 1),
                    entry.comes().stream()
                            .filter(l -> l.text().startsWith("Least gap "))
                            .count(),
                    entry.comes().toString());
        }
        assertTrue(entries.size() >= least, entries.size() + " structures");
    }
}
