package org.cresthaul.cli;

import java.util.List;
import java.util.stream.Collectors;
import org.cresthaul.units.Duration;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.Combinations;

/** Combinations side by side as the planner prints them: each with its own plan. */
final class CombinationsText {
    private static final String NONE = "-";

    private final PrintedFigures figures;

    CombinationsText(UnitSystem units) {
        figures = new PrintedFigures(units);
    }

    String of(Combinations found) {
        Combinations all = RoundedRecords.of(found);
        StringBuilder text = new StringBuilder();
        text.append("COMBINATIONS COMPARED, made with Cresthaul ")
                .append(all.version())
                .append("\n\n")
                .append(ComparisonText.heading(figures, all.route(), all.rig()))
                .append(
                        "\nEach with a plan of its own. What was accepted, set aside, settled, kept or forbidden for one")
                .append("\ncombination does not count here. Heights are those measured with every unit coupled.\n\n");
        TextTable table = new TextTable("  ");
        table.add("combination", "outcome", "conditions", "time", "changes", "length", "gross", "least reserve");
        for (Combinations.Combination c : all.combinations()) {
            table.add(
                    c.stance(),
                    c.outcome().toString(),
                    "" + c.conditions(),
                    Duration.inMinutes(c.seconds()),
                    "" + c.changes(),
                    figures.distance(c.lengthM()),
                    c.grossKg() == null ? "unknown" : figures.weight(c.grossKg()),
                    c.least().share() == null
                            ? NONE
                            : RoundedFigures.percentDown(c.least().share()) + " "
                                    + c.least().shareAt());
        }
        text.append(table.text());
        for (Combinations.Combination c : all.combinations()) {
            text.append('\n').append(c.stance()).append('\n');
            add(text, "units", c.units());
            add(text, "blocked at", c.blocking());
            add(text, "driven as", c.configurations());
            add(
                    text,
                    "axles of each group",
                    c.groups().stream()
                            .map(g -> g.label() + " " + g.axles() + " x " + figures.weight(g.perAxleKg()))
                            .toList());
        }
        text.append("\nCautions\n");
        all.cautions().forEach(c -> text.append(Words.wrapped(c.toString(), "  ", ReportText.WIDTH)));
        return text.toString();
    }

    private static void add(StringBuilder text, String what, List<String> told) {
        text.append(Words.wrapped(
                what + ": " + (told.isEmpty() ? "none" : told.stream().collect(Collectors.joining(", "))),
                "  ",
                ReportText.WIDTH));
    }
}
