package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.check.StandingLoads;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.language.English;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Leg;
import org.cresthaul.route.Route;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/** The order of actions at a stop, each state in between reckoned here from the statics and the ratings alone. */
class ChangeOrderTest {
    private static final StoppingPlace STOP = PlanCase.stop("P1", 1000, true, 200);
    private static final WeightLimits GENEROUS = new WeightLimits(
            "generous",
            "invented",
            LocalDate.of(2026, 1, 1),
            OptionalDouble.of(500_000),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            new TreeMap<>(),
            new TreeMap<>(),
            List.of(),
            false);

    private record Changes(LevelStance stance, ConfigurationChanges changes, List<String> notOffered) {
        boolean isKept(String lift, String booster, boolean air) {
            return new StandingOracle(stance)
                    .broken(new StandingOracle.State(lift, booster, air))
                    .isEmpty();
        }

        /** Whether an order passes through nothing that is not kept at both ends. */
        boolean isSound(Plan.SetUp from, Plan.SetUp to, List<String> order) {
            return new StandingOracle(stance).isSound(held(from), held(to), order, s -> Set.of());
        }
    }

    private static StandingOracle.Held held(Plan.SetUp s) {
        return new StandingOracle.Held(s.lift().word(), s.booster().word(), s.notch());
    }

    private static Changes changes(String trailerRating, String takeOff) throws Exception {
        String text = Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"));
        text = JsonEdit.edit(text, "/stances/0/weights/ratings/axles/trailer", "\"" + trailerRating + "\"");
        text = JsonEdit.edit(text, "/stances/0/weights/frontLift/takeOff", "\"" + takeOff + "\"");
        Rig rig = RigFile.parse(text);
        ConfigurationChanges changes = at(STOP, rig);
        BitSet all = new BitSet();
        all.set(0, changes.setUps().size());
        return new Changes(rig.stances().get(0), changes, English.of(changes.notOffered(STOP, all)));
    }

    /** On a route with generous limits and one stop. */
    static ConfigurationChanges at(StoppingPlace stop, Rig rig) {
        LevelStance stance = rig.stances().get(0);
        Route route = new Route(
                "Invented",
                "",
                PlanCase.LINE,
                List.of(new Leg("all", 0, PlanCase.LINE.size() - 1, 0, PlanCase.LINE.lengthM())),
                List.of(),
                List.of(stop),
                Optional.of(GENEROUS));
        Report report = RouteCheck.check(new Haul(route, rig, stance, Margins.defaults()), new Inputs("0", "0"));
        return new ConfigurationChanges(stance, report, PlanTimes.defaults(), new StandingLoads(route, stance));
    }

    private static List<List<String>> everyOrder(Plan.SetUp from, Plan.SetUp to) {
        List<List<String>> all = new ArrayList<>(StandingOracle.orders(held(from), held(to)));
        all.addAll(StandingOracle.loweredOrders(held(from), held(to)));
        return all;
    }

    private static Plan.SetUp setUp(Changes it, String key) {
        return it.changes.setUps().stream()
                .filter(s -> s.configuration().equals(key))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> words(List<Plan.Action> actions) {
        return actions.stream().map(a -> a.action().word()).toList();
    }

    /** Two axles and no air in the booster carry more than they are rated for: the third comes down first. */
    @Test
    void theLiftAxleComesDownBeforeTheBoostersAirGoesOut() throws Exception {
        Changes it = changes("25,000 lb", "2,350 psi");
        Plan.SetUp from = setUp(it, "up/trailing/4");
        Plan.SetUp to = setUp(it, "down/none/4");
        assertTrue(!it.isKept("up", "trailing", false), "else nothing is put to the test");

        List<Plan.Action> actions = it.changes.actions(from, to, STOP);
        assertEquals(ActionKind.LIFT_AXLE, actions.get(0).action());
        assertTrue(it.isSound(from, to, words(actions)), words(actions).toString());
        assertEquals(
                words(it.changes.actions(to, from, STOP)).indexOf("lift axle"),
                words(actions).size() - 1);
    }

    @Test
    void noNotchIsChangedThatTheTakeOffCannotHoldAndThePlanSaysWhy() throws Exception {
        Changes it = changes("25,000 lb", "100 psi");
        assertTrue(
                it.notOffered.stream().anyMatch(t -> t.startsWith("Another notch") && t.contains("power take-off")),
                it.notOffered.toString());
        List<Plan.SetUp> setUps = it.changes.setUps();
        int a = setUps.indexOf(setUp(it, "down/none/4"));
        int b = setUps.indexOf(setUp(it, "down/none/5"));
        assertTrue(it.changes.at(STOP).from(a)[b] >= WayCosts.NONE);
        assertTrue(changes("25,000 lb", "2,350 psi").changes.at(STOP).from(a)[b] < WayCosts.NONE);
    }

    @Test
    void everyOrderOfEveryChangeIsSoundAndWhereNoneIsOfferedThereIsNone() throws Exception {
        int offered = 0;
        int unusual = 0;
        int none = 0;
        for (String rating :
                List.of("17,000 lb", "19,000 lb", "21,000 lb", "23,000 lb", "25,000 lb", "27,000 lb", "35,000 lb")) {
            for (String takeOff : List.of("1,900 psi", "2,100 psi", "2,350 psi")) {
                Changes it = changes(rating, takeOff);
                for (Plan.SetUp from : it.changes.setUps()) {
                    for (Plan.SetUp to : it.changes.setUps()) {
                        boolean ends = it.isKept(
                                        from.lift().word(), from.booster().word(), true)
                                && it.isKept(to.lift().word(), to.booster().word(), true);
                        if (from == to
                                || !List.of("3", "4").contains(from.notch())
                                || !List.of("3", "4").contains(to.notch())
                                || !ends) {
                            continue;
                        }
                        String what = rating + " " + takeOff + " " + from.configuration() + " to " + to.configuration();
                        int f = it.changes.setUps().indexOf(from);
                        int t = it.changes.setUps().indexOf(to);
                        if (it.changes.at(STOP).from(f)[t] < WayCosts.NONE) {
                            List<String> order = words(it.changes.actions(from, to, STOP));
                            assertTrue(it.isSound(from, to, order), what + ": " + order);
                            offered++;
                            unusual += order.indexOf("lift axle") == 0 && order.size() > 1 ? 1 : 0;
                        } else {
                            none++;
                            for (List<String> order : everyOrder(from, to)) {
                                assertTrue(!it.isSound(from, to, order), what + " could be " + order);
                            }
                        }
                    }
                }
            }
        }
        System.out.println(
                offered + " changes offered, " + unusual + " with the lift axle first, " + none + " not offered");
        assertTrue(offered > 200 && unusual > 10 && none > 50, offered + " " + unusual + " " + none);
    }
}
