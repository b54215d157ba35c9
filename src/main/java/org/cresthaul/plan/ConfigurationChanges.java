package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.check.CheckedConfiguration;
import org.cresthaul.check.StandingLoads;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Report;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftAxle;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.route.StoppingPlace;

/** The configurations of a report with everything there is to set, and what it takes to go from one to another. */
final class ConfigurationChanges {
    /** Room to walk and to back a booster up, beyond the longer combination: 30 ft, this program's choice. */
    static final double BOOSTER_ROOM_M = 9.144;

    private final List<Plan.SetUp> setUps;
    private final List<State> states;
    private final double longestM;
    private final PlanTimes times;
    private final Map<StopTerms, WayCosts.Changes> tables = new HashMap<>();
    private final Map<Refused, List<Sentence>> refused = new HashMap<>();

    private final Map<Asked, ChangeOrder.Result> orders = new HashMap<>();
    private final StandingLoads loads;
    private final LiftAxles lift;

    /** What a stop allows, and what holds there. */
    private record StopTerms(boolean setUpArea, double roomM, List<Integer> limits) {}

    /** What is not offered there, among configurations that may be used. */
    private record Refused(StopTerms place, BitSet usable) {}

    /** What an order depends on. */
    private record Asked(State from, State to, boolean notch, boolean setUpArea, List<Integer> limits) {}

    ConfigurationChanges(LevelStance stance, Report report, PlanTimes times, StandingLoads loads) {
        this.times = times;
        this.loads = loads;
        lift = stance.trailer().lift();
        setUps = report.configurations().stream()
                .map(c -> setUp(c, stance, report))
                .toList();
        states = setUps.stream().map(State::of).toList();
        longestM = setUps.stream().mapToDouble(Plan.SetUp::lengthM).max().orElseThrow();
    }

    private static Plan.SetUp setUp(ConfigurationVerdict c, LevelStance stance, Report report) {
        BoosterState state = c.booster();
        if (!stance.boosterStates().contains(state)) {
            throw new IllegalArgumentException("the report is of another rig: " + c.key());
        }
        Optional<LoadSheet> sheet = report.loads().states().stream()
                .filter(s -> s.lift().equals(c.lift()) && s.booster() == c.booster())
                .findFirst()
                .map(LoadReport.StateLoads::sheet);
        return new Plan.SetUp(
                c.key(),
                c.label(),
                c.lift(),
                c.axles(),
                c.booster(),
                c.notch(),
                CombinationLength.meters(stance, state),
                sheet.map(LoadSheet::regulator)
                        .map(LoadSheet.RegulatorLine::setPa)
                        .orElse(null),
                sheet.flatMap(s -> s.shims().stream()
                                .filter(LoadSheet.ShimLine::fitted)
                                .findFirst())
                        .map(l -> new Plan.Shim(l.shim(), l.thicknessM()))
                        .orElse(null));
    }

    long shimSeconds() {
        return times.shim();
    }

    List<Plan.SetUp> setUps() {
        return setUps;
    }

    double longestM() {
        return longestM;
    }

    /** What the changes from each configuration to each other take at a stop. */
    WayCosts.Changes at(StoppingPlace stop) {
        return tables.computeIfAbsent(place(stop), place -> table(place, stop));
    }

    private StopTerms place(StoppingPlace stop) {
        return new StopTerms(
                stop.setUpArea(), stop.roomM(), loads.limitsAt(stop.place().chainageM(), longestM));
    }

    private WayCosts.Changes table(StopTerms place, StoppingPlace stop) {
        int n = setUps.size();
        long[][] seconds = new long[n][n];
        Map<State, Map<State, Long>> known = new HashMap<>();
        for (int from = 0; from < n; from++) {
            Plan.SetUp a = setUps.get(from);
            Map<State, Long> ofState = known.computeIfAbsent(states.get(from), s -> new HashMap<>());
            Map<State, Long> withNotch = known.computeIfAbsent(states.get(from).moved(), s -> new HashMap<>());
            for (int to = 0; to < n; to++) {
                Plan.SetUp b = setUps.get(to);
                seconds[from][to] = isPossible(a, b, stop)
                        ? (a.notch().equals(b.notch()) ? ofState : withNotch)
                                .computeIfAbsent(
                                        states.get(to),
                                        s -> order(a, b, stop).order().isPresent() ? seconds(a, b, stop) : -1)
                        : -1;
            }
        }
        return new WayCosts.Changes(seconds);
    }

    /** What of a set-up matters to a change besides its notch. */
    private record State(BoosterState booster, LiftState lift, Plan.Shim shim, boolean notchMoves) {
        static State of(Plan.SetUp setUp) {
            return new State(setUp.booster(), setUp.lift(), setUp.shim(), false);
        }

        State moved() {
            return new State(booster, lift, shim, true);
        }
    }

    private static boolean isPossible(Plan.SetUp from, Plan.SetUp to, StoppingPlace place) {
        double longerM = Math.max(from.lengthM(), to.lengthM());
        return from.booster() == to.booster()
                ? place.roomM() >= longerM
                : place.setUpArea() && place.roomM() >= longerM + BOOSTER_ROOM_M;
    }

    long seconds(Plan.SetUp from, Plan.SetUp to, StoppingPlace stop) {
        return times.stop()
                + actions(from, to, stop).stream()
                        .mapToLong(Plan.Action::seconds)
                        .sum();
    }

    /** What is done, in the order in which no state in between breaks anything; only where there is one. */
    List<Plan.Action> actions(Plan.SetUp from, Plan.SetUp to, StoppingPlace stop) {
        return order(from, to, stop).order().orElseThrow();
    }

    private ChangeOrder.Result order(Plan.SetUp from, Plan.SetUp to, StoppingPlace stop) {
        double frontM = stop.place().chainageM();
        boolean notch = !from.notch().equals(to.notch());
        Asked asked =
                new Asked(State.of(from), State.of(to), notch, stop.setUpArea(), loads.limitsAt(frontM, longestM));
        ChangeOrder.Result known = orders.computeIfAbsent(asked, x -> {
            ChangeOrder.Result onRoad = order(from, to, frontM, true);
            if (onRoad.order().isPresent() || !stop.setUpArea()) {
                return onRoad;
            }
            // Off the road its limits are not held in between, as the maker's ratings are; but the plan says so.
            ChangeOrder.Result offRoad = order(from, to, frontM, false);
            return offRoad.order().isPresent() ? new ChangeOrder.Result(offRoad.order(), onRoad.why()) : offRoad;
        });
        // Asked alike, but between other notches.
        return notch
                ? new ChangeOrder.Result(
                        known.order()
                                .map(o -> o.stream()
                                        .map(a -> a.action() == ActionKind.NOTCH ? notchAction(from, to) : a)
                                        .toList()),
                        known.why())
                : known;
    }

    private ChangeOrder.Result order(Plan.SetUp from, Plan.SetUp to, double frontM, boolean onRoad) {
        return new ChangeOrder(state -> loads.broken(state, frontM, longestM, onRoad), loads::holdsFront)
                .find(
                        from,
                        to,
                        boosterActions(from, to),
                        liftActions(from.lift(), to.lift()),
                        notch(from, to),
                        lowered(from, to));
    }

    /**
     * Which limit of the road is passed in between at a set-up area, since no order keeps it; empty where it is kept.
     */
    Optional<ChangeOrder.Why> passedInBetween(Plan.SetUp from, Plan.SetUp to, StoppingPlace stop) {
        return order(from, to, stop).why().stream().findFirst();
    }

    /**
     * Changes between states that a stop would have room for, but that are not offered there: why, each once.
     *
     * @param usable by configuration
     */
    List<Sentence> notOffered(StoppingPlace stop, BitSet usable) {
        // Stops that allow the same refuse the same: there may be a thousand of them.
        return refused.computeIfAbsent(
                new Refused(place(stop), (BitSet) usable.clone()), x -> listNotOffered(stop, usable));
    }

    private List<Sentence> listNotOffered(StoppingPlace stop, BitSet usable) {
        Map<Sentence, Sentence> told = new LinkedHashMap<>();
        // Configurations that differ by nothing but their notch are asked once.
        Set<List<Object>> asked = new HashSet<>();
        usable.stream()
                .forEach(from -> usable.stream()
                        .filter(to -> from != to
                                && asked.add(List.of(
                                        states.get(from),
                                        states.get(to),
                                        setUps.get(from)
                                                .notch()
                                                .equals(setUps.get(to).notch()))))
                        .filter(to -> isPossible(setUps.get(from), setUps.get(to), stop))
                        .forEach(to -> {
                            Plan.SetUp a = setUps.get(from);
                            Plan.SetUp b = setUps.get(to);
                            ChangeOrder.Result result = order(a, b, stop);
                            if (result.order().isEmpty()) {
                                told.putIfAbsent(
                                        words(a, b), result.why().get(0).words());
                            }
                        }));
        return told.entrySet().stream()
                .map(e -> Sentence.of(Code.PLAN_NOT_OFFERED)
                        .with("change", e.getKey())
                        .with("why", e.getValue()))
                .toList();
    }

    private static Sentence words(Plan.SetUp a, Plan.SetUp b) {
        return State.of(a).equals(State.of(b))
                ? Sentence.of(Code.CHANGE_NOTCH).with("state", state(a))
                : Sentence.of(Code.CHANGE_FROM_TO).with("from", state(a)).with("to", state(b));
    }

    private static Sentence state(Plan.SetUp s) {
        Code code =
                switch (s.booster()) {
                    case NONE -> Code.STATE_NO_BOOSTER;
                    case TRAILING -> Code.STATE_TRAILING;
                    case CLOSE_COUPLED -> Code.STATE_CLOSE_COUPLED;
                    case CARRIED -> Code.STATE_CARRIED;
                };
        return Sentence.of(code).with("axles", CheckedConfiguration.axles(s.axles(), s.lift()));
    }

    /** The booster's air before it moves, then the booster. */
    private List<Plan.Action> boosterActions(Plan.SetUp from, Plan.SetUp to) {
        List<Plan.Action> actions = new ArrayList<>();
        boolean trailed = is(from, BoosterState.TRAILING);
        boolean trails = is(to, BoosterState.TRAILING);
        if (trailed && !trails) {
            actions.add(new Plan.Action(ActionKind.REGULATOR, Sentence.of(Code.ACT_AIR_OUT), times.regulator()));
            if (hasShim(from)) {
                actions.add(new Plan.Action(
                        ActionKind.SHIM,
                        Sentence.of(Code.ACT_SHIM_OUT).with("plate", from.shim().name()),
                        times.shim()));
            }
        }
        if (from.booster() != to.booster()) {
            addBooster(actions, from, to);
        }
        if (trails && !trailed) {
            if (hasShim(to)) {
                actions.add(new Plan.Action(
                        ActionKind.SHIM,
                        Sentence.of(Code.ACT_SHIM_IN).with("plate", to.shim().name()),
                        times.shim()));
            }
            actions.add(new Plan.Action(ActionKind.REGULATOR, Sentence.of(Code.ACT_REGULATOR), times.regulator()));
        }
        return actions;
    }

    private Optional<Plan.Action> notch(Plan.SetUp from, Plan.SetUp to) {
        return from.notch().equals(to.notch()) ? Optional.empty() : Optional.of(notchAction(from, to));
    }

    /** Straight from one to the other where axles only go up or only come down, else with all down in between. */
    private List<ChangeOrder.Lift> liftActions(LiftState from, LiftState to) {
        if (from.equals(to)) {
            return List.of();
        }
        List<LiftAxle> before = lift.up(from);
        List<LiftAxle> after = lift.up(to);
        return before.containsAll(after) || after.containsAll(before)
                ? List.of(liftAction(from, to))
                : List.of(liftAction(from, LiftState.DOWN), liftAction(LiftState.DOWN, to));
    }

    /** One of them at least goes up, or comes down; none does the other. */
    private ChangeOrder.Lift liftAction(LiftState from, LiftState to) {
        List<LiftAxle> moved = new ArrayList<>(lift.up(to));
        boolean up = moved.size() > lift.up(from).size();
        if (up) {
            moved.removeAll(lift.up(from));
        } else {
            moved = new ArrayList<>(lift.up(from));
            moved.removeAll(lift.up(to));
        }
        Sentence told = lift.axles().size() == 1
                ? Sentence.of(up ? Code.ACT_LIFT_UP : Code.ACT_LIFT_DOWN)
                : Sentence.of(up ? Code.ACT_RAISE : Code.ACT_LOWER)
                        .with(
                                "axles",
                                CheckedConfiguration.numbered(
                                        moved.stream().map(a -> a.index() + 1).toList()));
        return new ChangeOrder.Lift(new Plan.Action(ActionKind.LIFT_AXLE, told, moved.size() * times.liftAxle()), to);
    }

    private Plan.Action notchAction(Plan.SetUp from, Plan.SetUp to) {
        return new Plan.Action(
                ActionKind.NOTCH,
                Sentence.of(Code.ACT_NOTCH).with("from", from.notch()).with("to", to.notch()),
                times.notch());
    }

    /** Every lift axle down for the time being, where some are up before and after. */
    private List<ChangeOrder.Lift> lowered(Plan.SetUp from, Plan.SetUp to) {
        return from.lift().isUp() && to.lift().isUp()
                ? List.of(liftAction(from.lift(), LiftState.DOWN), liftAction(LiftState.DOWN, to.lift()))
                : List.of();
    }

    private void addBooster(List<Plan.Action> actions, Plan.SetUp from, Plan.SetUp to) {
        boolean close = is(from, BoosterState.CLOSE_COUPLED);
        boolean stays = is(to, BoosterState.TRAILING) || is(to, BoosterState.CLOSE_COUPLED);
        if (close) {
            actions.add(new Plan.Action(
                    ActionKind.OPEN_CLOSE_COUPLING, Sentence.of(Code.ACT_OPEN), times.openCloseCoupling()));
        }
        if (!stays && (close || is(from, BoosterState.TRAILING))) {
            actions.add(new Plan.Action(ActionKind.UNCOUPLE, Sentence.of(Code.ACT_UNCOUPLE), times.uncoupleBooster()));
        }
        if (is(from, BoosterState.CARRIED)) {
            actions.add(new Plan.Action(ActionKind.UNLOAD, Sentence.of(Code.ACT_UNLOAD), times.unloadBooster()));
        }
        if (stays && !close && !is(from, BoosterState.TRAILING)) {
            actions.add(new Plan.Action(
                    ActionKind.COUPLE,
                    Sentence.of(is(from, BoosterState.NONE) ? Code.ACT_COUPLE_BROUGHT : Code.ACT_COUPLE),
                    times.coupleBooster()));
        }
        if (is(to, BoosterState.CLOSE_COUPLED)) {
            actions.add(
                    new Plan.Action(ActionKind.CLOSE_COUPLE, Sentence.of(Code.ACT_CLOSE_COUPLE), times.closeCouple()));
        }
        if (is(to, BoosterState.CARRIED)) {
            actions.add(new Plan.Action(
                    ActionKind.LOAD,
                    Sentence.of(is(from, BoosterState.NONE) ? Code.ACT_LOAD_BROUGHT : Code.ACT_LOAD),
                    times.loadBooster()));
        }
    }

    private static boolean is(Plan.SetUp setUp, BoosterState state) {
        return setUp.booster() == state;
    }

    private static boolean hasShim(Plan.SetUp setUp) {
        return setUp.shim() != null && setUp.shim().hasThickness();
    }
}
