package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.cresthaul.axleload.AxleLoads;
import org.cresthaul.axleload.GaugeChart;
import org.cresthaul.axleload.Statics;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Weights;

/**
 * What stands while a combination is changed, state by state, reckoned from the statics and the ratings alone: every
 * order of every change, and whether it passes through anything that is not kept. Shares no code with the planner.
 */
final class StandingOracle {
    static final double NOISE = 1e-6;

    private final LevelStance stance;
    private final Weights weights;

    /** What is set: words of lift axle and booster, and the notch. */
    record Held(String lift, String booster, String notch) {}

    /** A state that is stood in; {@code air} is that of a trailing booster. */
    record State(String lift, String booster, boolean air) {
        static State of(Held held) {
            return new State(held.lift, held.booster, held.booster.equals("trailing"));
        }
    }

    StandingOracle(LevelStance stance) {
        this.stance = stance;
        weights = stance.weights().orElseThrow();
    }

    static BoosterState booster(String word) {
        return List.of(BoosterState.values()).stream()
                .filter(b -> b.word().equals(word))
                .findFirst()
                .orElseThrow();
    }

    /** Every order there is of what a change takes. */
    static List<List<String>> orders(Held from, Held to) {
        List<String> booster =
                switch (from.booster + " > " + to.booster) {
                    case "trailing > none" -> List.of("regulator", "uncouple booster");
                    case "none > trailing" -> List.of("couple booster", "regulator");
                    case "trailing > close-coupled" -> List.of("regulator", "close-couple booster");
                    case "close-coupled > trailing" -> List.of("open close-coupling", "regulator");
                    case "none > close-coupled" -> List.of("couple booster", "close-couple booster");
                    case "close-coupled > none" -> List.of("open close-coupling", "uncouple booster");
                    default -> List.of();
                };
        List<List<String>> orders = new ArrayList<>(List.of(booster));
        if (!from.lift.equals(to.lift)) {
            orders = with(orders, "lift axle");
        }
        return from.notch.equals(to.notch) ? orders : with(orders, "notch");
    }

    /** The same with a lift axle that is up before and after let down for the time being; none where it is not. */
    static List<List<String>> loweredOrders(Held from, Held to) {
        return from.lift.equals("up") && to.lift.equals("up")
                ? with(with(orders(from, to), "lift axle"), "lift axle")
                : List.of();
    }

    private static List<List<String>> with(List<List<String>> orders, String action) {
        List<List<String>> more = new ArrayList<>();
        for (List<String> order : orders) {
            for (int at = 0; at <= order.size(); at++) {
                List<String> longer = new ArrayList<>(order);
                longer.add(at, action);
                more.add(longer);
            }
        }
        return more;
    }

    /**
     * Whether nothing is broken in between that is not broken at an end, and the front is held while the notch is
     * changed.
     */
    boolean isSound(Held from, Held to, List<String> order, Function<State, Set<String>> onRoad) {
        State at = State.of(from);
        Set<String> allowed = new HashSet<>();
        for (State end : List.of(at, State.of(to))) {
            allowed.addAll(broken(end));
            allowed.addAll(onRoad.apply(end));
        }
        for (String action : order) {
            if (action.equals("notch") && !holdsFront(at)) {
                return false;
            }
            at = switch (action) {
                case "lift axle" -> new State(at.lift.equals("up") ? "down" : "up", at.booster, at.air);
                case "regulator" -> new State(at.lift, at.booster, !at.air);
                case "couple booster", "open close-coupling" -> new State(at.lift, "trailing", false);
                case "uncouple booster" -> new State(at.lift, "none", false);
                case "close-couple booster" -> new State(at.lift, "close-coupled", false);
                default -> at;
            };
            if (!allowed.containsAll(broken(at)) || !allowed.containsAll(onRoad.apply(at))) {
                return false;
            }
        }
        return true;
    }

    private Statics statics(State s) {
        double kg = s.booster.equals("trailing") && s.air
                ? new GaugeChart(weights.gauges().booster().orElseThrow())
                        .loadKg(weights.regulator().orElseThrow().setPa())
                        .orElseThrow()
                : 0;
        return new Statics(
                stance, weights, s.lift.equals("up") ? LiftState.UP : LiftState.DOWN, booster(s.booster), kg);
    }

    AxleLoads loads(State s) {
        return statics(s).level();
    }

    private boolean holdsFront(State s) {
        Weights.FrontLift lift = weights.frontLift().orElseThrow();
        double front = loads(s).kingpinKg() - weights.gooseneck().massKg();
        return lift.ratedPa() * front / lift.ratedKg() <= lift.takeOffPa();
    }

    /** Which ratings and loads of axles that brake are not kept, by name. */
    Set<String> broken(State s) {
        Set<String> broken = new HashSet<>();
        AxleLoads loads = loads(s);
        for (AxleLoads.AxleLoad a : loads.axles()) {
            AxleKind kind = a.place().kind();
            String axle = a.place().label().toString();
            Map<AxleKind, Double> tires = weights.ratings().tiresKg();
            add(broken, a.loadKg() > weights.ratings().axleKg().getOrDefault(kind, 1e9) + NOISE, "axle " + axle);
            add(broken, a.loadKg() > tires.getOrDefault(kind, 1e9) + NOISE, "tires " + axle);
            OptionalDouble side = a.heavierSideKg();
            add(
                    broken,
                    side.isPresent() && 2 * side.getAsDouble() > tires.getOrDefault(kind, 1e9) + 2 * NOISE,
                    "side " + axle);
            boolean slack = kind == AxleKind.BOOSTER && s.booster.equals("trailing") && !s.air;
            add(broken, !slack && a.loadKg() < weights.leastBrakedKg().orElse(0) - NOISE, "light " + axle);
        }
        add(broken, loads.kingpinKg() > weights.ratings().hitchKg().orElse(1e9) + NOISE, "hitch");
        add(broken, loads.kingpinKg() < -NOISE, "hitch carried");
        return broken;
    }

    static void add(Set<String> broken, boolean is, String what) {
        if (is) {
            broken.add(what);
        }
    }
}
