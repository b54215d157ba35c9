package org.cresthaul.cli;

import org.cresthaul.report.Report;
import org.cresthaul.report.ReversingReport;
import org.cresthaul.report.ReversingReport.State;
import org.cresthaul.report.ReversingReport.StraightBack;

/** How far every state goes straight back, for a printed report. */
final class ReversingText {
    private final PrintedFigures figures;

    ReversingText(PrintedFigures figures) {
        this.figures = figures;
    }

    String of(Report report) {
        ReversingReport reversing = report.reversing();
        if (reversing.states().stream().allMatch(s -> s.free() == null)) {
            return line(Words.capital(reversing.states().get(0).unknown().toString()) + ".");
        }
        StringBuilder text = new StringBuilder();
        text.append(line("How far it can be pushed straight back with the steering held straight, from "
                + figures.angle(reversing.bendRad())
                + " at every coupling until one is at its limit. For information; not a verdict."));
        reversing.cautions().forEach(c -> text.append(line("Caution: " + c)));
        boolean trailing = reversing.states().stream().anyMatch(s -> s.locked() != null);
        TextTable table = new TextTable("  ");
        if (trailing) {
            table.add("setting", "couplings free", "pivot locked", "locked, booster air out");
        } else {
            table.add("setting", "couplings free");
        }
        for (State s : reversing.states()) {
            if (trailing) {
                table.add(
                        s.label(),
                        way(s.free(), reversing),
                        way(s.locked(), reversing),
                        way(s.lockedLight(), reversing));
            } else {
                table.add(s.label(), way(s.free(), reversing));
            }
        }
        return text.append('\n').append(table.text()).toString();
    }

    private String way(StraightBack way, ReversingReport reversing) {
        if (way == null) {
            return "";
        }
        return way.limitMetM() == null
                ? "no limit within " + figures.way(reversing.mostM())
                : figures.way(way.limitMetM()) + ", " + way.coupling() + " at " + figures.angle(way.limitRad());
    }

    private static String line(String text) {
        return Words.wrapped(text, "  ", ReportText.WIDTH);
    }
}
