package org.cresthaul.whatif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.JeepTexts;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Combinations side by side say what a plan says of a file in which the unit that is left off never was. */
class CombinationComparisonTest {
    private static final String JEEP = JsonEdit.edit(JeepTexts.JEEP, "/states", "[\"in\", \"out\"]");
    private static final String WITH_JEEP = edited(
            JeepTexts.with(JEEP),
            "weights",
            WeightsTexts.WEIGHTS,
            "weights/gross",
            "absent",
            "weights/tracks/jeep",
            "\"77 in\"",
            "weights/jeeps",
            "[{\"weight\": \"9,000 lb\", \"cg\": {\"x\": \"-3.5 m\", \"h\": \"0.8 m\"}}]");
    private static final String WITHOUT = edited(
            WITH_JEEP,
            "jeeps",
            "absent",
            "plan/jeep",
            "absent",
            "weights/jeeps",
            "absent",
            "weights/tracks/jeep",
            "absent");

    /** @param changes place and value in turns */
    private static String edited(String rig, String... changes) {
        String text = rig;
        for (int i = 0; i < changes.length; i += 2) {
            text = JsonEdit.edit(text, "/stances/0/" + changes[i], changes[i + 1]);
        }
        return text;
    }

    private static final CombinationComparison.Planner PLANNER = new CombinationComparison.Planner() {
        @Override
        public Report check(Haul haul) {
            return RouteCheck.check(haul, new Inputs("0", "0"));
        }

        @Override
        public Plan plan(Haul haul, Report report, PlanOptions options) {
            return CompletePlan.of(haul, report, options);
        }
    };

    private static Route route;
    private static Rig rig;
    private static Combinations found;

    @BeforeAll
    static void compare() throws Exception {
        route = RouteFile.parse(RouteTexts.ROUTE);
        rig = RigFile.parse(WITH_JEEP);
        found = CombinationComparison.of(haul(rig, rig.stances().get(0)), PlanOptions.defaults(), PLANNER);
    }

    private static Haul haul(Rig rig, LevelStance stance) {
        return new Haul(route, rig, stance, Margins.defaults());
    }

    @Test
    void eachIsThePlanOfAFileOfItsOwn() throws Exception {
        assertEquals(
                List.of("loaded", "loaded, without jeep"),
                found.combinations().stream()
                        .map(Combinations.Combination::stance)
                        .toList());
        Rig cut = RigFile.parse(WITHOUT);
        List<Haul> hauls =
                List.of(haul(rig, rig.stances().get(0)), haul(cut, cut.stances().get(0)));
        for (int i = 0; i < hauls.size(); i++) {
            Combinations.Combination one = found.combinations().get(i);
            Plan plan = CompletePlan.of(hauls.get(i), PLANNER.check(hauls.get(i)), PlanOptions.defaults());
            assertEquals(plan.outcome(), one.outcome());
            assertEquals(plan.seconds(), one.seconds());
            assertEquals(plan.changes(), one.changes());
            assertEquals(plan.least(), one.least());
            assertEquals(plan.blocking().stream().map(Plan.Block::hazard).toList(), one.blocking());
            assertEquals(plan.conditions().size(), one.conditions());
            assertEquals(
                    plan.steps().stream()
                            .map(Plan.Step::set)
                            .filter(Objects::nonNull)
                            .map(Plan.SetUp::label)
                            .distinct()
                            .toList(),
                    one.configurations());
        }
    }

    /** By hand: a jeep is 3.8 m from pin to pin and weighs 9,000 lb; a booster that stays behind is 5,000 lb less. */
    @Test
    void lengthAndWeightAreLessByTheJeep() {
        Combinations.Combination with = found.combinations().get(0);
        Combinations.Combination without = found.combinations().get(1);
        assertEquals(List.of("tractor", "jeep", "trailer", "booster"), with.units());
        assertEquals(List.of("tractor", "trailer", "booster"), without.units());
        double boosterKg = 5000 * 0.45359237;
        double differenceKg = with.grossKg() - without.grossKg() - 9000 * 0.45359237;
        assertTrue(
                List.of(-boosterKg, 0.0, boosterKg).stream().anyMatch(kg -> Math.abs(differenceKg - kg) < 1e-6),
                () -> "" + differenceKg);
        // From the bumper at 0.9 to the fifth wheel at 5 and 15.2 behind the kingpin: see PlanRulesTest for the
        // booster's.
        List<Double> boosterM = List.of(0.0, 1.3, 3.8);
        assertTrue(boosterM.stream().anyMatch(m -> Math.abs(with.lengthM() - 3.8 - 21.1 - m) < 1e-9));
        assertTrue(boosterM.stream().anyMatch(m -> Math.abs(without.lengthM() - 21.1 - m) < 1e-9));
        List<String> groups = new ArrayList<>(
                with.groups().stream().map(Comparison.GroupLoad::group).toList());
        assertTrue(groups.remove("jeep"), groups.toString());
        assertTrue(without.groups().stream().noneMatch(g -> g.group().equals("jeep")));
    }

    /** Nobody measured how it stands without the jeep: report and plan say so, and only then. */
    @Test
    void thatHeightsWereMeasuredOtherwiseIsTold() {
        Sentence told = Sentence.of(Code.CAUTION_LEFT_OFF);
        List<Boolean> reports = rig.combinations().stream()
                .map(c -> PLANNER.check(haul(rig, c)).cautions().contains(told))
                .toList();
        assertEquals(List.of(false, true), reports);
        assertTrue(found.cautions().contains(told));
        Haul without = haul(rig, rig.combinations().get(1));
        assertTrue(CompletePlan.of(without, PLANNER.check(without), PlanOptions.defaults())
                .cautions()
                .contains(told));
    }

    @Test
    void whatWasDecidedForOneDoesNotCountForAnother() {
        PlanOptions decided = new PlanOptions(
                rig.times(),
                List.of("down/none/3"),
                null,
                false,
                List.of(),
                route.hazards().stream().map(h -> h.place().id()).toList());
        Combinations again =
                CombinationComparison.of(haul(rig, rig.combinations().get(1)), decided, PLANNER);
        assertEquals(found.combinations(), again.combinations());
        assertEquals(List.of(), again.options().setAside());
        assertEquals(List.of(), again.options().forbid());
        assertNull(again.options().fix());
        assertEquals("loaded, without jeep", again.rig().stance());
    }
}
