package org.cresthaul.check;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cresthaul.axleload.Hydraulics;
import org.cresthaul.axleload.LoadTest;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.BridgeFinding;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Weights;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.PostedBridge;
import org.cresthaul.route.Route;
import org.cresthaul.units.RoundedFigures;

/** The loads of every state of a stance, against the limits of a route and of every place on it. Immutable. */
public final class RouteLoads {
    public static final List<Sentence> CAUTIONS = Stream.of(
                    Code.LOADS_CAUTION_SCALES, Code.LOADS_CAUTION_LIMITS, Code.LOADS_CAUTION_RATINGS)
            .map(Sentence::of)
            .toList();

    private static final double INCH_M = 0.0254;

    private final Route route;
    private final WeightLimits base;
    private final List<LimitedPlace> places;
    private final LimitsCoverage coverage;
    private final Map<BoosterState, Map<LiftState, State>> states = new EnumMap<>(BoosterState.class);
    private final LevelStance stance;

    /** A case, and how to judge it when it is known. */
    private record State(LoadCase loadCase, Optional<LoadJudge> judge) {}

    /** A verdict with its tests. */
    private record JudgedLoads(Verdict verdict, Optional<LoadFinding> finding, List<Sentence> reasons) {}

    public RouteLoads(Route route, LevelStance stance) {
        this.route = route;
        this.stance = stance;
        base = route.limits().orElseGet(WeightLimits::federal);
        coverage = new LimitsCoverage(route);
        places = route.hazards().stream()
                .filter(LimitedPlace.class::isInstance)
                .map(LimitedPlace.class::cast)
                .toList();
        for (LoadCase c : LoadCase.listOf(stance)) {
            states.computeIfAbsent(c.booster(), b -> new LinkedHashMap<>())
                    .put(c.lift(), new State(c, c.isKnown() ? Optional.of(new LoadJudge(c)) : Optional.empty()));
        }
    }

    /** Limits that hold where no place says otherwise. */
    public WeightLimits base() {
        return base;
    }

    private State state(CheckedConfiguration c) {
        return states.get(c.booster()).get(c.lift());
    }

    /**
     * What holds at a place: its own, and the route's, unless it replaces them itself or all of the combination is
     * where others do for as long as any of it is at the place.
     */
    public List<WeightLimits> limitsAt(LimitedPlace place, BoosterState booster) {
        List<WeightLimits> sets = new ArrayList<>();
        if (!(place.replacesOthers() && place.limits().isPresent()) && !isReplacedAt(place, booster)) {
            sets.add(base);
        }
        place.limits().ifPresent(sets::add);
        return sets;
    }

    private boolean isReplacedAt(LimitedPlace place, BoosterState booster) {
        double lengthM = CombinationLength.meters(stance, booster);
        return coverage.replaced(place.fromChainageM(), place.toChainageM() + lengthM, lengthM);
    }

    /** One configuration at a limited place. */
    ReportCell cell(LimitedPlace place, CheckedConfiguration configuration) {
        JudgedLoads judged = judged(
                state(configuration),
                limitsAt(place, configuration.booster()),
                place.limits().isEmpty());
        return new ReportCell(
                configuration.key(),
                judged.verdict,
                null,
                null,
                null,
                null,
                judged.reasons,
                judged.finding.orElse(null));
    }

    private static JudgedLoads judged(State state, List<WeightLimits> sets, boolean limitsUnknown) {
        if (limitsUnknown) {
            return new JudgedLoads(Verdict.NOT_SURVEYED, Optional.empty(), List.of(Sentence.of(Code.LOADS_NO_LIMITS)));
        }
        if (state.judge.isEmpty()) {
            return new JudgedLoads(
                    Verdict.LOADS_NOT_KNOWN,
                    Optional.empty(),
                    List.of(state.loadCase.unknown().orElseThrow()));
        }
        LoadJudge judge = state.judge.get();
        Optional<Sentence> unknown = judge.unknownUnder(sets);
        if (unknown.isPresent()) {
            return new JudgedLoads(Verdict.LOADS_NOT_KNOWN, Optional.empty(), List.of(unknown.get()));
        }
        List<LoadTest> tests = judge.tests(sets);
        Verdict verdict = judge.verdictOf(tests);
        List<Sentence> reasons = new ArrayList<>(judge.reasons(tests));
        for (WeightLimits set : sets) {
            if (set.reported()) {
                verdict = verdict.orWorse(Verdict.TIGHT);
                reasons.add(Sentence.of(Code.LOADS_REPORTED).with("source", set.source()));
            }
        }
        return new JudgedLoads(verdict, Optional.of(judge.governing(tests)), List.copyOf(reasons));
    }

    /**
     * Whether what a configuration carries under the limits of the whole route is part of its verdict: once anything is
     * known of weights, or any limit was asked for.
     */
    boolean counts() {
        return route.limits().isPresent() || stance.weights().isPresent();
    }

    /** Under the limits of the whole route and the rig's own. */
    Verdict baseVerdict(CheckedConfiguration configuration) {
        return baseVerdict(state(configuration));
    }

    /** The same with its figures. */
    ReportCell baseCell(CheckedConfiguration configuration) {
        JudgedLoads judged = baseJudged(state(configuration));
        return new ReportCell(
                configuration.key(),
                judged.verdict,
                null,
                null,
                null,
                null,
                judged.reasons,
                judged.finding.orElse(null));
    }

    private Verdict baseVerdict(State state) {
        return baseJudged(state).verdict;
    }

    private JudgedLoads baseJudged(State state) {
        // A route that others' limits cover from end to end leaves only the rig's own.
        return judged(state, coversAll() ? List.of() : List.of(base), false);
    }

    private boolean coversAll() {
        return parts().stream()
                .allMatch(p -> p.stream()
                        .anyMatch(place ->
                                place.replacesOthers() && place.limits().isPresent()));
    }

    /** Whether the power take-off raises the loaded front; true when nothing is known of it. */
    boolean raisesFront(CheckedConfiguration configuration) {
        State state = state(configuration);
        Optional<Weights.FrontLift> lift = state.loadCase.weights().flatMap(Weights::frontLift);
        return lift.isEmpty()
                || state.judge.isEmpty()
                || Hydraulics.raises(
                        lift.get(),
                        state.loadCase.statics().deckFrontKg(state.judge.get().loads()));
    }

    /**
     * What a bridge asks beside weights of the whole, with the axles that stand on it together; null where it asks
     * nothing.
     */
    BridgeFinding bridge(LimitedPlace place) {
        if (!(place instanceof PostedBridge bridge)
                || bridge.extent().isEmpty() && bridge.asked().terms().isEmpty()) {
            return null;
        }
        List<BridgeFinding.Together> together = new ArrayList<>();
        states.values()
                .forEach(lifts ->
                        lifts.values().forEach(s -> together.add(BridgeTelling.together(bridge, s.loadCase, s.judge))));
        return BridgeTelling.of(bridge, together);
    }

    LoadReport report() {
        List<LoadReport.StateLoads> sheets = new ArrayList<>();
        states.values().forEach(lifts -> lifts.values().forEach(s -> sheets.add(sheet(s))));
        return new LoadReport(
                stance.weights().isPresent(),
                stance.weights().map(w -> w.accuracy()).orElse(null),
                stance.weights().map(w -> w.source()).orElse(null),
                limitSets(),
                counts(),
                sheets,
                advice(),
                CAUTIONS);
    }

    private LoadReport.StateLoads sheet(State state) {
        LoadCase c = state.loadCase;
        return new LoadReport.StateLoads(
                c.lift(),
                c.booster(),
                c.axles(),
                label(c),
                baseVerdict(state),
                c.unknown()
                        .or(() -> state.judge.flatMap(j -> j.unknownUnder(List.of(base))))
                        .orElse(null),
                state.judge.map(j -> LoadSheets.of(c, j, List.of(base))).orElse(null));
    }

    static String label(LoadCase c) {
        return count(c.axles()) + " down" + raised(c) + " · "
                + (c.booster() == BoosterState.NONE
                        ? "no booster"
                        : "booster " + c.booster().word());
    }

    private static String count(int axles) {
        return axles + (axles == 1 ? " axle" : " axles");
    }

    private List<LoadReport.LimitSet> limitSets() {
        List<LoadReport.LimitSet> sets = new ArrayList<>();
        sets.add(limitSet(null, base, false));
        places.forEach(p ->
                p.limits().ifPresent(l -> sets.add(limitSet(p.place().id(), l, p.replacesOthers()))));
        return sets;
    }

    private static LoadReport.LimitSet limitSet(String place, WeightLimits limits, boolean replaces) {
        List<LoadReport.Rule> rules = new ArrayList<>();
        limits.grossKg().ifPresent(kg -> rules.add(rule("gross weight", kg)));
        limits.grossByAxlesKg().forEach((n, kg) -> rules.add(rule("gross weight on " + count(n), kg)));
        limits.axleKg().ifPresent(kg -> rules.add(rule("single axle", kg)));
        limits.steerKg().ifPresent(kg -> rules.add(rule("steer axle", kg)));
        limits.groupsKg().forEach((n, kg) -> rules.add(rule("group of " + count(n), kg)));
        limits.spans().forEach(s -> rules.add(rule(s.name().toString(), s.mostKg())));
        limits.further().kgPerTireM().ifPresent(kg -> rules.add(rule("for every inch of tire width", kg * INCH_M)));
        limits.further()
                .leastShares()
                .forEach((group, share) -> rules.add(new LoadReport.Rule(
                        "at least "
                                + RoundedFigures.fixed(share * 100, 1, RoundingMode.HALF_UP)
                                + " % of the gross weight on the " + group.word()
                                + " axles",
                        null)));
        limits.further().bridge().mostKg().ifPresent(kg -> rules.add(rule("axles on the bridge together", kg)));
        limits.further()
                .tables()
                .forEach(t -> rules.add(new LoadReport.Rule(
                        t.name() + " on every run of consecutive axles, by number and length", null)));
        if (limits.bridgeFormula()) {
            rules.add(new LoadReport.Rule("federal bridge formula on every run of consecutive axles", null));
        }
        return new LoadReport.LimitSet(
                place, limits.name(), limits.source(), limits.date().toString(), replaces, rules);
    }

    private static LoadReport.Rule rule(String words, double kg) {
        return new LoadReport.Rule(words, kg);
    }

    /** The route cut where limits change: for each part the places that hold there. Bridges are parts of their own. */
    private List<List<LimitedPlace>> parts() {
        return cuts().stream().map(c -> c.places).toList();
    }

    /** @param bridge where it is one; else the part lies within all of its places */
    private record Part(double fromM, double toM, List<LimitedPlace> places, Optional<LimitedPlace> bridge) {}

    private List<Part> cuts() {
        TreeSet<Double> ends = new TreeSet<>(List.of(0.0, route.lengthM()));
        for (LimitedPlace place : places) {
            if (!(place instanceof PostedBridge)) {
                ends.add(onRoute(place.fromChainageM()));
                ends.add(onRoute(place.toChainageM()));
            }
        }
        List<Part> parts = new ArrayList<>();
        for (Double from = ends.first(); ends.higher(from) != null; from = ends.higher(from)) {
            double fromM = from;
            double toM = ends.higher(from);
            double middle = (fromM + toM) / 2;
            parts.add(new Part(
                    fromM,
                    toM,
                    places.stream()
                            .filter(p -> !(p instanceof PostedBridge)
                                    && p.fromChainageM() <= middle
                                    && p.toChainageM() >= middle)
                            .toList(),
                    Optional.empty()));
            for (LimitedPlace bridge : places) {
                double at = onRoute(bridge.fromChainageM());
                boolean last = toM == route.lengthM();
                if (bridge instanceof PostedBridge && at >= fromM && (at < toM || last && at <= toM)) {
                    parts.add(onto(bridge));
                }
            }
        }
        return parts;
    }

    /** A bridge with every stretch that any of it lies on. */
    private Part onto(LimitedPlace bridge) {
        List<LimitedPlace> holding = new ArrayList<>(places.stream()
                .filter(p -> !(p instanceof PostedBridge)
                        && p.fromChainageM() <= bridge.toChainageM()
                        && p.toChainageM() >= bridge.fromChainageM())
                .toList());
        holding.add(bridge);
        return new Part(
                onRoute(bridge.fromChainageM()),
                onRoute(bridge.toChainageM()),
                List.copyOf(holding),
                Optional.of(bridge));
    }

    private double onRoute(double chainageM) {
        return Math.max(0, Math.min(route.lengthM(), chainageM));
    }

    private List<LoadReport.Advice> advice() {
        List<LoadReport.Advice> advice = new ArrayList<>();
        List<Part> parts = cuts();
        states.forEach((booster, lifts) -> {
            for (Part part : parts) {
                advice.add(advice(part, booster, lifts));
            }
        });
        return advice;
    }

    private LoadReport.Advice advice(Part part, BoosterState booster, Map<LiftState, State> lifts) {
        boolean replaced = part.bridge.isPresent()
                ? isReplacedAt(part.bridge.get(), booster)
                : part.places.stream()
                        .anyMatch(p -> p.replacesOthers() && p.limits().isPresent());
        List<WeightLimits> sets = new ArrayList<>();
        if (!replaced) {
            sets.add(base);
        }
        part.places.forEach(p -> p.limits().ifPresent(sets::add));
        boolean unknown = part.places.stream().anyMatch(p -> p.limits().isEmpty());
        List<LoadReport.AxlesAllowed> allowed = new ArrayList<>();
        List<Sentence> reasons = new ArrayList<>();
        List<LoadCase> down = new ArrayList<>();
        boolean known = true;
        boolean tight = false;
        for (State state : lifts.values()) {
            JudgedLoads judged = judged(state, sets, unknown);
            LoadCase c = state.loadCase;
            allowed.add(new LoadReport.AxlesAllowed(c.lift(), c.axles(), judged.verdict));
            judged.reasons.forEach(r -> reasons.add(Sentence.of(Code.REASON)
                    .with("where", CheckedConfiguration.axles(c.axles(), c.lift()))
                    .with("why", r)));
            known &= judged.verdict != Verdict.LOADS_NOT_KNOWN && judged.verdict != Verdict.NOT_SURVEYED;
            if (judged.verdict == Verdict.CLEAR || judged.verdict == Verdict.TIGHT) {
                down.add(c);
                tight |= judged.verdict == Verdict.TIGHT;
            }
        }
        return new LoadReport.Advice(
                part.fromM,
                part.toM,
                part.places.stream().map(p -> p.place().id()).toList(),
                booster,
                allowed,
                known ? text(down, lifts.size(), tight) : "unknown",
                reasons);
    }

    private static String text(List<LoadCase> down, int states, boolean tight) {
        if (down.isEmpty()) {
            return states == 1 ? "not allowed" : "not allowed with any number of axles down";
        }
        String text = down.size() > 1
                ? down.stream()
                                .sorted(Comparator.comparingInt(LoadCase::axles))
                                .map(c -> c.axles() + raised(c))
                                .collect(Collectors.joining(" or "))
                        + " axles down allowed"
                : count(down.get(0).axles()) + " down" + raised(down.get(0)) + (states > 1 ? " only" : " allowed");
        return text + (tight ? ", by less than the weights are accurate" : "");
    }

    /** " (axle 4 up)" where there are several lift axles. */
    private static String raised(LoadCase c) {
        return c.lift().named().isEmpty()
                ? ""
                : " (" + CheckedConfiguration.numbered(c.lift().named()) + " up)";
    }
}
