package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.LoadSheet;
import org.cresthaul.check.RaiseEnd;

/** The deck going up or down as the driver needs it: where to stand, what to do, what the gauge should read. */
final class LiftSheet {
    private final Sources sources;
    private final Plan plan;

    LiftSheet(Sources sources) {
        this.sources = sources;
        plan = sources.plan();
    }

    /** Whether a condition is settled where the deck goes up or down, not at a place. */
    static boolean isOfLift(Plan.Condition c) {
        return c.what() == ConditionKind.UP || c.what() == ConditionKind.DOWN;
    }

    RunSheet.Entry entry(int i) {
        Plan.Step step = plan.steps().get(i);
        Plan.Lift lift = step.lift();
        String at = "plan:/steps/" + i + "/lift";
        boolean up = step.step() == StepKind.RAISE;
        Plan.SetUp set = setUp(i);
        return new RunSheet.Entry(
                step.step(),
                null,
                null,
                (up ? "Deck up " : "Deck down ") + step.place(),
                null,
                false,
                set.configuration(),
                step.chainageM(),
                sources.say()
                        .chainage(step.chainageM(), "plan:/steps/" + i + "/chainageM")
                        .plain(),
                null,
                where(lift, at, up),
                up ? up(i, lift) : List.of(),
                List.of(),
                up ? List.of() : down(lift),
                up ? hydraulics(set) : List.of(),
                List.of());
    }

    /** What is set, as told by the first place that is passed next, or the last before. */
    private Plan.SetUp setUp(int i) {
        Plan.Lift lift = plan.steps().get(i).lift();
        return plan.steps().stream()
                .filter(s -> s.passage() != null
                        && lift.hazards().contains(s.passage().hazard()))
                .findFirst()
                .orElseThrow()
                .passage()
                .set();
    }

    private List<SheetLine> where(Plan.Lift lift, String at, boolean up) {
        List<SheetLine> lines = new ArrayList<>();
        lines.add(
                lift.lacks() != null
                        ? SheetLine.plain("NO PLACE SHOWN. " + lift.lacks())
                        : sources.say("Front between ")
                                .chainage(lift.fromChainageM(), at + "/fromChainageM")
                                .words(" and ")
                                .chainage(lift.toChainageM(), at + "/toChainageM")
                                .words(
                                        up
                                                ? ", for " + String.join(", ", lift.hazards()) + "."
                                                : ", the rear past " + lift.lastLeft() + ".")
                                .plain());
        ConditionKind what = up ? ConditionKind.UP : ConditionKind.DOWN;
        String hazard = up ? lift.hazards().get(0) : lift.lastLeft();
        plan.conditions().stream()
                .filter(c -> c.what() == what && c.hazard().equals(hazard))
                .forEach(c -> lines.add(SheetLine.toDo("Resolved: " + c.told())));
        return lines;
    }

    private List<SheetLine> up(int i, Plan.Lift lift) {
        List<SheetLine> lines = new ArrayList<>();
        String at = "plan:/steps/" + i + "/lift";
        lines.add(SheetLine.practice(
                "Stop short of it on straight, firm road, strobes on, traffic held as the permit says."));
        lines.add(SheetLine.practice("Everyone clear of the deck: nobody under it until it is back on the stops."));
        Say front = sources.say("Lift off the transport stops and raise the deck front by ")
                .raise(lift.raise().frontM(), lift.raise().frontEndM(), at + "/raise/frontM");
        if (lift.band() == null || !lift.band().wide()) {
            lines.add(front.words(" above its notch, both sides, by the tape.").toDo());
            if (lift.band() != null && lift.band().endsAt() != RaiseEnd.HYDRAULICS) {
                lines.add(SheetLine.plain("No more than that: " + lift.band().end() + "."));
            }
        } else {
            String in = at + "/band";
            lines.add(front.words(" to ")
                    .gap(lift.band().toM(), in + "/toM")
                    .words(" above its notch, aim at ")
                    .dimension(lift.band().aimM(), in + "/aimM")
                    .words(", both sides, by the tape.")
                    .toDo());
            lines.add(sources.say("Above that " + lift.band().end() + ". Aimed right it leaves ")
                    .gapAgainst(
                            lift.band().gapM(), in + "/gapM", lift.band().requiredM(), in + "/requiredM", ", needed ")
                    .words(".")
                    .plain());
        }
        if (lift.raise().rearM() > 0) {
            lines.add(sources.say("Leveling to manual; raise the rear by ")
                    .raise(lift.raise().rearM(), lift.raise().rearEndM(), at + "/raise/rearM")
                    .words(", by the tape.")
                    .toDo());
        }
        lines.add(SheetLine.practice("Measure again, then move: it must not have settled."));
        return lines;
    }

    private static List<SheetLine> down(Plan.Lift lift) {
        List<SheetLine> lines = new ArrayList<>();
        lines.add(SheetLine.toDo("Stop: the rear has left " + lift.lastLeft() + "."));
        if (lift.raise().rearM() > 0) {
            lines.add(SheetLine.toDo("Rear down; leveling back to auto."));
        }
        lines.add(SheetLine.toDo("Front down onto the transport stops, both sides seated; leveling in auto."));
        lines.add(SheetLine.practice("Power take-off out; only now road speed.").as("power take-off", "out"));
        return lines;
    }

    /** How far it is raised, from the step where it goes up. */
    Say amounts(String words, int i) {
        String at = "plan:/steps/" + i + "/lift/raise";
        Plan.Lift lift = plan.steps().get(i).lift();
        return sources.say(words + "front ")
                .raise(lift.raise().frontM(), lift.raise().frontEndM(), at + "/frontM")
                .words(", rear ")
                .raise(lift.raise().rearM(), lift.raise().rearEndM(), at + "/rearM")
                .words(".");
    }

    private List<SheetLine> hydraulics(Plan.SetUp set) {
        Optional<Sources.Loads> loads = sources.loads(set);
        LoadSheet.LiftLine lift = loads.map(l -> l.sheet().lift()).orElse(null);
        if (lift == null) {
            return List.of();
        }
        String at = loads.get().pointer() + "/lift";
        return List.of(sources.say("Hydraulic gauge while raising: about ")
                .pressure(lift.neededPa(), at + "/neededPa")
                .words("; the take-off gives ")
                .pressure(lift.takeOffPa(), at + "/takeOffPa")
                .words(". Much more means something holds the deck: stop and look.")
                .plain());
    }
}
