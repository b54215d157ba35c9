package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.routefile.LimitsFile;
import org.cresthaul.language.Catalog;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.Route;
import org.cresthaul.server.SettledConditions;
import org.cresthaul.sheet.Banner;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;

/** Conditions that people settle, and a permit's last day and hours. */
class SettledConditionsTest {
    private static PlanCase tightDipAndUnsurveyedCrest(List<PlanOptions.Settled> settled) {
        Rig rig = PlanCase.rig("none");
        Hazard tight = PlanCase.dip("D1", 600);
        Hazard open = PlanCase.dip("D2", 1500);
        List<ReportCell> tights = new ArrayList<>();
        List<ReportCell> unknown = new ArrayList<>();
        for (ConfigurationVerdict c : PlanCase.configurations(rig, List.of())) {
            tights.add(PlanCase.cell(c, "tight", null));
            unknown.add(PlanCase.cell(c, "not surveyed", null));
        }
        Report report = PlanCase.report(
                rig,
                List.of(PlanCase.findings(tight, List.of(), tights), PlanCase.findings(open, List.of(), unknown)),
                List.of());
        PlanOptions asked = new PlanOptions(
                PlanOptions.defaults().times(),
                List.of(),
                null,
                false,
                List.of("D1"),
                List.of("D2"),
                null,
                false,
                settled);
        return new PlanCase(
                PlanCase.routeOf(List.of(tight, open), List.of()),
                rig.stances().get(0),
                report,
                asked,
                (hazard, configuration, front, rear) -> Optional.empty());
    }

    private static final PlanOptions.Settled SPOTTER = new PlanOptions.Settled(
            "D1", ConditionKind.TIGHT, "A. Planner", "2026-11-28", "spotter from the yard rides ahead");
    private static final PlanOptions.Settled SURVEY = new PlanOptions.Settled(
            "D2", ConditionKind.SET_ASIDE, "B. Surveyor", "2026-11-27", "driven with a template, clear");

    @Test
    void onlyWhenEveryConditionIsSettledThePapersAreForDriving() {
        Plan none = tightDipAndUnsurveyedCrest(List.of()).plan();
        assertEquals(Outcome.CONDITIONAL, none.outcome());
        none.conditions().forEach(c -> assertNull(c.settled()));
        assertFalse(Banner.of(none, Catalog.ENGLISH).drivable());

        Plan one = tightDipAndUnsurveyedCrest(List.of(SPOTTER)).plan();
        assertEquals(2, one.conditions().size());
        Banner half = Banner.of(one, Catalog.ENGLISH);
        assertFalse(half.drivable());
        assertTrue(
                half.headline().startsWith("NOT FOR DRIVING") && half.headline().contains("D2"), half.headline());
        assertFalse(half.headline().contains("D1"), half.headline());

        Plan both = tightDipAndUnsurveyedCrest(List.of(SPOTTER, SURVEY)).plan();
        Banner banner = Banner.of(both, Catalog.ENGLISH);
        assertTrue(banner.drivable());
        // Still a way under conditions: the program itself has decided nothing.
        assertEquals(Outcome.CONDITIONAL, both.outcome());
        assertTrue(
                banner.lines().stream()
                        .anyMatch(l -> l.contains("A. Planner")
                                && l.contains("2026-11-28")
                                && l.contains("spotter from the yard rides ahead")),
                banner.lines().toString());
    }

    @Test
    void whatSettlesSomethingElseSettlesNothingAndABlockStays() {
        PlanOptions.Settled other = new PlanOptions.Settled("D1", ConditionKind.SET_ASIDE, "x", "2026-11-28", "y");
        assertFalse(Banner.of(tightDipAndUnsurveyedCrest(List.of(other, SURVEY)).plan(), Catalog.ENGLISH)
                .drivable());
        PlanCase blocked = tightDipAndUnsurveyedCrest(List.of(SPOTTER, SURVEY));
        Plan plan = blocked.with(new PlanOptions(
                        blocked.options().times(),
                        List.of(),
                        null,
                        false,
                        List.of(),
                        List.of(),
                        null,
                        false,
                        blocked.options().settled()))
                .plan();
        assertEquals(Outcome.BLOCKED, plan.outcome());
        assertFalse(Banner.of(plan, Catalog.ENGLISH).drivable());
    }

    @Test
    void aPermitsLastDayAndHoursAreConditions() throws Exception {
        Route plain = PlanCase.routeOf(List.of(PlanCase.dip("D1", 600)), List.of());
        String limits = "{\"cresthaul\":\"limits/1\",\"name\":\"permit 0\",\"source\":\"s\",\"date\":\"2026-01-01\","
                + "\"gross\":\"200,000 lb\"";
        assertTrue(PermitConditions.of(plain.withLimits(LimitsFile.parse(limits + "}")))
                .isEmpty());
        List<Plan.Condition> conditions = PermitConditions.of(plain.withLimits(LimitsFile.parse(
                limits + ",\"lastDay\":\"2026-12-15\",\"hours\":\"sunrise to sunset, not on Sundays\"}")));
        assertEquals(1, conditions.size());
        assertEquals(Plan.WHOLE_ROUTE, conditions.get(0).hazard());
        assertTrue(conditions.get(0).text().toString().contains("2026-12-15")
                && conditions.get(0).text().toString().contains("sunrise to sunset"));
        assertTrue(ConditionKind.words().contains(conditions.get(0).what().word()));
    }

    @Test
    void aSettledFileTellsEveryMistake() throws Exception {
        String entry =
                "{\"hazard\":\"D1\",\"what\":\"tight, accepted\",\"by\":\"A\",\"date\":\"2026-11-28\",\"agreed\":\"z\"}";
        String file = "{\"cresthaul\":\"settled/1\",\"settled\":[" + entry + "]}";
        assertEquals(
                List.of(new PlanOptions.Settled("D1", ConditionKind.TIGHT, "A", "2026-11-28", "z")),
                SettledConditions.parse(file.getBytes(StandardCharsets.UTF_8)));
        InputRejected rejected = assertThrows(
                InputRejected.class,
                () -> SettledConditions.parse(file.replace("2026-11-28", "28 Nov")
                        .replace("\"by\":\"A\",", "")
                        .getBytes(StandardCharsets.UTF_8)));
        assertEquals(2, rejected.problems().size());
        assertTrue(rejected.problems().stream().anyMatch(p -> p.pointer().equals("/settled/0/by")));
        assertTrue(rejected.problems().stream().anyMatch(p -> p.pointer().equals("/settled/0/date")));
    }
}
