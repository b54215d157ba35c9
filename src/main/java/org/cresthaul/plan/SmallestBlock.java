package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedList;
import java.util.List;
import java.util.Map;
import org.cresthaul.geometry.StopSignal;

/**
 * Finds the fewest places that would have to be set aside for a way through, and among such ways the cheapest. A place
 * that runs over stops counts once, in however many segments it is violated: the search therefore remembers which of
 * those that still run on have been set aside already. That is exact; its work grows with the number of violated places
 * that overlap.
 */
public final class SmallestBlock {
    /** Most sets of overlapping places followed at once; beyond it the answer need not be the smallest, and says so. */
    static final int MOST_SETS = 512;

    private final WayCosts costs;
    private final BitSet[] runsOn;
    private boolean proven = true;
    /** A way with no more violations than this is known. */
    private int bound;

    /**
     * A way, and what it violates.
     *
     * @param spanning places running over stops that must be set aside, by number
     * @param violated how many in all, with those of single segments
     * @param proven whether no smaller set opens a way
     */
    public record Block(Way way, List<Integer> spanning, int violated, boolean proven) {
        public Block {
            spanning = List.copyOf(spanning);
        }
    }

    /** Costs of every configuration with one set of places set aside, and where they came from. */
    private record Layer(BitSet aside, long[] cost, Layer[] before, int[] from) {
        static Layer empty(BitSet aside, int configurations) {
            long[] cost = new long[configurations];
            Arrays.fill(cost, WayCosts.NONE);
            return new Layer(aside, cost, new Layer[configurations], new int[configurations]);
        }

        long least() {
            long least = WayCosts.NONE;
            for (long c : cost) {
                least = Math.min(least, c);
            }
            return least;
        }
    }

    private SmallestBlock(WayCosts costs) {
        this.costs = costs;
        int n = costs.segments().size();
        runsOn = new BitSet[n];
        BitSet later = new BitSet(costs.spanning());
        for (int k = n - 1; k >= 0; k--) {
            runsOn[k] = (BitSet) later.clone();
            for (int c = 0; c < costs.configurations(); c++) {
                later.or(costs.segments().get(k).spanning(c));
            }
        }
    }

    /**
     * The smallest block of a route; with nothing violated it is empty and the way the cheapest.
     *
     * @param usable configurations that may be used at all, at least one
     */
    public static Block find(WayCosts costs, BitSet usable) {
        if (usable.isEmpty()) {
            throw new IllegalArgumentException("no configuration may be used");
        }
        return new SmallestBlock(costs).find(usable);
    }

    private Block find(BitSet usable) {
        bound = keptTo(usable);
        Layer start = Layer.empty(new BitSet(), costs.configurations());
        usable.stream().forEach(c -> start.cost[c] = 0);
        List<Layer> layers = entered(0, List.of(start), usable, true);
        for (int k = 1; k < costs.segments().size(); k++) {
            layers = entered(k, layers, usable, false);
        }
        Layer last = layers.stream().min(Comparator.comparingLong(Layer::least)).orElseThrow();
        return traced(last);
    }

    /** The fewest violations of a way in one configuration all along: the smallest block has no more. */
    private int keptTo(BitSet usable) {
        return usable.stream()
                .map(c -> {
                    BitSet all = new BitSet();
                    int local = 0;
                    for (WayCosts.Segment s : costs.segments()) {
                        local += s.violated(c);
                        all.or(s.spanning(c));
                    }
                    return local + all.cardinality();
                })
                .min()
                .orElseThrow();
    }

    /** All ways one segment further. */
    private List<Layer> entered(int k, List<Layer> before, BitSet usable, boolean first) {
        WayCosts.Segment segment = costs.segments().get(k);
        Map<BitSet, Layer> layers = new LinkedHashMap<>();
        StopSignal stop = StopSignal.current();
        for (Layer layer : before) {
            stop.poll();
            long[] reached = new long[costs.configurations()];
            int[] from = new int[reached.length];
            reach(k, layer, first, reached, from);
            for (int c = usable.nextSetBit(0); c >= 0; c = usable.nextSetBit(c + 1)) {
                if (reached[c] >= WayCosts.NONE) {
                    continue;
                }
                BitSet more = layer.aside;
                int added = 0;
                if (!segment.spanning(c).isEmpty() || !layer.aside.isEmpty()) {
                    more = (BitSet) segment.spanning(c).clone();
                    more.andNot(layer.aside);
                    added = more.cardinality();
                    more.or(layer.aside);
                    more.and(runsOn[k]);
                }
                long cost = reached[c] + segment.packed(c) + (segment.violated(c) + added) * WayCosts.VIOLATION;
                if (WayCosts.violations(cost) > bound) {
                    continue;
                }
                Layer to = layers.computeIfAbsent(more, s -> Layer.empty(s, costs.configurations()));
                if (cost < to.cost[c]) {
                    to.cost[c] = cost;
                    to.before[c] = layer;
                    to.from[c] = from[c];
                }
            }
        }
        List<Layer> kept = new ArrayList<>(layers.values());
        if (kept.size() > MOST_SETS) {
            proven = false;
            // The way that the bound comes from may be among those left out.
            bound = Integer.MAX_VALUE;
            kept.sort(Comparator.comparingLong(Layer::least));
            kept = new ArrayList<>(kept.subList(0, MOST_SETS));
        }
        return kept;
    }

    /** The least cost to begin a segment in each configuration, and the one before it. */
    private void reach(int k, Layer layer, boolean first, long[] reached, int[] from) {
        System.arraycopy(layer.cost, 0, reached, 0, reached.length);
        Arrays.setAll(from, c -> c);
        if (first) {
            return;
        }
        WayCosts.Changes changes = costs.changesAfter(k - 1);
        long changed = layer.least() + changes.least();
        int[] asked = new int[reached.length];
        int n = 0;
        long most = 0;
        for (int to = 0; to < reached.length; to++) {
            // Where it costs less to stay than any change from anywhere, nothing else is asked.
            if (layer.cost[to] >= changed) {
                asked[n++] = to;
                most = Math.max(most, reached[to]);
            }
        }
        for (int c = 0; c < reached.length; c++) {
            long cost = layer.cost[c];
            if (cost + changes.least() >= most) {
                // Nothing that is asked is reached for less from here.
                continue;
            }
            long[] change = changes.from(c);
            most = 0;
            for (int i = 0; i < n; i++) {
                int to = asked[i];
                if (cost + change[to] < reached[to]) {
                    reached[to] = cost + change[to];
                    from[to] = c;
                }
                most = Math.max(most, reached[to]);
            }
        }
    }

    private Block traced(Layer last) {
        LinkedList<Integer> configurations = new LinkedList<>();
        int c = 0;
        for (int i = 1; i < last.cost.length; i++) {
            c = last.cost[i] < last.cost[c] ? i : c;
        }
        long whole = last.cost[c];
        BitSet spanning = new BitSet();
        Layer layer = last;
        for (int k = costs.segments().size() - 1; k >= 0; k--) {
            configurations.addFirst(c);
            spanning.or(costs.segments().get(k).spanning(c));
            int from = layer.from[c];
            layer = layer.before[c];
            c = from;
        }
        Way way = new Way(configurations, WayCosts.seconds(whole), WayCosts.changes(whole));
        return new Block(way, spanning.stream().boxed().toList(), WayCosts.violations(whole), proven);
    }
}
