package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.check.RegulatorRange;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.ActionKind;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.StepKind;
import org.cresthaul.report.CheckedLeg;

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
        List<CheckedLeg> legs = plan.route().legs();
        List<RunSheet.Leg> sheets = new ArrayList<>();
        for (int k = 0; k < legs.size(); k++) {
            CheckedLeg leg = legs.get(k);
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
                    sources.say(Code.LEG_WHERE)
                            .at("from")
                            .chainage(leg.startChainageM(), at + "/startChainageM")
                            .at("to")
                            .chainage(leg.endChainageM(), at + "/endChainageM")
                            .plain(),
                    entering(leg),
                    entries));
        }
        return sheets;
    }

    /** The last leg that has begun there. */
    private int legOf(double chainageM) {
        List<CheckedLeg> legs = plan.route().legs();
        int found = 0;
        for (int k = 0; k < legs.size(); k++) {
            if (legs.get(k).startChainageM() <= chainageM) {
                found = k;
            }
        }
        return found;
    }

    /** Set-up, and what began on an earlier leg and has not ended. */
    private List<SheetLine> entering(CheckedLeg leg) {
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
        lines.add(sources.say(raised < 0 ? Code.LEG_START : Code.LEG_START_RAISED)
                .with("setUp", sources.named(set))
                .at("length")
                .distance(set.lengthM(), at + "/lengthM")
                .plain());
        if (raised >= 0) {
            lines.add(lifts.amounts(Code.LEG_BEGINS_RAISED, raised).plain());
        }
        for (int i = 0; i < plan.steps().size(); i++) {
            Plan.HazardPassage p = plan.steps().get(i).passage();
            if (p != null && p.fromChainageM() < leg.startChainageM() && p.toChainageM() > leg.startChainageM()) {
                lines.add(sources.say(p.blocked() ? Code.LEG_IN_FORCE_BLOCKED : Code.LEG_IN_FORCE)
                        .with("place", Sources.placeOf(p))
                        .at("to")
                        .chainage(p.toChainageM(), "plan:/steps/" + i + "/passage/toChainageM")
                        .with("verdict", Sentence.word(p.verdict()))
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
        List<SheetLine> comes = List.of(sources.say(departs ? Code.LEAVE_WITH : Code.ARRIVE_WITH)
                .with("setUp", sources.named(step.set()))
                .at("length")
                .distance(step.set().lengthM(), at)
                .plain());
        List<SheetLine> before = new ArrayList<>();
        if (step.change() != null) {
            String change = "plan:/steps/" + i + "/change";
            step.change().actions().forEach(a -> before.add(action(a, step.change(), change)));
        }
        before.addAll(
                departs
                        ? List.of(
                                sources.say(Code.LEAVE_CARD)
                                        .with("letter", sources.letterOf(step.set()))
                                        .toDo(),
                                sources.toDo(Code.LEAVE_CHECKS))
                        : List.of());
        before.addAll(regulator(i, step));
        List<SheetLine> after = departs ? List.of() : List.of(sources.practice(Code.ARRIVE_PARK));
        return new RunSheet.Entry(
                step.step(),
                null,
                null,
                sources.catalog().text(departs ? Code.LEAVE : Code.ARRIVE),
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
        List<SheetLine> comes = List.of(sources.say(Code.CHANGE_STOP)
                .with("setUp", sources.named(change.to()))
                .at("room")
                .gap(change.roomM(), at + "/roomM")
                .at("length")
                .distance(change.to().lengthM(), at + "/to/lengthM")
                .at("time")
                .minutes(change.seconds(), at + "/seconds")
                .plain());
        List<SheetLine> before = new ArrayList<>();
        before.add(sources.practice(Code.CHANGE_GROUND));
        for (Plan.Action action : change.actions()) {
            before.add(action(action, change, at));
        }
        before.addAll(regulator(i, step));
        List<SheetLine> after = List.of(
                sources.say(Code.CHANGE_COMPARE)
                        .with("letter", sources.letterOf(change.to()))
                        .toDo(),
                sources.practice(Code.CHANGE_WALK));
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
                        ? sources.plain(Code.REGULATOR_NONE)
                        : sources.say(Code.REGULATOR_RANGE)
                                .at("least")
                                .pressureUp(range.leastPa(), at + "/leastPa")
                                .at("most")
                                .pressureDown(range.mostPa(), at + "/mostPa")
                                .plain());
    }

    private SheetLine action(Plan.Action action, Plan.Change change, String at) {
        Sentence text = action.text().capital();
        if (action.action() == ActionKind.REGULATOR && change.to().regulatorPa() != null) {
            return sources.say(Code.ACTION_REGULATOR)
                    .with("action", text)
                    .at("pressure")
                    .pressure(change.to().regulatorPa(), at + "/to/regulatorPa")
                    .toDo();
        }
        Code how =
                switch (action.action()) {
                    case NOTCH -> Code.ACTION_NOTCH_HOW;
                    case LIFT_AXLE -> Code.ACTION_LIFT_HOW;
                    default -> Code.ACTION_DONE;
                };
        return sources.say(how).with("action", text).toDo();
    }
}
