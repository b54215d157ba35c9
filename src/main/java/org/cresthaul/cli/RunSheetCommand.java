package org.cresthaul.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.language.Catalog;
import org.cresthaul.paper.Papers;
import org.cresthaul.paper.SheetPictures;
import org.cresthaul.plan.Outcome;
import org.cresthaul.plan.Plan;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.sheet.RunSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

/** Plans a route and makes the driver's sheet of it. */
@Command(
        name = "runsheet",
        description =
                "Plans a route and makes the driver's run sheet of the plan, with set-up cards, drawings and maps.",
        mixinStandardHelpOptions = true)
final class RunSheetCommand implements Callable<Integer> {
    @ParentCommand
    private Cresthaul program;

    @Mixin
    private PlanQuestion question = new PlanQuestion();

    @Mixin
    private PaperOptions wanted = new PaperOptions();

    @Option(
            names = "--language",
            paramLabel = "LANGUAGE",
            converter = CommandOptions.Language.class,
            description = "en (default) or es")
    private Catalog language = Catalog.ENGLISH;

    @Override
    public Integer call() throws Refused {
        Optional<CreditedMap> map = wanted.baseMap();
        PlanQuestion.Answer answer = question.answer();
        Plan plan = answer.plan();
        RunSheet sheet = RunSheet.of(
                plan,
                answer.report(),
                answer.question().route(),
                answer.question().stance(),
                wanted.units(),
                language);
        Question q = answer.question();
        SheetPictures pictures =
                new SheetPictures(q.haul(plan.margins()), map, plan, answer.report(), wanted.units(), language);
        byte[] printed =
                switch (wanted.form()) {
                    case PDF -> Papers.pdf(sheet, pictures, wanted.size());
                    case HTML -> Papers.html(sheet, pictures);
                    case JSON -> JsonAnswer.bytes(sheet, language);
                };
        wanted.hand(printed, question, program);
        return plan.outcome() == Outcome.THROUGH ? ExitCode.CLEAR : ExitCode.NOT_CLEAR;
    }
}
