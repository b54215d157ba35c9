package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.check.PlaceCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Margins;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.Route;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.route.Stretch;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/**
 * Plans of rigs with weights, with raises, reserves and conditions, against trying every sequence and every order of
 * every change.
 */
class WeightedPlanTest {
    private static final int CASES = Integer.getInteger("cresthaul.weighted", 2_000);
    private static final int RIGS = 40;
    private static final double LB = 0.45359237;

    private static Rig rig(SplittableRandom random) throws Exception {
        String text = JsonEdit.edit(
                WeightsTexts.RIG,
                "/notches",
                "[{\"name\": \"1\", \"offset\": \"-1 in\"}, {\"name\": \"2\", \"offset\": \"0 in\"}]");
        text = JsonEdit.edit(text, "/stances/0/booster/states", "[\"none\", \"trailing\", \"close-coupled\"]");
        text = JsonEdit.edit(text, "/stances/0/weights/shims", "absent");
        String at = "/stances/0/weights/";
        text = JsonEdit.edit(text, at + "ratings/axles/trailer", "\"" + random.nextInt(15, 28) + ",000 lb\"");
        text = JsonEdit.edit(text, at + "ratings/tires/trailer", "\"" + random.nextInt(20, 28) + ",000 lb\"");
        text = JsonEdit.edit(text, at + "frontLift/takeOff", "\"" + random.nextInt(11, 24) * 100 + " psi\"");
        text = JsonEdit.edit(text, at + "leastBraked", "\"" + random.nextInt(1, 7) + ",000 lb\"");
        text = JsonEdit.edit(text, at + "regulator/set", "\"" + random.nextInt(20, 80) + " psi\"");
        return RigFile.parse(text);
    }

    private static WeightLimits limits(SplittableRandom random, String source) {
        return new WeightLimits(
                "limits",
                source,
                LocalDate.of(2026, 1, 1),
                random.nextInt(4) == 0
                        ? OptionalDouble.of(random.nextInt(84_000, 99_000) * LB)
                        : OptionalDouble.empty(),
                OptionalDouble.of(random.nextInt(18_000, 29_000) * LB),
                OptionalDouble.empty(),
                new TreeMap<>(),
                new TreeMap<>(),
                List.of(),
                false);
    }

    private static PlanCase random(SplittableRandom random, Rig rig) {
        LevelStance stance = rig.stances().get(0);
        List<StoppingPlace> stops = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            stops.add(PlanCase.stop(
                    "P" + i, 30 * random.nextInt(1, 120), random.nextInt(3) > 0, random.nextInt(4) == 0 ? 24 : 80));
        }
        List<Hazard> hazards = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            double from = random.nextInt(4) == 0 ? 0 : 25 * random.nextInt(0, 120);
            double most = PlanCase.LINE.lengthM() - from;
            double toM = random.nextInt(3) == 0 ? most : Math.min(most, 100 * (1 + random.nextInt(30)));
            hazards.add(new Stretch(
                    PlanCase.place("S" + i, from),
                    0,
                    toM,
                    Optional.of(limits(random, "order " + i)),
                    random.nextInt(3) > 0));
        }
        // Half of the cases are such that a change half-way is likely to be what opens them.
        boolean split = random.nextBoolean();
        for (int i = split ? 0 : random.nextInt(3); i > 0; i--) {
            hazards.add(PlanCase.dip("D" + i, 30 * random.nextInt(1, 120)));
        }
        if (split || hazards.isEmpty()) {
            hazards.add(PlanCase.dip("D8", 1000));
            hazards.add(PlanCase.dip("D9", 2600));
            stops.add(PlanCase.stop("PM", 1800, random.nextInt(3) > 0, 80));
        }
        Route route = PlanCase.routeOf(hazards, stops).withLimits(limits(random, "permit"));
        PlaceCheck check = new PlaceCheck(new Haul(route, rig, stance, Margins.defaults()));
        List<ConfigurationVerdict> all = configurations(rig, check);
        List<HazardFindings> findings = new ArrayList<>();
        for (Hazard h : hazards) {
            List<ReportCell> cells = new ArrayList<>();
            for (ConfigurationVerdict c : all) {
                cells.add(
                        h instanceof Stretch
                                ? check.inTransport(h.place().id(), c.key())
                                : random.nextInt(4) < (split ? 3 : 1)
                                        ? PlanCase.cell(c, "contact", raise(random))
                                        : random.nextInt(6) == 0
                                                ? PlanCase.cell(c, "clear", null)
                                                : PlanCase.cell(c, "clear", null, 0.01 * random.nextInt(5)));
            }
            findings.add(PlanCase.findings(h, h instanceof Stretch s ? List.of(s.fromM(), s.toM()) : List.of(), cells));
        }
        findings.sort(Comparator.comparingDouble(HazardFindings::chainageM));
        Report plain = PlanCase.report(PlanCase.rig("none"), findings, List.of("clear"));
        List<LoadReport.StateLoads> states = new ArrayList<>();
        for (ConfigurationVerdict c : all) {
            if (states.stream()
                    .noneMatch(s -> s.lift().equals(c.lift()) && s.booster().equals(c.booster()))) {
                ReportCell base = check.wholeRoute(c.key());
                states.add(new LoadReport.StateLoads(
                        c.lift(),
                        c.booster(),
                        c.axles(),
                        "state",
                        base.verdict(),
                        null,
                        base.load() == null
                                ? null
                                : new LoadSheet(
                                        List.of(),
                                        List.of(),
                                        0,
                                        0,
                                        List.of(),
                                        0,
                                        0.06,
                                        List.of(),
                                        null,
                                        List.of(),
                                        null,
                                        base.load(),
                                        List.of())));
            }
        }
        Report report = new Report(
                plain.cresthaul(),
                plain.version(),
                plain.route(),
                plain.rig(),
                plain.margins(),
                plain.uncertainties(),
                all,
                findings,
                new LoadReport(true, 0.02, "s", List.of(), true, states, List.of(), List.of()),
                plain.reversing(),
                List.of());
        return new PlanCase(route, stance, report, options(random, report), PlanCase.anyJudge(random.nextLong()));
    }

    /** One of three, or none, as a check might have found it. */
    private static RaiseFinding raise(SplittableRandom random) {
        return random.nextInt(3) > 0
                ? null
                : new RaiseFinding(
                        0.05 * random.nextInt(1, 4), 0.02 * random.nextInt(2), 0.05 + 0.005 * random.nextInt(4), 0.05);
    }

    private static List<ConfigurationVerdict> configurations(Rig rig, PlaceCheck check) {
        List<ConfigurationVerdict> all = new ArrayList<>();
        for (var booster : rig.stances().get(0).boosterStates()) {
            for (var lift : rig.stances().get(0).liftStates()) {
                for (var notch : rig.notches()) {
                    String key = lift.word() + "/" + booster.word() + "/" + notch.name();
                    all.add(new ConfigurationVerdict(
                            key,
                            key,
                            lift,
                            rig.stances().get(0).axlesDown(lift),
                            lift.named(),
                            booster,
                            notch.name(),
                            notch.offsetM(),
                            Verdict.CLEAR,
                            0,
                            0,
                            0,
                            0,
                            0,
                            0,
                            0,
                            check.wholeRoute(key).verdict()));
                }
            }
        }
        return all;
    }

    private static PlanOptions options(SplittableRandom random, Report report) {
        List<String> tight = new ArrayList<>(report.hazards().stream()
                .filter(h -> h.cells().stream().anyMatch(c -> c.verdict() == Verdict.TIGHT) && random.nextBoolean())
                .map(HazardFindings::id)
                .toList());
        if (report.configurations().stream().anyMatch(c -> c.loads() == Verdict.TIGHT) && random.nextBoolean()) {
            tight.add(Plan.WHOLE_ROUTE);
        }
        List<String> aside = report.hazards().stream()
                .map(HazardFindings::id)
                .filter(h -> random.nextInt(10) == 0)
                .toList();
        return new PlanOptions(
                PlanTimes.defaults(),
                List.of(),
                null,
                random.nextBoolean(),
                tight,
                aside,
                random.nextInt(4) == 0 ? 0.02 * random.nextInt(4) : null,
                random.nextInt(3) == 0,
                List.of());
    }

    private static List<String> keys(PlanCase it, Plan plan) {
        List<String> keys = new ArrayList<>();
        String key = plan.steps().get(0).set().configuration();
        keys.add(key);
        for (StoppingPlace stop : it.route().stops()) {
            for (Plan.Step step : plan.steps()) {
                if (step.change() != null
                        && step.change().stop().equals(stop.place().id())) {
                    key = step.change().to().configuration();
                }
            }
            keys.add(key);
        }
        return keys;
    }

    @Test
    void theBestOfAllSequencesIsFoundAndNoStateInBetweenIsUnsound() throws Exception {
        SplittableRandom random = new SplittableRandom(20261131);
        List<Rig> rigs = new ArrayList<>();
        for (int i = 0; i < RIGS; i++) {
            rigs.add(rig(random));
        }
        int open = 0;
        int changed = 0;
        int refused = 0;
        int offRoad = 0;
        int instead = 0;
        int raised = 0;
        int both = 0;
        for (int i = 0; i < CASES; i++) {
            PlanCase it = random(random, rigs.get(i % RIGS));
            PlanOracle oracle = new PlanOracle(it);
            BestSequence best = oracle.best().orElse(null);
            Plan plan = it.plan();
            String what = "case " + i + ": " + plan.outcome() + " " + plan.blocking() + " best " + best;
            assertEquals(best == null, plan.outcome() == Outcome.BLOCKED, what);
            refused += oracle.changes().refusedInBetween() > 0 ? 1 : 0;
            offRoad += oracle.changes().passedOnlyOffRoad() > 0 ? 1 : 0;
            instead +=
                    it.route().hazards().stream().anyMatch(h -> h instanceof Stretch s && s.replacesOthers()) ? 1 : 0;
            if (best != null) {
                assertEquals(best.seconds(), plan.seconds(), what);
                assertEquals(best.changes(), plan.changes(), what);
                assertEquals(best.keys(), keys(it, plan), what);
                open++;
                changed += plan.changes() > 0 ? 1 : 0;
                boolean up = plan.steps().stream().anyMatch(x -> x.lift() != null);
                raised += up ? 1 : 0;
                both += up && plan.changes() > 0 ? 1 : 0;
            }
        }
        System.out.println(CASES + " cases, " + open + " open, " + changed + " changed, " + refused
                + " with a change no order of which"
                + " is sound, " + offRoad + " with one that is off the road alone, " + instead
                + " with limits instead, " + raised
                + " raised, " + both + " raised and changed");
        assertTrue(
                open > CASES / 5
                        && changed > CASES / 50
                        && refused > CASES / 20
                        && offRoad > CASES / 50
                        && instead > CASES / 4
                        && raised > CASES / 20
                        && both > CASES / 100,
                open + " " + changed + " " + refused + " " + offRoad + " " + instead + " " + raised + " " + both);
    }
}
