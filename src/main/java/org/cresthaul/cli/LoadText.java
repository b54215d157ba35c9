package org.cresthaul.cli;

import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Report;

/** The loads of a printed report: what holds where, how many axles must be down where, and every state's sheet. */
final class LoadText {
    private final PrintedFigures figures;

    LoadText(PrintedFigures figures) {
        this.figures = figures;
    }

    String of(Report report) {
        LoadReport loads = report.loads();
        StringBuilder text = new StringBuilder();
        if (!loads.known()) {
            text.append(line("Loads are unknown: the rig file gives no weights for this stance. Nothing here is within"
                    + " limits."));
        } else {
            text.append(line("Weights: " + loads.source() + "; a load may be off by "
                    + PrintedFigures.fixed(loads.accuracy() * 100, 1, RoundingMode.HALF_UP) + " %."));
        }
        loads.limits().forEach(l -> text.append(line(limits(l))));
        if (!loads.counts()) {
            text.append(line("These limits were not asked for: they do not enter the verdicts of the whole route."));
        }
        loads.cautions().forEach(c -> text.append(line("Caution: " + c)));
        text.append('\n').append(advice(loads));
        loads.states().forEach(s -> text.append('\n').append(state(s)));
        return text.toString();
    }

    private static String line(String text) {
        return Words.wrapped(text, "  ", ReportText.WIDTH);
    }

    private static String remark(String text) {
        return Words.wrapped(text, "    ", ReportText.WIDTH);
    }

    private String limits(LoadReport.LimitSet set) {
        StringBuilder text = new StringBuilder("Limits ")
                .append(set.place() == null ? "of the whole route" : "at " + set.place())
                .append(set.replaces() ? " instead of those of the whole route" : "")
                .append(": ")
                .append(set.name())
                .append(" (")
                .append(set.source())
                .append(", ")
                .append(set.date())
                .append("): ");
        List<String> rules = set.rules().stream()
                .map(r -> r.mostKg() == null ? r.rule() : r.rule() + " " + figures.weight(r.mostKg()))
                .toList();
        return text.append(String.join("; ", rules)).append('.').toString();
    }

    private String advice(LoadReport loads) {
        TextTable table = new TextTable("  ");
        table.add("from", "to", "limits of", "booster", "by loads alone");
        for (LoadReport.Advice a : loads.advice()) {
            boolean point = a.fromChainageM() == a.toChainageM();
            table.add(
                    figures.chainage(a.fromChainageM()),
                    point ? "at the place" : figures.chainage(a.toChainageM()),
                    a.places().isEmpty() ? "whole route" : String.join(", ", a.places()),
                    a.booster().word(),
                    a.text());
        }
        StringBuilder text = new StringBuilder(table.text());
        for (LoadReport.Advice a : loads.advice()) {
            if (!a.places().isEmpty()) {
                a.reasons()
                        .forEach(r -> text.append(
                                remark(String.join(", ", a.places()) + ", booster " + a.booster() + ": " + r + ".")));
            }
        }
        return text.toString();
    }

    private String state(LoadReport.StateLoads state) {
        StringBuilder text = new StringBuilder(line(state.label() + ": " + state.verdict()));
        if (state.sheet() == null) {
            return text.append(remark(Words.capital(state.unknown().toString()) + "."))
                    .toString();
        }
        LoadSheet sheet = state.sheet();
        TextTable table = new TextTable("    ");
        table.add("group", "load", "each axle", "limit applied", "left", "verdict", "rule");
        for (LoadSheet.GroupLine g : sheet.groups()) {
            LoadFinding f = g.finding();
            table.add(
                    g.label(),
                    figures.weight(g.loadKg()),
                    figures.weight(g.perAxleKg()),
                    f == null
                            ? ""
                            : figures.weight(f.loadKg())
                                    + (f.least() ? ", at least " : " of ")
                                    + figures.weight(f.limitKg()),
                    f == null ? "" : figures.weightLeft(f.marginKg()),
                    g.verdict().word(),
                    f == null ? "" : f.rule().toString());
        }
        text.append(table.text());
        text.append(remark("Gross " + figures.weight(sheet.grossKg()) + ", on the fifth wheel" + fifthWheels(sheet)
                + ". Governed by: " + rule(sheet.governing()) + "."));
        sheet.broken()
                .forEach(f -> text.append(remark("Not kept: " + rule(f) + ": " + figures.weight(f.loadKg())
                        + (f.least() ? ", at least " : " of ") + figures.weight(f.limitKg()) + ".")));
        for (LoadSheet.GaugeLine g : sheet.gauges()) {
            text.append(remark(Words.capital(g.gauge().word()) + " gauge: "
                    + (g.pressurePa() == null ? "no reading, " + g.note() : "read " + figures.pressure(g.pressurePa()))
                    + " (" + figures.weight(g.loadKg()) + " on each axle)."));
        }
        if (sheet.regulator() != null) {
            text.append(remark(regulator(sheet.regulator())));
        }
        for (LoadSheet.ShimLine s : sheet.shims()) {
            text.append(remark("Shim, " + s.shim() + (s.fitted() ? " (fitted)" : "") + ": for "
                    + figures.weight(s.leastKg()) + " to " + figures.weight(s.mostKg()) + "; the booster's beam stands "
                    + figures.angle(s.angleRad()) + " tail up"
                    + (s.trouble() == null ? "." : "; " + s.trouble() + ".")));
        }
        if (sheet.lift() != null) {
            text.append(remark("Raising the front ("
                    + figures.weight(sheet.lift().frontKg()) + ") needs "
                    + figures.pressure(sheet.lift().neededPa()) + "; the power take-off gives "
                    + figures.pressure(sheet.lift().takeOffPa()) + (sheet.lift().enough() ? "." : ": not enough.")));
        }
        return text.append(remark(grade(sheet))).toString();
    }

    /** The load on the only one, or on each with its unit. */
    private String fifthWheels(LoadSheet sheet) {
        return sheet.fifthWheels().size() == 1
                ? " " + figures.weight(sheet.kingpinKg())
                : sheet.fifthWheels().stream()
                        .map(w -> w.unit() + " " + figures.weight(w.loadKg()))
                        .collect(Collectors.joining(", ", "s: ", ""));
    }

    private static String rule(LoadFinding f) {
        return f.rule() + ", " + f.axles() + " (" + f.source() + ")";
    }

    private String regulator(LoadSheet.RegulatorLine r) {
        return "Booster regulator at " + figures.pressure(r.setPa()) + " sets " + figures.weight(r.boosterKg()) + "; "
                + (r.window() == null
                        ? r.note()
                        : "within limits from " + figures.pressureUp(r.window().get(0)) + " to "
                                + figures.pressureDown(r.window().get(1)) + ", best " + figures.pressure(r.bestPa()))
                + ".";
    }

    private String grade(LoadSheet sheet) {
        List<String> shifts = sheet.axles().stream()
                .map(a -> a.label() + " " + signed(a.uphillKg() - a.loadKg()))
                .toList();
        return "Climbing " + PrintedFigures.fixed(sheet.gradeShown() * 100, 0, RoundingMode.HALF_UP)
                + " % adds, beyond the loads above: " + String.join(", ", shifts) + ".";
    }

    private String signed(double kilograms) {
        return (kilograms < 0 ? "" : "+") + figures.weight(kilograms);
    }
}
