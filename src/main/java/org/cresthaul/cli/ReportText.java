package org.cresthaul.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.check.Report;
import org.cresthaul.units.UnitSystem;

/** The report as a clerk prints it. The same report and units give the same text. */
final class ReportText {
    private static final int WIDTH = 96;

    private final UnitSystem units;
    private final Figures figures;

    ReportText(UnitSystem units) {
        this.units = units;
        figures = new Figures(units);
    }

    String of(Report report) {
        StringBuilder text = new StringBuilder();
        text.append("CLEARANCE REPORT, made with Cresthaul ").append(report.version()).append("\n\n");
        text.append(heading(report));
        text.append("\nCautions\n");
        report.cautions().forEach(c -> text.append(Words.wrapped(c, "  ", WIDTH)));
        text.append("\nAT A GLANCE\n\n").append(new VerdictTable(units).marks(report));
        text.append("\nWHOLE ROUTE IN TRANSPORT\n\n").append(wholeRoute(report));
        List<ConfigurationState> states = ConfigurationState.listOf(report);
        for (Report.HazardFindings hazard : report.hazards()) {
            text.append('\n').append(new HazardText(figures, WIDTH).of(hazard, states));
        }
        return text.toString();
    }

    private String heading(Report report) {
        TextTable table = new TextTable("");
        table.add("Route", report.route().name() + ", " + figures.chainage(report.route().lengthM()));
        addNote(table, report.route().note());
        for (Report.CheckedLeg leg : report.route().legs()) {
            table.add("", "leg " + leg.name() + ", " + figures.chainage(leg.startChainageM()) + " to "
                    + figures.chainage(leg.endChainageM()));
        }
        table.add("", "file SHA-256 " + report.route().sha256());
        table.add("Rig", report.rig().name() + ", stance " + report.rig().stance());
        addNote(table, report.rig().note());
        table.add("", "file SHA-256 " + report.rig().sha256());
        table.add("Margins", figures.required(report.margins().groundM()) + " over the ground, "
                + figures.required(report.margins().overheadM()) + " under a structure, beyond the uncertainty (95 %)");
        report.uncertainties().forEach(u -> table.add("", uncertainty(figures, u)));
        return table.text();
    }

    private static void addNote(TextTable table, String note) {
        if (!note.isEmpty()) {
            table.add("", note);
        }
    }

    static String uncertainty(Figures figures, Report.UncertaintyTerm term) {
        return "uncertainty of " + term.term() + ": " + figures.required(term.valueM()) + " (" + term.source() + ")";
    }

    private String wholeRoute(Report report) {
        TextTable table = new TextTable("  ");
        table.add("setting", "notch", "verdict", "clear", "tight", "contact", "not surveyed", "clear only raised");
        List<ConfigurationState> states = ConfigurationState.listOf(report);
        for (ConfigurationState state : states) {
            for (Report.ConfigurationVerdict c : state.of(report.configurations())) {
                table.add(state.label(), c.notch(), c.verdict(), "" + c.clear(), "" + c.tight(), "" + c.contact(),
                        "" + c.notSurveyed(), "" + c.raisedOnly());
            }
        }
        return table.text();
    }

    /** One hazard of the report: what is known of it, then every setting, settings with the same answers together. */
    static final class HazardText {
        private final Figures figures;
        private final int width;

        HazardText(Figures figures, int width) {
            this.figures = figures;
            this.width = width;
        }

        String of(Report.HazardFindings hazard, List<ConfigurationState> states) {
            StringBuilder text = new StringBuilder();
            text.append(hazard.id()).append("  ").append(hazard.name()).append(", ").append(Words.kind(hazard.kind()))
                    .append(" at ").append(figures.chainage(hazard.chainageM())).append('\n');
            if (hazard.landmark() != null) {
                text.append("  Landmark: ").append(hazard.landmark()).append('\n');
            }
            text.append(survey(hazard));
            hazard.limits().forEach(l -> text.append(Words.wrapped("Not called clear: " + l + ".", "  ", width)));
            hazard.notes().forEach(n -> text.append(Words.wrapped("Note: " + n + ".", "  ", width)));
            hazard.cautions().forEach(c -> text.append(Words.wrapped("Caution: " + c, "  ", width)));
            Map<String, List<String>> labels = new LinkedHashMap<>();
            Map<String, ConfigurationState> first = new LinkedHashMap<>();
            for (ConfigurationState state : states) {
                String block = block(hazard, state);
                labels.computeIfAbsent(block, b -> new ArrayList<>()).add(state.label());
                first.putIfAbsent(block, state);
            }
            labels.forEach((block, same) -> text.append('\n')
                    .append(Words.wrapped(String.join("; ", same), "  ", width))
                    .append(block));
            return text.toString();
        }

        private String survey(Report.HazardFindings hazard) {
            if (!hazard.surveyed()) {
                return "  Not surveyed: nothing here can be called clear.\n";
            }
            StringBuilder text = new StringBuilder();
            if (hazard.extentM().size() == 2) {
                text.append("  Known from ").append(figures.alongRoad(hazard.extentM().get(0))).append(" to ")
                        .append(figures.alongRoad(hazard.extentM().get(1))).append("; lines: ")
                        .append(String.join(", ", hazard.lines())).append('\n');
            }
            hazard.uncertainties().forEach(u -> text.append("  ").append(capital(uncertainty(figures, u))).append('\n'));
            return text.toString();
        }

        private static String capital(String text) {
            return Character.toUpperCase(text.charAt(0)) + text.substring(1);
        }

        private String block(Report.HazardFindings hazard, ConfigurationState state) {
            List<Report.Cell> cells = state.of(hazard.cells());
            TextTable table = new TextTable("    ");
            table.add(row("notch", state.notches()));
            table.add(row("in transport", cells.stream().map(Report.Cell::verdict).toList()));
            addGaps(table, "over the ground", cells.stream().map(Report.Cell::ground).toList());
            addGaps(table, "under the structure", cells.stream().map(Report.Cell::overhead).toList());
            if (cells.stream().anyMatch(c -> c.raise() != null)) {
                table.add(row("raise front", cells.stream().map(c -> raise(c, true)).toList()));
                table.add(row("raise rear", cells.stream().map(c -> raise(c, false)).toList()));
                table.add(row("gap then", cells.stream()
                        .map(c -> c.raise() == null ? "" : figures.clearance(c.raise().clearanceM())).toList()));
            }
            return table.text() + remarks(hazard, state, cells);
        }

        private String raise(Report.Cell cell, boolean front) {
            if (cell.raise() == null) {
                return "";
            }
            return figures.required(front ? cell.raise().frontM() : cell.raise().rearM());
        }

        private void addGaps(TextTable table, String name, List<Report.GapFinding> gaps) {
            if (gaps.stream().anyMatch(g -> g != null)) {
                table.add(row(name, gaps.stream().map(g -> g == null ? "" : figures.clearance(g.valueM())).toList()));
                table.add(row("  needed", gaps.stream().map(g -> g == null ? "" : figures.required(g.requiredM()))
                        .toList()));
            }
        }

        private static List<String> row(String name, List<String> cells) {
            List<String> row = new ArrayList<>(List.of(name));
            row.addAll(cells);
            return row;
        }

        private String remarks(Report.HazardFindings hazard, ConfigurationState state, List<Report.Cell> cells) {
            Map<String, List<String>> remarks = new LinkedHashMap<>();
            for (int i = 0; i < cells.size(); i++) {
                Report.Cell cell = cells.get(i);
                String notch = state.notches().get(i);
                tightest(cell).forEach(r -> remarks.computeIfAbsent(r, k -> new ArrayList<>()).add(notch));
                cell.reasons().forEach(r -> remarks.computeIfAbsent(r, k -> new ArrayList<>()).add(notch));
                if (cell.raiseNote() != null) {
                    remarks.computeIfAbsent(cell.raiseNote(), k -> new ArrayList<>()).add(notch);
                }
            }
            StringBuilder text = new StringBuilder();
            Report.LeastSetting least = least(hazard, state);
            text.append("    ").append(capital(least.text())).append(".\n");
            remarks.forEach((remark, notches) -> text.append(Words.wrapped(
                    (notches.size() == 1 ? "Notch " : notches.size() == cells.size() ? "Every notch " : "Notches ")
                            + (notches.size() == cells.size() && notches.size() > 1 ? "" : String.join(", ", notches))
                            + ": " + remark + ".",
                    "    ",
                    width)));
            return text.toString().replace("Every notch : ", "Every notch: ");
        }

        /** Where the gaps are least, in words; only for a setting that is not clear. */
        private List<String> tightest(Report.Cell cell) {
            List<String> places = new ArrayList<>();
            if (!cell.verdict().equals("clear")) {
                for (Report.GapFinding gap : new Report.GapFinding[] {cell.ground(), cell.overhead()}) {
                    if (gap != null && !gap.verdict().equals("clear")) {
                        places.add(place(gap));
                    }
                }
            }
            return places;
        }

        private String place(Report.GapFinding gap) {
            return "least gap at the " + gap.unit() + (gap.part().isEmpty() ? "" : ", " + gap.part()) + ", "
                    + figures.alongRoad(gap.distanceM()) + ", line " + gap.line() + ", levelling " + gap.levelling()
                    + ", with the steer axle " + figures.alongRoad(gap.steerM())
                    + (gap.beyondSurveyM() > 0
                            ? ", leaning on ground " + figures.required(gap.beyondSurveyM()) + " beyond the survey"
                            : "");
        }

        private static Report.LeastSetting least(Report.HazardFindings hazard, ConfigurationState state) {
            int before = 0;
            for (Report.LeastSetting least : hazard.least()) {
                if (before == state.first()) {
                    return least;
                }
                before += state.notches().size();
            }
            throw new IllegalArgumentException("no least setting for " + state.label() + " at " + hazard.id());
        }
    }
}
