package org.cresthaul.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.Margins;
import org.cresthaul.check.Report;
import org.cresthaul.plan.Comparison;
import org.cresthaul.plan.CompletePlan;
import org.cresthaul.plan.ConfigurationComparison;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.PlanOptionsCheck;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.Length;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The files and options that ask for a plan; the same for every command that makes one. */
final class PlanQuestion {
    @Parameters(index = "0", paramLabel = "ROUTE", description = "Route file")
    private Path routePath;

    @Parameters(index = "1", paramLabel = "RIG", description = "Rig file")
    private Path rigPath;

    @Option(names = "--stance", paramLabel = "NAME",
            description = "Which stance of the rig; \"loaded\" when not given, or the only one there is")
    private Optional<String> stance = Optional.empty();

    @Option(names = "--ground-margin", paramLabel = "LENGTH", converter = CommandOptions.Margin.class,
            description = "Gap to leave over the ground beyond the uncertainty; 2 in when not given")
    private Optional<Length> groundMargin = Optional.empty();

    @Option(names = "--overhead-margin", paramLabel = "LENGTH", converter = CommandOptions.Margin.class,
            description = "Gap to leave under a structure beyond the uncertainty; 3 in when not given")
    private Optional<Length> overheadMargin = Optional.empty();

    @Option(names = "--side-margin", paramLabel = "LENGTH", converter = CommandOptions.Margin.class,
            description = "Gap to leave beside in corners beyond the uncertainty; 6 in when not given")
    private Optional<Length> sideMargin = Optional.empty();

    @Option(names = "--limits", paramLabel = "FILE",
            description = "Weight limits of the whole route, such as the permit's, instead of the route file's")
    private Optional<Path> limits = Optional.empty();

    @Option(names = "--forbid", paramLabel = "KEY", description = "A configuration not to be used, such as up/none/3")
    private List<String> forbid = new ArrayList<>();

    @Option(names = "--keep", paramLabel = "KEY", description = "The one configuration to keep all the way")
    private Optional<String> keep = Optional.empty();

    @Option(names = "--no-raising", description = "Pass every hazard in transport stance")
    private boolean noRaising;

    @Option(names = "--accept-tight", paramLabel = "ID", description = "A hazard that may be passed though tight")
    private List<String> acceptTight = new ArrayList<>();

    @Option(names = "--set-aside", paramLabel = "ID",
            description = "A hazard to plan past undecided; the plan does not hold until it is settled")
    private List<String> setAside = new ArrayList<>();

    /** A plan, the report it was made from, and the files behind both. */
    record Answer(Question question, Report report, Plan plan) {}

    /** What a plan is made from. */
    record Asked(Question question, Margins margins, Report report, PlanOptions options) {}

    /** @throws Refused with every mistake of the files, or of the options */
    Answer answer() throws Refused {
        Asked asked = asked();
        Question q = asked.question;
        return new Answer(q, asked.report,
                CompletePlan.of(q.route(), q.rig(), q.stance(), asked.margins, asked.report, asked.options));
    }

    /** @throws Refused likewise */
    Comparison comparison() throws Refused {
        Asked asked = asked();
        Question q = asked.question;
        return ConfigurationComparison.of(q.route(), q.rig(), q.stance(), asked.margins, asked.report, asked.options);
    }

    private Asked asked() throws Refused {
        Question question = Question.of(InputFile.read(routePath), InputFile.read(rigPath), stance,
                limits.map(InputFile::read));
        Margins usual = Margins.defaults();
        Margins margins = new Margins(
                groundMargin.map(Length::metres).orElse(usual.groundM()),
                overheadMargin.map(Length::metres).orElse(usual.overheadM()),
                sideMargin.map(Length::metres).orElse(usual.sideM()));
        Report report = question.answer(margins);
        PlanOptions options = new PlanOptions(
                question.rig().times(), forbid, keep.orElse(null), noRaising, acceptTight, setAside);
        Mistakes mistakes = new Mistakes();
        for (InputProblem p : PlanOptionsCheck.problems(report, options)) {
            mistakes.add(option(p.pointer()),
                    List.of(new InputProblem(p.code(), p.message(), "", p.remedy())));
        }
        mistakes.refuseIfAny();
        return new Asked(question, margins, report, options);
    }

    private static String option(String pointer) {
        return switch (pointer.split("/")[1]) {
            case "forbid" -> "--forbid";
            case "fix" -> "--keep";
            case "acceptTight" -> "--accept-tight";
            default -> "--set-aside";
        };
    }

    /** Writes what was made, but never over an input file. */
    void write(Path file, byte[] printed) throws Refused {
        try {
            for (Path input : new Path[] {routePath, rigPath}) {
                if (Files.exists(file) && Files.isSameFile(file, input)) {
                    throw new Refused("--out names an input file, " + file + ". Nothing was written.\n");
                }
            }
            Files.write(file, printed);
        } catch (IOException e) {
            throw new Refused(file + " cannot be written. Check the folder, and that you may write there.\n");
        }
    }
}
