package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.ConditionKind;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.StepKind;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.RaiseEnd;

/** The deck going up or down as the driver needs it: where to stand, what to do, what the gauge should read. */
public final class LiftSheet {
    private final Sources sources;
    private final Plan plan;

    LiftSheet(Sources sources) {
        this.sources = sources;
        plan = sources.plan();
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
                Sentence.of(up ? Code.DECK_UP : Code.DECK_DOWN)
                        .with("place", nameOf(up ? lift.hazards().get(0) : lift.lastLeft()))
                        .in(sources.catalog()),
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

    private String nameOf(String hazard) {
        return plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(p -> p != null && p.hazard().equals(hazard))
                .findFirst()
                .orElseThrow()
                .name();
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
                        ? sources.say(Code.DECK_NO_PLACE)
                                .with("why", lift.lacks())
                                .plain()
                        : between(lift, up)
                                .at("from")
                                .chainage(lift.fromChainageM(), at + "/fromChainageM")
                                .at("to")
                                .chainage(lift.toChainageM(), at + "/toChainageM")
                                .plain());
        ConditionKind what = up ? ConditionKind.UP : ConditionKind.DOWN;
        String hazard = up ? lift.hazards().get(0) : lift.lastLeft();
        plan.conditions().stream()
                .filter(c -> c.what() == what && c.hazard().equals(hazard))
                .forEach(c -> lines.add(sources.resolved(c)));
        return lines;
    }

    private Say between(Plan.Lift lift, boolean up) {
        return up
                ? sources.say(Code.DECK_UP_WHERE).with("places", String.join(", ", lift.hazards()))
                : sources.say(Code.DECK_DOWN_WHERE).with("place", lift.lastLeft());
    }

    private List<SheetLine> up(int i, Plan.Lift lift) {
        List<SheetLine> lines = new ArrayList<>();
        String at = "plan:/steps/" + i + "/lift";
        lines.add(sources.practice(Code.DECK_STOP_SHORT));
        lines.add(sources.practice(Code.DECK_CLEAR_OF));
        boolean wide = lift.band() != null && lift.band().wide();
        Say front = sources.say(wide ? Code.DECK_RAISE_BAND : Code.DECK_RAISE_EXACT)
                .at("raise")
                .raise(lift.raise().frontM(), lift.raise().frontEndM(), at + "/raise/frontM");
        if (!wide) {
            lines.add(front.toDo());
            if (lift.band() != null && lift.band().endsAt() != RaiseEnd.HYDRAULICS) {
                lines.add(sources.say(Code.DECK_NO_MORE)
                        .with("end", lift.band().end())
                        .plain());
            }
        } else {
            String in = at + "/band";
            lines.add(front.at("most")
                    .gap(lift.band().toM(), in + "/toM")
                    .at("aim")
                    .dimension(lift.band().aimM(), in + "/aimM")
                    .toDo());
            lines.add(sources.say()
                    .gapAgainst(
                            Code.DECK_ABOVE,
                            Code.DECK_ABOVE_JUST,
                            lift.band().gapM(),
                            in + "/gapM",
                            lift.band().requiredM(),
                            in + "/requiredM")
                    .with("end", lift.band().end())
                    .plain());
        }
        if (lift.raise().rearM() > 0) {
            lines.add(sources.say(Code.DECK_REAR)
                    .at("raise")
                    .raise(lift.raise().rearM(), lift.raise().rearEndM(), at + "/raise/rearM")
                    .toDo());
        }
        lines.add(sources.practice(Code.DECK_MEASURE));
        return lines;
    }

    private List<SheetLine> down(Plan.Lift lift) {
        List<SheetLine> lines = new ArrayList<>();
        lines.add(
                sources.say(Code.DECK_REAR_LEFT).with("place", lift.lastLeft()).toDo());
        if (lift.raise().rearM() > 0) {
            lines.add(sources.toDo(Code.DECK_REAR_DOWN));
        }
        lines.add(sources.toDo(Code.DECK_FRONT_DOWN));
        lines.add(sources.practice(Code.DECK_POWER_OUT).as(SheetTopic.POWER_TAKE_OFF, "out"));
        return lines;
    }

    /** How far it is raised, from the step where it goes up. */
    Say amounts(Code code, int i) {
        String at = "plan:/steps/" + i + "/lift/raise";
        Plan.Lift lift = plan.steps().get(i).lift();
        return sources.say(code)
                .at("front")
                .raise(lift.raise().frontM(), lift.raise().frontEndM(), at + "/frontM")
                .at("rear")
                .raise(lift.raise().rearM(), lift.raise().rearEndM(), at + "/rearM");
    }

    private List<SheetLine> hydraulics(Plan.SetUp set) {
        Optional<Sources.Loads> loads = sources.loads(set);
        LoadSheet.LiftLine lift = loads.map(l -> l.sheet().lift()).orElse(null);
        if (lift == null) {
            return List.of();
        }
        String at = loads.get().pointer() + "/lift";
        return List.of(sources.say(Code.DECK_HYDRAULICS)
                .at("needed")
                .pressure(lift.neededPa(), at + "/neededPa")
                .at("given")
                .pressure(lift.takeOffPa(), at + "/takeOffPa")
                .plain());
    }
}
