package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.axleload.AxleLoads;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.route.Stretch;

/**
 * The rules of docs/model.md for changes at a stop: what one takes, and whether it can be made there, with every order
 * of it tried where the weights are known. No shared code with the planner.
 */
final class ChangeOracle {
    private static final double FOOT_M = 0.3048;

    private final PlanCase it;
    private final PlanTimes t;
    private final double longestM;
    private final Optional<StandingOracle> standing;
    private final Map<StandingOracle.State, AxleLoads> loads = new HashMap<>();
    private int passedOnlyOffRoad;
    private int refusedInBetween;

    ChangeOracle(PlanCase it, double longestM) {
        this.it = it;
        this.longestM = longestM;
        t = it.options().times();
        standing = it.stance().weights().map(w -> new StandingOracle(it.stance()));
    }

    int passedOnlyOffRoad() {
        return passedOnlyOffRoad;
    }

    int refusedInBetween() {
        return refusedInBetween;
    }

    private static StandingOracle.Held held(ConfigurationVerdict c) {
        return new StandingOracle.Held(c.lift().word(), c.booster().word(), c.notch());
    }

    /** Seconds of a change at a stop where the combination is at no place, negative when it cannot be made. */
    long seconds(ConfigurationVerdict from, ConfigurationVerdict to, double longerM, StoppingPlace stop) {
        boolean same = from.booster() == to.booster();
        if (same ? stop.roomM() < longerM : !stop.setUpArea() || stop.roomM() < longerM + 30 * FOOT_M) {
            return -1;
        }
        List<List<String>> orders = StandingOracle.orders(held(from), held(to));
        if (standing.isEmpty()) {
            return seconds(orders.get(0));
        }
        for (boolean onRoad : stop.setUpArea() ? new boolean[] {true, false} : new boolean[] {true}) {
            for (List<List<String>> some : List.of(orders, StandingOracle.loweredOrders(held(from), held(to)))) {
                for (List<String> order : some) {
                    if (standing.get()
                            .isSound(held(from), held(to), order, s -> onRoad ? brokenOnRoad(s, stop) : Set.of())) {
                        passedOnlyOffRoad += onRoad ? 0 : 1;
                        return seconds(order);
                    }
                }
            }
        }
        refusedInBetween++;
        return -1;
    }

    private long seconds(List<String> order) {
        return t.stop()
                + order.stream()
                        .mapToLong(action -> switch (action) {
                            case "notch" -> t.notch();
                            case "lift axle" -> t.liftAxle();
                            case "regulator" -> t.regulator();
                            case "couple booster" -> t.coupleBooster();
                            case "uncouple booster" -> t.uncoupleBooster();
                            case "close-couple booster" -> t.closeCouple();
                            case "open close-coupling" -> t.openCloseCoupling();
                            default -> throw new IllegalArgumentException(action);
                        })
                        .sum();
    }

    /** Limits that hold at a stop and are not kept, by name: gross and single axles, which is what these cases have. */
    private Set<String> brokenOnRoad(StandingOracle.State s, StoppingPlace stop) {
        AxleLoads on = loads.computeIfAbsent(s, standing.orElseThrow()::loads);
        double gross =
                on.axles().stream().mapToDouble(AxleLoads.AxleLoad::loadKg).sum();
        Set<String> broken = new HashSet<>();
        for (WeightLimits limits : holdingAt(stop.place().chainageM())) {
            StandingOracle.add(
                    broken, gross > limits.grossKg().orElse(1e9) + StandingOracle.NOISE, "gross " + limits.source());
            for (AxleLoads.AxleLoad a : on.axles()) {
                StandingOracle.add(
                        broken,
                        a.loadKg() > limits.axleKg().orElse(1e9) + StandingOracle.NOISE,
                        limits.source() + " " + a.place().label());
            }
        }
        return broken;
    }

    private List<WeightLimits> holdingAt(double frontM) {
        List<WeightLimits> sets = new ArrayList<>();
        if (!replaced(frontM - longestM, frontM)) {
            sets.add(it.route().limits().orElseThrow());
        }
        for (Hazard h : it.route().hazards()) {
            if (h instanceof Stretch s && s.fromChainageM() < frontM && s.toChainageM() > frontM - longestM) {
                sets.add(s.limits().orElseThrow());
            }
        }
        return sets;
    }

    /** Whether stretches whose limits hold instead cover a piece of road, as far as it is on the route. */
    boolean replaced(double fromM, double toM) {
        double from = Math.max(0, fromM);
        double to = Math.min(it.route().lengthM(), toM);
        // Every end of a stretch, and the middle between each two of them: is each covered?
        List<Double> ends = new ArrayList<>(List.of(from, to));
        for (Hazard h : it.route().hazards()) {
            if (h instanceof Stretch s && s.replacesOthers()) {
                ends.add(Math.min(to, Math.max(from, s.fromChainageM())));
                ends.add(Math.min(to, Math.max(from, s.toChainageM())));
            }
        }
        ends.sort(Double::compare);
        for (int k = 0; k < ends.size(); k++) {
            double at = k + 1 < ends.size() ? (ends.get(k) + ends.get(k + 1)) / 2 : ends.get(k);
            if (it.route().hazards().stream()
                    .noneMatch(h -> h instanceof Stretch s
                            && s.replacesOthers()
                            && s.fromChainageM() <= at + StandingOracle.NOISE
                            && s.toChainageM() >= at - StandingOracle.NOISE)) {
                return false;
            }
        }
        return true;
    }
}
