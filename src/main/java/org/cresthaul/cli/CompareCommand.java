package org.cresthaul.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.cresthaul.plan.Outcome;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.Combinations;
import org.cresthaul.whatif.Comparison;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

/** Compares every configuration of a rig, each held for the whole route. */
@Command(
        name = "compare",
        description = "Compare all configurations, each held for the whole route.",
        mixinStandardHelpOptions = true)
final class CompareCommand implements Callable<Integer> {
    @ParentCommand
    private Cresthaul program;

    @Mixin
    private PlanQuestion question = new PlanQuestion();

    @Option(
            names = "--between",
            paramLabel = "KEY",
            arity = "2",
            description = "Two configurations: where along the route they fare differently; not with json")
    private List<String> between = List.of();

    @Option(
            names = "--combinations",
            description = "Instead of configurations: one plan with every unit of the stance, and one without each that"
                    + " may be left off")
    private boolean combinations;

    @Option(names = "--form", paramLabel = "FORM", description = "text (default) or json")
    private PlanCommand.Form form = PlanCommand.Form.TEXT;

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            converter = CommandOptions.Units.class,
            description = "us (default) or metric; JSON is always in meters")
    private UnitSystem units = UnitSystem.US_CUSTOMARY;

    @Option(names = "--out", paramLabel = "FILE", description = "Write the comparison to this file")
    private Optional<Path> out = Optional.empty();

    @Override
    public Integer call() throws Refused {
        if (combinations) {
            return ofCombinations();
        }
        Comparison comparison = question.comparison();
        requireKnown(comparison);
        ComparisonText text = new ComparisonText(units);
        byte[] printed =
                switch (form) {
                    case TEXT ->
                        (text.of(comparison)
                                        + (between.isEmpty()
                                                ? ""
                                                : text.difference(comparison, between.get(0), between.get(1))))
                                .getBytes(StandardCharsets.UTF_8);
                    case JSON -> JsonAnswer.bytes(comparison);
                };
        write(printed);
        return comparison.configurations().stream().anyMatch(c -> c.outcome() == Outcome.THROUGH)
                ? ExitCode.CLEAR
                : ExitCode.NOT_CLEAR;
    }

    private int ofCombinations() throws Refused {
        if (!between.isEmpty()) {
            throw new Refused("--between compares configurations, not --combinations. Nothing was compared.\n");
        }
        Combinations found = question.combinations();
        write(
                switch (form) {
                    case TEXT -> new CombinationsText(units).of(found).getBytes(StandardCharsets.UTF_8);
                    case JSON -> JsonAnswer.bytes(found);
                });
        return found.combinations().stream().anyMatch(c -> c.outcome() == Outcome.THROUGH)
                ? ExitCode.CLEAR
                : ExitCode.NOT_CLEAR;
    }

    private void write(byte[] printed) throws Refused {
        if (out.isPresent()) {
            question.write(out.get(), printed, List.of());
        } else {
            program.print(printed);
        }
    }

    private void requireKnown(Comparison comparison) throws Refused {
        if (!between.isEmpty() && between.size() != 2) {
            throw new Refused("--between takes two configurations. Nothing was compared.\n");
        }
        for (String key : between) {
            if (comparison.configurations().stream()
                    .noneMatch(c -> c.configuration().equals(key))) {
                throw new Refused(
                        "--between: the rig has no configuration " + key + ". See the report for their names.\n");
            }
        }
    }
}
