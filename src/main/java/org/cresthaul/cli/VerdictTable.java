package org.cresthaul.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.report.Verdict;
import org.cresthaul.units.UnitSystem;

/** Every hazard at every setting by marks, as many settings beside each other as fit; then the whole route. */
final class VerdictTable {
    private static final int LONGEST_NAME = 24;
    private static final int MARK_WIDTH = 3;
    /** Columns before the marks: id, name, chainage and their gaps. */
    private static final int LEAD = LONGEST_NAME + 16;

    private static final int WIDTH = 108;
    /** More places than this that nobody surveyed stand in one row. */
    private static final int FEW = 5;

    private final PrintedFigures figures;

    VerdictTable(UnitSystem units) {
        figures = new PrintedFigures(units);
    }

    /** Route and rig, then the table and its key. */
    String of(Report report) {
        return report.route().name() + ", " + figures.chainage(report.route().lengthM()) + "\n"
                + report.rig().name() + ", " + report.rig().stance() + "\n\n"
                + marks(report);
    }

    /** The table and its key alone. */
    String marks(Report report) {
        if (report.hazards().isEmpty()) {
            return "The route file has no hazards: nothing was judged, and nothing is called clear.\n";
        }
        List<ConfigurationState> states = ConfigurationState.listOf(report);
        int width = states.stream()
                .mapToInt(s -> Math.max(
                                s.notches().size() * MARK_WIDTH,
                                s.booster().word().length())
                        + 2)
                .max()
                .orElseThrow();
        int beside = Math.max(1, (WIDTH - LEAD) / width);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < states.size(); i += beside) {
            text.append(table(report, states.subList(i, Math.min(states.size(), i + beside))))
                    .append('\n');
        }
        return text + Marks.KEY;
    }

    private String table(Report report, List<ConfigurationState> states) {
        TextTable table = new TextTable("");
        table.add(row("", "", "", states, ConfigurationState::axlesLabel));
        table.add(row("", "", "booster", states, s -> s.booster().word()));
        table.add(row("", "", "notch", states, s -> strip(s.notches(), n -> n)));
        List<HazardFindings> waiting =
                report.hazards().stream().filter(h -> !h.surveyed()).toList();
        boolean together = waiting.size() > FEW;
        if (together) {
            table.add(row(
                    "",
                    waiting.size() + " not surveyed, below",
                    "",
                    states,
                    s -> strip(
                            s.of(report.configurations()),
                            c -> Marks.of(worst(waiting, report.configurations().indexOf(c))))));
        }
        for (HazardFindings hazard : report.hazards()) {
            if (together && !hazard.surveyed()) {
                continue;
            }
            table.add(row(
                    hazard.id(),
                    shortened(hazard.name()),
                    figures.chainage(hazard.chainageM()),
                    states,
                    s -> strip(s.of(hazard.cells()), Marks::of)));
        }
        if (report.loads().counts()) {
            table.add(row(
                    "",
                    "loads, whole route",
                    "",
                    states,
                    s -> strip(s.of(report.configurations()), c -> Marks.of(c.loads()))));
        }
        table.add(row(
                "",
                "whole route in transport",
                "",
                states,
                s -> strip(s.of(report.configurations()), c -> Marks.of(c.verdict()))));
        return table.text();
    }

    private static Verdict worst(List<HazardFindings> hazards, int configuration) {
        return hazards.stream()
                .map(h -> h.cells().get(configuration).verdict())
                .reduce(Verdict::orWorse)
                .orElseThrow();
    }

    private static List<String> row(
            String id,
            String name,
            String place,
            List<ConfigurationState> states,
            Function<ConfigurationState, String> shown) {
        List<String> row = new ArrayList<>(List.of(id, name, place));
        states.forEach(s -> row.add(shown.apply(s)));
        return row;
    }

    private static <T> String strip(List<T> values, Function<T, String> mark) {
        StringBuilder strip = new StringBuilder();
        for (T value : values) {
            String shown = mark.apply(value);
            strip.append(shown).append(" ".repeat(Math.max(1, MARK_WIDTH - shown.length())));
        }
        return strip.toString();
    }

    private static String shortened(String name) {
        return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 3) + "...";
    }
}
