package org.cresthaul.cli;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.cresthaul.plan.LeastReserve;
import org.cresthaul.plan.Outcome;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.WayCosts;
import org.cresthaul.report.Report;
import org.cresthaul.sheet.AlikeBlocks;
import org.cresthaul.units.Duration;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;

/** A plan as the planner prints it: the outcome, what must be settled, then one line for each step in driving order. */
final class PlanText {
    private static final int WIDTH = ReportText.WIDTH;

    private final PrintedFigures figures;

    PlanText(UnitSystem units) {
        figures = new PrintedFigures(units);
    }

    /** {@code checked} is what the plan was made from. */
    String of(Plan found, Report checked) {
        Plan plan = RoundedRecords.of(found);
        Report report = RoundedRecords.of(checked);
        StringBuilder text = new StringBuilder();
        text.append("ROUTE PLAN, made with Cresthaul ").append(plan.version()).append("\n\n");
        text.append(heading(plan)).append('\n');
        text.append("Outcome: ")
                .append(plan.outcome().word().toUpperCase(java.util.Locale.ROOT))
                .append('\n');
        if (plan.outcome() == Outcome.UNJUDGED) {
            text.append("  The route file names no hazards: no place was judged, and no way is called open.\n");
        }
        if (!plan.blocking().isEmpty()) {
            text.append("\nBLOCKED BY\n\n");
            AlikeBlocks.of(plan.blocking()).forEach(b -> text.append(block(b)));
        }
        if (!report.surveyFirst().places().isEmpty()) {
            text.append("\nSURVEY FIRST\n\n").append(new SurveyFirstText(figures).of(report));
        }
        if (!plan.conditions().isEmpty()) {
            text.append("\nRESOLVE BEFORE DRIVING\n\n");
            conditions(plan).forEach(l -> text.append(Words.wrapped(l, "  ", WIDTH)));
        }
        text.append(
                plan.stopsAtBlocks()
                        ? "\nSTEPS IF THE BLOCKED PLACES WERE RESOLVED (NOT FOR DRIVING)\n\n"
                        : "\nSTEPS\n\n");
        TextTable steps = new TextTable("  ");
        plan.steps()
                .forEach(s -> steps.add(
                        figures.chainage(
                                s.passage() != null && s.passage().standsAtPoint()
                                        ? s.passage().chainageM()
                                        : s.chainageM()),
                        what(s),
                        how(s) + front(s.passage())));
        text.append(steps.text());
        text.append("\n  ")
                .append(plan.changes())
                .append(plan.changes() == 1 ? " change, " : " changes, ")
                .append(Duration.inMinutes(plan.seconds()))
                .append(" for changes and crawling\n");
        text.append(least(plan.least()));
        text.append(trades(plan));
        text.append(new PlanMarginsText(figures).of(plan));
        text.append("\nCautions\n");
        plan.cautions().forEach(c -> text.append(Words.wrapped(c.toString(), "  ", WIDTH)));
        plan.steps().stream()
                .filter(s -> s.passage() != null)
                .flatMap(s -> s.passage().cautions().stream())
                .distinct()
                .forEach(c -> text.append(Words.wrapped(c.toString(), "  ", WIDTH)));
        return text.toString();
    }

    /** Share and length apart: they may be at two places. */
    private String least(LeastReserve least) {
        String share = least.share() == null
                ? "Least reserve anywhere: unknown"
                : "Least reserve anywhere: " + RoundedFigures.percentDown(least.share())
                        + " of what is required or allowed, at " + least.shareAt() + " (" + least.shareKind() + ")";
        String length = least.lengthM() == null
                ? ""
                : "; in length " + figures.clearance(least.lengthM()) + " beyond what is required, at "
                        + least.lengthAt() + " (" + least.lengthKind() + ")";
        return Words.wrapped(share + length + unknownAt(least.unknownAt()) + ".", "  ", WIDTH);
    }

    private static String unknownAt(List<String> places) {
        return places.isEmpty() ? "" : "; unknown at " + String.join(", ", places);
    }

    /** This way and others that leave more or need fewer conditions; nothing where there is no other. */
    private String trades(Plan plan) {
        if (plan.trades().size() < 2) {
            return "";
        }
        TextTable table = new TextTable("  ");
        for (Plan.Trade t : plan.trades()) {
            table.add(
                    Duration.inMinutes(t.seconds()),
                    t.changes() + (t.changes() == 1 ? " change" : " changes"),
                    t.conditions() + (t.conditions() == 1 ? " condition" : " conditions"),
                    t.leastReserve() == null
                            ? "reserve not known"
                            : "least reserve " + RoundedFigures.percentDown(t.leastReserve()) + " at " + t.leastAt()
                                    + unknownAt(t.unknownAt()),
                    String.join(" > ", t.configurations()));
        }
        String weighed = plan.options().fewestConditions()
                ? ""
                : "  A condition counts as " + Duration.inMinutes(WayCosts.CONDITION_SECONDS)
                        + " when ways are compared.\n";
        return "\nTRADE (this way first; --least-reserve and --fewest-conditions ask for another)\n\n" + table.text()
                + weighed;
    }

    private String heading(Plan plan) {
        TextTable table = new TextTable("");
        table.add(
                "Route",
                plan.route().name() + ", " + figures.chainage(plan.route().lengthM()));
        table.add("", "file SHA-256 " + plan.route().sha256());
        Optional.ofNullable(plan.route().limitsSha256()).ifPresent(h -> table.add("", "limits file SHA-256 " + h));
        table.add("Rig", plan.rig().name() + ", stance " + plan.rig().stance());
        table.add("", "file SHA-256 " + plan.rig().sha256());
        List<String> asked = asked(plan);
        if (!asked.isEmpty()) {
            table.add("Asked", String.join("; ", asked));
        }
        return table.text();
    }

    private static List<String> asked(Plan plan) {
        List<String> asked = new ArrayList<>();
        if (plan.options().fix() != null) {
            asked.add("keep " + plan.options().fix());
        }
        if (!plan.options().forbid().isEmpty()) {
            asked.add("not " + String.join(", ", plan.options().forbid()));
        }
        if (plan.options().leastReserve() != null) {
            asked.add("reserve of at least "
                    + RoundedFigures.fixed(plan.options().leastReserve() * 100, 1, RoundingMode.HALF_UP) + " %");
        }
        if (plan.options().fewestConditions()) {
            asked.add("fewest conditions");
        }
        if (plan.options().avoidRaising()) {
            asked.add("no raising");
        }
        if (!plan.options().acceptTight().isEmpty()) {
            asked.add("tight accepted at " + String.join(", ", plan.options().acceptTight()));
        }
        if (!plan.options().setAside().isEmpty()) {
            asked.add("set aside " + String.join(", ", plan.options().setAside()));
        }
        return asked;
    }

    /** Conditions that read the same once, with all their places. */
    private static List<String> conditions(Plan plan) {
        Map<String, List<String>> places = new LinkedHashMap<>();
        plan.conditions()
                .forEach(c -> places.computeIfAbsent(" (" + c.what() + "): " + c.told(), t -> new ArrayList<>())
                        .add(c.hazard() + "  " + c.name()));
        return places.entrySet().stream()
                .map(e -> String.join(", ", e.getValue()) + e.getKey())
                .toList();
    }

    private String block(AlikeBlocks alike) {
        Plan.Block block = alike.first();
        String places = alike.blocks().stream()
                .map(b -> b.hazard() + "  " + b.name() + ", " + b.kind().spoken() + " at "
                        + figures.chainage(b.chainageM()))
                .collect(Collectors.joining("; "));
        return Words.wrapped(
                        alike.blocks().size() == 1
                                ? places
                                : alike.blocks().size() + " places alike: " + shortPlaces(alike),
                        "  ",
                        WIDTH)
                + Words.wrapped(Words.capital(block.why().toString()) + ".", "      ", WIDTH)
                + block.relaxations().stream()
                        .map(r -> Words.wrapped(r.text().toString(), "      ", WIDTH))
                        .collect(Collectors.joining());
    }

    /** "rail crossing map-n1 at 0.63 mi, map-n2 at 1.25 mi" */
    private String shortPlaces(AlikeBlocks alike) {
        return alike.first().kind().spoken() + " "
                + alike.blocks().stream()
                        .map(b -> b.hazard() + " at " + figures.chainage(b.chainageM()))
                        .collect(Collectors.joining(", "));
    }

    private static String what(Plan.Step step) {
        return switch (step.step()) {
            case DEPART -> "depart";
            case ARRIVE -> "arrive";
            case CHANGE -> "change at " + step.change().stop() + " " + step.place();
            case RAISE, LOWER -> step.step() + " the deck " + step.place();
            case PASSAGE -> step.passage().hazard() + " " + step.passage().name();
        };
    }

    private String how(Plan.Step step) {
        return switch (step.step()) {
            case DEPART ->
                (step.change() == null ? "" : "first " + actions(step.change()) + "; then ")
                        + setUp(step.set())
                        + regulator(step);
            case ARRIVE -> setUp(step.set());
            case CHANGE -> actions(step.change()) + regulator(step);
            case RAISE ->
                "front " + front(step.lift()) + ", rear "
                        + figures.raise(
                                step.lift().raise().rearM(), step.lift().raise().rearEndM()) + ", for "
                        + String.join(", ", step.lift().hazards())
                        + "; " + stands(step.lift())
                        + Duration.inMinutes(step.lift().seconds());
            case LOWER ->
                "once the rear has left " + step.lift().lastLeft() + ", on the stops, leveling in auto; "
                        + stands(step.lift()) + Duration.inMinutes(step.lift().seconds());
            case PASSAGE -> how(step.passage());
        };
    }

    /** "2 3/8 in to 6 1/2 in, where the hydraulics end, aim at 4 3/8 in" */
    private String front(Plan.Lift lift) {
        String least = figures.raise(lift.raise().frontM(), lift.raise().frontEndM());
        return lift.band() == null || !lift.band().wide()
                ? least
                : least + " to " + figures.clearance(lift.band().toM()) + " ("
                        + lift.band().end() + "), aim at "
                        + figures.dimension(lift.band().aimM());
    }

    /** Where the front is when a place begins, and when the rear has left it: in feet or meters from its point. */
    private String front(Plan.HazardPassage p) {
        return p == null || !p.standsAtPoint()
                ? ""
                : "; front from " + figures.alongRoad(p.frontFromM()) + " to " + figures.alongRoad(p.frontToM());
    }

    private static String actions(Plan.Change change) {
        return change.actions().stream().map(a -> a.text().toString()).collect(Collectors.joining(", ")) + "; "
                + Duration.inMinutes(change.seconds());
    }

    /** What the regulator may be set to until the next change, rounded to the side that allows less. */
    private String regulator(Plan.Step step) {
        if (step.regulator() == null) {
            return "";
        }
        return step.regulator().leastPa() == null
                ? "; booster regulator " + step.regulator().note()
                : "; until the next change the booster regulator may stand from "
                        + figures.pressureUp(step.regulator().leastPa()) + " to "
                        + figures.pressureDown(step.regulator().mostPa());
    }

    private String stands(Plan.Lift lift) {
        return lift.lacks() != null
                ? "NO PLACE SHOWN, see above; "
                : "front between " + figures.chainage(lift.fromChainageM()) + " and "
                        + figures.chainage(lift.toChainageM()) + "; ";
    }

    private String how(Plan.HazardPassage passage) {
        List<String> parts = new ArrayList<>();
        if (passage.blocked()) {
            parts.add("BLOCKED (" + passage.verdict() + ")");
        } else {
            parts.add(
                    passage.condition() == null
                            ? passage.verdict().word()
                            : passage.condition()
                                            .word()
                                            .startsWith(passage.verdict().word())
                                    ? passage.condition().word()
                                    : passage.verdict() + ", " + passage.condition());
        }
        if (passage.raise() != null) {
            parts.add("raised" + (passage.lowers() ? ", lower after it" : ", stay raised after it"));
        }
        if (passage.crawls()) {
            parts.add("crawl, " + Duration.inMinutes(passage.seconds()));
        }
        if (passage.mostMps() != null) {
            parts.add(figures.speedDown(passage.mostMps()) + " at most");
        }
        return String.join("; ", parts);
    }

    private String setUp(Plan.SetUp set) {
        return set.label() + ", " + figures.distance(set.lengthM()) + " long"
                + (set.regulatorPa() == null ? "" : ", regulator " + figures.pressure(set.regulatorPa()))
                + (set.shim() == null ? "" : ", shim: " + set.shim().name());
    }
}
