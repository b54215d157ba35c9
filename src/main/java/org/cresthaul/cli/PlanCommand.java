package org.cresthaul.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.cresthaul.plan.Outcome;
import org.cresthaul.plan.Plan;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.units.UnitSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

/** Plans a route and prints which configuration goes where. */
@Command(
        name = "plan",
        description = "Plans which configuration to carry where along the route, and where to change it.",
        mixinStandardHelpOptions = true)
final class PlanCommand implements Callable<Integer> {
    @ParentCommand
    private Cresthaul program;

    @Mixin
    private PlanQuestion question = new PlanQuestion();

    @Option(names = "--form", paramLabel = "FORM", description = "text (default) or json")
    private Form form = Form.TEXT;

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            converter = CommandOptions.Units.class,
            description = "us (default) or metric; JSON is always in meters")
    private UnitSystem units = UnitSystem.US_CUSTOMARY;

    @Option(names = "--out", paramLabel = "FILE", description = "Write the plan to this file")
    private Optional<Path> out = Optional.empty();

    /** What a plan is printed as. */
    enum Form {
        TEXT,
        JSON
    }

    @Override
    public Integer call() throws Refused {
        PlanQuestion.Answer answer = question.answer();
        Plan plan = answer.plan();
        byte[] printed =
                switch (form) {
                    case TEXT -> new PlanText(units).of(plan, answer.report()).getBytes(StandardCharsets.UTF_8);
                    case JSON -> JsonAnswer.bytes(plan);
                };
        if (out.isPresent()) {
            question.write(out.get(), printed, List.of());
        } else {
            program.print(printed);
        }
        return plan.outcome() == Outcome.THROUGH ? ExitCode.CLEAR : ExitCode.NOT_CLEAR;
    }
}
