package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Finds the sequence of configurations that passes everything at the least cost, by dynamic programming over the
 * segments: exact, in time proportional to segments × configurations² at most. Where even the cheapest change of all
 * costs more than staying, changes are not gone through one by one.
 */
public final class CheapestWay {
    private final WayCosts costs;
    private final BitSet usable;
    private final double above;
    /** By segment, then configuration: the least cost from the beginning of the segment to the end of the route. */
    private final long[][] onward;
    /** By segment: the least of all configurations, and the first of those that have it. */
    private final long[] least;

    private final int[] first;

    private CheapestWay(WayCosts costs, BitSet usable, double above) {
        this.costs = costs;
        this.usable = usable;
        this.above = above;
        onward = new long[costs.segments().size()][];
        least = new long[onward.length];
        first = new int[onward.length];
    }

    /** As {@link #find(WayCosts, BitSet, double)}, whatever the reserve. */
    public static Optional<Way> find(WayCosts costs, BitSet usable) {
        return find(costs, usable, Double.NEGATIVE_INFINITY);
    }

    /**
     * The cheapest way: least cost, which is seconds, with those that conditions count for or conditions before them,
     * then changes; then the largest least reserve; then the sequence that comes first when configurations are compared
     * by number, segment by segment from the start.
     *
     * @param usable configurations that may be used at all
     * @param above every place is passed with a reserve of more than this
     * @return empty when some place cannot be passed
     */
    static Optional<Way> find(WayCosts costs, BitSet usable, double above) {
        return new CheapestWay(costs, usable, above).find();
    }

    private Optional<Way> find() {
        int n = onward.length;
        for (int k = n - 1; k >= 0; k--) {
            reckon(k);
            if (least[k] >= WayCosts.NONE) {
                return Optional.empty();
            }
        }
        List<BitSet> cheapest = cheapest();
        double[][] reserve = reserves(cheapest);
        double most =
                cheapest.get(0).stream().mapToDouble(c -> reserve[0][c]).max().orElseThrow();
        List<Integer> chosen = new ArrayList<>();
        long seconds = 0;
        int changes = 0;
        for (int k = 0, from = -1; k < n; k++) {
            int c = k == 0 ? cheapest.get(0).nextSetBit(0) : nextOn(k - 1, from, -1);
            while (reserve[k][c] < most) {
                c = k == 0 ? cheapest.get(0).nextSetBit(c + 1) : nextOn(k - 1, from, c);
            }
            long change = k == 0 ? 0 : costs.changesAfter(k - 1).from(from)[c];
            seconds += WayCosts.seconds(change)
                    + WayCosts.seconds(costs.segments().get(k).packed(c));
            changes += WayCosts.changes(change);
            chosen.add(c);
            from = c;
        }
        return Optional.of(new Way(chosen, seconds, changes));
    }

    /** The next configuration after a number, going on in which costs the least; −1 when there is none. */
    private int nextOn(int k, int from, int after) {
        long rest = onward[k][from] - costs.passing(k, from);
        if (least[k + 1] + costs.changesAfter(k).least() > rest) {
            // No change is worth it.
            return after < from ? from : -1;
        }
        for (int to = after + 1; to < costs.configurations(); to++) {
            if (costs.into(k + 1, from, to) + onward[k + 1][to] == rest) {
                return to;
            }
        }
        return -1;
    }

    /** The configurations of each segment that some cheapest way has there. */
    private List<BitSet> cheapest() {
        List<BitSet> all = new ArrayList<>();
        BitSet start = new BitSet();
        for (int c = 0; c < onward[0].length; c++) {
            start.set(c, costs.into(0, c, c) + onward[0][c] == least[0]);
        }
        all.add(start);
        for (int k = 1; k < onward.length; k++) {
            BitSet before = all.get(k - 1);
            BitSet there = new BitSet();
            for (int from = before.nextSetBit(0); from >= 0; from = before.nextSetBit(from + 1)) {
                for (int to = nextOn(k - 1, from, -1); to >= 0; to = nextOn(k - 1, from, to)) {
                    there.set(to);
                }
            }
            all.add(there);
        }
        return all;
    }

    /** The largest least reserve from the beginning of a segment on, of the cheapest ways. */
    private double[][] reserves(List<BitSet> cheapest) {
        double[][] reserve = new double[onward.length][costs.configurations()];
        for (int k = onward.length - 1; k >= 0; k--) {
            BitSet there = cheapest.get(k);
            for (int c = there.nextSetBit(0); c >= 0; c = there.nextSetBit(c + 1)) {
                double later = k == onward.length - 1 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
                for (int to = k == onward.length - 1 ? -1 : nextOn(k, c, -1); to >= 0; to = nextOn(k, c, to)) {
                    later = Math.max(later, reserve[k + 1][to]);
                }
                reserve[k][c] = Math.min(costs.segments().get(k).reserve(c), later);
            }
        }
        return reserve;
    }

    /** The least cost of each configuration from the beginning of a segment to the end of the route. */
    private void reckon(int k) {
        long[] here = new long[costs.configurations()];
        WayCosts.Segment segment = costs.segments().get(k);
        least[k] = WayCosts.NONE;
        for (int c = 0; c < here.length; c++) {
            here[c] = WayCosts.NONE;
            if (usable.get(c) && segment.admits(c) && segment.reserve(c) > above) {
                here[c] = Math.min(WayCosts.NONE, costs.passing(k, c) + (k == onward.length - 1 ? 0 : leastOn(k, c)));
            }
            long reached = k == 0 && here[c] < WayCosts.NONE ? here[c] + costs.into(0, c, c) : here[c];
            if (reached < least[k]) {
                least[k] = reached;
                first[k] = c;
            }
        }
        onward[k] = here;
    }

    private long leastOn(int k, int from) {
        long[] next = onward[k + 1];
        long best = Math.min(
                costs.into(k + 1, from, from) + next[from], costs.into(k + 1, from, first[k + 1]) + least[k + 1]);
        if (best > least[k + 1] + costs.changesAfter(k).least()) {
            long[] change = costs.changesAfter(k).from(from);
            for (int to = 0; to < next.length; to++) {
                // Conditions only add to it.
                if (change[to] + next[to] < best) {
                    best = Math.min(best, costs.into(k + 1, from, to) + next[to]);
                }
            }
        }
        return best;
    }
}
