package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.GaugeChart;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.LimitsFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.PostedBridge;
import org.cresthaul.route.Route;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.route.Stretch;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/** The plate at the booster joint and the range of its regulator, from the start and from stop to stop. */
class PlateAndRegulatorTest {
    private static final double LB = 0.45359237;
    private static final double PSI = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

    private static org.cresthaul.axleload.WeightLimits limits(String what) throws Exception {
        return LimitsFile.parse(
                "{\"cresthaul\":\"limits/1\",\"name\":\"n\",\"source\":\"s\",\"date\":\"2026-01-01\"," + what + "}");
    }

    private static Route route(List<Hazard> hazards, List<StoppingPlace> stops, String base) throws Exception {
        return PlanCase.routeOf(hazards, stops).withLimits(limits(base));
    }

    /** The small rig with no other booster state than trailing, so that every plan has it. */
    private static String rigText() {
        String text = JsonEdit.edit(WeightsTexts.RIG, "/stances/0/booster/states", "[\"trailing\"]");
        return JsonEdit.edit(text, "/stances/0/trailer/liftAxle", "absent")
                .replace(
                        "\"trailerUp\": {\"accuracy\": \"3 %\","
                                + " \"points\": [[\"5 psi\", \"3,000 lb\"], [\"80 psi\", \"25,000 lb\"]]},",
                        "");
    }

    private static Plan plan(Route route, String text) throws Exception {
        Rig rig = RigFile.parse(text);
        LevelStance stance = rig.stances().get(0);
        Report report = RouteCheck.check(
                new Haul(route, rig, stance, Margins.defaults()), new Inputs("0".repeat(64), "0".repeat(64)));
        return RoutePlan.of(new Haul(route, rig, stance, Margins.defaults()), report, PlanOptions.defaults());
    }

    private static Hazard bridge(String id, double atM, String what) throws Exception {
        return new PostedBridge(PlanCase.place(id, atM), Optional.empty(), Optional.of(limits(what)));
    }

    @Test
    void thePlateIsChangedBeforeDeparture() throws Exception {
        Route route =
                route(List.of(bridge("B1", 900, "\"gross\":\"200,000 lb\"")), List.of(), "\"gross\":\"300,000 lb\"");
        Plan fine = plan(route, rigText());
        assertEquals(Outcome.THROUGH, fine.outcome());
        assertNull(fine.steps().get(0).change());
        // About 7,506 lb on the booster: the plate for heavy loads is in, that of 5,000 to 14,000 lb is wanted.
        String wrong = JsonEdit.edit(rigText(), "/stances/0/weights/shims/plates/2/least", "\"12,000 lb\"");
        Plan plan = plan(route, wrong);
        assertEquals(Outcome.THROUGH, plan.outcome());
        Plan.Change change = plan.steps().get(0).change();
        assertEquals(Plan.START, change.stop());
        assertEquals(
                "change the plate at the booster joint: 3/8 in plate out, 3/16 in plate in",
                change.actions().get(0).text().toString());
        assertEquals("3/16 in plate", plan.steps().get(0).set().shim().name());
        assertEquals(fine.seconds() + change.seconds(), plan.seconds());
        assertTrue(change.seconds() > 0);
        // No plate for this load: nothing to change to, and no way.
        String none = JsonEdit.edit(
                JsonEdit.edit(wrong, "/stances/0/weights/shims/plates/1/least", "\"10,000 lb\""),
                "/stances/0/weights/shims/plates/0/most",
                "\"4,000 lb\"");
        assertEquals(Outcome.BLOCKED, plan(route, none).outcome());
    }

    @Test
    void theRegulatorsRangeIsThatOfEveryPlaceUntilTheNextChange() throws Exception {
        // At the second bridge tires carry 1,000 lb an inch, and those of the booster's axle are 9 in wide together.
        Route both = route(
                List.of(
                        bridge("B1", 900, "\"axle\":\"26,000 lb\""),
                        bridge("B2", 1800, "\"tireWidth\":{\"weight\":\"1,000 lb\",\"per\":\"1 in\"}")),
                List.of(),
                "\"gross\":\"300,000 lb\"");
        String text = JsonEdit.edit(
                JsonEdit.edit(rigText(), "/stances/0/weights/shims", "absent"),
                "/stances/0/weights/ratings/tireWidths",
                "{\"steer\":\"90 in\",\"drive\":\"90 in\",\"trailer\":\"90 in\",\"booster\":\"9 in\"}");
        Plan plan = plan(both, text);
        var range = plan.steps().get(0).regulator();
        assertNotNull(range.leastPa(), () -> range.note());
        GaugeChart chart = new GaugeChart(RigFile.parse(text)
                .stances()
                .get(0)
                .weights()
                .orElseThrow()
                .gauges()
                .booster()
                .orElseThrow());
        // The chart is within 5 %: what it reads as 8,571 lb may be 9,000.
        assertEquals(chart.pressurePa(9_000 * LB / 1.05).orElseThrow(), range.mostPa(), 1);
        // Without the second bridge more is allowed, up to the regulator's end or another rule.
        Plan wide = plan(route(List.of(both.hazards().get(0)), List.of(), "\"gross\":\"300,000 lb\""), text);
        assertTrue(wide.steps().get(0).regulator().mostPa() > range.mostPa() + 5 * PSI);
    }

    /** What holds instead holds alone where all of the combination is on it, from stop to stop, and nowhere else. */
    @Test
    void limitsThatHoldInsteadOpenTheirStretchInThePlanAsInTheCheck() throws Exception {
        List<StoppingPlace> stops = List.of(PlanCase.stop("P1", 700, true, 90), PlanCase.stop("P2", 2400, true, 90));
        String rig = JsonEdit.edit(rigText(), "/stances/0/booster/states", "[\"none\", \"trailing\"]");
        // 83,900 lb without the booster, 88,900 lb with it: the route takes 86,000 lb (2 % off), the stretch more.
        String base = "\"gross\":\"86,000 lb\"";
        String wide = "\"gross\":\"300,000 lb\"";
        // 95,000 lb on seven axles, and six sevenths of it on six: only with the booster's axle.
        Hazard bridge = bridge("B1", 1500, "\"grossByAxles\":[{\"axles\":7,\"weight\":\"95,000 lb\"}]");
        Hazard over = new Stretch(PlanCase.place("S1", 500), 0, 2200, Optional.of(limits(wide)), true);
        Plan plan = plan(route(List.of(over, bridge), stops, base), rig);
        assertEquals(Outcome.THROUGH, plan.outcome(), () -> plan.blocking().toString());
        List<String> sets = new ArrayList<>();
        plan.steps()
                .forEach(s -> sets.add(
                        s.change() != null
                                ? s.change().to().booster().word()
                                : s.set() != null ? s.set().booster().word() : "-"));
        assertEquals(
                List.of("none", "trailing", "none", "none"),
                sets.stream().filter(b -> !b.equals("-")).toList());
        // The combination leaves the stretch before the second stop: the route's limits hold there again.
        Hazard shorter = new Stretch(PlanCase.place("S1", 500), 0, 1500, Optional.of(limits(wide)), true);
        assertEquals(
                Outcome.BLOCKED,
                plan(route(List.of(shorter, bridge), stops, base), rig).outcome());
        // Its rear is still before the stretch at the first.
        Hazard late = new Stretch(PlanCase.place("S1", 690), 0, 2010, Optional.of(limits(wide)), true);
        assertEquals(
                Outcome.BLOCKED,
                plan(route(List.of(late, bridge), stops, base), rig).outcome());
        Hazard asWell = new Stretch(PlanCase.place("S1", 500), 0, 2200, Optional.of(limits(wide)), false);
        assertEquals(
                Outcome.BLOCKED,
                plan(route(List.of(asWell, bridge), stops, base), rig).outcome());
    }
}
