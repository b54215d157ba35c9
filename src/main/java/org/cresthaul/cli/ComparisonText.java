package org.cresthaul.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.cresthaul.plan.LeastReserve;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.SpareKind;
import org.cresthaul.report.CheckedRig;
import org.cresthaul.report.CheckedRoute;
import org.cresthaul.units.Duration;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.Comparison;

/** A comparison as the planner prints it: a line for each configuration, and where two of them fare differently. */
final class ComparisonText {
    private static final int WIDTH = ReportText.WIDTH;
    private static final List<SpareKind> KINDS =
            List.of(SpareKind.GROUND, SpareKind.OVERHEAD, SpareKind.UNITS, SpareKind.CORNER, SpareKind.LOAD);
    private static final String NONE = "-";

    private final PrintedFigures figures;

    ComparisonText(UnitSystem units) {
        figures = new PrintedFigures(units);
    }

    String of(Comparison found) {
        Comparison comparison = RoundedRecords.of(found);
        StringBuilder text = new StringBuilder();
        text.append("CONFIGURATIONS COMPARED, made with Cresthaul ")
                .append(comparison.version())
                .append("\n\n");
        text.append(heading(figures, comparison.route(), comparison.rig()));
        text.append(
                "\nEach held for the whole route. Blocked by: number of places. Time: slow passages, as if the blocked"
                        + "\nplaces were resolved. Whether rail crossings are cleared in time before a train is not asked here; the plan"
                        + " does.\n\n");
        TextTable table = new TextTable("  ");
        table.add("configuration", "blocked by", "time", "raised at", "length", "gross", "axles of each group");
        for (Comparison.Compared c : comparison.configurations()) {
            table.add(
                    c.configuration() + (c.configuration().equals(comparison.best()) ? " *" : ""),
                    c.blocking().isEmpty() ? "open" : "" + c.blocking().size(),
                    Duration.inMinutes(c.seconds()),
                    "" + c.raised(),
                    figures.distance(c.lengthM()),
                    c.grossKg() == null ? "unknown" : figures.weight(c.grossKg()),
                    c.groups().isEmpty()
                            ? NONE
                            : c.groups().stream()
                                    .map(g -> g.axles() + " x " + figures.weight(g.perAxleKg()))
                                    .collect(Collectors.joining(", ")));
        }
        text.append(table.text());
        text.append(
                "\n  * fewest places block, then least time\n\nLEAST RESERVE: as a share of what is required or allowed, and"
                        + "\nin length; then of each kind where its share is least. Places that block are left out of the first two.\n\n");
        text.append(worst(comparison)).append("\nCautions\n");
        comparison.cautions().forEach(c -> text.append(Words.wrapped(c.toString(), "  ", WIDTH)));
        return text.toString();
    }

    /** Which files were compared. */
    static String heading(PrintedFigures figures, CheckedRoute route, CheckedRig rig) {
        TextTable heading = new TextTable("");
        heading.add("Route", route.name() + ", " + figures.chainage(route.lengthM()));
        heading.add("", "file SHA-256 " + route.sha256());
        Optional.ofNullable(route.limitsSha256()).ifPresent(h -> heading.add("", "limits file SHA-256 " + h));
        heading.add("Rig", rig.name() + ", stance " + rig.stance());
        heading.add("", "file SHA-256 " + rig.sha256());
        return heading.text();
    }

    private String worst(Comparison comparison) {
        TextTable worst = new TextTable("  ");
        List<String> head = new ArrayList<>(List.of("configuration"));
        head.addAll(List.of("share", "length"));
        KINDS.forEach(k -> head.add(k.word()));
        worst.add(head);
        for (Comparison.Compared c : comparison.configurations()) {
            List<String> row = new ArrayList<>(List.of(c.configuration()));
            LeastReserve least = c.least();
            row.add(least.share() == null ? NONE : RoundedFigures.percentDown(least.share()) + " " + least.shareAt());
            row.add(least.lengthM() == null ? NONE : figures.clearance(least.lengthM()) + " " + least.lengthAt());
            KINDS.forEach(kind -> row.add(c.worst().stream()
                    .filter(w -> w.spare().kind() == kind)
                    .findFirst()
                    .map(w -> spare(w.spare()) + " " + w.hazard())
                    .orElse(NONE)));
            worst.add(row);
        }
        return worst.text();
    }

    /** Of the figures as they are written: less is no difference. */
    String difference(Comparison found, String first, String second) {
        Comparison comparison = RoundedRecords.of(found);
        StringBuilder text = new StringBuilder("\nWHERE " + first + " AND " + second + " FARE DIFFERENTLY\n\n");
        TextTable table = new TextTable("  ");
        table.add("", "", first, second);
        comparison.difference(first, second).forEach(d -> {
            Comparison.Along one = d.first() == null ? d.second() : d.first();
            table.add(
                    figures.chainage(one.chainageM()),
                    d.hazard() + " " + one.name(),
                    fares(d.first()),
                    fares(d.second()));
        });
        return text.append(table.text()).toString();
    }

    private String fares(Comparison.Along a) {
        if (a == null) {
            return NONE;
        }
        return a.verdict()
                + (a.blocked() ? ", blocks" : "")
                + (a.raise() == null
                        ? ""
                        : ", front "
                                + figures.raise(a.raise().frontM(), a.raise().frontEndM()) + " and rear "
                                + figures.raise(a.raise().rearM(), a.raise().rearEndM()) + " up")
                + (a.spare() == null ? "" : ", reserve " + spare(a.spare()));
    }

    private String spare(Plan.Spare spare) {
        return spare.kind().isWeight() ? figures.weightLeft(spare.left()) : figures.clearance(spare.left());
    }
}
