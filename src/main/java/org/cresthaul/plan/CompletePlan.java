package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.cresthaul.check.Margins;
import org.cresthaul.check.Report;
import org.cresthaul.check.RightPlate;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.Route;

/**
 * A route plan with all that is told beside the way itself: crossings in time, margins when things are off, and what
 * would open the places that block. Those ask the engines again, at the plan's places alone.
 */
public final class CompletePlan {
    private CompletePlan() {}

    /**
     * As {@link RoutePlan#of}, completed.
     *
     * @throws IllegalArgumentException when the options have mistakes
     */
    public static Plan of(
            Route route, Rig rig, LevelStance stance, Margins margins, Report report, PlanOptions options) {
        return of(route, rig, stance, margins, report, options, PlanAid.none());
    }

    /** The same, with answers of earlier plans, and told to whoever follows it. */
    public static Plan of(
            Route route,
            Rig rig,
            LevelStance stance,
            Margins margins,
            Report report,
            PlanOptions options,
            PlanAid aid) {
        Plan way = RoutePlan.of(route, rig, stance, margins, report, options, aid);
        Optional<RightPlate> plate = RightPlate.find(stance);
        return plate.isEmpty()
                ? completed(way, route, rig, stance, margins, report, options, aid)
                : completed(
                        way,
                        route,
                        rig,
                        plate.get().stance(),
                        margins,
                        plate.get().in(report, route, rig),
                        options,
                        aid);
    }

    private static Plan completed(
            Plan way,
            Route route,
            Rig rig,
            LevelStance stance,
            Margins margins,
            Report report,
            PlanOptions options,
            PlanAid aid) {
        PlanFollower follower = aid.follower();
        KeptAnswers.OfPlan kept = aid.kept().of(route, rig, stance, margins, report);
        List<Plan.Passage> passages = way.steps().stream()
                .map(Plan.Step::passage)
                .filter(Objects::nonNull)
                .toList();
        follower.asks(way.blocking().size() + passages.size());
        List<CrossingTime> crossings = crossings(route, passages, options);
        List<Plan.Condition> conditions = new ArrayList<>(way.conditions());
        crossings.stream()
                .flatMap(c -> condition(c).stream())
                .map(c -> c.settledBy(options.settled()))
                .forEach(conditions::add);
        Outcome outcome =
                way.outcome() == Outcome.THROUGH && !conditions.isEmpty() ? Outcome.CONDITIONAL : way.outcome();
        Relaxations relaxations = new Relaxations(route, rig, stance, margins, report, options);
        return new Plan(
                way.cresthaul(),
                way.version(),
                way.route(),
                way.rig(),
                way.margins(),
                outcome,
                way.stopsAtBlocks(),
                conditions,
                way.options(),
                way.seconds(),
                way.changes(),
                way.trades(),
                way.least(),
                way.steps(),
                way.blocking().parallelStream()
                        .map(b -> opened(b, relaxations, options, kept, follower))
                        .toList(),
                crossings,
                RobustnessCheck.of(
                        route, rig, stance, margins, passages, RobustnessCheck.Amounts.of(rig), kept, follower),
                way.cautions());
    }

    private static Plan.Block opened(
            Plan.Block b,
            Relaxations relaxations,
            PlanOptions options,
            KeptAnswers.OfPlan kept,
            PlanFollower follower) {
        List<Plan.Relaxation> opens = kept.of(
                        b.hazard(),
                        KeptAnswers.Asked.OPENS,
                        List.of(options.avoidRaising(), options.forbid(), Optional.ofNullable(options.fix())),
                        Relaxations.Found.class,
                        () -> new Relaxations.Found(relaxations.at(b.hazard())))
                .all();
        follower.answered(b.hazard());
        return new Plan.Block(b.hazard(), b.kind(), b.name(), b.chainageM(), b.why(), opens);
    }

    /**
     * A crossing that is not cleared in time, or without room beyond, or of which that is not known, must be settled
     * first.
     */
    private static Optional<Plan.Condition> condition(CrossingTime crossing) {
        List<Sentence> open = new ArrayList<>();
        if (!Boolean.TRUE.equals(crossing.fits())) {
            open.add(Sentence.of(crossing.fits() == null ? Code.IN_TIME_UNKNOWN : Code.IN_TIME_SHORT));
        }
        if (!Boolean.TRUE.equals(crossing.storageFits())) {
            open.add(Sentence.of(crossing.storageFits() == null ? Code.ROOM_UNKNOWN : Code.ROOM_SHORT));
        }
        return open.isEmpty()
                ? Optional.empty()
                : Optional.of(new Plan.Condition(
                        crossing.hazard(),
                        crossing.name(),
                        Boolean.TRUE.equals(crossing.fits()) ? ConditionKind.ROOM : ConditionKind.IN_TIME,
                        Sentence.listed(open, " ")));
    }

    private static List<CrossingTime> crossings(Route route, List<Plan.Passage> passages, PlanOptions options) {
        return passages.stream()
                .filter(p -> route.findHazard(p.hazard())
                        .filter(RailCrossing.class::isInstance)
                        .isPresent())
                .map(p -> CrossingTimes.of(
                        (RailCrossing) route.findHazard(p.hazard()).orElseThrow(),
                        p.set().configuration(),
                        p.set().lengthM(),
                        options.times().crawlMps()))
                .toList();
    }
}
