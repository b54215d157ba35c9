package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.cresthaul.check.BrokenRule;
import org.cresthaul.check.StandingLoads.State;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;

/**
 * Puts the actions of a change in an order in which no state in between breaks a limit, a rating or a brake's least
 * load, and the hydraulics hold the deck front where it is moved to another notch. What is done to the booster keeps
 * its order; lift axle and notch go in where they may. What both ends break already is not held against a state in
 * between.
 */
final class ChangeOrder {
    private final Function<State, List<BrokenRule>> broken;
    private final Predicate<State> holdsFront;

    /** An order, or why there is none. */
    record Result(Optional<List<Plan.Action>> order, List<Why> why) {}

    /**
     * Why an order will not do.
     *
     * @param rule what a state in between breaks; empty where the hydraulics do not hold the deck front
     */
    record Why(Optional<BrokenRule> rule) {
        static final Why NOT_HELD = new Why(Optional.empty());

        Sentence words() {
            return rule.map(BrokenRule::words).orElse(Sentence.of(Code.NOT_HELD));
        }

        /** As that limit is told where it is plain that it is passed. */
        Sentence named() {
            return rule.filter(r -> r.how() == BrokenRule.How.OVER)
                    .map(BrokenRule::named)
                    .orElseGet(this::words);
        }
    }

    /** What is done to the lift axles at once, and what it leaves. */
    record Lift(Plan.Action action, LiftState to) {}

    ChangeOrder(Function<State, List<BrokenRule>> broken, Predicate<State> holdsFront) {
        this.broken = broken;
        this.holdsFront = holdsFront;
    }

    /**
     * @param booster what is done to the booster, its air and its shim, in order
     * @param lift what is done to the lift axles, in order; empty when they stay
     * @param notch empty when it stays
     * @param lowered every lift axle down for the time being and up again, where some are up before and after; else
     *     empty
     */
    Result find(
            Plan.SetUp from,
            Plan.SetUp to,
            List<Plan.Action> booster,
            List<Lift> lift,
            Optional<Plan.Action> notch,
            List<Lift> lowered) {
        Set<BrokenRule> allowed = new HashSet<>(broken.apply(start(from)));
        allowed.addAll(broken.apply(start(to)));
        Set<Why> why = new LinkedHashSet<>();
        List<Plan.Action> others = new ArrayList<>(actions(lift));
        notch.ifPresent(others::add);
        List<LiftState> states = lift.stream().map(Lift::to).toList();
        for (List<Plan.Action> order : orders(booster, others)) {
            if (isSound(from, order, states, allowed, why)) {
                return new Result(Optional.of(order), List.of());
            }
        }
        if (!lowered.isEmpty()) {
            List<LiftState> down = lowered.stream().map(Lift::to).toList();
            for (List<Plan.Action> between : orders(booster, notch.stream().toList())) {
                List<Plan.Action> order = new ArrayList<>(between);
                order.add(0, lowered.get(0).action());
                order.add(lowered.get(1).action());
                if (isSound(from, order, down, allowed, why)) {
                    return new Result(Optional.of(order), List.of());
                }
            }
        }
        return new Result(Optional.empty(), List.copyOf(why));
    }

    private static List<Plan.Action> actions(List<Lift> lift) {
        return lift.stream().map(Lift::action).toList();
    }

    private static State start(Plan.SetUp set) {
        return new State(set.lift(), set.booster(), set.booster() == BoosterState.TRAILING);
    }

    /** Each of the others as late as can be first: the usual order is booster, lift axle, notch. */
    private static List<List<Plan.Action>> orders(List<Plan.Action> booster, List<Plan.Action> others) {
        List<List<Plan.Action>> orders = new ArrayList<>(List.of(booster));
        for (Plan.Action other : others) {
            List<List<Plan.Action>> more = new ArrayList<>();
            for (int late = 0; late <= booster.size() + others.size(); late++) {
                for (List<Plan.Action> order : orders) {
                    int at = order.size() - late;
                    if (at >= 0 && !isAheadOfEarlier(order, at, other)) {
                        List<Plan.Action> longer = new ArrayList<>(order);
                        longer.add(at, other);
                        more.add(longer);
                    }
                }
            }
            orders = more;
        }
        return orders;
    }

    /** What is done to the lift axles keeps its order. */
    private static boolean isAheadOfEarlier(List<Plan.Action> order, int at, Plan.Action other) {
        return other.action() == ActionKind.LIFT_AXLE
                && order.subList(at, order.size()).stream().anyMatch(a -> a.action() == ActionKind.LIFT_AXLE);
    }

    /** @param lifts what the actions on the lift axles leave, in their order */
    private boolean isSound(
            Plan.SetUp from, List<Plan.Action> order, List<LiftState> lifts, Set<BrokenRule> allowed, Set<Why> why) {
        State at = start(from);
        Iterator<LiftState> lift = lifts.iterator();
        for (Plan.Action action : order) {
            if (action.action() == ActionKind.NOTCH && !holdsFront.test(at)) {
                why.add(Why.NOT_HELD);
                return false;
            }
            at = after(at, action, lift);
            for (BrokenRule b : broken.apply(at)) {
                if (!allowed.contains(b)) {
                    why.add(new Why(Optional.of(b)));
                    return false;
                }
            }
        }
        return true;
    }

    /** What an action leaves. */
    private static State after(State at, Plan.Action action, Iterator<LiftState> lifts) {
        BoosterState trailing = BoosterState.TRAILING;
        return switch (action.action()) {
            case LIFT_AXLE -> new State(lifts.next(), at.booster(), at.air());
            case REGULATOR -> new State(at.lift(), at.booster(), !at.air());
            case OPEN_CLOSE_COUPLING, COUPLE -> new State(at.lift(), trailing, false);
            case CLOSE_COUPLE -> new State(at.lift(), BoosterState.CLOSE_COUPLED, false);
            case UNCOUPLE, UNLOAD -> new State(at.lift(), BoosterState.NONE, false);
            case LOAD -> new State(at.lift(), BoosterState.CARRIED, false);
            case PLATE, NOTCH, SHIM -> at;
        };
    }
}
