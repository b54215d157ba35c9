package org.cresthaul.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.BackingLine;
import org.cresthaul.report.CornerFinding;
import org.cresthaul.report.DriverLine;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.LeastSetting;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.UnitSwing;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.HazardKind;
import org.cresthaul.units.RoundedFigures;

/** One hazard of a printed report: what is known of it, then every setting; settings with equal answers together. */
final class HazardText {
    private final PrintedFigures figures;

    HazardText(PrintedFigures figures) {
        this.figures = figures;
    }

    String of(HazardFindings hazard, List<ConfigurationState> states) {
        StringBuilder text = new StringBuilder();
        text.append(hazard.id())
                .append("  ")
                .append(hazard.name())
                .append(", ")
                .append(hazard.kind().spoken())
                .append(" at ")
                .append(figures.chainage(hazard.chainageM()))
                .append('\n');
        if (hazard.landmark() != null) {
            text.append(line("Landmark: " + hazard.landmark()));
        }
        text.append(survey(hazard));
        hazard.limits().forEach(l -> text.append(line("Not called clear: " + l + ".")));
        hazard.notes().forEach(n -> text.append(line("Note: " + n + ".")));
        hazard.cautions().forEach(c -> text.append(line("Caution: " + c)));
        Map<String, List<String>> settings = new LinkedHashMap<>();
        for (ConfigurationState state : states) {
            settings.computeIfAbsent(answers(hazard, state), a -> new ArrayList<>())
                    .add(state.label());
        }
        settings.forEach((answers, labels) ->
                text.append('\n').append(line(String.join("; ", labels))).append(answers));
        return text.toString();
    }

    private static String line(String text) {
        return Words.wrapped(text, "  ", ReportText.WIDTH);
    }

    private static String remark(String text) {
        return Words.wrapped(text, "    ", ReportText.WIDTH);
    }

    private String survey(HazardFindings hazard) {
        if (hazard.kind().judged() == HazardKind.JudgedBy.LOADS) {
            if (!hazard.surveyed()) {
                return line("No limits are given: no load is known to be allowed here.");
            }
            return hazard.kind() == HazardKind.STRETCH
                            || hazard.extentM().get(0) < hazard.extentM().get(1)
                    ? line("From "
                                    + figures.chainage(hazard.chainageM()
                                            + hazard.extentM().get(0)) + " to "
                                    + figures.chainage(hazard.chainageM()
                                            + hazard.extentM().get(1)) + ".")
                            + bridge(hazard)
                    : bridge(hazard);
        }
        if (!hazard.surveyed()) {
            return line("Not surveyed: nothing here can be called clear.");
        }
        StringBuilder text = new StringBuilder();
        if (!hazard.extentM().isEmpty()) {
            text.append(line("Known from " + figures.alongRoad(hazard.extentM().get(0)) + " to "
                    + figures.alongRoad(hazard.extentM().get(1)) + "; lines: " + String.join(", ", hazard.lines())));
        }
        hazard.uncertainties().forEach(u -> text.append(line(Words.capital(figures.uncertainty(u)))));
        return text.toString();
    }

    /** How long a bridge is and what its permit asks. */
    private String bridge(HazardFindings hazard) {
        if (hazard.bridge() == null) {
            return "";
        }
        return (hazard.bridge().lengthM() == null
                        ? ""
                        : line("The bridge is "
                                + figures.distance(hazard.bridge().lengthM()) + " long."))
                + hazard.bridge().terms().stream()
                        .map(t -> line("The permit asks: " + t + "."))
                        .collect(Collectors.joining());
    }

    /** The heaviest axles on a bridge together; the notch does not matter. */
    private String together(HazardFindings hazard, ConfigurationState state) {
        return hazard.bridge() == null
                ? ""
                : hazard.bridge().together().stream()
                        .filter(t -> t.lift().equals(state.lift()) && t.booster() == state.booster())
                        .map(t -> remark(
                                t.axles() == null
                                        ? "On the bridge together: unknown, since the loads are."
                                        : "On the bridge together, the heaviest: " + t.axles()
                                                + (t.count() == 1
                                                        ? ""
                                                        : ", " + t.count() + " axles over "
                                                                + figures.spacing(t.spreadM()))
                                                + ", " + figures.weight(t.loadKg())
                                                + (t.limitKg() == null ? "" : " against " + figures.weight(t.limitKg()))
                                                + "."))
                        .collect(Collectors.joining());
    }

    private String answers(HazardFindings hazard, ConfigurationState state) {
        List<ReportCell> cells = state.of(hazard.cells());
        TextTable table = new TextTable("    ");
        table.add(row("notch", state.notches(), n -> n));
        table.add(row("in transport", cells, c -> c.verdict().word()));
        addLoads(table, cells);
        addGaps(table, "over the ground", cells, ReportCell::ground);
        addGaps(table, "under " + hazard.kind().over(), cells, ReportCell::overhead);
        Function<ReportCell, GapFinding> units = toldUnits(cells);
        addGaps(table, "between the units", cells, units);
        if (hazard.kind().isSped() && cells.stream().anyMatch(HazardText::isClear)) {
            table.add(row(
                    "speed at most",
                    cells,
                    c -> !isClear(c) ? "" : c.mostMps() == null ? "crawl" : figures.speedDown(c.mostMps())));
        }
        addRaises(table, cells);
        return table.text()
                + wayRound(cells.get(0))
                + remark(Words.capital(leastSetting(hazard, state).text()) + ".")
                + governing(cells)
                + together(hazard, state)
                + tightest("over the ground", state, cells, ReportCell::ground)
                + tightest("under " + hazard.kind().over(), state, cells, ReportCell::overhead)
                + tightest("between the units", state, cells, units)
                + reasons(hazard, state, cells);
    }

    /**
     * The gap between units is told where it is not clear at some notch: it is nothing that anybody looks for on the
     * road.
     */
    private static Function<ReportCell, GapFinding> toldUnits(List<ReportCell> cells) {
        boolean told =
                cells.stream().anyMatch(c -> c.units() != null && c.units().verdict() != Verdict.CLEAR);
        return told ? ReportCell::units : c -> null;
    }

    private void addLoads(TextTable table, List<ReportCell> cells) {
        if (cells.stream().noneMatch(c -> c.load() != null)) {
            return;
        }
        table.add(row(
                "load",
                cells,
                c -> c.load() == null ? "" : figures.weight(c.load().loadKg())));
        table.add(row(
                "  " + (cells.get(0).load() != null && cells.get(0).load().least() ? "at least" : "limit"),
                cells,
                c -> c.load() == null ? "" : figures.weight(c.load().limitKg())));
        table.add(row(
                "  left",
                cells,
                c -> c.load() == null ? "" : figures.weightLeft(c.load().marginKg())));
    }

    private void addRaises(TextTable table, List<ReportCell> cells) {
        if (cells.stream().noneMatch(c -> c.raise() != null)) {
            return;
        }
        table.add(row(
                "raise front",
                cells,
                c -> c.raise() == null
                        ? ""
                        : figures.raise(c.raise().frontM(), c.raise().frontEndM())));
        table.add(row(
                "raise rear",
                cells,
                c -> c.raise() == null
                        ? ""
                        : figures.raise(c.raise().rearM(), c.raise().rearEndM())));
        table.add(row(
                "  gap then",
                cells,
                c -> c.raise() == null ? "" : then(c.raise()).gap()));
        table.add(row(
                "  needed then",
                cells,
                c -> c.raise() == null ? "" : then(c.raise()).need()));
    }

    private static boolean isClear(ReportCell cell) {
        return cell.verdict() == Verdict.CLEAR;
    }

    /** Loads do not depend on the notch: the first cell's rule is that of all. */
    private static String governing(List<ReportCell> cells) {
        LoadFinding load = cells.get(0).load();
        return load == null
                ? ""
                : remark("Governed by: " + load.rule() + ", " + load.axles() + " (" + load.source() + ").");
    }

    private static <T> List<String> row(String name, List<T> values, Function<T, String> shown) {
        List<String> row = new ArrayList<>(List.of(name));
        values.forEach(v -> row.add(shown.apply(v)));
        return row;
    }

    private void addGaps(TextTable table, String name, List<ReportCell> cells, Function<ReportCell, GapFinding> side) {
        if (cells.stream().anyMatch(c -> side.apply(c) != null)) {
            table.add(row(
                    name,
                    cells,
                    c -> side.apply(c) == null ? "" : pair(side.apply(c)).gap()));
            table.add(row(
                    "  needed",
                    cells,
                    c -> side.apply(c) == null ? "" : pair(side.apply(c)).need()));
        }
    }

    private RoundedFigures.GapAndNeed pair(GapFinding gap) {
        return figures.against(gap.valueM(), gap.requiredM());
    }

    private RoundedFigures.GapAndNeed then(RaiseFinding raise) {
        return figures.against(raise.clearanceM(), raise.requiredM());
    }

    /** The way round; the notch does not matter. */
    private String wayRound(ReportCell cell) {
        CornerFinding c = cell.corner();
        if (c == null) {
            return "";
        }
        String wide = c.trailsWideM() == null
                ? ""
                : ", the booster trails " + figures.required(c.trailsWideM()) + " wide, its pivot swings out "
                        + figures.required(c.pivotSwingM());
        RoundedFigures.GapAndNeed room = figures.against(c.valueM(), c.requiredM());
        DriverLine line = c.line();
        if (c.backing() != null) {
            return backedInto(c, c.backing(), room);
        }
        return remark("Room beside: " + room.gap() + " with the wheel turned up to " + figures.required(c.turnInM())
                        + " early or late, needed " + room.need() + "; on the line itself "
                        + figures.against(c.onLineM(), c.requiredM()).gap()
                        + ": " + c.unit() + (c.part().isBodyOf(c.unit()) ? "" : " " + c.part()) + ", " + c.side()
                        + ", to "
                        + c.against() + ".")
                + remark("On its own lanes: " + c.ownLanes() + "."
                        + (c.escorts() ? " This line uses the opposing lane: escorts." : ""))
                + remark("Drive: " + line.edgeSide() + " steer tire " + figures.distance(line.edgeInM()) + " from the "
                        + line.edgeSide() + " edge; wheel over to the "
                        + line.firstWay() + " with the steer axle " + figures.alongRoad(line.startM())
                        + (line.swingAwayM() > 0
                                ? ", swing " + figures.distance(line.swingAwayM()) + " away first, into the turn "
                                        + figures.alongRoad(line.turnInM())
                                : ", no swing first")
                        + "; radius " + figures.distance(line.radiusM()) + "; wheels straight "
                        + figures.distance(Math.abs(line.endM()))
                        + (line.endM() < 0 ? " before" : " past") + " the point on the exit. Watch the " + line.mirror()
                        + " mirror: "
                        + line.watch() + ".")
                + overhangs(c)
                + remark((c.beyondLimits() ? "On that line, which cannot be steered: offtracking " : "Offtracking ")
                        + figures.distance(c.offtrackingM()) + ", swept width "
                        + figures.distance(c.sweptWidthM()) + ", tail swing " + figures.required(c.tailSwingM())
                        + ", frontal swing " + figures.required(c.frontalSwingM()) + wide + ".")
                + swings(c)
                + remark("Judged from all straight to all straight: takes the approach as straight for "
                        + figures.distance(c.leansBeforeM()) + " before, the exit for "
                        + figures.distance(c.leansBehindM())
                        + " past the corner's points.");
    }

    /** Every unit that swings or trails beside the one before it, with what is more than nothing. */
    private String swings(CornerFinding c) {
        List<String> units = new ArrayList<>();
        for (UnitSwing s : c.swings()) {
            List<String> told = new ArrayList<>();
            tell(told, "tail", s.tailOutsideM(), s.tailInsideM());
            tell(told, "front", s.frontOutsideM(), s.frontInsideM());
            if (s.trailsOutsideM() != null) {
                tell(told, "tires beside those ahead", s.trailsOutsideM(), s.trailsInsideM());
            }
            if (!told.isEmpty()) {
                units.add(s.unit() + ": " + String.join(", ", told));
            }
        }
        return units.isEmpty() ? "" : remark("Swings out, by unit: " + String.join("; ", units) + ".");
    }

    private void tell(List<String> told, String what, double outsideM, double insideM) {
        List<String> sides = new ArrayList<>();
        if (outsideM > 0) {
            sides.add(figures.required(outsideM) + " outside");
        }
        if (insideM > 0) {
            sides.add(figures.required(insideM) + " inside");
        }
        if (!sides.isEmpty()) {
            told.add(what + " " + String.join(" and ", sides));
        }
    }

    private String backedInto(CornerFinding c, BackingLine line, RoundedFigures.GapAndNeed room) {
        return remark("Room beside on the line itself: "
                        + figures.against(c.onLineM(), c.requiredM()).gap()
                        + ", needed " + room.need() + ": " + c.unit()
                        + (c.part().isBodyOf(c.unit()) ? "" : " " + c.part()) + ", " + c.side()
                        + ", to " + c.against() + ".")
                + remark("On its own lanes: " + c.ownLanes() + "."
                        + (c.escorts() ? " This line uses the opposing lane: escorts." : ""))
                + remark("Back in" + (line.pivot() == null ? "" : " with the booster's pivot " + line.pivot())
                        + ": drive past and stop with the steer axle " + figures.distance(line.stopM())
                        + " past the middle of the gate, " + line.edgeSide() + " steer tire "
                        + figures.distance(line.edgeM()) + " from the " + line.edgeSide()
                        + " edge, all straight. Backing, wheel over to the " + line.firstWay()
                        + " with the steer axle " + figures.distance(line.wheelM())
                        + " past the middle of the gate; radius "
                        + figures.distance(line.radiusM()) + "; wheels straight with it "
                        + figures.distance(Math.abs(line.straightM()))
                        + (line.straightM() < 0
                                ? " short of the road's center line"
                                : " in from the road's center line")
                        + ". Watch the " + line.mirror() + " mirror: " + line.watch() + ".")
                + overhangs(c)
                + remark("Judged as the pull-out, which rolls the same way; backing, every bend has to be held. "
                        + "Takes the drive"
                        + " as straight for " + figures.distance(c.leansBeforeM()) + ", the road for "
                        + figures.distance(c.leansBehindM()) + " past the gate.");
    }

    private String overhangs(CornerFinding c) {
        StringBuilder text = new StringBuilder();
        for (CornerFinding.Overhang over : c.overhangs()) {
            if (over.gapM() == null) {
                text.append(
                        remark("The " + over.unit() + " passes over " + over.ground() + ", whose height is unknown."));
            } else {
                RoundedFigures.GapAndNeed gap = figures.against(over.gapM(), over.requiredM());
                text.append(remark("The " + over.unit() + " passes over " + over.ground() + " with " + gap.gap()
                        + ", needed " + gap.need() + "."));
            }
        }
        return text.toString();
    }

    private static LeastSetting leastSetting(HazardFindings hazard, ConfigurationState state) {
        return hazard.least().stream()
                .filter(l -> l.lift().equals(state.lift()) && l.booster().equals(state.booster()))
                .findFirst()
                .orElseThrow();
    }

    /** Where the gap is least among these notches. */
    private String tightest(
            String name, ConfigurationState state, List<ReportCell> cells, Function<ReportCell, GapFinding> side) {
        int at = -1;
        for (int i = 0; i < cells.size(); i++) {
            GapFinding gap = side.apply(cells.get(i));
            if (gap != null
                    && (at < 0 || gap.valueM() < side.apply(cells.get(at)).valueM())) {
                at = i;
            }
        }
        if (at < 0) {
            return "";
        }
        return remark("Least " + name + ", notch " + state.notches().get(at) + ": " + place(side.apply(cells.get(at))))
                + decidedElsewhere(name, state, cells, side);
    }

    /** Where another gap than the least decides: at the notch where that leaves the least share of its need. */
    private String decidedElsewhere(
            String name, ConfigurationState state, List<ReportCell> cells, Function<ReportCell, GapFinding> side) {
        int at = -1;
        for (int i = 0; i < cells.size(); i++) {
            GapFinding gap = side.apply(cells.get(i));
            if (gap != null
                    && gap.deciding() != null
                    && (at < 0
                            || gap.deciding().share()
                                    < side.apply(cells.get(at)).deciding().share())) {
                at = i;
            }
        }
        if (at < 0) {
            return "";
        }
        GapFinding gap = side.apply(cells.get(at)).deciding();
        return remark("Decided elsewhere " + name + ", notch " + state.notches().get(at) + ": "
                + pair(gap).gap() + " where " + pair(gap).need() + " is needed; " + place(gap));
    }

    private String place(GapFinding gap) {
        String beyond = gap.beyondSurveyM() > 0
                ? ", standing on ground up to " + figures.distance(gap.beyondSurveyM()) + " beyond the survey"
                        + (gap.gradeDeclared() ? ", at its declared grade" : " whose grade nobody declared")
                : "";
        return Words.part(gap.unit(), gap.part())
                + (gap.against() == null
                        ? ""
                        : ", to "
                                + Words.part(gap.against().unit(), gap.against().part()))
                + ", " + figures.alongRoad(gap.distanceM())
                + "; " + across(gap) + ", leveling " + gap.leveling() + ", steer axle "
                + figures.alongRoad(gap.steerM()) + beyond + ".";
    }

    private String across(GapFinding gap) {
        return gap.besideM() == null
                ? "line " + gap.line()
                : gap.line() + " (" + figures.distance(Math.abs(gap.besideM()))
                        + (gap.besideM() < 0 ? " left" : " right") + " of the middle)";
    }

    /** Why what is not clear is not, and why no raise helps; the limits of the whole hazard are told above. */
    private static String reasons(HazardFindings hazard, ConfigurationState state, List<ReportCell> cells) {
        Map<String, List<String>> notches = new LinkedHashMap<>();
        for (int i = 0; i < cells.size(); i++) {
            List<String> reasons = new ArrayList<>(cells.get(i).reasons().stream()
                    .filter(r -> !hazard.limits().contains(r))
                    .map(Sentence::toString)
                    .toList());
            if (cells.get(i).raiseNote() != null) {
                reasons.add(cells.get(i).raiseNote());
            }
            for (String reason : reasons) {
                notches.computeIfAbsent(reason, r -> new ArrayList<>())
                        .add(state.notches().get(i));
            }
        }
        StringBuilder text = new StringBuilder();
        notches.forEach((reason, at) -> text.append(remark(who(at, cells.size()) + ": " + reason + ".")));
        return text.toString();
    }

    private static String who(List<String> notches, int all) {
        if (notches.size() == 1) {
            return "Notch " + notches.get(0);
        }
        return notches.size() == all ? "Every notch" : "Notches " + String.join(", ", notches);
    }
}
