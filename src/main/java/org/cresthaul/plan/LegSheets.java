package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.check.RegulatorRange;
import org.cresthaul.check.Report;

/** The legs of a run sheet: each step of the plan on the leg where it begins. */
final class LegSheets {
    private final Sources sources;
    private final Plan plan;
    private final PassageSheet passages;
    private final LiftSheet lifts;

    LegSheets(Sources sources) {
        this.sources = sources;
        plan = sources.plan();
        passages = new PassageSheet(sources);
        lifts = new LiftSheet(sources);
    }

    List<RunSheet.Leg> list() {
        List<Report.CheckedLeg> legs = plan.route().legs();
        List<RunSheet.Leg> sheets = new ArrayList<>();
        for (int k = 0; k < legs.size(); k++) {
            Report.CheckedLeg leg = legs.get(k);
            String at = "plan:/route/legs/" + k;
            List<RunSheet.Entry> entries = new ArrayList<>();
            for (int i = 0; i < plan.steps().size(); i++) {
                if (legOf(plan.steps().get(i).chainageM()) == k) {
                    entries.add(entry(i));
                }
            }
            sheets.add(new RunSheet.Leg(
                    k + 1,
                    leg.name(),
                    leg.startChainageM(),
                    leg.endChainageM(),
                    sources.say("From ")
                            .chainage(leg.startChainageM(), at + "/startChainageM")
                            .words(" to ")
                            .chainage(leg.endChainageM(), at + "/endChainageM")
                            .words(".")
                            .plain(),
                    entering(leg),
                    entries));
        }
        return sheets;
    }

    /** The last leg that has begun there. */
    private int legOf(double chainageM) {
        List<Report.CheckedLeg> legs = plan.route().legs();
        int found = 0;
        for (int k = 0; k < legs.size(); k++) {
            if (legs.get(k).startChainageM() <= chainageM) {
                found = k;
            }
        }
        return found;
    }

    /** Set-up, and what began on an earlier leg and has not ended. */
    private List<SheetLine> entering(Report.CheckedLeg leg) {
        List<SheetLine> lines = new ArrayList<>();
        Plan.SetUp set = null;
        int raised = -1;
        for (int i = 0; i < plan.steps().size(); i++) {
            Plan.Step step = plan.steps().get(i);
            if (step.chainageM() <= leg.startChainageM()) {
                set = step.change() != null ? step.change().to() : step.set() != null ? step.set() : set;
                raised = step.step() == StepKind.RAISE ? i : step.step() == StepKind.LOWER ? -1 : raised;
            }
        }
        String at = sources.pointer(set);
        lines.add(sources.say("On this leg from the start: " + sources.named(set) + ", ")
                .distance(set.lengthM(), at + "/lengthM")
                .words(raised < 0 ? " long. On the transport stops, leveling in auto." : " long. Still RAISED.")
                .plain());
        if (raised >= 0) {
            lines.add(lifts.amounts("The leg begins raised: ", raised).plain());
        }
        for (int i = 0; i < plan.steps().size(); i++) {
            Plan.Passage p = plan.steps().get(i).passage();
            if (p != null && p.fromChainageM() < leg.startChainageM() && p.toChainageM() > leg.startChainageM()) {
                lines.add(sources.say("Still in force: " + (p.hazard().equals(Plan.WHOLE_ROUTE) ? "" : p.hazard() + " ")
                                + p.name() + ", until ")
                        .chainage(p.toChainageM(), "plan:/steps/" + i + "/passage/toChainageM")
                        .words(" (" + p.verdict() + (p.blocked() ? ", BLOCKED" : "") + ").")
                        .plain());
            }
        }
        return lines;
    }

    private RunSheet.Entry entry(int i) {
        Plan.Step step = plan.steps().get(i);
        return switch (step.step()) {
            case CHANGE -> change(i, step);
            case PASSAGE -> passages.entry(i);
            case RAISE, LOWER -> lifts.entry(i);
            case DEPART, ARRIVE -> end(i, step);
        };
    }

    private SheetLine chainage(int i) {
        return sources.say()
                .chainage(plan.steps().get(i).chainageM(), "plan:/steps/" + i + "/chainageM")
                .plain();
    }

    private RunSheet.Entry end(int i, Plan.Step step) {
        boolean departs = step.step() == StepKind.DEPART;
        String at = "plan:/steps/" + i + "/set/lengthM";
        List<SheetLine> comes =
                List.of(sources.say((departs ? "Leave with " : "Arrive with ") + sources.named(step.set()) + ", ")
                        .distance(step.set().lengthM(), at)
                        .words(" long.")
                        .plain());
        List<SheetLine> before = new ArrayList<>();
        if (step.change() != null) {
            String change = "plan:/steps/" + i + "/change";
            step.change().actions().forEach(a -> before.add(action(a, step.change(), change)));
        }
        before.addAll(
                departs
                        ? List.of(
                                SheetLine.toDo(
                                        "Set up as card " + sources.letterOf(step.set()) + " says, every line ticked."),
                                SheetLine.toDo("The checks before leaving are done."))
                        : List.of());
        before.addAll(regulator(i, step));
        List<SheetLine> after = departs
                ? List.of()
                : List.of(SheetLine.practice(
                        "Park on firm, level ground; chock the wheels before anything is let down."));
        return new RunSheet.Entry(
                step.step(),
                null,
                null,
                departs ? "Leave" : "Arrive",
                null,
                false,
                step.set().configuration(),
                step.chainageM(),
                chainage(i),
                step.landmark(),
                comes,
                before,
                List.of(),
                after,
                departs ? sources.gauges(step.set()) : List.of(),
                List.of());
    }

    private RunSheet.Entry change(int i, Plan.Step step) {
        Plan.Change change = step.change();
        String at = "plan:/steps/" + i + "/change";
        List<SheetLine> comes = List.of(sources.say("Stop and change to " + sources.named(change.to()) + ". Room here ")
                .gap(change.roomM(), at + "/roomM")
                .words(", length after the change ")
                .distance(change.to().lengthM(), at + "/to/lengthM")
                .words(". About ")
                .minutes(change.seconds(), at + "/seconds")
                .words(".")
                .plain());
        List<SheetLine> before = new ArrayList<>();
        before.add(SheetLine.practice("Firm, level ground off the road; brakes set, wheels chocked, strobes on."));
        for (Plan.Action action : change.actions()) {
            before.add(action(action, change, at));
        }
        before.addAll(regulator(i, step));
        List<SheetLine> after = List.of(
                SheetLine.toDo("Compare with card " + sources.letterOf(change.to()) + ", line by line."),
                SheetLine.practice(
                        "Walk round once: pins, lines, lights, chains; then pull ahead and try the brakes."));
        return new RunSheet.Entry(
                step.step(),
                change.stop(),
                null,
                step.place(),
                null,
                false,
                change.to().configuration(),
                step.chainageM(),
                chainage(i),
                step.landmark(),
                comes,
                before,
                List.of(),
                after,
                sources.gauges(change.to()),
                List.of());
    }

    /** What the regulator may stand at everywhere until the next change. */
    private List<SheetLine> regulator(int i, Plan.Step step) {
        RegulatorRange range = step.regulator();
        if (range == null) {
            return List.of();
        }
        String at = "plan:/steps/" + i + "/regulator";
        return List.of(
                range.leastPa() == null
                        ? SheetLine.plain("Booster regulator: no setting keeps every limit until the next change.")
                        : sources.say("Booster regulator, everywhere until the next change: from ")
                                .pressureUp(range.leastPa(), at + "/leastPa")
                                .words(" to ")
                                .pressureDown(range.mostPa(), at + "/mostPa")
                                .words(".")
                                .plain());
    }

    private SheetLine action(Plan.Action action, Plan.Change change, String at) {
        String text = Sources.capital(action.text());
        if (action.action() == ActionKind.REGULATOR && change.to().regulatorPa() != null) {
            return sources.say(text + " to ")
                    .pressure(change.to().regulatorPa(), at + "/to/regulatorPa")
                    .words(".")
                    .toDo();
        }
        return SheetLine.toDo(text
                + switch (action.action()) {
                    case NOTCH ->
                        ": deck held by the hydraulics, stops moved to the new notch on both sides, deck back on them."
                                + " Nobody under it.";
                    case LIFT_AXLE -> ": watch it all the way, then look at the gauge.";
                    default -> ".";
                });
    }
}
