package org.cresthaul.cli;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.CrossingTime;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.Robustness;
import org.cresthaul.plan.SpareKind;
import org.cresthaul.route.CrossingTraffic.Warning;

/** What a plan tells besides its way: the rail crossings in time, and how its margins shrink when things are off. */
final class PlanMarginsText {
    private static final int WIDTH = ReportText.WIDTH;

    private final PrintedFigures figures;

    PlanMarginsText(PrintedFigures figures) {
        this.figures = figures;
    }

    String of(Plan plan) {
        return crossings(plan.crossings()) + (plan.robustness() == null ? "" : robustness(plan.robustness()));
    }

    private String crossings(List<CrossingTime> crossings) {
        if (crossings.isEmpty()) {
            return "";
        }
        StringBuilder text = new StringBuilder("\nRAIL CROSSINGS IN TIME, from a stop\n\n");
        TextTable table = new TextTable("  ");
        table.add("", "", "clears in", "least warning", "reserve", "enough", "room beyond", "needed", "room");
        crossings.forEach(c -> table.add(
                c.hazard(),
                c.name(),
                seconds(c.clearSeconds()),
                warning(c),
                c.reserveSeconds() == null ? "-" : seconds(c.reserveSeconds()),
                word(c.fits()),
                c.storageM() == null ? "-" : figures.distance(c.storageM()),
                figures.distance(c.storageNeededM()),
                word(c.storageFits())));
        text.append(table.text()).append('\n');
        text.append(Words.wrapped(
                "Enough: the reserve before a train is at least "
                        + seconds(crossings.get(0).reserveNeededSeconds()) + ".",
                "  ",
                WIDTH));
        Map<String, List<String>> where = new LinkedHashMap<>();
        for (CrossingTime c : crossings) {
            for (int i = 0; i + 1 < c.advice().size(); i++) {
                where.computeIfAbsent(c.advice().get(i).toString(), a -> new ArrayList<>())
                        .add(c.hazard());
            }
        }
        where.forEach(
                (advice, places) -> text.append(Words.wrapped(String.join(", ", places) + ": " + advice, "  ", WIDTH)));
        // How it was counted is the same everywhere.
        List<Sentence> advice = crossings.get(0).advice();
        return text.append(Words.wrapped(advice.get(advice.size() - 1).toString(), "  ", WIDTH))
                .toString();
    }

    /** How long before a train something warns; where nothing but signs stands, that nothing does. */
    private static String warning(CrossingTime c) {
        if (c.warningSeconds() != null) {
            return seconds(c.warningSeconds());
        }
        return c.warning() == Warning.PASSIVE ? "signs only" : "unknown";
    }

    private static String seconds(double seconds) {
        return PrintedFigures.fixed(seconds, 1, RoundingMode.HALF_UP) + " s";
    }

    private static String word(Boolean fits) {
        return fits == null ? "unknown" : fits ? "yes" : "NO";
    }

    /** Empty without rows. */
    String robustness(Robustness robustness) {
        if (robustness.rows().isEmpty()) {
            return "";
        }
        StringBuilder text = new StringBuilder("\nRESERVE WHEN THINGS ARE OFF\n\n");
        TextTable table = new TextTable("  ");
        List<String> head = new ArrayList<>(List.of("", "", "as declared"));
        robustness.assumed().forEach(a -> head.add(a.what()));
        head.addAll(List.of("together", "verdict then"));
        table.add(head);
        for (Robustness.Row row : robustness.rows()) {
            List<String> cells =
                    new ArrayList<>(List.of(row.hazard(), row.kind().word(), spare(row.kind(), row.spare())));
            for (int i = 0; i < row.left().size(); i++) {
                cells.add(row.bears().get(i) ? spare(row.kind(), row.left().get(i)) : "-");
            }
            cells.addAll(List.of(spare(row.kind(), row.worst()), row.verdict().word()));
            table.add(cells);
        }
        text.append(table.text());
        if (robustness.weakest() != null) {
            text.append('\n')
                    .append(Words.wrapped(
                            "Weakest point: " + robustness.weakest().hazard() + " "
                                    + robustness.weakest().text(),
                            "  ",
                            WIDTH));
        }
        if (robustness.resurvey() != null) {
            text.append(Words.wrapped(
                    "Survey anew: " + robustness.resurvey().hazard() + " "
                            + robustness.resurvey().text() + " By "
                            + figures.clearance(robustness.resurvey().gainM()) + ".",
                    "  ",
                    WIDTH));
        }
        robustness.notKnown().forEach(n -> text.append(Words.wrapped(n.hazard() + " " + n.text(), "  ", WIDTH)));
        return text.toString();
    }

    /** Null is not known. */
    private String spare(SpareKind kind, Double left) {
        return left == null ? "unknown" : kind.isWeight() ? figures.weightLeft(left) : figures.clearance(left);
    }
}
