package org.cresthaul.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.PlanOptionsCheck;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.server.SettledConditions;
import org.cresthaul.units.BadQuantity;
import org.cresthaul.units.Grade;
import org.cresthaul.units.InputProblem;
import org.cresthaul.whatif.CombinationComparison;
import org.cresthaul.whatif.Combinations;
import org.cresthaul.whatif.Comparison;
import org.cresthaul.whatif.CompletePlan;
import org.cresthaul.whatif.ConfigurationComparison;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What asks for a plan: as for a check, and options of its own; the same for every command that makes one. */
final class PlanQuestion {
    @Mixin
    private CheckQuestion asked = new CheckQuestion();

    @Option(names = "--forbid", paramLabel = "KEY", description = "A configuration not to be used, such as up/none/3")
    private List<String> forbid = new ArrayList<>();

    @Option(names = "--keep", paramLabel = "KEY", description = "The one configuration to keep all the way")
    private Optional<String> keep = Optional.empty();

    @Option(names = "--no-raising", description = "Pass every hazard in transport stance")
    private boolean noRaising;

    @Option(names = "--accept-tight", paramLabel = "ID", description = "A hazard that may be passed though tight")
    private List<String> acceptTight = new ArrayList<>();

    @Option(
            names = "--set-aside",
            paramLabel = "ID",
            description = "Plan past this hazard as unresolved; the plan is not valid until it is resolved")
    private List<String> setAside = new ArrayList<>();

    @Option(
            names = "--least-reserve",
            paramLabel = "SHARE",
            description =
                    "Reserve to keep at every place, as a share of what is required or allowed there, such as 10%%")
    private Optional<String> leastReserve = Optional.empty();

    @Option(names = "--fewest-conditions", description = "Prefer the way with the fewest conditions to the cheapest")
    private boolean fewestConditions;

    @Option(
            names = "--settled",
            paramLabel = "FILE",
            description = "Conditions that people have settled: by whom, when, and what was agreed")
    private Optional<Path> settled = Optional.empty();

    /** A plan, the report it was made from, and the files behind both. */
    record Answer(Question question, Report report, Plan plan) {}

    /** What a plan is made from. */
    record Asked(Question question, Margins margins, Report report, PlanOptions options) {}

    /** @throws Refused with every mistake of the files, or of the options */
    Answer answer() throws Refused {
        Asked whole = made();
        Question q = whole.question;
        return new Answer(q, whole.report, CompletePlan.of(q.haul(whole.margins), whole.report, whole.options));
    }

    /** @throws Refused likewise */
    Comparison comparison() throws Refused {
        Asked whole = made();
        Question q = whole.question;
        return ConfigurationComparison.of(q.haul(whole.margins), whole.report, whole.options);
    }

    /** @throws Refused likewise */
    Combinations combinations() throws Refused {
        Asked whole = made();
        Question q = whole.question;
        return CombinationComparison.of(q.haul(whole.margins), whole.options, new CombinationComparison.Planner() {
            @Override
            public Report check(Haul haul) {
                return RouteCheck.check(haul, q.inputs());
            }

            @Override
            public Plan plan(Haul haul, Report report, PlanOptions plain) {
                return CompletePlan.of(haul, report, plain);
            }
        });
    }

    private Asked made() throws Refused {
        Question question = asked.question();
        Margins margins = asked.margins();
        Report report = question.answer(margins);
        PlanOptions options = new PlanOptions(
                question.rig().times(),
                forbid,
                keep.orElse(null),
                noRaising,
                acceptTight,
                setAside,
                reserve(),
                fewestConditions,
                settled());
        Mistakes mistakes = new Mistakes();
        for (InputProblem p : PlanOptionsCheck.problems(report, options)) {
            mistakes.add(option(p.pointer()), List.of(new InputProblem(p.code(), p.message(), "", p.remedy())));
        }
        mistakes.refuseIfAny();
        return new Asked(question, margins, report, options);
    }

    private Double reserve() throws Refused {
        if (leastReserve.isEmpty()) {
            return null;
        }
        Mistakes mistakes = new Mistakes();
        double share = Double.NaN;
        String code = "out-of-range";
        try {
            share = Grade.parse(leastReserve.get()).ratio();
        } catch (BadQuantity e) {
            code = e.code();
        }
        if (!(share >= 0)) {
            mistakes.add(
                    "--least-reserve",
                    List.of(new InputProblem(
                            code,
                            "\"" + leastReserve.get() + "\" is no reserve to keep.",
                            "",
                            "Write a share of what is required, 0 % to 100 %, such as \"10 %\".")));
        }
        mistakes.refuseIfAny();
        return share;
    }

    private List<PlanOptions.Settled> settled() throws Refused {
        if (settled.isEmpty()) {
            return List.of();
        }
        Mistakes mistakes = new Mistakes();
        Optional<List<PlanOptions.Settled>> all =
                InputFile.read(settled.get()).parse(SettledConditions::parse, mistakes);
        mistakes.refuseIfAny();
        return all.orElseThrow();
    }

    private static String option(String pointer) {
        return switch (pointer.split("/")[1]) {
            case "forbid" -> "--forbid";
            case "fix" -> "--keep";
            case "acceptTight" -> "--accept-tight";
            case "settled" -> "--settled";
            default -> "--set-aside";
        };
    }

    /** As {@link CheckQuestion#write}. */
    void write(Path file, byte[] printed, List<Path> besides) throws Refused {
        List<Path> inputs = new ArrayList<>(besides);
        settled.ifPresent(inputs::add);
        asked.write(file, printed, inputs);
    }
}
