package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.BackingLine;
import org.cresthaul.check.CornerFinding;
import org.cresthaul.check.DriverLine;
import org.cresthaul.check.Verdict;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.RailCrossing;

/** One place of a plan as the driver needs it: what comes, what to do before, how to pass, what to undo after. */
final class PassageSheet {
    static final String RAISED = "still raised";
    static final String DO_NOT_STOP = "do not stop";

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
        Plan.Passage p = step.passage();
        String at = "plan:/steps/" + i + "/passage";
        return new RunSheet.Entry(
                step.step(),
                p.hazard(),
                p.kind(),
                p.name(),
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
                p.cautions());
    }

    private List<SheetLine> comes(int i, Plan.Passage p, String at) {
        List<SheetLine> lines = new ArrayList<>();
        if (p.blocked()) {
            lines.add(SheetLine.plain("BLOCKED (" + p.verdict() + "). "
                            + plan.blocking().stream()
                                    .filter(b -> b.hazard().equals(p.hazard()))
                                    .findFirst()
                                    .map(b -> Sources.capital(b.why()) + ".")
                                    .orElse(""))
                    .as(SheetLine.BLOCKED));
        } else if (p.condition() == ConditionKind.SET_ASIDE) {
            lines.add(SheetLine.plain(
                    "Set aside, unresolved: the plan is not valid until this is. Verdict " + p.verdict() + "."));
        }
        if (!p.standsAtPoint()) {
            lines.add(sources.say("In force until ")
                    .chainage(p.toChainageM(), at + "/toChainageM")
                    .words(".")
                    .plain());
        }
        heights.line(p).ifPresent(lines::add);
        lines.addAll(margins(sources, p, at));
        lines.addAll(BridgeSheet.together(sources, p));
        if (p.verdict() != Verdict.CLEAR && !p.blocked()) {
            p.reasons().forEach(r -> lines.add(SheetLine.plain(Sources.capital(r) + ".")));
        }
        if (p.kind() == HazardKind.RAIL_CROSSING) {
            sources.route()
                    .findHazard(p.hazard())
                    .flatMap(h -> ((RailCrossing) h).crossingNumber())
                    .ifPresent(n -> lines.add(SheetLine.plain("Crossing number " + n + ", as on the blue sign.")));
        }
        if (p.raise() != null) {
            lines.add(sources.say("Still raised, at least: front ")
                    .raise(p.raise().frontM(), p.raise().frontEndM(), at + "/raise/frontM")
                    .words(", rear ")
                    .raise(p.raise().rearM(), p.raise().rearEndM(), at + "/raise/rearM")
                    .words(".")
                    .plain()
                    .as(RAISED));
        }
        if (onTracks.head(i) != i) {
            lines.add(SheetLine.plain("The rear is still on the tracks of "
                            + plan.steps().get(onTracks.head(i)).passage().hazard()
                            + " here: do not stop. What this place needs was done before them.")
                    .as(DO_NOT_STOP));
        }
        return lines;
    }

    /** What is left: over the ground and under a structure both, where both are judged. */
    static List<SheetLine> margins(Sources sources, Plan.Passage p, String at) {
        if (p.gaps().isEmpty()) {
            return p.spare() == null ? List.of() : List.of(spare(sources, p.kind(), p.spare(), at + "/spare"));
        }
        List<SheetLine> lines = new ArrayList<>();
        for (int i = 0; i < p.gaps().size(); i++) {
            lines.add(spare(sources, p.kind(), p.gaps().get(i), at + "/gaps/" + i)
                    .as("gap " + p.gaps().get(i).kind()));
        }
        return lines;
    }

    /** What is left, in the words of its kind. */
    static SheetLine spare(Sources sources, HazardKind kind, Plan.Spare s, String at) {
        if (s.kind().isWeight()) {
            return sources.say("Load ")
                    .weight(s.value(), at + "/value")
                    .words(", against ")
                    .weight(s.required(), at + "/required")
                    .words("; left ")
                    .weightLeft(s.left(), at + "/left")
                    .words(" (" + s.at() + ").")
                    .plain();
        }
        String what =
                switch (s.kind()) {
                    case GROUND -> "Least gap over the ground ";
                    case OVERHEAD -> "Least gap under " + kind.over() + " ";
                    case UNITS -> "Least gap between the units ";
                    case CORNER, LOAD, RAISED -> "Least room beside ";
                };
        return sources.say(what)
                .gapAgainst(s.value(), at + "/value", s.required(), at + "/required", ", needed ")
                .words(" (" + s.at() + ").")
                .plain();
    }

    /** What is to be done before it, and before those that come while this one's tracks are still occupied. */
    private List<SheetLine> before(int i) {
        if (onTracks.head(i) != i) {
            return List.of();
        }
        List<SheetLine> lines = new ArrayList<>(due(i));
        for (int later : onTracks.followers(i)) {
            Plan.Passage p = plan.steps().get(later).passage();
            due(later).forEach(l -> lines.add(l.after("For " + p.hazard() + " " + p.name() + ", next: ")));
        }
        return lines;
    }

    private List<SheetLine> due(int i) {
        Plan.Passage p = plan.steps().get(i).passage();
        List<SheetLine> lines = new ArrayList<>();
        plan.conditions().stream()
                .filter(c -> c.hazard().equals(p.hazard()) && !LiftSheet.isOfLift(c))
                .forEach(c -> lines.add(SheetLine.toDo("Resolved: " + c.told())));
        if (p.kind().isOverhead()) {
            lines.add(SheetLine.practice(
                    p.raise() == null
                            ? "Load measured today at its highest point, on the stops, at this notch."
                            : "Load measured today at its highest point, raised as it goes under."));
        }
        sources.hazard(p.hazard())
                .map(f -> f.cell(p.set()).cell().corner())
                .filter(c -> c != null && c.escorts())
                .ifPresent(c -> lines.add(SheetLine.toDo(
                        "The turn uses the oncoming lane: do not start it before the escorts hold that lane.")));
        if (p.kind() == HazardKind.RAIL_CROSSING) {
            lines.addAll(crossings.before(p, onTracks.head(i) == i));
        }
        return lines;
    }

    private List<SheetLine> through(int i, Plan.Passage p, String at) {
        List<SheetLine> lines = new ArrayList<>();
        if (p.crawls()) {
            lines.add(sources.say("Crawl: ")
                    .speed(plan.options().times().crawlMps(), "plan:/options/times/crawlMps")
                    .words(" at most, from the front ")
                    .alongRoad(p.frontFromM(), at + "/frontFromM")
                    .words(" until the rear has left it, the front ")
                    .alongRoad(p.frontToM(), at + "/frontToM")
                    .words(". About ")
                    .minutes(p.seconds(), at + "/seconds")
                    .words(" in all.")
                    .plain());
        }
        if (p.mostMps() != null) {
            lines.add(sources.say("")
                    .speedDown(p.mostMps(), at + "/mostMps")
                    .words(" at most: faster, a bounce may take what is left.")
                    .plain());
        }
        lines.addAll(
                switch (p.kind()) {
                    case RAIL_CROSSING -> crossings.through(p);
                    case CORNER -> corner(p);
                    case POSTED_BRIDGE -> BridgeSheet.terms(sources, p);
                    case DIP, CREST ->
                        List.of(SheetLine.rule("Straight over, wheels on the lane's own tracks.", SheetLine.PRACTICE));
                    case LOW_STRUCTURE ->
                        List.of(SheetLine.rule(
                                "One person watches the highest point from the side.", SheetLine.PRACTICE));
                    case OVERHEAD_WIRE ->
                        List.of(SheetLine.rule(
                                p.verdict() == Verdict.CLEAR
                                        ? "Do not stop under the wire."
                                        : "One person watches the highest point from the side, away from the combination."
                                                + " Nobody on the load, nobody touches the combination while it is under"
                                                + " the wire.",
                                SheetLine.PRACTICE));
                    case STRETCH, LIMITS -> List.of();
                });
        return lines;
    }

    private List<SheetLine> corner(Plan.Passage p) {
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
        lines.add(sources.say("Come in with the " + line.edgeSide() + " steer tire ")
                .distance(line.edgeInM(), to + "/edgeInM")
                .words(" from the " + line.edgeSide() + " edge.")
                .plain());
        Say turn = sources.say("Wheel over to the " + line.firstWay() + " with the steer axle ")
                .alongRoad(line.startM(), to + "/startM");
        if (line.swingAwayM() > 0) {
            turn.words("; swing ")
                    .distance(line.swingAwayM(), to + "/swingAwayM")
                    .words(" away, then turn with it ")
                    .alongRoad(line.turnInM(), to + "/turnInM");
        } else {
            turn.words("; no swing first");
        }
        lines.add(turn.words("; radius ")
                .distance(line.radiusM(), to + "/radiusM")
                .words(".")
                .plain());
        lines.add(sources.say("Watch the " + line.mirror() + " mirror: " + line.watch())
                .words(".")
                .plain());
        for (int i = 0; i < c.overhangs().size(); i++) {
            CornerFinding.Overhang over = c.overhangs().get(i);
            String there = at + "/overhangs/" + i;
            lines.add(
                    over.gapM() == null
                            ? SheetLine.toDo("The " + over.unit() + " passes over " + over.ground()
                                    + ": measure its height first, and watch it go over.")
                            : sources.say("The " + over.unit() + " passes over " + over.ground() + " with ")
                                    .required(over.gapM(), there + "/gapM")
                                    .words(" to spare.")
                                    .plain());
        }
        Say say = sources.say("The rear cuts in ")
                .distance(c.offtrackingM(), at + "/offtrackingM")
                .words("; the tail swings out ")
                .required(c.tailSwingM(), at + "/tailSwingM");
        if (c.trailsWideM() != null) {
            say.words(", the booster trails ")
                    .required(c.trailsWideM(), at + "/trailsWideM")
                    .words(" wide");
        }
        lines.add(say.words(".").plain());
        return lines;
    }

    private void backedInto(CornerFinding c, String at, List<SheetLine> lines) {
        BackingLine line = c.backing();
        String to = at + "/backing";
        lines.add(SheetLine.rule(
                "A spotter at the rear, in sight of the driver; the road held; at a walk.", SheetLine.PRACTICE));
        if (line.pivot() != null) {
            lines.add(SheetLine.toDo("Booster's pivot " + line.pivot() + " before backing."));
        }
        lines.add(sources.say("Drive past and stop all straight with the steer axle ")
                .distance(line.stopM(), to + "/stopM")
                .words(" past the middle of the gate, " + line.edgeSide() + " steer tire ")
                .distance(line.edgeM(), to + "/edgeM")
                .words(" from the " + line.edgeSide() + " edge.")
                .plain());
        lines.add(sources.say("Backing, wheel over to the " + line.firstWay() + " with the steer axle ")
                .distance(line.wheelM(), to + "/wheelM")
                .words(" past the middle of the gate; radius ")
                .distance(line.radiusM(), to + "/radiusM")
                .words("; wheels straight with it ")
                .distance(Math.abs(line.straightM()), to + "/straightM")
                .words(line.straightM() < 0 ? " short of the road's center line." : " in from the road's center line.")
                .plain());
        lines.add(sources.say("Watch the " + line.mirror() + " mirror: " + line.watch())
                .words(".")
                .plain());
    }

    private List<SheetLine> after(Plan.Passage p) {
        return p.raise() == null || p.lowers()
                ? List.of()
                : List.of(SheetLine.plain(
                                "Stay raised and keep crawling: the rear has not left every place of this raise yet.")
                        .as("stays raised"));
    }
}
