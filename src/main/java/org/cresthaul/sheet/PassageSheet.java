package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.ConditionKind;
import org.cresthaul.plan.NamesOfPlan;
import org.cresthaul.plan.Plan;
import org.cresthaul.report.BackingLine;
import org.cresthaul.report.CornerFinding;
import org.cresthaul.report.DriverLine;
import org.cresthaul.report.PivotState;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.turning.Side;

/** One place of a plan as the driver needs it: what comes, what to do before, how to pass, what to undo after. */
final class PassageSheet {
    private final Sources sources;
    private final Plan plan;
    private final OnTracks onTracks;
    private final CrossingSheet crossings;
    private final StructureHeights heights;

    PassageSheet(Sources sources) {
        this.sources = sources;
        plan = sources.plan();
        onTracks = new OnTracks(plan.steps());
        crossings = new CrossingSheet(sources);
        heights = new StructureHeights(sources);
    }

    RunSheet.Entry entry(int i) {
        Plan.Step step = plan.steps().get(i);
        Plan.HazardPassage p = step.passage();
        String at = "plan:/steps/" + i + "/passage";
        return new RunSheet.Entry(
                step.step(),
                p.hazard(),
                p.kind(),
                sources.nameOf(p),
                p.verdict(),
                p.blocked(),
                p.set().configuration(),
                step.chainageM(),
                p.standsAtPoint()
                        ? sources.say()
                                .chainage(p.chainageM(), at + "/chainageM")
                                .plain()
                        : sources.say()
                                .chainage(step.chainageM(), "plan:/steps/" + i + "/chainageM")
                                .plain(),
                step.landmark(),
                comes(i, p, at),
                before(i),
                through(i, p, at),
                after(p),
                List.of(),
                sources.said(p.cautions()));
    }

    private List<SheetLine> comes(int i, Plan.HazardPassage p, String at) {
        List<SheetLine> lines = new ArrayList<>();
        if (p.blocked()) {
            lines.add(sources.say(Code.BLOCKED_HERE)
                    .with("verdict", Sentence.word(p.verdict()))
                    .with(
                            "why",
                            plan.blocking().stream()
                                    .filter(b -> b.hazard().equals(p.hazard()))
                                    .findFirst()
                                    .orElseThrow()
                                    .why()
                                    .capital())
                    .plain()
                    .as(SheetTopic.BLOCKED));
        } else if (p.condition() == ConditionKind.SET_ASIDE) {
            lines.add(sources.say(Code.SET_ASIDE_HERE)
                    .with("verdict", Sentence.word(p.verdict()))
                    .plain());
        }
        if (!p.standsAtPoint()) {
            lines.add(sources.say(Code.IN_FORCE_UNTIL)
                    .at("to")
                    .chainage(p.toChainageM(), at + "/toChainageM")
                    .plain());
        }
        heights.line(p).ifPresent(lines::add);
        lines.addAll(margins(sources, p, at));
        lines.addAll(BridgeSheet.together(sources, p));
        if (p.verdict() != Verdict.CLEAR && !p.blocked()) {
            p.reasons()
                    .forEach(r -> lines.add(sources.say(Code.SENTENCE)
                            .with("sentence", r.capital())
                            .plain()));
        }
        if (p.kind() == HazardKind.RAIL_CROSSING) {
            sources.route()
                    .findHazard(p.hazard())
                    .flatMap(h -> ((RailCrossing) h).crossingNumber())
                    .ifPresent(n -> lines.add(
                            sources.say(Code.CROSSING_NUMBER).with("number", n).plain()));
        }
        if (p.raise() != null) {
            lines.add(sources.say(Code.STILL_RAISED)
                    .at("front")
                    .raise(p.raise().frontM(), p.raise().frontEndM(), at + "/raise/frontM")
                    .at("rear")
                    .raise(p.raise().rearM(), p.raise().rearEndM(), at + "/raise/rearM")
                    .plain()
                    .as(SheetTopic.STILL_RAISED));
        }
        if (onTracks.head(i) != i) {
            lines.add(sources.say(Code.REAR_ON_TRACKS)
                    .with("place", plan.steps().get(onTracks.head(i)).passage().hazard())
                    .plain()
                    .as(SheetTopic.DO_NOT_STOP));
        }
        return lines;
    }

    /** What is left: over the ground and under a structure both, where both are judged. */
    static List<SheetLine> margins(Sources sources, Plan.HazardPassage p, String at) {
        if (p.gaps().isEmpty()) {
            return p.spare() == null ? List.of() : List.of(spare(sources, p.kind(), p.spare(), at + "/spare"));
        }
        List<SheetLine> lines = new ArrayList<>();
        for (int i = 0; i < p.gaps().size(); i++) {
            lines.add(spare(sources, p.kind(), p.gaps().get(i), at + "/gaps/" + i)
                    .as(SheetTopic.gap(p.gaps().get(i).kind())));
        }
        return lines;
    }

    /** What is left, in the words of its kind. */
    static SheetLine spare(Sources sources, HazardKind kind, Plan.Spare s, String at) {
        if (s.kind().isWeight()) {
            return sources.say(Code.LOAD_LEFT)
                    .at("load")
                    .weight(s.value(), at + "/value")
                    .at("limit")
                    .weight(s.required(), at + "/required")
                    .at("left")
                    .weightLeft(s.left(), at + "/left")
                    .with("at", s.at())
                    .plain();
        }
        boolean wire = kind == HazardKind.OVERHEAD_WIRE;
        Code[] what =
                switch (s.kind()) {
                    case GROUND -> new Code[] {Code.GAP_GROUND, Code.GAP_GROUND_JUST};
                    case OVERHEAD ->
                        wire
                                ? new Code[] {Code.GAP_WIRE, Code.GAP_WIRE_JUST}
                                : new Code[] {Code.GAP_STRUCTURE, Code.GAP_STRUCTURE_JUST};
                    case UNITS -> new Code[] {Code.GAP_UNITS, Code.GAP_UNITS_JUST};
                    case CORNER, LOAD, RAISED -> new Code[] {Code.GAP_BESIDE, Code.GAP_BESIDE_JUST};
                };
        return sources.say()
                .gapAgainst(what[0], what[1], s.value(), at + "/value", s.required(), at + "/required")
                .with("at", s.at())
                .plain();
    }

    /** What is to be done before it, and before those that come while this one's tracks are still occupied. */
    private List<SheetLine> before(int i) {
        if (onTracks.head(i) != i) {
            return List.of();
        }
        List<SheetLine> lines = new ArrayList<>(due(i));
        for (int later : onTracks.followers(i)) {
            Plan.HazardPassage p = plan.steps().get(later).passage();
            due(later)
                    .forEach(l -> lines.add(l.within(sources.say(Code.FOR_NEXT)
                            .with("place", NamesOfPlan.place(p.hazard(), p.name()))
                            .with("what", l.text())
                            .plain()
                            .text())));
        }
        return lines;
    }

    private List<SheetLine> due(int i) {
        Plan.HazardPassage p = plan.steps().get(i).passage();
        List<SheetLine> lines = new ArrayList<>();
        plan.conditions().stream()
                .filter(c -> c.hazard().equals(p.hazard()) && !c.isOfLift())
                .forEach(c -> lines.add(sources.resolved(c)));
        if (p.kind().isOverhead()) {
            lines.add(sources.practice(p.raise() == null ? Code.MEASURE_ON_STOPS : Code.MEASURE_RAISED));
        }
        sources.hazard(p.hazard())
                .map(f -> f.cell(p.set()).cell().corner())
                .filter(c -> c != null && c.escorts())
                .ifPresent(c -> lines.add(sources.toDo(Code.ONCOMING_LANE)));
        if (p.kind() == HazardKind.RAIL_CROSSING) {
            lines.addAll(crossings.before(p, onTracks.head(i) == i));
        }
        return lines;
    }

    private List<SheetLine> through(int i, Plan.HazardPassage p, String at) {
        List<SheetLine> lines = new ArrayList<>();
        if (p.crawls()) {
            lines.add(sources.say(Code.CRAWL)
                    .at("speed")
                    .speed(plan.options().times().crawlMps(), "plan:/options/times/crawlMps")
                    .at("from")
                    .alongRoad(p.frontFromM(), at + "/frontFromM")
                    .at("to")
                    .alongRoad(p.frontToM(), at + "/frontToM")
                    .at("time")
                    .minutes(p.seconds(), at + "/seconds")
                    .plain());
        }
        if (p.mostMps() != null) {
            lines.add(sources.say(Code.SPEED_MOST)
                    .at("speed")
                    .speedDown(p.mostMps(), at + "/mostMps")
                    .plain());
        }
        lines.addAll(
                switch (p.kind()) {
                    case RAIL_CROSSING -> crossings.through(p);
                    case CORNER -> corner(p);
                    case POSTED_BRIDGE -> BridgeSheet.terms(sources, p);
                    case DIP, CREST -> List.of(sources.rule(Code.STRAIGHT_OVER, SheetLine.PRACTICE));
                    case LOW_STRUCTURE -> List.of(sources.rule(Code.WATCH_HIGHEST, SheetLine.PRACTICE));
                    case OVERHEAD_WIRE ->
                        List.of(sources.rule(
                                p.verdict() == Verdict.CLEAR ? Code.WIRE_NO_STOP : Code.WIRE_WATCH,
                                SheetLine.PRACTICE));
                    case STRETCH, LIMITS -> List.of();
                });
        return lines;
    }

    private List<SheetLine> corner(Plan.HazardPassage p) {
        List<SheetLine> lines = new ArrayList<>();
        Optional<Sources.Cell> found = sources.hazard(p.hazard()).map(f -> f.cell(p.set()));
        if (found.isEmpty() || found.get().cell().corner() == null) {
            return lines;
        }
        CornerFinding c = found.get().cell().corner();
        String at = found.get().pointer() + "/corner";
        if (c.backing() != null) {
            backedInto(c, at, lines);
            return lines;
        }
        DriverLine line = c.line();
        String to = at + "/line";
        lines.add(sources.say(line.edgeSide() == Side.LEFT ? Code.CORNER_IN_LEFT : Code.CORNER_IN_RIGHT)
                .at("edge")
                .distance(line.edgeInM(), to + "/edgeInM")
                .plain());
        boolean swings = line.swingAwayM() > 0;
        Say turn = sources.say(swings ? Code.CORNER_WHEEL_SWING : Code.CORNER_WHEEL)
                .with("side", Sentence.word(line.firstWay()))
                .at("from")
                .alongRoad(line.startM(), to + "/startM");
        if (swings) {
            turn.at("swing")
                    .distance(line.swingAwayM(), to + "/swingAwayM")
                    .at("turn")
                    .alongRoad(line.turnInM(), to + "/turnInM");
        }
        lines.add(turn.at("radius").distance(line.radiusM(), to + "/radiusM").plain());
        lines.add(mirror(line.mirror(), line.watch()));
        for (int i = 0; i < c.overhangs().size(); i++) {
            lines.add(over(c.overhangs().get(i), at + "/overhangs/" + i));
        }
        Say say = sources.say(c.trailsWideM() == null ? Code.CORNER_TAIL : Code.CORNER_TAIL_WIDE)
                .at("cut")
                .distance(c.offtrackingM(), at + "/offtrackingM")
                .at("swing")
                .required(c.tailSwingM(), at + "/tailSwingM");
        if (c.trailsWideM() != null) {
            say.at("wide").required(c.trailsWideM(), at + "/trailsWideM");
        }
        lines.add(say.plain());
        return lines;
    }

    private SheetLine mirror(Side side, Sentence watch) {
        return sources.say(Code.CORNER_MIRROR)
                .with("side", Sentence.word(side))
                .with("what", watch)
                .plain();
    }

    private SheetLine over(CornerFinding.Overhang over, String at) {
        return over.gapM() == null
                ? sources.say(Code.CORNER_OVER_UNKNOWN)
                        .with("unit", over.unit())
                        .with("ground", over.ground())
                        .toDo()
                : sources.say(Code.CORNER_OVER)
                        .with("unit", over.unit())
                        .with("ground", over.ground())
                        .at("gap")
                        .required(over.gapM(), at + "/gapM")
                        .plain();
    }

    private void backedInto(CornerFinding c, String at, List<SheetLine> lines) {
        BackingLine line = c.backing();
        String to = at + "/backing";
        lines.add(sources.rule(Code.BACK_SPOTTER, SheetLine.PRACTICE));
        if (line.pivot() != null) {
            lines.add(sources.toDo(line.pivot() == PivotState.FREE ? Code.BACK_PIVOT_FREE : Code.BACK_PIVOT_LOCKED));
        }
        lines.add(sources.say(line.edgeSide() == Side.LEFT ? Code.BACK_STOP_LEFT : Code.BACK_STOP_RIGHT)
                .at("stop")
                .distance(line.stopM(), to + "/stopM")
                .at("edge")
                .distance(line.edgeM(), to + "/edgeM")
                .plain());
        sources.equipment()
                .castering()
                .ifPresent(axles -> lines.add(
                        sources.say(Code.BACKING_CASTERS).with("axles", axles).toDo()));
        lines.add(sources.say(line.straightM() < 0 ? Code.BACK_WHEEL_SHORT : Code.BACK_WHEEL_IN)
                .with("side", Sentence.word(line.firstWay()))
                .at("wheel")
                .distance(line.wheelM(), to + "/wheelM")
                .at("radius")
                .distance(line.radiusM(), to + "/radiusM")
                .at("straight")
                .distance(Math.abs(line.straightM()), to + "/straightM")
                .plain());
        lines.add(mirror(line.mirror(), line.watch()));
    }

    private List<SheetLine> after(Plan.HazardPassage p) {
        return p.raise() == null || p.lowers()
                ? List.of()
                : List.of(sources.plain(Code.STAY_RAISED).as(SheetTopic.STAYS_RAISED));
    }
}
