package org.cresthaul.cli;

import java.util.concurrent.Callable;
import org.cresthaul.paper.Papers;
import org.cresthaul.plan.Outcome;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.Statement;
import org.cresthaul.server.JsonAnswer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParentCommand;

/** Plans a route and makes the statement for the permit clerk of it. */
@Command(
        name = "statement",
        description =
                "Plans a route and makes the statement for the permit clerk: envelope, axle loads, every place, what was not checked.",
        mixinStandardHelpOptions = true)
final class StatementCommand implements Callable<Integer> {
    @ParentCommand
    private Cresthaul program;

    @Mixin
    private PlanQuestion question = new PlanQuestion();

    @Mixin
    private PaperOptions wanted = new PaperOptions();

    @Override
    public Integer call() throws Refused {
        PlanQuestion.Answer answer = question.answer();
        Plan plan = answer.plan();
        Question q = answer.question();
        Statement statement = Statement.of(plan, answer.report(), q.route(), q.rig(), q.stance(), wanted.units());
        byte[] printed =
                switch (wanted.form()) {
                    case PDF -> Papers.pdf(statement, q.route(), wanted.size());
                    case HTML -> Papers.html(statement, q.route());
                    case JSON -> JsonAnswer.bytes(statement);
                };
        if (wanted.out().isPresent()) {
            question.write(wanted.out().get(), printed);
        } else {
            program.print(printed);
        }
        return plan.outcome() == Outcome.THROUGH ? ExitCode.CLEAR : ExitCode.NOT_CLEAR;
    }
}
