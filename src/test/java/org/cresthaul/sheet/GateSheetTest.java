package org.cresthaul.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.CornerLayoutFileTest;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.BackingLine;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Route;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.CompletePlan;
import org.junit.jupiter.api.Test;

/**
 * A gate on the run sheet: everything that the driver backs by is there, in the terms of backing, each with its origin.
 */
class GateSheetTest {
    @Test
    void tellsAllThatTheDriverBacksBy() throws Exception {
        Route route = RouteFile.parse(
                JsonEdit.edit(CornerLayoutFileTest.GATE, "/features/1/properties/template/gate/width", "\"60 ft\""));
        Rig rig = RigFile.parse(RigTexts.RIG);
        Report report = RouteCheck.check(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));
        Plan plan = CompletePlan.of(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()), report, PlanOptions.defaults());
        RunSheet sheet = RunSheet.of(plan, report, route, rig.stances().get(0), UnitSystem.METRIC);
        RunSheet.Entry gate = sheet.legs().stream()
                .flatMap(l -> l.entries().stream())
                .filter(e -> "C1".equals(e.id()))
                .findFirst()
                .orElseThrow();
        String key = plan.steps().stream()
                .filter(s -> s.passage() != null && s.passage().hazard().equals("C1"))
                .findFirst()
                .orElseThrow()
                .passage()
                .set()
                .configuration();
        BackingLine line = RoundedRecords.of(report).hazards().get(0).cells().stream()
                .filter(c -> c.configuration().equals(key))
                .findFirst()
                .orElseThrow()
                .corner()
                .backing();
        Map<String, Double> told = new TreeMap<>();
        Stream.of(gate.comes(), gate.before(), gate.through(), gate.after())
                .flatMap(l -> l.stream())
                .flatMap(l -> l.figures().stream())
                .filter(f -> f.from().contains("/backing/"))
                .forEach(f -> told.put(f.from().replaceAll(".*/", ""), f.value()));
        assertEquals(
                Map.of(
                        "stopM",
                        line.stopM(),
                        "edgeM",
                        line.edgeM(),
                        "wheelM",
                        line.wheelM(),
                        "radiusM",
                        line.radiusM(),
                        "straightM",
                        Math.abs(line.straightM())),
                told);
        String through = gate.toString();
        assertTrue(through.contains("spotter"), through);
        assertEquals(line.pivot() != null, through.contains("pivot " + line.pivot()), through);
    }
}
