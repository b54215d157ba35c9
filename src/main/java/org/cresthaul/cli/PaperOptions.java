package org.cresthaul.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.cresthaul.exchange.BaseMapReader;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.paper.PaperSize;
import org.cresthaul.units.UnitSystem;
import picocli.CommandLine.Option;

/** How a paper is wanted; the same for every command that makes one. */
final class PaperOptions {
    @Option(names = "--form", paramLabel = "FORM", description = "pdf (default), html or json")
    private Form form = Form.PDF;

    @Option(names = "--paper", paramLabel = "SIZE", description = "letter (default) or a4, for pdf")
    private PaperSize size = PaperSize.LETTER;

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            converter = CommandOptions.Units.class,
            description = "us (default) or metric")
    private UnitSystem units = UnitSystem.US_CUSTOMARY;

    @Option(
            names = "--base-map",
            paramLabel = "FILE",
            description = "A base map to draw beneath the paper's maps, such as import --map leaves beside a route")
    private Optional<Path> baseMap = Optional.empty();

    @Option(names = "--out", paramLabel = "FILE", description = "Write the paper to this file")
    private Optional<Path> out = Optional.empty();

    enum Form {
        PDF,
        HTML,
        JSON
    }

    Form form() {
        return form;
    }

    PaperSize size() {
        return size;
    }

    UnitSystem units() {
        return units;
    }

    /** @throws Refused when there is no such base map */
    Optional<CreditedMap> baseMap() throws Refused {
        Mistakes mistakes = new Mistakes();
        Optional<CreditedMap> map = baseMap.flatMap(path -> InputFile.read(path).parse(BaseMapReader::parse, mistakes));
        mistakes.refuseIfAny();
        return map;
    }

    /** Writes the paper where it is wanted. @throws Refused when it cannot be written there */
    void hand(byte[] paper, PlanQuestion question, Cresthaul program) throws Refused {
        if (out.isPresent()) {
            question.write(out.get(), paper, baseMap.stream().toList());
        } else {
            program.print(paper);
        }
    }
}
