package org.cresthaul.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptionsCheck;
import org.cresthaul.report.Report;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.server.JsonDifferences;
import org.cresthaul.sheet.Statement;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Problems;
import org.cresthaul.whatif.CompletePlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Makes a statement again from its files and tells whether it is the same. */
@Command(
        name = "verify",
        description =
                "Makes a statement again from its files, as it says it was asked for, and tells whether it is identical.",
        mixinStandardHelpOptions = true)
final class VerifyCommand implements Callable<Integer> {
    private static final int MOST_LISTED = 40;

    @ParentCommand
    private Cresthaul program;

    @Parameters(
            index = "0",
            paramLabel = "FILE",
            description =
                    "Statement, written by statement --form json, with its files; or the record of a paper, alone")
    private Path statementPath;

    @Parameters(index = "1", arity = "0..1", paramLabel = "ROUTE", description = "Route file (GeoJSON)")
    private Optional<Path> routePath = Optional.empty();

    @Parameters(index = "2", arity = "0..1", paramLabel = "RIG", description = "Rig file (JSON)")
    private Optional<Path> rigPath = Optional.empty();

    @Option(
            names = "--limits",
            paramLabel = "FILE",
            description = "The limits file, where the statement was made with one")
    private Optional<Path> limitsPath = Optional.empty();

    @Override
    public Integer call() throws Refused {
        Mistakes mistakes = new Mistakes();
        if (routePath.isEmpty() && rigPath.isEmpty() && limitsPath.isEmpty()) {
            return new RecordCheck(program).of(InputFile.read(statementPath));
        }
        if (routePath.isEmpty() || rigPath.isEmpty()) {
            throw new Refused("A statement is verified with its route and its rig. Nothing was verified.\n");
        }
        Optional<StatementFile> read = InputFile.read(statementPath).parse(StatementFile::parse, mistakes);
        mistakes.refuseIfAny();
        StatementFile statement = read.orElseThrow();
        requireLimits(statement);
        Question question = Question.of(
                InputFile.read(routePath.get()),
                InputFile.read(rigPath.get()),
                Optional.of(statement.stance()),
                limitsPath.map(InputFile::read));
        List<JsonDifferences.Difference> differences = JsonDifferences.of(statement.tree(), again(statement, question));
        StringBuilder text = new StringBuilder();
        text.append(
                hash("route file", statement.routeSha256(), question.inputs().routeSha256()));
        text.append(hash("rig file", statement.rigSha256(), question.inputs().rigSha256()));
        question.inputs().limitsSha256().ifPresent(h -> text.append(hash("limits file", statement.limitsSha256(), h)));
        if (differences.isEmpty()) {
            program.print(text + "Identical: made again from these files, the statement is the same in everything.\n");
            return ExitCode.CLEAR;
        }
        text.append(listed(differences, "in the statement"));
        program.print(text.toString());
        return ExitCode.NOT_CLEAR;
    }

    /** The first of the values that differ. */
    static String listed(List<JsonDifferences.Difference> differences, String there) {
        StringBuilder text = new StringBuilder();
        text.append("NOT identical: ")
                .append(differences.size())
                .append(differences.size() == 1 ? " value differs.\n" : " values differ.\n");
        differences.stream()
                .limit(MOST_LISTED)
                .forEach(d -> text.append(d.pointer())
                        .append("\n    ")
                        .append(there)
                        .append("  ")
                        .append(d.first())
                        .append("\n    ")
                        .append(String.format("%-" + there.length() + "s", "made again"))
                        .append("  ")
                        .append(d.second())
                        .append('\n'));
        if (differences.size() > MOST_LISTED) {
            text.append("and ").append(differences.size() - MOST_LISTED).append(" more\n");
        }
        return text.toString();
    }

    private void requireLimits(StatementFile statement) throws Refused {
        if (limitsPath.isEmpty() && statement.limitsSha256() != null) {
            throw new Refused(
                    "The statement was made with a limits file. Name it with --limits. Nothing was verified.\n");
        }
        if (limitsPath.isPresent() && statement.limitsSha256() == null) {
            throw new Refused(
                    "The statement was made without a limits file. Leave --limits out. Nothing was verified.\n");
        }
    }

    private static String hash(String what, String told, String found) {
        return what + ": SHA-256 "
                + (told.equals(found)
                        ? "as in the statement\n"
                        : "DIFFERS: " + told + " in the statement, " + found + " of this file\n");
    }

    private static JsonNode again(StatementFile statement, Question q) throws Refused {
        Report report = q.answer(statement.margins());
        Mistakes mistakes = new Mistakes();
        List<InputProblem> problems = PlanOptionsCheck.problems(report, statement.options());
        if (!problems.isEmpty()) {
            mistakes.add("What the statement was asked", problems);
        }
        mistakes.refuseIfAny();
        Plan plan = CompletePlan.of(q.haul(statement.margins()), report, statement.options());
        byte[] written =
                JsonAnswer.bytes(Statement.of(plan, report, q.route(), q.rig(), q.stance(), statement.units()));
        try {
            Problems none = new Problems();
            JsonNode tree = JsonText.read(written, none);
            none.throwIfAny();
            return tree;
        } catch (InputRejected e) {
            throw new IllegalStateException("a statement reads back", e);
        }
    }
}
