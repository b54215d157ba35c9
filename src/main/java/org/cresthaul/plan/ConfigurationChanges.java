package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.check.LoadReport;
import org.cresthaul.check.LoadSheet;
import org.cresthaul.check.Report;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.route.StoppingPlace;

/** The configurations of a report with everything there is to set, and what it takes to go from one to another. */
final class ConfigurationChanges {
    /** Room to walk and to back a booster up, beyond the longer combination: 30 ft, this program's choice. */
    static final double BOOSTER_ROOM_M = 9.144;

    private final List<Plan.SetUp> setUps;
    private final List<State> states;
    private final PlanTimes times;
    private final Map<Place, WayCosts.Changes> tables = new HashMap<>();

    /** What a stop allows. */
    private record Place(boolean setUpArea, double roomM) {}

    ConfigurationChanges(LevelStance stance, Report report, PlanTimes times) {
        this.times = times;
        setUps = report.configurations().stream().map(c -> setUp(c, stance, report)).toList();
        states = setUps.stream().map(State::of).toList();
    }

    private static Plan.SetUp setUp(Report.ConfigurationVerdict c, LevelStance stance, Report report) {
        BoosterState state = stance.boosterStates().stream()
                .filter(b -> b.word().equals(c.booster()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the report is of another rig: " + c.key()));
        Optional<LoadSheet> sheet = report.loads().states().stream()
                .filter(s -> s.lift().equals(c.lift()) && s.booster().equals(c.booster()))
                .findFirst()
                .map(LoadReport.StateLoads::sheet);
        return new Plan.SetUp(
                c.key(),
                c.label(),
                c.lift(),
                c.axles(),
                c.booster(),
                c.notch(),
                CombinationLength.metres(stance, state),
                sheet.map(LoadSheet::regulator).map(LoadSheet.RegulatorLine::setPa).orElse(null),
                sheet.flatMap(s -> s.shims().stream().filter(LoadSheet.ShimLine::fitted).findFirst())
                        .map(l -> new Plan.Shim(l.shim(), l.thicknessM()))
                        .orElse(null));
    }

    List<Plan.SetUp> setUps() {
        return setUps;
    }

    double longestM() {
        return setUps.stream().mapToDouble(Plan.SetUp::lengthM).max().orElseThrow();
    }

    /** What the changes from each configuration to each other take at a stop. */
    WayCosts.Changes at(StoppingPlace stop) {
        return tables.computeIfAbsent(new Place(stop.setUpArea(), stop.roomM()), this::table);
    }

    private WayCosts.Changes table(Place place) {
        int n = setUps.size();
        long[][] seconds = new long[n][n];
        Map<State, Map<State, Long>> known = new HashMap<>();
        for (int from = 0; from < n; from++) {
            Plan.SetUp a = setUps.get(from);
            Map<State, Long> ofState = known.computeIfAbsent(states.get(from), s -> new HashMap<>());
            for (int to = 0; to < n; to++) {
                Plan.SetUp b = setUps.get(to);
                long other = a.notch().equals(b.notch()) ? 0 : times.notch();
                seconds[from][to] = isPossible(a, b, place)
                        ? other + ofState.computeIfAbsent(states.get(to), s -> seconds(a, b) - other)
                        : -1;
            }
        }
        return new WayCosts.Changes(seconds);
    }

    /** What of a set-up matters to a change besides its notch. */
    private record State(String booster, String lift, Plan.Shim shim) {
        static State of(Plan.SetUp setUp) {
            return new State(setUp.booster(), setUp.lift(), setUp.shim());
        }
    }

    private static boolean isPossible(Plan.SetUp from, Plan.SetUp to, Place place) {
        double longerM = Math.max(from.lengthM(), to.lengthM());
        return from.booster().equals(to.booster())
                ? place.roomM >= longerM
                : place.setUpArea && place.roomM >= longerM + BOOSTER_ROOM_M;
    }

    long seconds(Plan.SetUp from, Plan.SetUp to) {
        return times.stop() + actions(from, to).stream().mapToLong(Plan.Action::seconds).sum();
    }

    /** What is done, in the order it is done: the booster's air before it moves, the booster, then axle and notch. */
    List<Plan.Action> actions(Plan.SetUp from, Plan.SetUp to) {
        List<Plan.Action> actions = new ArrayList<>();
        boolean trailed = is(from, BoosterState.TRAILING);
        boolean trails = is(to, BoosterState.TRAILING);
        if (trailed && !trails) {
            actions.add(new Plan.Action("regulator", "let the booster's regulated air out", times.regulator()));
            if (hasShim(from)) {
                actions.add(new Plan.Action("shim", "take the shim out: " + from.shim().name(), times.shim()));
            }
        }
        if (!from.booster().equals(to.booster())) {
            addBooster(actions, from, to);
        }
        if (trails && !trailed) {
            if (hasShim(to)) {
                actions.add(new Plan.Action("shim", "fit the shim: " + to.shim().name(), times.shim()));
            }
            actions.add(new Plan.Action("regulator", "set the booster's regulator", times.regulator()));
        }
        if (!from.lift().equals(to.lift())) {
            actions.add(new Plan.Action("lift axle",
                    to.lift().equals(LiftState.UP.word()) ? "raise the lift axle" : "lower the lift axle",
                    times.liftAxle()));
        }
        if (!from.notch().equals(to.notch())) {
            actions.add(new Plan.Action("notch", "notch " + from.notch() + " to notch " + to.notch(), times.notch()));
        }
        return actions;
    }

    private void addBooster(List<Plan.Action> actions, Plan.SetUp from, Plan.SetUp to) {
        boolean close = is(from, BoosterState.CLOSE_COUPLED);
        boolean stays = is(to, BoosterState.TRAILING) || is(to, BoosterState.CLOSE_COUPLED);
        if (close) {
            actions.add(new Plan.Action(
                    "open close-coupling", "open the booster's close-coupling", times.openCloseCoupling()));
        }
        if (!stays && (close || is(from, BoosterState.TRAILING))) {
            actions.add(new Plan.Action("uncouple booster", "uncouple the booster", times.uncoupleBooster()));
        }
        if (is(from, BoosterState.CARRIED)) {
            actions.add(new Plan.Action("unload booster", "unload the booster", times.unloadBooster()));
        }
        if (stays && !close && !is(from, BoosterState.TRAILING)) {
            actions.add(new Plan.Action("couple booster",
                    is(from, BoosterState.NONE) ? "couple the booster, which must have been brought here" : "couple the booster",
                    times.coupleBooster()));
        }
        if (is(to, BoosterState.CLOSE_COUPLED)) {
            actions.add(new Plan.Action("close-couple booster", "close-couple the booster", times.closeCouple()));
        }
        if (is(to, BoosterState.CARRIED)) {
            actions.add(new Plan.Action("load booster",
                    is(from, BoosterState.NONE) ? "load the booster, which must have been brought here" : "load the booster",
                    times.loadBooster()));
        }
    }

    private static boolean is(Plan.SetUp setUp, BoosterState state) {
        return setUp.booster().equals(state.word());
    }

    private static boolean hasShim(Plan.SetUp setUp) {
        return setUp.shim() != null && setUp.shim().hasThickness();
    }
}
