package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.check.RightPlate;
import org.cresthaul.check.StandingLoads;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Report;
import org.cresthaul.report.Version;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputProblem;

/**
 * Plans a route: which configuration where, from what the check found. Least time, with what conditions count for, then
 * fewest changes, then the largest least reserve, then the report's order of configurations; when there is no way, the
 * smallest set of places that block it. {@code docs/model.md} states the rules.
 */
public final class RoutePlan {
    private final Route route;
    private final Report report;
    private final PlanOptions options;
    private final List<PlanPlace> places;
    private final ConfigurationChanges changes;
    private final RouteLayout layout;
    private final Admission admission;
    private final RaiseJudge raised;
    private final LevelStance stance;
    private final Optional<RightPlate> plate;
    private final PlanFollower follower;

    private RoutePlan(
            Route route,
            LevelStance stance,
            Report report,
            PlanOptions options,
            RaiseJudge raised,
            Optional<RightPlate> plate,
            PlanFollower follower) {
        this.follower = follower;
        this.stance = stance;
        this.plate = plate;
        this.route = route;
        this.report = report;
        this.options = options;
        this.raised = raised;
        places = PlanPlace.listOf(route, report);
        changes = new ConfigurationChanges(stance, report, options.times(), new StandingLoads(route, stance));
        layout = RouteLayout.of(route, places, changes.longestM());
        admission = new Admission(places, options.acceptTight(), options.setAside(), raised, options.leastReserve());
    }

    /**
     * The plan.
     *
     * @param report of the same route, rig, stance and margins
     * @param options without mistakes, see {@link PlanOptionsCheck}
     * @throws IllegalArgumentException when the options have mistakes
     */
    public static Plan of(Haul haul, Report report, PlanOptions options) {
        return of(haul, report, options, PlanAid.none());
    }

    /** The same, with answers of earlier plans, and told to whoever follows it. */
    public static Plan of(Haul haul, Report report, PlanOptions options, PlanAid aid) {
        PlanFollower follower = aid.follower();
        // Gaps do not depend on the plate, so that a raise is judged alike.
        RaiseJudge judge =
                new KeptRaises(RaiseJudge.of(new RaisedCheck(haul)), aid.kept().of(haul, report));
        Optional<RightPlate> plate = RightPlate.find(haul.stance());
        return plate.isEmpty()
                ? of(haul.route(), haul.stance(), report, options, judge, plate, follower)
                : of(
                        haul.route(),
                        plate.get().stance(),
                        plate.get().in(report, haul.route(), haul.rig()),
                        options,
                        judge,
                        plate,
                        follower);
    }

    /** The plan, with any judge of raises. */
    public static Plan of(Route route, LevelStance stance, Report report, PlanOptions options, RaiseJudge raised) {
        return of(route, stance, report, options, raised, Optional.empty(), PlanFollower.NONE);
    }

    private static Plan of(
            Route route,
            LevelStance stance,
            Report report,
            PlanOptions options,
            RaiseJudge raised,
            Optional<RightPlate> plate,
            PlanFollower follower) {
        List<InputProblem> problems = PlanOptionsCheck.problems(report, options);
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(problems.toString());
        }
        return new RoutePlan(route, stance, report, options, raised, plate, follower).plan();
    }

    private Plan plan() {
        RouteStates states =
                new RouteStates(places, layout, changes, options.times(), admission, options.avoidRaising());
        WayCosts costs =
                states.costs(options.fewestConditions() ? WayCosts.Conditions.FIRST : WayCosts.Conditions.PRICED);
        Optional<Way> way = CheapestWay.find(costs, usable());
        if (way.isPresent()) {
            follower.decided(List.of());
            return plan(
                    states,
                    admission,
                    way.get(),
                    List.of(),
                    true,
                    new PlanTrades(states, changes, admission, usable()).list(way.get(), costs));
        }
        RouteStates looked = states.searched();
        SmallestBlock.Block block = SmallestBlock.find(looked.costs(WayCosts.Conditions.FREE), usable());
        List<PlanPlace> blocking = blocking(looked, block);
        Admission opened = admission.with(blocking.stream().map(PlanPlace::id).toList());
        RouteStates beyond = states.with(opened, blocking);
        Way provisional = CheapestWay.find(beyond.costs(WayCosts.Conditions.FREE), usable())
                .orElseThrow(() -> new IllegalStateException("setting the blocking places aside opens no way"));
        return plan(beyond, opened, provisional, blocking, block.proven() && looked.exhausted(), List.of());
    }

    private BitSet usable() {
        BitSet usable = new BitSet();
        for (int c = 0; c < changes.setUps().size(); c++) {
            String key = changes.setUps().get(c).configuration();
            usable.set(
                    c,
                    !options.forbid().contains(key)
                            && (options.fix() == null || options.fix().equals(key)));
        }
        return usable;
    }

    private List<PlanPlace> blocking(RouteStates states, SmallestBlock.Block block) {
        List<PlanPlace> blocking = new ArrayList<>();
        block.spanning()
                .forEach(s -> blocking.add(places.get(layout.spanning().get(s).place())));
        for (int k = 0; k < layout.clusters().size(); k++) {
            int c = block.way().configurations().get(layout.clusters().get(k).segment());
            states.choice(k, c).violated().forEach(p -> blocking.add(places.get(p)));
        }
        blocking.sort(Comparator.comparingDouble(PlanPlace::fromM).thenComparing(PlanPlace::id));
        return blocking;
    }

    private Plan plan(
            RouteStates states,
            Admission admission,
            Way way,
            List<PlanPlace> blocking,
            boolean proven,
            List<Plan.Trade> trades) {
        BlockReasons reasons = new BlockReasons(admission, changes, usable(), !options.avoidRaising());
        List<Plan.Block> blocks = blocking.stream().map(reasons::of).toList();
        follower.decided(blocks);
        PlanSteps steps = new PlanSteps(
                route, stance, states, way, blocking.stream().map(PlanPlace::id).toList(), plate, follower);
        List<Plan.Condition> conditions = new ArrayList<>(steps.conditions());
        conditions.addAll(PermitConditions.of(route));
        conditions.replaceAll(c -> c.settledBy(options.settled()));
        return new Plan(
                Plan.FORM,
                Version.NUMBER,
                report.route(),
                report.rig(),
                report.margins(),
                outcome(blocking, conditions),
                !blocking.isEmpty(),
                conditions,
                options,
                way.seconds() + steps.secondsBefore(),
                way.changes(),
                trades,
                LeastReserve.of(way, states, admission),
                steps.steps(),
                blocks,
                List.of(),
                null,
                new PlanCautions(report, layout, changes, way, usable(), proven).list());
    }

    private Outcome outcome(List<PlanPlace> blocking, List<Plan.Condition> conditions) {
        if (!blocking.isEmpty()) {
            return Outcome.BLOCKED;
        }
        if (report.hazards().isEmpty()) {
            return Outcome.UNJUDGED;
        }
        return conditions.isEmpty() ? Outcome.THROUGH : Outcome.CONDITIONAL;
    }
}
