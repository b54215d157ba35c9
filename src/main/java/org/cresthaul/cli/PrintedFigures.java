package org.cresthaul.cli;

import org.cresthaul.report.UncertaintyTerm;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;

/** Quantities as the report prints them. */
final class PrintedFigures extends RoundedFigures {
    PrintedFigures(UnitSystem units) {
        super(units);
    }

    /** "uncertainty of survey: 1/2 in (level and tape)" */
    String uncertainty(UncertaintyTerm term) {
        return "uncertainty of " + term.term() + ": " + required(term.valueM()) + " (" + term.source() + ")";
    }
}
