package org.cresthaul.cli;

import java.nio.file.Path;
import java.util.Optional;
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

    Optional<Path> out() {
        return out;
    }
}
