package org.cresthaul.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.cresthaul.report.Report;
import org.cresthaul.report.Verdict;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.units.UnitSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
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

    @Mixin
    private CheckQuestion asked = new CheckQuestion();

    @Option(
            names = "--form",
            paramLabel = "FORM",
            description = "text (default), json, csv, or survey: what to survey first, as CSV")
    private CommandOptions.Form form = CommandOptions.Form.TEXT;

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            converter = CommandOptions.Units.class,
            description = "us (default) or metric; JSON is always in meters")
    private UnitSystem units = UnitSystem.US_CUSTOMARY;

    @Option(names = "--out", paramLabel = "FILE", description = "Write the report to this file")
    private Optional<Path> out = Optional.empty();

    @Override
    public Integer call() throws Refused {
        Report report = asked.question().answer(asked.margins());
        byte[] printed =
                switch (form) {
                    case TEXT -> new ReportText(units).of(report).getBytes(StandardCharsets.UTF_8);
                    case CSV -> new ReportCsv(units).of(report).getBytes(StandardCharsets.UTF_8);
                    case SURVEY -> new SurveyFirstCsv(units).of(report).getBytes(StandardCharsets.UTF_8);
                    case JSON -> JsonAnswer.bytes(report);
                };
        if (out.isPresent()) {
            asked.write(out.get(), printed, List.of());
        } else {
            program.print(printed);
        }
        return exitCode(report);
    }

    private static int exitCode(Report report) {
        // Where nothing was judged, nothing is clear.
        boolean clear = !report.hazards().isEmpty()
                && report.configurations().stream().anyMatch(c -> c.verdict() == Verdict.CLEAR);
        return clear ? ExitCode.CLEAR : ExitCode.NOT_CLEAR;
    }
}
