package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.check.RegulatorRange;
import org.cresthaul.check.RightPlate;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Admission.Raise;
import org.cresthaul.plan.Plan.Condition;
import org.cresthaul.plan.Plan.Step;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Weights;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.Route;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.units.Rounding;

/** A way told step by step, in driving order. */
final class PlanSteps {
    private final Route route;
    private final List<PlanPlace> places;
    private final RouteLayout layout;
    private final ConfigurationChanges changes;
    private final RouteStates states;
    private final Admission admission;
    private final RaiseJudge raisedCheck;
    private final Way way;
    private final List<String> blocking;
    private final LevelStance stance;
    private final Optional<RightPlate> plate;
    private final LiftStops lifts;
    private final Map<String, Condition> conditions = new LinkedHashMap<>();
    /** By cluster; found side by side, since each takes searches of its own. */
    private final List<Optional<RaiseBand>> bands;

    private final List<Step> steps;
    /** Clusters and runs of one configuration both go by chainage: the first cluster not yet told. */
    private int nextCluster;

    /**
     * @param states of which {@code way} is a way
     * @param blocking ids of places that block it, in driving order
     */
    PlanSteps(
            Route route,
            LevelStance stance,
            RouteStates states,
            Way way,
            List<String> blocking,
            Optional<RightPlate> plate,
            PlanFollower follower) {
        this.route = route;
        this.stance = stance;
        this.states = states;
        this.way = way;
        this.blocking = blocking;
        this.plate = plate;
        places = states.places();
        layout = states.layout();
        changes = states.changes();
        admission = states.admission();
        raisedCheck = admission.raised();
        lifts = new LiftStops(places, layout, route.lengthM());
        follower.asks((int) IntStream.range(0, layout.clusters().size())
                .filter(this::isRaised)
                .count());
        bands = IntStream.range(0, layout.clusters().size())
                .parallel()
                .mapToObj(k -> band(k, follower))
                .toList();
        steps = made();
    }

    private Raise raise(int k) {
        return states.choice(
                        k, way.configurations().get(layout.clusters().get(k).segment()))
                .raise();
    }

    private boolean isRaised(int k) {
        return !raise(k).equals(Raise.NONE);
    }

    private Optional<RaiseBand> band(int k, PlanFollower follower) {
        if (!isRaised(k)) {
            return Optional.empty();
        }
        RouteLayout.Cluster cluster = layout.clusters().get(k);
        List<PlanPlace> raised = cluster.places().stream().map(places::get).toList();
        Optional<RaiseBand> band = RaiseBand.find(
                raised, way.configurations().get(cluster.segment()), raise(k), raisedCheck, admission.leastShare());
        follower.answered(raised.get(0).id());
        return band;
    }

    List<Step> steps() {
        return steps;
    }

    /** In driving order, each place once for each kind of condition. */
    List<Condition> conditions() {
        return List.copyOf(conditions.values());
    }

    private List<Step> made() {
        List<Step> all = new ArrayList<>();
        int n = layout.segments();
        all.add(new Step(
                StepKind.DEPART, 0, "start of the route", null, setUp(0), plateChange(), null, null, regulator(0)));
        for (int first = 0, last; first < n; first = last + 1) {
            last = first;
            while (last + 1 < n
                    && way.configurations()
                            .get(last + 1)
                            .equals(way.configurations().get(first))) {
                last++;
            }
            if (first > 0) {
                all.add(change(first));
            }
            List<Step> passages = passages(first, last);
            int c = way.configurations().get(first);
            passages.forEach(s -> noteConditions(s, c));
            all.addAll(passages);
        }
        all.add(new Step(
                StepKind.ARRIVE, route.lengthM(), "end of the route", null, setUp(n - 1), null, null, null, null));
        return List.copyOf(all);
    }

    private Plan.SetUp setUp(int segment) {
        return changes.setUps().get(way.configurations().get(segment));
    }

    private Step change(int segment) {
        StoppingPlace stop = layout.stops().get(segment - 1);
        Plan.SetUp from = setUp(segment - 1);
        Plan.SetUp to = setUp(segment);
        return new Step(
                StepKind.CHANGE,
                stop.place().chainageM(),
                stop.place().name(),
                stop.place().landmark().orElse(null),
                null,
                new Plan.Change(
                        stop.place().id(),
                        stop.setUpArea(),
                        stop.roomM(),
                        from,
                        to,
                        changes.actions(from, to, stop),
                        changes.seconds(from, to, stop)),
                null,
                null,
                regulator(segment));
    }

    /** What the regulator may be set to from the beginning of a segment until the configuration changes. */
    private RegulatorRange regulator(int first) {
        Plan.SetUp set = setUp(first);
        if (set.booster() != BoosterState.TRAILING) {
            return null;
        }
        int last = first;
        while (last + 1 < layout.segments()
                && way.configurations()
                        .get(last + 1)
                        .equals(way.configurations().get(first))) {
            last++;
        }
        return RegulatorRange.find(
                        route,
                        stance,
                        set.lift(),
                        layout.startM(first),
                        layout.endM(last, route.lengthM()),
                        set.lengthM())
                .orElse(null);
    }

    /**
     * Another plate before departure, where the booster trails then and the one that is in is not made for its load.
     */
    private Plan.Change plateChange() {
        Plan.SetUp set = setUp(0);
        if (plate.isEmpty() || set.booster() != BoosterState.TRAILING) {
            return null;
        }
        Weights.ShimPlate out = plate.get().fitted();
        Weights.ShimPlate in = plate.get().wanted();
        Sentence text = in.thicknessM() == 0
                ? Sentence.of(Code.ACT_PLATE_OUT).with("plate", out.name())
                : out.thicknessM() == 0
                        ? Sentence.of(Code.ACT_PLATE_IN).with("plate", in.name())
                        : Sentence.of(Code.ACT_PLATE_CHANGE)
                                .with("out", out.name())
                                .with("in", in.name());
        long seconds = changes.shimSeconds();
        return new Plan.Change(
                Plan.START,
                true,
                0,
                set.withShim(new Plan.Shim(out.name(), out.thicknessM())),
                set,
                List.of(new Plan.Action(ActionKind.PLATE, text, seconds)),
                seconds);
    }

    /** What is done before departure. */
    long secondsBefore() {
        return steps.get(0).change() == null ? 0 : steps.get(0).change().seconds();
    }

    /** Everything that is met, beyond what was told before, while the configuration stays the same. */
    private List<Step> passages(int first, int last) {
        int c = way.configurations().get(first);
        List<Step> met = new ArrayList<>();
        for (RouteLayout.Spanning over : layout.spanning()) {
            int from = Math.max(first, over.firstSegment());
            int to = Math.min(last, over.lastSegment());
            for (; from <= to && !over.holdsIn(from); from++) {
                // The limits of the route do not hold yet.
            }
            for (; to >= from && !over.holdsIn(to); to--) {
                // Nor any more.
            }
            if (from <= to) {
                PlanPlace place = places.get(over.place());
                double fromM = Math.max(layout.startM(from), place.fromM());
                double toM = Math.min(
                        layout.endM(to, route.lengthM()),
                        place.toM() + changes.setUps().get(c).lengthM());
                met.add(passage(place, c, fromM, Math.max(fromM, toM), Lift.NONE, 0, null));
            }
        }
        for (;
                nextCluster < layout.clusters().size()
                        && layout.clusters().get(nextCluster).segment() <= last;
                nextCluster++) {
            addCluster(met, nextCluster, c);
        }
        // What is less apart than is written is met at one place, and stays in the order of what is done there.
        met.sort(Comparator.comparingDouble(s -> Rounding.LENGTH_NEAR.of(s.chainageM())));
        return met;
    }

    private void addCluster(List<Step> met, int k, int c) {
        RouteLayout.Cluster cluster = layout.clusters().get(k);
        Raise raise = states.choice(k, c).raise();
        List<Integer> members = cluster.places();
        boolean up = !raise.equals(Raise.NONE);
        double lengthM = changes.setUps().get(c).lengthM();
        RaiseFinding least = leastRaised(cluster, raise, c);
        RaiseBand band = bands.get(k).orElse(null);
        int lastLeft = LiftStops.lastLeft(cluster, places);
        if (up) {
            met.add(lift(StepKind.RAISE, lifts.up(k, lengthM), cluster, least, band, states.raiseSeconds()));
        }
        for (int i = 0; i < members.size(); i++) {
            PlanPlace place = places.get(members.get(i));
            Lift lift = new Lift(raise, up && i == 0, up && members.get(i) == lastLeft);
            double toM = Math.min(route.lengthM(), place.toM() + lengthM);
            met.add(passage(place, c, Math.max(0, place.fromM()), toM, lift, states.crawlSeconds(place, c, up), least));
        }
        if (up) {
            met.add(lift(StepKind.LOWER, lifts.down(k, lengthM), cluster, least, band, states.lowerSeconds()));
        }
    }

    /** Up as late as can be, down as soon as can be. */
    private Step lift(
            StepKind step,
            LiftStops.Window window,
            RouteLayout.Cluster cluster,
            RaiseFinding raise,
            RaiseBand band,
            long seconds) {
        boolean up = step == StepKind.RAISE;
        PlanPlace last = places.get(LiftStops.lastLeft(cluster, places));
        PlanPlace at = up ? places.get(cluster.places().get(0)) : last;
        Plan.Lift lift = new Plan.Lift(
                raise,
                band,
                cluster.places().stream().map(p -> places.get(p).id()).toList(),
                last.id(),
                window.fromM(),
                window.toM(),
                window.lacks().orElse(null),
                seconds);
        return new Step(
                step,
                up ? lift.toChainageM() : lift.fromChainageM(),
                (up ? "before " : "after ") + at.name(),
                null,
                null,
                null,
                lift,
                null,
                null);
    }

    /**
     * How a place is passed: on what raise, and whether the deck goes up just before it or down once the rear has left.
     */
    private record Lift(Raise raise, boolean raises, boolean lowers) {
        static final Lift NONE = new Lift(Raise.NONE, false, false);
    }

    /** The raise of a whole cluster, with the gap that governs of all it leaves; null without one. */
    private RaiseFinding leastRaised(RouteLayout.Cluster cluster, Raise raise, int c) {
        return cluster.places().stream()
                .map(i -> raised(places.get(i), c, raise))
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(RaiseFinding::share))
                .orElse(null);
    }

    /** A place at a raise: as its cell has it, or as judged anew; empty in transport and where a raise does nothing. */
    private Optional<RaiseFinding> raised(PlanPlace place, int c, Raise raise) {
        ReportCell cell = place.cells().get(c);
        if (isOwn(cell, raise)) {
            return Optional.of(cell.raise());
        }
        return judged(place, c, raise)
                .map(r -> atItsEnds(RaiseFinding.leaving(raise.frontM(), raise.rearM(), r.governing()), c));
    }

    /** How far a configuration can be raised is the same at every place. */
    private RaiseFinding atItsEnds(RaiseFinding finding, int c) {
        return places.stream()
                .map(p -> p.cells().get(c).raise())
                .filter(r -> r != null && r.frontEndM() != null)
                .findFirst()
                .map(r -> finding.endingAt(r.frontEndM(), r.rearEndM()))
                .orElse(finding);
    }

    private Optional<RaisedCheck.Raised> judged(PlanPlace place, int c, Raise raise) {
        return raise.equals(Raise.NONE) || !place.raisable()
                ? Optional.empty()
                : raisedCheck.at(place.id(), place.cells().get(c).configuration(), raise.frontM(), raise.rearM());
    }

    private static boolean isOwn(ReportCell cell, Raise raise) {
        return cell.raise() != null && Raise.of(cell.raise()).equals(raise);
    }

    private Step passage(
            PlanPlace place, int c, double fromM, double toM, Lift lift, long seconds, RaiseFinding cluster) {
        ReportCell cell = place.cells().get(c);
        Optional<RaisedCheck.Raised> judged = judged(place, c, lift.raise);
        Optional<RaiseFinding> own = raised(place, c, lift.raise);
        RaiseFinding finding = own.orElse(cluster);
        Verdict verdict = isOwn(cell, lift.raise)
                ? Verdict.CLEAR
                : judged.map(RaisedCheck.Raised::verdict).orElse(cell.verdict());
        Plan.Spare spare =
                own.isEmpty() ? Spares.of(cell) : judged.map(Spares::of).orElse(null);
        Plan.HazardPassage passage = new Plan.HazardPassage(
                place.id(),
                place.kind(),
                place.name(),
                place.chainageM(),
                fromM,
                toM,
                fromM - place.chainageM(),
                toM - place.chainageM(),
                changes.setUps().get(c),
                verdict,
                finding,
                lift.raises,
                lift.lowers,
                condition(place, verdict),
                blocking.contains(place.id()),
                states.crawls(place, c, finding != null),
                states.speedTold(place, c, finding != null),
                seconds,
                spare,
                own.isEmpty()
                        ? Spares.gaps(cell.ground(), cell.overhead(), cell.units(), spare)
                        : judged.map(r -> Spares.gaps(r.ground(), r.overhead(), r.units(), spare))
                                .orElse(List.of()),
                cell.reasons(),
                place.hazard().map(h -> RaisedCheck.cautions(h, cell, finding)).orElse(List.of()));
        return new Step(
                StepKind.PASSAGE,
                passage.fromChainageM(),
                place.name(),
                landmark(place, fromM),
                null,
                null,
                null,
                passage,
                null);
    }

    /** Where a stretch goes on in another configuration, nothing stands by the road that stands at its beginning. */
    private static String landmark(PlanPlace place, double fromM) {
        return place.pointLike() || fromM <= place.fromM() ? place.landmark() : null;
    }

    private ConditionKind condition(PlanPlace place, Verdict verdict) {
        if (blocking.contains(place.id())) {
            return null;
        }
        if (admission.isSetAside(place)) {
            return ConditionKind.SET_ASIDE;
        }
        return verdict == Verdict.CLEAR ? null : ConditionKind.TIGHT;
    }

    private void noteConditions(Step step, int configuration) {
        if (step.lift() != null && step.lift().lacks() != null) {
            noteLift(step);
        }
        if (step.passage() != null && step.passage().condition() != null) {
            notePassage(step.passage(), configuration);
        }
    }

    private void noteLift(Step step) {
        boolean up = step.step() == StepKind.RAISE;
        String id = up ? step.lift().hazards().get(0) : step.lift().lastLeft();
        String name = places.stream()
                .filter(p -> p.id().equals(id))
                .findFirst()
                .orElseThrow()
                .name();
        conditions.put(
                step.step() + " " + id,
                new Condition(
                        id,
                        name,
                        up ? ConditionKind.UP : ConditionKind.DOWN,
                        Sentence.of(up ? Code.CONDITION_AGREE_UP : Code.CONDITION_AGREE_DOWN)
                                .with("lacks", step.lift().lacks())));
    }

    private void notePassage(Plan.HazardPassage passage, int configuration) {
        PlanPlace place = places.stream()
                .filter(p -> p.id().equals(passage.hazard()))
                .findFirst()
                .orElseThrow();
        Code code = passage.condition() == ConditionKind.SET_ASIDE
                ? Code.CONDITION_UNRESOLVED
                : tight(place, passage.kind(), configuration);
        conditions.putIfAbsent(
                place.id() + " " + code,
                new Condition(place.id(), place.name(), passage.condition(), Sentence.of(code)));
    }

    private static Code tight(PlanPlace place, HazardKind kind, int configuration) {
        ReportCell cell = place.cells().get(configuration);
        if (cell.corner() != null && cell.corner().escorts()) {
            return Code.CONDITION_ESCORTS;
        }
        if (kind == HazardKind.OVERHEAD_WIRE) {
            return Code.CONDITION_WIRE;
        }
        return place.isLimited() ? Code.CONDITION_WEIGH : Code.CONDITION_SPOTTER;
    }
}
