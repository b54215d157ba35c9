package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.CheckFollower;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.rigfile.GivenTimes;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanFollower;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.PlanOptionsCheck;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Report;
import org.cresthaul.units.InputProblem;
import org.cresthaul.whatif.CombinationComparison;
import org.cresthaul.whatif.Combinations;
import org.cresthaul.whatif.Comparison;
import org.cresthaul.whatif.CompletePlan;
import org.cresthaul.whatif.ConfigurationComparison;

/** What of a plan is asked for, beside the check it belongs to. */
record PlanRequest(
        Optional<GivenTimes> times,
        List<String> forbid,
        Optional<String> fix,
        boolean avoidRaising,
        List<String> acceptTight,
        List<String> setAside,
        Optional<Double> leastReserve,
        boolean fewestConditions,
        List<PlanOptions.Settled> settled) {
    private static final int MOST_NAMED = 2000;

    /** What is asked for when nothing is chosen. */
    static final PlanRequest PLAIN = new PlanRequest(
            Optional.empty(),
            List.of(),
            Optional.empty(),
            false,
            List.of(),
            List.of(),
            Optional.empty(),
            false,
            List.of());

    /** A plan and the report it was made from. */
    record Planned(Report report, Plan plan) {}

    static PlanRequest read(JsonFields fields) {
        return fields.findObject("plan").map(PlanRequest::options).orElse(PLAIN);
    }

    private static PlanRequest options(JsonFields plan) {
        PlanRequest read = new PlanRequest(
                plan.findObject("times").map(GivenTimes::read),
                names(plan, "forbid"),
                plan.findText("fix", JsonFields.LONGEST_NAME),
                yes(plan, "avoidRaising"),
                names(plan, "acceptTight"),
                names(plan, "setAside"),
                plan.has("leastReserve")
                        ? Optional.of(plan.grade("leastReserve", 0, 10)).filter(Double::isFinite)
                        : Optional.empty(),
                yes(plan, "fewestConditions"),
                SettledConditions.read(plan, "settled"));
        plan.refuseOthers();
        return read;
    }

    private static List<String> names(JsonFields plan, String key) {
        List<String> names = new ArrayList<>();
        List<JsonNode> items = plan.findItems(key, 0, MOST_NAMED).orElse(List.of());
        for (int i = 0; i < items.size(); i++) {
            if (items.get(i).isTextual()) {
                names.add(items.get(i).textValue());
            } else {
                plan.problems()
                        .add(
                                "wrong-type",
                                "A name is a text, is " + JsonFields.kindOf(items.get(i)) + ".",
                                plan.pointer(key) + "/" + i,
                                "Write it in quotes.");
            }
        }
        return names;
    }

    private static boolean yes(JsonFields plan, String key) {
        JsonNode value = plan.find(key);
        if (!value.isMissingNode() && !value.isBoolean()) {
            plan.problem(
                    key,
                    "wrong-type",
                    key + " must be true or false, is " + JsonFields.kindOf(value) + ".",
                    "Write true or false, without quotes.");
        }
        return value.isBoolean() && value.booleanValue();
    }

    /** @throws Refusal when the options name what the report does not have */
    Planned of(CheckRequest check, CheckedReports reports) {
        return of(check, reports, new CheckUnderway());
    }

    /** The same, told to whoever follows it. */
    Planned of(CheckRequest check, CheckedReports reports, CheckUnderway following) {
        Report report = reports.of(check, following);
        PlanOptions options = options(check, report);
        following.plans();
        Plan plan = reports.plan(check, options, following, () -> {
            following.plans();
            return CompletePlan.of(check.haul(), report, options, reports.aid(following));
        });
        return new Planned(report, plan);
    }

    /** @throws Refusal likewise */
    Comparison comparison(CheckRequest check, CheckedReports reports) {
        Report report = reports.of(check);
        return ConfigurationComparison.of(check.haul(), report, options(check, report), reports.aid(PlanFollower.NONE));
    }

    /** One plan for each combination of the rig. */
    Combinations combinations(CheckRequest check, CheckedReports reports) {
        PlanOptions options = options(check, reports.of(check));
        return CombinationComparison.of(check.haul(), options, new CombinationComparison.Planner() {
            @Override
            public Report check(Haul haul) {
                return reports.of(check.of(haul));
            }

            @Override
            public Plan plan(Haul haul, Report report, PlanOptions plain) {
                return reports.plan(
                        check.of(haul),
                        plain,
                        CheckFollower.NONE,
                        () -> CompletePlan.of(haul, report, plain, reports.aid(PlanFollower.NONE)));
            }
        });
    }

    private PlanOptions options(CheckRequest check, Report report) {
        PlanOptions options = new PlanOptions(
                times.map(t -> t.over(check.haul().rig().times()))
                        .orElse(check.haul().rig().times()),
                forbid,
                fix.orElse(null),
                avoidRaising,
                acceptTight,
                setAside,
                leastReserve.orElse(null),
                fewestConditions,
                settled);
        List<InputProblem> problems = PlanOptionsCheck.problems(report, options);
        if (!problems.isEmpty()) {
            throw Refusal.of(problems.stream()
                    .map(p -> new InputProblem(p.code(), p.message(), "/plan" + p.pointer(), p.remedy()))
                    .toList());
        }
        return options;
    }
}
