package org.cresthaul.cli;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.cresthaul.report.CheckedLeg;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;

/** The report as a clerk prints it. The same report and units give the same text. */
final class ReportText {
    /** Widest line of running text; tables take what they need. */
    static final int WIDTH = 96;

    private final UnitSystem units;
    private final PrintedFigures figures;

    ReportText(UnitSystem units) {
        this.units = units;
        figures = new PrintedFigures(units);
    }

    String of(Report found) {
        Report report = RoundedRecords.of(found);
        StringBuilder text = new StringBuilder();
        text.append("CLEARANCE REPORT, made with Cresthaul ")
                .append(report.version())
                .append("\n\n");
        text.append(heading(report)).append("\nWhat a tape shows on this stance, as the rig file has it\n");
        text.append(Words.wrapped(
                report.tape().stream()
                                .map(t -> t.what() + " " + figures.dimension(t.valueM()))
                                .collect(Collectors.joining("; "))
                        + ".",
                "  ",
                WIDTH));
        text.append("\nCautions\n");
        report.cautions().forEach(c -> text.append(Words.wrapped(c.toString(), "  ", WIDTH)));
        text.append("\nAT A GLANCE\n\n").append(new VerdictTable(units).marks(report));
        if (!report.hazards().isEmpty()) {
            text.append("\nWHOLE ROUTE IN TRANSPORT\n\n").append(wholeRoute(report));
        }
        if (!report.surveyFirst().places().isEmpty()) {
            text.append("\nSURVEY FIRST\n\n").append(new SurveyFirstText(figures).of(report));
        }
        List<ConfigurationState> states = ConfigurationState.listOf(report);
        text.append("\nLOADS\n\n").append(new LoadText(figures).of(report));
        text.append("\nBACKING UP\n\n").append(new ReversingText(figures).of(report));
        HazardText hazards = new HazardText(figures);
        // Of a place that nobody surveyed there is nothing to tell in any setting: it stands in the table.
        report.hazards().stream()
                .filter(h -> h.surveyed() || hasFigures(h))
                .forEach(h -> text.append('\n').append(hazards.of(h, states)));
        return text.toString();
    }

    private static boolean hasFigures(HazardFindings hazard) {
        return hazard.cells().stream().anyMatch(c -> c.governing().isPresent());
    }

    private String heading(Report report) {
        TextTable table = new TextTable("");
        table.add(
                "Route",
                report.route().name() + ", " + figures.chainage(report.route().lengthM()));
        addNote(table, report.route().note());
        for (CheckedLeg leg : report.route().legs()) {
            table.add(
                    "",
                    "leg " + leg.name() + ", " + figures.chainage(leg.startChainageM()) + " to "
                            + figures.chainage(leg.endChainageM()));
        }
        table.add("", "file SHA-256 " + report.route().sha256());
        Optional.ofNullable(report.route().limitsSha256()).ifPresent(h -> table.add("", "limits file SHA-256 " + h));
        table.add("Rig", report.rig().name() + ", stance " + report.rig().stance());
        addNote(table, report.rig().note());
        table.add("", "file SHA-256 " + report.rig().sha256());
        table.add(
                "Margins",
                figures.required(report.margins().groundM()) + " over the ground, "
                        + figures.required(report.margins().overheadM()) + " under a structure, "
                        + figures.required(report.margins().sideM()) + " beside in corners, "
                        + figures.required(report.margins().unitM()) + " between units, beyond the uncertainty (95 %)");
        table.add("", "Between units every place is checked; told where that is not clear");
        table.add(
                "Driver in corners",
                "within " + figures.required(report.margins().lineM()) + " of the line and "
                        + figures.required(report.margins().turnInM())
                        + " of the place to turn in (common practice, no source)");
        report.uncertainties().forEach(u -> table.add("", figures.uncertainty(u)));
        return table.text();
    }

    private static void addNote(TextTable table, String note) {
        if (!note.isEmpty()) {
            table.add("", note);
        }
    }

    private static String wholeRoute(Report report) {
        TextTable table = new TextTable("  ");
        table.add(
                "setting",
                "notch",
                "verdict",
                "clear",
                "tight",
                "contact",
                "not surveyed",
                "outside limits",
                "loads not known",
                "clear only raised");
        for (ConfigurationState state : ConfigurationState.listOf(report)) {
            for (ConfigurationVerdict c : state.of(report.configurations())) {
                table.add(
                        state.label(),
                        c.notch(),
                        c.verdict().word(),
                        "" + c.clear(),
                        "" + c.tight(),
                        "" + c.contact(),
                        "" + c.notSurveyed(),
                        "" + c.outsideLimits(),
                        "" + c.loadsNotKnown(),
                        "" + c.raisedOnly());
            }
        }
        return table.text();
    }
}
