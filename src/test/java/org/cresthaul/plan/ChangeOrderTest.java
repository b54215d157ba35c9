package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.cresthaul.axleload.AxleLoads;
import org.cresthaul.axleload.GaugeChart;
import org.cresthaul.axleload.Statics;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.check.Inputs;
import org.cresthaul.check.Margins;
import org.cresthaul.check.Report;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.check.StandingLoads;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigFile;
import org.cresthaul.rig.Weights;
import org.cresthaul.route.Leg;
import org.cresthaul.route.Route;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/** The order of actions at a stop, each state in between reckoned here from the statics and the ratings alone. */
class ChangeOrderTest {
    private static final StoppingPlace STOP = PlanCase.stop("P1", 1000, true, 200);
    private static final WeightLimits GENEROUS = new WeightLimits("generous", "invented", LocalDate.of(2026, 1, 1),
            OptionalDouble.of(500_000), OptionalDouble.empty(), OptionalDouble.empty(), new TreeMap<>(), new TreeMap<>(), List.of(),
            false);

    private record Changes(LevelStance stance, ConfigurationChanges changes, List<String> notOffered) {
        /** What stands on the road with the lift axle and the booster so. */
        AxleLoads loads(String lift, String booster, boolean air) {
            Weights w = stance.weights().orElseThrow();
            double kg = booster.equals("trailing") && air
                    ? new GaugeChart(w.gauges().booster().orElseThrow()).loadKg(w.regulator().orElseThrow().setPa()).orElseThrow()
                    : 0;
            return statics(lift, booster, kg).level();
        }

        private Statics statics(String lift, String booster, double kg) {
            LiftState l = lift.equals("up") ? LiftState.UP : LiftState.DOWN;
            BoosterState b = List.of(BoosterState.values()).stream().filter(x -> x.word().equals(booster)).findFirst().orElseThrow();
            return new Statics(stance, stance.weights().orElseThrow(), l, b, kg);
        }

        /** Ratings of axles, tires and hitch, and enough on every axle that brakes. */
        boolean isKept(String lift, String booster, boolean air) {
            Weights w = stance.weights().orElseThrow();
            AxleLoads loads = loads(lift, booster, air);
            for (AxleLoads.AxleLoad a : loads.axles()) {
                AxleKind kind = a.place().kind();
                boolean slack = kind == AxleKind.BOOSTER && booster.equals("trailing") && !air;
                double side = a.heavierSideKg().orElse(a.loadKg() / 2);
                if (a.loadKg() > rating(w.ratings().axleKg(), kind) || a.loadKg() > rating(w.ratings().tiresKg(), kind)
                        || 2 * side > rating(w.ratings().tiresKg(), kind)
                        || !slack && a.loadKg() < w.leastBrakedKg().orElse(0)) {
                    return false;
                }
            }
            return loads.kingpinKg() >= 0 && loads.kingpinKg() <= w.ratings().hitchKg().orElse(1e9);
        }

        private static double rating(Map<AxleKind, Double> ratings, AxleKind kind) {
            return ratings.getOrDefault(kind, 1e9);
        }

        boolean holds(String lift, String booster, boolean air) {
            Weights w = stance.weights().orElseThrow();
            Weights.FrontLift f = w.frontLift().orElseThrow();
            double front = loads(lift, booster, air).kingpinKg() - w.gooseneck().massKg();
            return f.ratedPa() * front / f.ratedKg() <= f.takeOffPa();
        }

        /** Whether an order passes through nothing that is not kept. */
        boolean isSound(Plan.SetUp from, List<String> order) {
            String lift = from.lift();
            String booster = from.booster();
            boolean air = booster.equals("trailing");
            for (String action : order) {
                switch (action) {
                    case "notch" -> {
                        if (!holds(lift, booster, air)) {
                            return false;
                        }
                    }
                    case "lift axle" -> lift = lift.equals("up") ? "down" : "up";
                    case "regulator" -> air = !air;
                    case "couple booster", "open close-coupling" -> booster = "trailing";
                    case "uncouple booster" -> booster = "none";
                    case "close-couple booster" -> booster = "close-coupled";
                    default -> { }
                }
                if (!isKept(lift, booster, air)) {
                    return false;
                }
            }
            return true;
        }
    }

    private static Changes changes(String trailerRating, String takeOff) throws Exception {
        String text = Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"));
        text = JsonEdit.edit(text, "/stances/0/weights/ratings/axles/trailer", "\"" + trailerRating + "\"");
        text = JsonEdit.edit(text, "/stances/0/weights/frontLift/takeOff", "\"" + takeOff + "\"");
        Rig rig = RigFile.parse(text);
        LevelStance stance = rig.stances().get(0);
        Route route = new Route("Invented", "", PlanCase.LINE, List.of(new Leg("all", 0, PlanCase.LINE.size() - 1, 0,
                PlanCase.LINE.lengthM())), List.of(), List.of(STOP), Optional.of(GENEROUS));
        Report report = RouteCheck.check(route, rig, stance, Margins.defaults(), new Inputs("0", "0"));
        ConfigurationChanges changes =
                new ConfigurationChanges(stance, report, PlanTimes.defaults(), new StandingLoads(route, stance));
        BitSet all = new BitSet();
        all.set(0, changes.setUps().size());
        return new Changes(stance, changes, changes.notOffered(STOP, all));
    }

    private static Plan.SetUp setUp(Changes it, String key) {
        return it.changes.setUps().stream().filter(s -> s.configuration().equals(key)).findFirst().orElseThrow();
    }

    private static List<String> words(List<Plan.Action> actions) {
        return actions.stream().map(Plan.Action::action).toList();
    }

    /** Two axles and no air in the booster carry more than they are rated for: the third comes down first. */
    @Test
    void theLiftAxleComesDownBeforeTheBoostersAirGoesOut() throws Exception {
        Changes it = changes("25,000 lb", "2,350 psi");
        Plan.SetUp from = setUp(it, "up/trailing/4");
        Plan.SetUp to = setUp(it, "down/none/4");
        assertTrue(!it.isKept("up", "trailing", false), "else nothing is put to the test");

        List<Plan.Action> actions = it.changes.actions(from, to, STOP);
        assertEquals("lift axle", actions.get(0).action());
        assertTrue(it.isSound(from, words(actions)), words(actions).toString());
        assertEquals(words(it.changes.actions(to, from, STOP)).indexOf("lift axle"), words(actions).size() - 1);
    }

    @Test
    void noNotchIsChangedThatTheTakeOffCannotHoldAndThePlanSaysWhy() throws Exception {
        Changes it = changes("25,000 lb", "100 psi");
        assertTrue(it.notOffered.stream().anyMatch(t -> t.startsWith("Another notch") && t.contains("power take-off")),
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
        for (String rating : List.of("17,000 lb", "19,000 lb", "21,000 lb", "23,000 lb", "25,000 lb", "27,000 lb", "35,000 lb")) {
            for (String takeOff : List.of("1,900 psi", "2,100 psi", "2,350 psi")) {
                Changes it = changes(rating, takeOff);
                for (Plan.SetUp from : it.changes.setUps()) {
                    for (Plan.SetUp to : it.changes.setUps()) {
                        boolean ends = it.isKept(from.lift(), from.booster(), true) && it.isKept(to.lift(), to.booster(), true);
                        if (from == to || !List.of("3", "4").contains(from.notch()) || !List.of("3", "4").contains(to.notch())
                                || !ends) {
                            continue;
                        }
                        String what = rating + " " + takeOff + " " + from.configuration() + " to " + to.configuration();
                        int f = it.changes.setUps().indexOf(from);
                        int t = it.changes.setUps().indexOf(to);
                        if (it.changes.at(STOP).from(f)[t] < WayCosts.NONE) {
                            List<String> order = words(it.changes.actions(from, to, STOP));
                            assertTrue(it.isSound(from, order), what + ": " + order);
                            offered++;
                            unusual += order.indexOf("lift axle") == 0 && order.size() > 1 ? 1 : 0;
                        } else {
                            none++;
                            for (List<String> order : everyOrder(from, to)) {
                                assertTrue(!it.isSound(from, order), what + " could be " + order);
                            }
                        }
                    }
                }
            }
        }
        System.out.println(offered + " changes offered, " + unusual + " with the lift axle first, " + none + " not offered");
        assertTrue(offered > 200 && unusual > 10 && none > 50, offered + " " + unusual + " " + none);
    }

    private static List<List<String>> everyOrder(Plan.SetUp from, Plan.SetUp to) {
        List<String> booster = switch (from.booster() + " > " + to.booster()) {
            case "trailing > none" -> List.of("regulator", "uncouple booster");
            case "none > trailing" -> List.of("couple booster", "regulator");
            case "trailing > close-coupled" -> List.of("regulator", "close-couple booster");
            case "close-coupled > trailing" -> List.of("open close-coupling", "regulator");
            case "none > close-coupled" -> List.of("couple booster", "close-couple booster");
            case "close-coupled > none" -> List.of("open close-coupling", "uncouple booster");
            default -> List.of();
        };
        List<List<String>> all = new ArrayList<>(List.of(booster));
        if (!from.lift().equals(to.lift())) {
            all = with(all, "lift axle");
        } else if (from.lift().equals("up")) {
            List<List<String>> plain = all;
            all = with(with(all, "lift axle"), "lift axle");
            all.addAll(plain);
        }
        return from.notch().equals(to.notch()) ? all : with(all, "notch");
    }

    private static List<List<String>> with(List<List<String>> orders, String action) {
        List<List<String>> all = new ArrayList<>();
        for (List<String> order : orders) {
            for (int at = 0; at <= order.size(); at++) {
                List<String> longer = new ArrayList<>(order);
                longer.add(at, action);
                all.add(longer);
            }
        }
        return all;
    }
}
