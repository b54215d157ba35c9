package org.cresthaul.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.cresthaul.check.Report;
import org.cresthaul.units.UnitSystem;

/** Every hazard at every setting on one line, by marks; the last line is the whole route. */
final class VerdictTable {
    private static final int LONGEST_NAME = 30;

    private final Figures figures;

    VerdictTable(UnitSystem units) {
        figures = new Figures(units);
    }

    /** Route and rig, then the table and its key. */
    String of(Report report) {
        return report.route().name() + ", " + figures.chainage(report.route().lengthM()) + "\n"
                + report.rig().name() + ", " + report.rig().stance() + "\n\n"
                + marks(report);
    }

    /** The table and its key alone. */
    String marks(Report report) {
        List<ConfigurationState> states = ConfigurationState.listOf(report);
        TextTable table = new TextTable("");
        table.add(row("", "", "", "", states.stream().map(ConfigurationState::label).toList()));
        table.add(row("", "", "", "notch",
                states.stream().map(s -> s.notches().stream().map(VerdictTable::padded).collect(Collectors.joining()))
                        .toList()));
        for (Report.HazardFindings hazard : report.hazards()) {
            table.add(row(hazard.id(), shortened(hazard.name()), Words.kind(hazard.kind()),
                    figures.chainage(hazard.chainageM()),
                    states.stream()
                            .map(s -> s.of(hazard.cells()).stream().map(c -> padded(Marks.of(c)))
                                    .collect(Collectors.joining()))
                            .toList()));
        }
        table.add(row("", "whole route in transport", "", "",
                states.stream()
                        .map(s -> s.of(report.configurations()).stream().map(c -> padded(Marks.of(c.verdict())))
                                .collect(Collectors.joining()))
                        .toList()));
        return table.text() + "\n" + Marks.KEY;
    }

    private static List<String> row(String id, String name, String kind, String place, List<String> states) {
        List<String> row = new ArrayList<>(List.of(id, name, kind, place));
        row.addAll(states);
        return row;
    }

    private static String padded(String mark) {
        return mark + " ".repeat(Math.max(1, 3 - mark.length()));
    }

    private static String shortened(String name) {
        return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 3) + "...";
    }
}
