package org.cresthaul.whatif;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.cresthaul.check.RightPlate;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.ConditionKind;
import org.cresthaul.plan.CrossingTime;
import org.cresthaul.plan.CrossingTimes;
import org.cresthaul.plan.KeptAnswers;
import org.cresthaul.plan.OffBy;
import org.cresthaul.plan.Outcome;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanAid;
import org.cresthaul.plan.PlanFollower;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoutePlan;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Report;
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
    public static Plan of(Haul haul, Report report, PlanOptions options) {
        return of(haul, report, options, PlanAid.none());
    }

    /** The same, with answers of earlier plans, and told to whoever follows it. */
    public static Plan of(Haul haul, Report report, PlanOptions options, PlanAid aid) {
        Plan way = RoutePlan.of(haul, report, options, aid);
        Optional<RightPlate> plate = RightPlate.find(haul.stance());
        return plate.isEmpty()
                ? completed(way, haul, report, options, aid)
                : completed(
                        way,
                        haul.standing(plate.get().stance()),
                        plate.get().in(report, haul.route(), haul.rig()),
                        options,
                        aid);
    }

    private static Plan completed(Plan way, Haul haul, Report report, PlanOptions options, PlanAid aid) {
        PlanFollower follower = aid.follower();
        KeptAnswers.OfPlan kept = aid.kept().of(haul, report);
        List<Plan.HazardPassage> passages = way.steps().stream()
                .map(Plan.Step::passage)
                .filter(Objects::nonNull)
                .toList();
        follower.asks(way.blocking().size() + passages.size());
        List<CrossingTime> crossings = crossings(haul.route(), passages, options);
        List<Plan.Condition> conditions = new ArrayList<>(way.conditions());
        crossings.stream()
                .flatMap(c -> condition(c).stream())
                .map(c -> c.settledBy(options.settled()))
                .forEach(conditions::add);
        Outcome outcome =
                way.outcome() == Outcome.THROUGH && !conditions.isEmpty() ? Outcome.CONDITIONAL : way.outcome();
        Relaxations relaxations = new Relaxations(haul, report, options);
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
                RobustnessCheck.of(haul, passages, OffBy.of(haul.rig()), kept, follower),
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

    private static List<CrossingTime> crossings(Route route, List<Plan.HazardPassage> passages, PlanOptions options) {
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
