package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.axleload.AxleLoads;
import org.cresthaul.axleload.AxlePlace;
import org.cresthaul.axleload.LoadBound;
import org.cresthaul.axleload.LoadTest;
import org.cresthaul.axleload.RatingBounds;
import org.cresthaul.axleload.Statics;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.AxleKind;

/** Holds the loads of one known case against sets of limits and the rig's own ratings. */
public final class LoadJudge {
    private final LoadCase loadCase;
    private final List<AxlePlace> places;
    private final AxleLoads loads;
    /** What the regulator sets at both ends of its chart's accuracy; none where no chart sets a load. */
    private final List<AxleLoads> charted;

    private final List<LoadTest> own;
    private final double accuracy;

    public LoadJudge(LoadCase loadCase) {
        this.loadCase = loadCase;
        Statics statics = loadCase.statics();
        places = statics.places();
        loads = statics.level();
        accuracy = loadCase.weights().orElseThrow().accuracy();
        charted = loadCase.boosterRangesKg().stream()
                .map(kg -> loadCase.statics(kg).level())
                .toList();
        List<LoadTest> tests = new ArrayList<>(LoadTest.all(ownBounds(), loads, charted));
        tests.addAll(RatingBounds.onSides(loads, charted, loadCase.weights().orElseThrow()));
        own = List.copyOf(tests);
    }

    public AxleLoads loads() {
        return loads;
    }

    /** What the rig asks of itself, anywhere. */
    public List<LoadBound> ownBounds() {
        return RatingBounds.on(places, loadCase.weights().orElseThrow());
    }

    public List<LoadBound> boundsOf(List<WeightLimits> sets) {
        return sets.stream()
                .flatMap(s -> s.boundsOn(places, loads.grossKg(), tireWidthsM()).stream())
                .toList();
    }

    private Map<AxleKind, Double> tireWidthsM() {
        return loadCase.weights().orElseThrow().ratings().tireWidthsM();
    }

    /** Why the loads cannot be held against all of {@code sets}; empty when they can. */
    public Optional<Sentence> unknownUnder(List<WeightLimits> sets) {
        return sets.stream()
                .flatMap(s -> s.unknownOf(places, tireWidthsM()).stream())
                .findFirst();
    }

    /** Everything that is asked where {@code sets} hold: the rig's own first. */
    public List<LoadTest> tests(List<WeightLimits> sets) {
        return Stream.concat(own.stream(), LoadTest.all(boundsOf(sets), loads, charted).stream())
                .toList();
    }

    public Verdict verdictOf(LoadTest test) {
        if (!test.isKept()) {
            return Verdict.OUTSIDE_LIMITS;
        }
        return test.isKeptWithin(accuracy) ? Verdict.CLEAR : Verdict.TIGHT;
    }

    public Verdict verdictOf(List<LoadTest> tests) {
        return tests.stream().map(this::verdictOf).reduce(Verdict.CLEAR, Verdict::orWorse);
    }

    /** The rule that leaves the least for its size. */
    LoadFinding governing(List<LoadTest> tests) {
        return finding(LoadTest.governing(tests.stream()));
    }

    /** What is not kept, the worst first. */
    List<LoadFinding> broken(List<LoadTest> tests) {
        return tests.stream()
                .filter(t -> !t.isKept())
                .sorted(Comparator.comparingDouble(LoadTest::relativeMargin))
                .map(this::finding)
                .toList();
    }

    LoadFinding finding(LoadTest test) {
        LoadBound bound = test.bound();
        boolean hitch = bound.part() == LoadBound.Part.HITCH;
        return new LoadFinding(
                bound.rule(),
                bound.source(),
                axles(bound),
                hitch ? null : bound.first(),
                hitch ? null : bound.last(),
                test.loadKg(),
                bound.limitKg(),
                test.marginKg(),
                bound.least(),
                verdictOf(test));
    }

    /** "trailer axle 1 to booster axle" */
    Sentence axles(LoadBound bound) {
        if (bound.part() == LoadBound.Part.HITCH) {
            boolean only = loads.fifthWheelsKg().size() == 1;
            return only
                    ? Sentence.of(Code.FIFTH_WHEEL)
                    : Sentence.of(Code.FIFTH_WHEEL_OF).with("unit", Names.of(RatingBounds.owner(bound.first())));
        }
        return axles(places.get(bound.first()), places.get(bound.last()));
    }

    /** "trailer axle 1 to booster axle", or the one axle. */
    static Sentence axles(AxlePlace first, AxlePlace last) {
        return first.equals(last)
                ? first.label()
                : Sentence.of(Code.AXLES_FROM_TO).with("first", first.label()).with("last", last.label());
    }

    /** Why a verdict is not clear; the figures stand beside it. */
    List<Sentence> reasons(List<LoadTest> tests) {
        List<Sentence> reasons = new ArrayList<>();
        broken(tests).stream()
                .limit(MOST_REASONS)
                .forEach(f -> reasons.add(BrokenRule.of(f).words()));
        if (reasons.isEmpty() && verdictOf(tests) == Verdict.TIGHT) {
            LoadTest least = LoadTest.governing(tests.stream().filter(t -> verdictOf(t) == Verdict.TIGHT));
            reasons.add(Sentence.of(least.chartKg() > 0 ? Code.LOADS_WITHIN_CHART : Code.LOADS_WITHIN)
                    .with(
                            "rule",
                            Sentence.of(Code.RULE_AND_AXLES)
                                    .with("rule", least.bound().rule())
                                    .with("axles", axles(least.bound()))));
        }
        return reasons;
    }

    private static final int MOST_REASONS = 4;
}
