package org.cresthaul.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.report.Margins;
import org.cresthaul.units.Length;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The files and options that every check is asked by, and so every plan. */
final class CheckQuestion {
    @Parameters(index = "0", paramLabel = "ROUTE", description = "Route file (GeoJSON)")
    private Path routePath;

    @Parameters(index = "1", paramLabel = "RIG", description = "Rig file (JSON)")
    private Path rigPath;

    @Option(
            names = "--stance",
            paramLabel = "NAME",
            description = "Which stance of the rig; default: \"loaded\", or the only one there is")
    private Optional<String> stance = Optional.empty();

    @Option(
            names = "--ground-margin",
            paramLabel = "LENGTH",
            converter = CommandOptions.Margin.class,
            description = "Clearance to keep over the ground, in addition to the uncertainty; default: 2 in")
    private Optional<Length> groundMargin = Optional.empty();

    @Option(
            names = "--overhead-margin",
            paramLabel = "LENGTH",
            converter = CommandOptions.Margin.class,
            description = "Clearance to keep under a structure, in addition to the uncertainty; default: 3 in")
    private Optional<Length> overheadMargin = Optional.empty();

    @Option(
            names = "--side-margin",
            paramLabel = "LENGTH",
            converter = CommandOptions.Margin.class,
            description = "Side clearance to keep in corners, in addition to the uncertainty; default: 6 in")
    private Optional<Length> sideMargin = Optional.empty();

    @Option(
            names = "--unit-margin",
            paramLabel = "LENGTH",
            converter = CommandOptions.Margin.class,
            description = "Clearance to keep between coupled units, in addition to the uncertainty; default: 1 in")
    private Optional<Length> unitMargin = Optional.empty();

    @Option(
            names = "--line-tolerance",
            paramLabel = "LENGTH",
            converter = CommandOptions.Margin.class,
            description = "How far the driver strays from the line in a corner; default: 6 in")
    private Optional<Length> lineTolerance = Optional.empty();

    @Option(
            names = "--turn-in-tolerance",
            paramLabel = "LENGTH",
            converter = CommandOptions.Margin.class,
            description = "How early or late the driver turns the wheel in a corner; default: 2 ft")
    private Optional<Length> turnInTolerance = Optional.empty();

    @Option(
            names = "--limits",
            paramLabel = "FILE",
            description = "Weight limits of the whole route, such as the permit's, instead of the route file's")
    private Optional<Path> limits = Optional.empty();

    /** @throws Refused with every mistake of the files */
    Question question() throws Refused {
        return Question.of(InputFile.read(routePath), InputFile.read(rigPath), stance, limits.map(InputFile::read));
    }

    /** As asked, the usual ones else. */
    Margins margins() {
        Margins usual = Margins.defaults();
        return new Margins(
                groundMargin.map(Length::meters).orElse(usual.groundM()),
                overheadMargin.map(Length::meters).orElse(usual.overheadM()),
                sideMargin.map(Length::meters).orElse(usual.sideM()),
                lineTolerance.map(Length::meters).orElse(usual.lineM()),
                turnInTolerance.map(Length::meters).orElse(usual.turnInM()),
                unitMargin.map(Length::meters).orElse(usual.unitM()));
    }

    /** As {@link OutputFile#write}, never over a file that was read for this question, or {@code besides} it. */
    void write(Path file, byte[] printed, List<Path> besides) throws Refused {
        List<Path> inputs = new ArrayList<>(List.of(routePath, rigPath));
        inputs.addAll(besides);
        limits.ifPresent(inputs::add);
        OutputFile.write(file, printed, inputs);
    }
}
