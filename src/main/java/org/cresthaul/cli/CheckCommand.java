package org.cresthaul.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.cresthaul.check.Margins;
import org.cresthaul.check.Report;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.units.Length;
import org.cresthaul.units.UnitSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Prints the report of a route and a rig. */
@Command(
        name = "check",
        description = "Check every hazard of a route against every configuration of a rig, and print the report.",
        footer = {
            "",
            "Exit codes:",
            "  0  some configuration is clear at every hazard in transport",
            "  1  none is",
            "  2  nothing was checked: the command line or the files have mistakes",
            "  3  nothing was checked: the program failed"
        },
        versionProvider = Cresthaul.Version.class,
        mixinStandardHelpOptions = true)
final class CheckCommand implements Callable<Integer> {
    @ParentCommand
    private Cresthaul program;

    @Parameters(index = "0", paramLabel = "ROUTE", description = "Route file (GeoJSON)")
    private Path routePath;

    @Parameters(index = "1", paramLabel = "RIG", description = "Rig file (JSON)")
    private Path rigPath;

    @Option(names = "--stance", paramLabel = "NAME", description = "Stance of the rig; loaded when not given")
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

    @Option(names = "--form", paramLabel = "FORM", description = "text (when not given), json or csv")
    private CommandOptions.Form form = CommandOptions.Form.TEXT;

    @Option(names = "--units", paramLabel = "UNITS", converter = CommandOptions.Units.class,
            description = "us (when not given) or metric; JSON is always in metres")
    private UnitSystem units = UnitSystem.US_CUSTOMARY;

    @Option(names = "--out", paramLabel = "FILE", description = "Write the report to this file")
    private Optional<Path> out = Optional.empty();

    @Override
    public Integer call() throws Refused {
        Question question = Question.of(InputFile.read(routePath), InputFile.read(rigPath), stance,
                limits.map(InputFile::read));
        Margins usual = Margins.defaults();
        Report report = question.answer(new Margins(
                groundMargin.map(Length::metres).orElse(usual.groundM()),
                overheadMargin.map(Length::metres).orElse(usual.overheadM()),
                sideMargin.map(Length::metres).orElse(usual.sideM())));
        byte[] printed = switch (form) {
            case TEXT -> new ReportText(units).of(report).getBytes(StandardCharsets.UTF_8);
            case CSV -> new ReportCsv(units).of(report).getBytes(StandardCharsets.UTF_8);
            case JSON -> JsonAnswer.bytes(report);
        };
        if (out.isPresent()) {
            write(out.get(), printed);
        } else {
            program.print(printed);
        }
        return exitCode(report);
    }

    private void write(Path file, byte[] printed) throws Refused {
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

    private static int exitCode(Report report) {
        // Where nothing was judged, nothing is clear.
        boolean clear = !report.hazards().isEmpty() && report.configurations().stream().anyMatch(c -> c.verdict().equals("clear"));
        return clear ? ExitCode.CLEAR : ExitCode.NOT_CLEAR;
    }
}
