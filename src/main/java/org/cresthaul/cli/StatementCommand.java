package org.cresthaul.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.paper.Papers;
import org.cresthaul.plan.Outcome;
import org.cresthaul.plan.Plan;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.sheet.Statement;
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
        Optional<CreditedMap> map = wanted.baseMap();
        PlanQuestion.Answer answer = question.answer();
        Plan plan = answer.plan();
        Question q = answer.question();
        Statement statement = Statement.of(plan, answer.report(), q.route(), q.rig(), q.stance(), wanted.units());
        byte[] printed =
                switch (wanted.form()) {
                    case PDF -> Papers.pdf(statement, q.route(), map, wanted.size());
                    case HTML -> Papers.html(statement, q.route(), map);
                    case JSON -> JsonAnswer.bytes(statement);
                };
        wanted.hand(printed, question, program);
        return plan.outcome() == Outcome.THROUGH ? ExitCode.CLEAR : ExitCode.NOT_CLEAR;
    }
}
