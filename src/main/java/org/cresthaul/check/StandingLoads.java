package org.cresthaul.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.axleload.Hydraulics;
import org.cresthaul.axleload.LoadBound;
import org.cresthaul.axleload.LoadTest;
import org.cresthaul.axleload.Statics;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Weights;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.PostedBridge;
import org.cresthaul.route.Route;

/**
 * The loads of a combination that stands at a stop while it is changed: of whole states, and of those in between, with
 * the booster coupled but without air. Where the loads of a state are not known nothing is said of it. Not safe to
 * share between threads.
 */
public final class StandingLoads {
    private final LevelStance stance;
    private final LimitsCoverage coverage;
    private final WeightLimits base;
    private final List<LimitedPlace> places;
    private final Map<State, Optional<LoadJudge>> judges = new HashMap<>();
    private final Map<State, LoadCase> cases = new HashMap<>();

    /**
     * A state that the combination stands in.
     *
     * @param air whether a trailing booster carries what its regulator sets; without, it carries nothing
     */
    public record State(LiftState lift, BoosterState booster, boolean air) {}

    public StandingLoads(Route route, LevelStance stance) {
        this.stance = stance;
        coverage = new LimitsCoverage(route);
        base = route.limits().orElseGet(WeightLimits::federal);
        places = route.hazards().stream()
                .filter(LimitedPlace.class::isInstance)
                .map(LimitedPlace.class::cast)
                .filter(p -> !(p instanceof PostedBridge) && p.limits().isPresent())
                .toList();
    }

    /** Which limits hold for a combination that stands there: equal where they are the same. */
    public List<Integer> limitsAt(double frontM, double lengthM) {
        List<Integer> numbers = new ArrayList<>();
        numbers.add(replaced(frontM, lengthM) ? 0 : 1);
        for (int i = 0; i < places.size(); i++) {
            if (isOver(places.get(i), frontM, lengthM)) {
                numbers.add(i);
            }
        }
        return numbers;
    }

    /** Whether limits that hold instead of the route's cover all of it. */
    private boolean replaced(double frontM, double lengthM) {
        return coverage.replaced(frontM, frontM, lengthM);
    }

    private static boolean isOver(LimitedPlace place, double frontM, double lengthM) {
        return place.fromChainageM() < frontM && place.toChainageM() > frontM - lengthM;
    }

    private List<WeightLimits> setsAt(double frontM, double lengthM) {
        List<WeightLimits> sets = new ArrayList<>();
        if (!replaced(frontM, lengthM)) {
            sets.add(base);
        }
        places.stream()
                .filter(p -> isOver(p, frontM, lengthM))
                .forEach(p -> sets.add(p.limits().orElseThrow()));
        return sets;
    }

    /**
     * What is not kept in a state: limits, ratings, load on every axle that must brake. An axle of a booster without
     * air brakes nothing and need carry nothing.
     *
     * @param onRoad whether the limits of the road hold; ratings and brakes do everywhere
     * @return the worst first; empty when all is kept, or when its loads are not known
     */
    public List<BrokenRule> broken(State state, double frontM, double lengthM, boolean onRoad) {
        Optional<LoadJudge> judge = judge(state);
        if (judge.isEmpty()) {
            return List.of();
        }
        List<LoadTest> tests = judge.get().tests(onRoad ? setsAt(frontM, lengthM) : List.of()).stream()
                .filter(t -> state.air || state.booster != BoosterState.TRAILING || !isLeastOnBooster(judge.get(), t))
                .toList();
        // One finding for each rule and axles, so that two states can be compared by what they break.
        return List.copyOf(new LinkedHashSet<>(
                judge.get().broken(tests).stream().map(BrokenRule::of).toList()));
    }

    private static boolean isLeastOnBooster(LoadJudge judge, LoadTest test) {
        return test.bound().least()
                && test.bound().part() == LoadBound.Part.AXLES
                && judge.loads().axles().get(test.bound().first()).place().kind() == AxleKind.BOOSTER;
    }

    /** Whether the hydraulics hold the deck front in a state, as for a raise; true when nothing is known of it. */
    public boolean holdsFront(State state) {
        Optional<LoadJudge> judge = judge(state);
        Optional<Weights.FrontLift> lift = stance.weights().flatMap(Weights::frontLift);
        return judge.isEmpty()
                || lift.isEmpty()
                || Hydraulics.raises(
                        lift.get(), statics(state).deckFrontKg(judge.get().loads()));
    }

    private Statics statics(State state) {
        LoadCase c = cases.get(state);
        return c.statics();
    }

    private Optional<LoadJudge> judge(State state) {
        return judges.computeIfAbsent(state, s -> {
            LoadCase c = loadCase(s);
            cases.put(s, c);
            return c.isKnown() ? Optional.of(new LoadJudge(c)) : Optional.empty();
        });
    }

    private LoadCase loadCase(State state) {
        boolean withoutAir = state.booster == BoosterState.TRAILING && !state.air;
        if (withoutAir && stance.weights().flatMap(Weights::booster).isPresent()) {
            return new LoadCase(stance, state.lift, state.booster, stance.weights(), 0, Optional.empty());
        }
        return LoadCase.of(stance, state.lift, state.booster);
    }
}
