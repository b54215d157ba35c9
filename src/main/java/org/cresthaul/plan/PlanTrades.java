package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.cresthaul.plan.Admission.Raise;

/** What more reserve or fewer conditions would cost: a few ways beside the plan's own. */
final class PlanTrades {
    /** Points told beside the plan's own: this program's choice. */
    private static final int MOST = 4;

    private final RouteStates states;
    private final List<PlanPlace> places;
    private final RouteLayout layout;
    private final ConfigurationChanges changes;
    private final Admission admission;
    private final BitSet usable;

    PlanTrades(
            RouteStates states,
            List<PlanPlace> places,
            RouteLayout layout,
            ConfigurationChanges changes,
            Admission admission,
            BitSet usable) {
        this.states = states;
        this.places = places;
        this.layout = layout;
        this.changes = changes;
        this.admission = admission;
        this.usable = usable;
    }

    /** The way itself, the one with the fewest conditions where that has fewer, then each the cheapest that leaves more. */
    List<Plan.Trade> list(Way way, WayCosts costs) {
        List<Plan.Trade> trades = new ArrayList<>(List.of(trade(way)));
        CheapestWay.find(states.costs(true), usable)
                .map(this::trade)
                .filter(t -> t.conditions() < trades.get(0).conditions())
                .ifPresent(trades::add);
        Plan.Trade last = trades.get(0);
        while (trades.size() <= MOST && last.leastReserve() != null) {
            Optional<Way> more = CheapestWay.find(costs, usable, last.leastReserve());
            if (more.isEmpty()) {
                break;
            }
            last = trade(more.get());
            if (!trades.contains(last)) {
                trades.add(last);
            }
        }
        return trades;
    }

    private Plan.Trade trade(Way way) {
        double least = Double.POSITIVE_INFINITY;
        String at = null;
        int conditions = 0;
        List<Integer> counted = new ArrayList<>();
        for (int k = 0; k < layout.clusters().size(); k++) {
            int c = way.configurations().get(layout.clusters().get(k).segment());
            Raise raise = states.choice(k, c).raise();
            for (int p : layout.clusters().get(k).places()) {
                conditions += states.conditions(places.get(p), c, raise);
                double reserve = admission.reserve(places.get(p), c, raise);
                at = reserve < least ? places.get(p).id() : at;
                least = Math.min(least, reserve);
            }
        }
        for (RouteLayout.Spanning over : layout.spanning()) {
            for (int k = over.firstSegment(); k <= over.lastSegment(); k++) {
                if (over.holdsIn(k)) {
                    int c = way.configurations().get(k);
                    boolean under = states.conditions(places.get(over.place()), c, Raise.NONE) > 0;
                    if (under && !counted.contains(over.place())) {
                        counted.add(over.place());
                        conditions++;
                    }
                    double reserve = admission.reserve(places.get(over.place()), c, Raise.NONE);
                    at = reserve < least ? places.get(over.place()).id() : at;
                    least = Math.min(least, reserve);
                }
            }
        }
        List<String> keys = new ArrayList<>();
        for (int c : way.configurations()) {
            String key = changes.setUps().get(c).configuration();
            if (keys.isEmpty() || !keys.get(keys.size() - 1).equals(key)) {
                keys.add(key);
            }
        }
        return new Plan.Trade(way.seconds(), way.changes(), conditions, at == null ? null : least, at, keys);
    }
}
