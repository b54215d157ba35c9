package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What more reserve or fewer conditions would cost: a few ways beside the plan's own. */
final class PlanTrades {
    /** Points told beside the plan's own: this program's choice. */
    private static final int MOST = 4;

    private final RouteStates states;
    private final ConfigurationChanges changes;
    private final Admission admission;
    private final BitSet usable;

    PlanTrades(RouteStates states, ConfigurationChanges changes, Admission admission, BitSet usable) {
        this.states = states;
        this.changes = changes;
        this.admission = admission;
        this.usable = usable;
    }

    /**
     * The way itself; the quickest, where that has more conditions; the one with the fewest conditions, where that has
     * fewer; then each the cheapest that leaves more.
     */
    List<Plan.Trade> list(Way way, WayCosts costs) {
        List<Plan.Trade> trades = new ArrayList<>(List.of(trade(way)));
        Plan.Trade own = trades.get(0);
        if (states.conditionsDiffer(usable)) {
            CheapestWay.find(states.costs(WayCosts.Conditions.FREE), usable)
                    .map(this::trade)
                    .filter(t -> t.seconds() < own.seconds())
                    .ifPresent(trades::add);
            CheapestWay.find(states.costs(WayCosts.Conditions.FIRST), usable)
                    .map(this::trade)
                    .filter(t -> t.conditions() < own.conditions())
                    .ifPresent(trades::add);
        }
        double left = LeastReserve.ranked(way, states, admission);
        while (trades.size() <= MOST) {
            Optional<Way> more = CheapestWay.find(costs, usable, left);
            if (more.isEmpty()) {
                break;
            }
            left = LeastReserve.ranked(more.get(), states, admission);
            Plan.Trade trade = trade(more.get());
            if (!trades.contains(trade)) {
                trades.add(trade);
            }
        }
        return trades;
    }

    private Plan.Trade trade(Way way) {
        List<String> keys = new ArrayList<>();
        for (int c : way.configurations()) {
            String key = changes.setUps().get(c).configuration();
            if (keys.isEmpty() || !keys.get(keys.size() - 1).equals(key)) {
                keys.add(key);
            }
        }
        LeastReserve least = LeastReserve.of(way, states, admission);
        return new Plan.Trade(
                way.seconds(), way.changes(), conditions(way), least.share(), least.shareAt(), least.unknownAt(), keys);
    }

    /** Conditions of a way, each place that runs over stops once. */
    private int conditions(Way way) {
        Set<String> counted = new HashSet<>();
        int[] conditions = {0};
        for (int k = 0; k < way.configurations().size(); k++) {
            int c = way.configurations().get(k);
            states.eachPassed(k, c, (place, raise, violated) -> {
                int here = states.conditions(place, c, raise);
                if (place.pointLike()) {
                    conditions[0] += here;
                } else if (here > 0 && counted.add(place.id())) {
                    conditions[0]++;
                }
            });
        }
        return conditions[0];
    }
}
