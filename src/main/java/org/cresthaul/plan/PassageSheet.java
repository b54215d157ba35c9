package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.CornerFinding;
import org.cresthaul.check.Report;

/** One place of a plan as the driver needs it: what comes, what to do before, how to pass, what to undo after. */
final class PassageSheet {
    private final Sources sources;
    private final Plan plan;

    PassageSheet(Sources sources) {
        this.sources = sources;
        plan = sources.plan();
    }

    RunSheet.Entry entry(int i) {
        Plan.Step step = plan.steps().get(i);
        Plan.Passage p = step.passage();
        String at = "plan:/steps/" + i + "/passage";
        return new RunSheet.Entry(step.step(), p.hazard(), p.kind(), p.name(), p.verdict(), p.blocked(),
                p.set().configuration(), step.chainageM(),
                sources.say().chainage(step.chainageM(), "plan:/steps/" + i + "/chainageM").plain(), step.landmark(),
                comes(p, at), before(p, at), through(i, p, at), after(p),
                List.of(), p.cautions());
    }

    private List<SheetLine> comes(Plan.Passage p, String at) {
        List<SheetLine> lines = new ArrayList<>();
        if (p.blocked()) {
            lines.add(SheetLine.plain("BLOCKED (" + p.verdict() + "). "
                    + plan.blocking().stream().filter(b -> b.hazard().equals(p.hazard())).findFirst()
                            .map(b -> Sources.capital(b.why()) + ".").orElse("")));
        } else if (Plan.Condition.SET_ASIDE.equals(p.condition())) {
            lines.add(SheetLine.plain("Set aside: nothing is decided here, verdict " + p.verdict() + "."));
        }
        if (p.kind().equals("stretch") || p.hazard().equals(Plan.WHOLE_ROUTE)) {
            lines.add(sources.say("In force until ").chainage(p.toChainageM(), at + "/toChainageM").words(".").plain());
        }
        if (p.spare() != null) {
            lines.add(spare(sources, p.spare(), at + "/spare"));
        }
        if (!p.verdict().equals("clear") && !p.blocked()) {
            p.reasons().forEach(r -> lines.add(SheetLine.plain(Sources.capital(r) + ".")));
        }
        sources.hazard(p.hazard()).ifPresent(f -> f.hazard().notes().stream()
                .filter(n -> n.startsWith("crossing number"))
                .forEach(n -> lines.add(SheetLine.plain(Sources.capital(n) + ", as on the blue sign."))));
        return lines;
    }

    /** What is left, in the words of its kind. */
    static SheetLine spare(Sources sources, Plan.Spare s, String at) {
        if (s.kind().equals("load")) {
            return sources.say("Load ").weight(s.value(), at + "/value").words(", against ")
                    .weight(s.required(), at + "/required").words("; left ").weightLeft(s.left(), at + "/left")
                    .words(" (" + s.at() + ").").plain();
        }
        String what = switch (s.kind()) {
            case "ground" -> "Least gap over the ground ";
            case "overhead" -> "Least gap under the structure ";
            default -> "Least room beside ";
        };
        return sources.say(what).gapAgainst(s.value(), at + "/value", s.required(), at + "/required", ", needed ")
                .words(" (" + s.at() + ").").plain();
    }

    private List<SheetLine> before(Plan.Passage p, String at) {
        List<SheetLine> lines = new ArrayList<>();
        plan.conditions().stream().filter(c -> c.hazard().equals(p.hazard()) && !LiftSheet.isOfLift(c))
                .forEach(c -> lines.add(SheetLine.toDo("Settled: " + c.text())));
        if (p.raise() != null) {
            lines.add(sources.say("Still raised: front ").raise(p.raise().frontM(), p.raise().frontEndM(), at + "/raise/frontM")
                    .words(", rear ").raise(p.raise().rearM(), p.raise().rearEndM(), at + "/raise/rearM").words(". Measure again.").toDo());
        }
        if (p.kind().equals("rail-crossing")) {
            lines.add(SheetLine.practice("Find the blue sign: number and crossing number ready before entering."));
            lines.add(new SheetLine("Enough room beyond the tracks for the whole combination, or wait.", true,
                    "49 CFR 392.12", List.of()));
        } else if (p.kind().equals("low-structure")) {
            lines.add(SheetLine.practice("Load measured today at its highest point, on the stops, at this notch."));
        }
        return lines;
    }

    private List<SheetLine> through(int i, Plan.Passage p, String at) {
        List<SheetLine> lines = new ArrayList<>();
        if (p.crawls()) {
            lines.add(sources.say("Crawl: ").speed(plan.options().times().crawlMps(), "plan:/options/times/crawlMps")
                    .words(" at most, until the rear has left it at ")
                    .chainage(p.toChainageM(), at + "/toChainageM").words(". About ")
                    .minutes(p.seconds(), at + "/seconds").words(" in all.").plain());
        }
        switch (p.kind()) {
            case "rail-crossing" -> crossing(p, lines);
            case "corner" -> corner(p, lines);
            case "dip", "crest" -> lines.add(SheetLine.rule("Straight over, wheels on the lane's own tracks.", SheetLine.PRACTICE));
            case "low-structure" ->
                lines.add(SheetLine.rule("One person watches the highest point from the side.", SheetLine.PRACTICE));
            default -> { }
        }
        return lines;
    }

    private void crossing(Plan.Passage p, List<SheetLine> lines) {
        lines.add(SheetLine.rule("No stop and no gear change on the tracks.", SheetLine.PRACTICE));
        for (int k = 0; k < plan.crossings().size(); k++) {
            CrossingTime c = plan.crossings().get(k);
            if (!c.hazard().equals(p.hazard())) {
                continue;
            }
            String at = "plan:/crossings/" + k;
            Say say = sources.say("From a stop until the rear is clear: ").seconds(c.clearSeconds(), at + "/clearSeconds");
            if (c.warningSeconds() != null) {
                say.words("; least warning before a train ").seconds(c.warningSeconds(), at + "/warningSeconds");
            }
            lines.add(say.words(c.fits() == null ? "; whether that is enough is not known."
                    : c.fits() ? "; it fits." : "; it does NOT fit.").plain());
            c.advice().forEach(a -> lines.add(SheetLine.plain(a)));
        }
    }

    private void corner(Plan.Passage p, List<SheetLine> lines) {
        Optional<Sources.Cell> found = sources.hazard(p.hazard()).map(f -> f.cell(p.set()));
        if (found.isEmpty() || found.get().cell().corner() == null) {
            return;
        }
        CornerFinding c = found.get().cell().corner();
        String at = found.get().pointer() + "/corner";
        if (c.escorts()) {
            lines.add(SheetLine.toDo("This line uses the opposing lane: not before the escorts hold it."));
        }
        lines.add(sources.say("Turn-in when the steer axle is ").alongRoad(c.line().startM(), at + "/line/startM")
                .words("; radius ").distance(c.line().radiusM(), at + "/line/radiusM").words(".").plain());
        Say say = sources.say("The rear cuts in ").distance(c.offtrackingM(), at + "/offtrackingM").words("; the tail swings out ")
                .required(c.tailSwingM(), at + "/tailSwingM");
        if (c.trailsWideM() != null) {
            say.words(", the booster trails ").required(c.trailsWideM(), at + "/trailsWideM").words(" wide");
        }
        lines.add(say.words(".").plain());
    }

    private List<SheetLine> after(Plan.Passage p) {
        return p.raise() == null || p.lowers()
                ? List.of()
                : List.of(SheetLine.plain("Stay raised and keep crawling: not every place of this raise is left behind yet."));
    }
}
