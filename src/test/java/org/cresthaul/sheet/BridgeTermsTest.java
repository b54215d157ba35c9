package org.cresthaul.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.plan.ConditionKind;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.BridgeFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.route.Route;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.CompletePlan;
import org.junit.jupiter.api.Test;

/** A bridge with a length and a permit's terms, from the file to check, plan and run sheet. */
class BridgeTermsTest {
    private static final double LB = 0.45359237;
    private static final double FOOT = 0.3048;

    private record Case(Route route, Rig rig, Report report) {
        Plan plan() {
            return CompletePlan.of(
                    new Haul(route, rig, rig.stances().get(0), Margins.defaults()),
                    report,
                    new PlanOptions(
                            PlanOptions.defaults().times(),
                            List.of(),
                            "down/none/3",
                            false,
                            List.of(),
                            Stream.concat(
                                            report.hazards().stream()
                                                    .map(HazardFindings::id)
                                                    .filter(id -> !id.equals("B01")),
                                            Stream.of(Plan.WHOLE_ROUTE))
                                    .toList()));
        }

        HazardFindings bridge() {
            return report.hazards().stream()
                    .filter(h -> h.id().equals("B01"))
                    .findFirst()
                    .orElseThrow();
        }

        ReportCell cell() {
            return bridge().cells().stream()
                    .filter(c -> c.configuration().equals("down/none/3"))
                    .findFirst()
                    .orElseThrow();
        }

        BridgeFinding.Together together() {
            return bridge().bridge().together().stream()
                    .filter(t ->
                            t.lift().word().equals("down") && t.booster().word().equals("none"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static Case of(String extent, String more) throws Exception {
        String text = JsonEdit.edit(
                LimitsTexts.ROUTE,
                "/limits",
                "{\"name\":\"wide\",\"source\":\"x\",\"date\":\"2026-01-01\",\"gross\":\"300,000 lb\"}");
        text = JsonEdit.edit(
                text,
                "/features/0/properties/limits",
                "{\"source\":\"permit 0\",\"date\":\"2026-10-01\",\"gross\":\"300,000 lb\"" + more + "}");
        Route route =
                RouteFile.parse(extent.isEmpty() ? text : JsonEdit.edit(text, "/features/0/properties/extent", extent));
        Rig rig = RigFile.parse(WeightsTexts.RIG);
        return new Case(
                route,
                rig,
                RouteCheck.check(
                        new Haul(route, rig, rig.stances().get(0), Margins.defaults()),
                        new Inputs("0".repeat(64), "0".repeat(64))));
    }

    private static LoadSheet sheet(Case c) {
        return c.report.loads().states().stream()
                .filter(s ->
                        s.lift().word().equals("down") && s.booster().word().equals("none"))
                .findFirst()
                .orElseThrow()
                .sheet();
    }

    /** The heaviest axles whose outer ones are no more than bridge and a foot apart, added up from the sheet. */
    private static double heaviestKg(LoadSheet sheet, double lengthM) {
        double heaviest = 0;
        for (int first = 0; first < sheet.axles().size(); first++) {
            double sum = 0;
            for (int i = first;
                    i < sheet.axles().size()
                            && sheet.axles().get(first).xM()
                                            - sheet.axles().get(i).xM()
                                    <= lengthM + FOOT;
                    i++) {
                sum += sheet.axles().get(i).loadKg();
            }
            heaviest = Math.max(heaviest, sum);
        }
        return heaviest;
    }

    @Test
    void theHeaviestAxlesOnItTogetherAreToldWithWhatTheyCarry() throws Exception {
        for (double feet : new double[] {3, 12, 25, 45, 90}) {
            Case c = of("[\"0 ft\", \"" + feet + " ft\"]", "");
            assertEquals(heaviestKg(sheet(c), feet * FOOT), c.together().loadKg(), 1, feet + " ft");
            assertEquals(feet * FOOT, c.bridge().bridge().lengthM(), 1e-4);
            assertNull(c.together().limitKg());
        }
        assertNull(of("", "").bridge().bridge());
    }

    @Test
    void aLimitOnThemIsHeldAgainstTheseAxlesAlone() throws Exception {
        double lb = heaviestKg(sheet(of("[\"0 ft\", \"25 ft\"]", "")), 25 * FOOT) / LB;
        assertTrue(lb < sheet(of("", "")).grossKg() / LB - 10_000, "not the whole combination");
        Case over = of("[\"0 ft\", \"25 ft\"]", ",\"onBridge\":\"" + Math.round(lb - 100) + " lb\"");
        assertEquals(Verdict.OUTSIDE_LIMITS, over.cell().verdict());
        assertEquals(lb * LB, over.cell().load().loadKg(), 1);
        assertTrue(
                over.cell().load().rule().toString().startsWith("on the bridge together"),
                over.cell().load().rule().toString());
        assertEquals(
                Verdict.CLEAR,
                of("[\"0 ft\", \"25 ft\"]", ",\"onBridge\":\"" + Math.round(lb * 1.1) + " lb\"")
                        .cell()
                        .verdict());
        // The same weight on a longer bridge, where more axles are on it.
        assertEquals(
                Verdict.OUTSIDE_LIMITS,
                of("[\"0 ft\", \"90 ft\"]", ",\"onBridge\":\"" + Math.round(lb * 1.1) + " lb\"")
                        .cell()
                        .verdict());
        // And what is posted for the whole combination holds for all of it, however short the bridge is.
        String less = Math.round(sheet(over).grossKg() / LB - 100) + " lb";
        assertEquals(
                Verdict.OUTSIDE_LIMITS,
                of("[\"0 ft\", \"3 ft\"]", ",\"grossByAxles\":[{\"axles\":2,\"weight\":\"" + less + "\"}]")
                        .cell()
                        .verdict());
    }

    @Test
    void itsTermsAreToldInTheCheckAndAreConditionsOfThePlan() throws Exception {
        Case c = of("[\"0 ft\", \"25 ft\"]", ",\"terms\":[\"crawl\",\"alone\",\"centered\"]");
        assertEquals(3, c.bridge().bridge().terms().size());
        assertTrue(c.bridge().bridge().terms().get(0).toString().startsWith("alone"));
        Plan plan = c.plan();
        Plan.Condition condition = plan.conditions().stream()
                .filter(x -> x.hazard().equals("B01"))
                .findFirst()
                .orElseThrow();
        assertEquals(ConditionKind.BRIDGE, condition.what());
        for (String word : List.of("alone", "centered", "at a crawl")) {
            assertTrue(
                    condition.text().toString().contains(word), condition.text().toString());
        }
        assertTrue(of("[\"0 ft\", \"25 ft\"]", "").plan().conditions().stream()
                .noneMatch(x -> x.hazard().equals("B01")));
    }

    @Test
    void atACrawlItTakesTheTimeFromTheFrontComingOntoItUntilTheRearLeavesIt() throws Exception {
        Plan.HazardPassage slow =
                passage(of("[\"-5 ft\", \"25 ft\"]", ",\"terms\":[\"crawl\"]").plan());
        assertTrue(slow.crawls());
        double crawlMps = PlanOptions.defaults().times().crawlMps();
        assertEquals(Math.ceil((30 * FOOT + slow.set().lengthM()) / crawlMps), slow.seconds(), 1e-9);
        assertEquals(-5 * FOOT, slow.frontFromM(), 1e-4);
        assertEquals(25 * FOOT + slow.set().lengthM(), slow.frontToM(), 1e-3);
        assertFalse(
                passage(of("[\"-5 ft\", \"25 ft\"]", ",\"terms\":[\"alone\"]").plan())
                        .crawls());
    }

    private static Plan.HazardPassage passage(Plan plan) {
        return plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(Objects::nonNull)
                .filter(p -> p.hazard().equals("B01"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theSheetSaysWhichAxlesAndOnWhatTerms() throws Exception {
        Case c = of("[\"0 ft\", \"25 ft\"]", ",\"terms\":[\"crawl\",\"alone\"],\"onBridge\":\"200,000 lb\"");
        Plan plan = c.plan();
        RunSheet sheet = RunSheet.of(plan, c.report, c.route, c.rig.stances().get(0), UnitSystem.US_CUSTOMARY);
        RunSheet.Entry entry = sheet.legs().stream()
                .flatMap(l -> l.entries().stream())
                .filter(e -> "B01".equals(e.id()))
                .findFirst()
                .orElseThrow();
        String all = Stream.of(entry.comes(), entry.before(), entry.through())
                .flatMap(List::stream)
                .map(SheetLine::text)
                .reduce("", (a, b) -> a + "\n" + b);
        assertTrue(
                all.contains(
                        "On the bridge together, the heaviest: " + c.together().axles()),
                all);
        assertTrue(all.contains("against 200,000 lb"), all);
        assertTrue(all.contains("Alone: no other vehicle on the bridge"), all);
        assertTrue(all.contains("At a crawl"), all);
        assertTrue(all.contains("Crawl: "), all);
    }
}
