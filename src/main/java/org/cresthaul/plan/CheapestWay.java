package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Finds the sequence of configurations that passes everything in the least time, by dynamic programming over the segments:
 * exact, in time proportional to segments × configurations².
 */
public final class CheapestWay {
    private CheapestWay() {}

    /**
     * The cheapest way: least seconds, then fewest changes, then the sequence that comes first when configurations are
     * compared by number, segment by segment from the start.
     *
     * @param usable configurations that may be used at all
     * @return empty when some place cannot be passed
     */
    public static Optional<Way> find(WayCosts costs, BitSet usable) {
        int n = costs.segments().size();
        long[][] onward = new long[n][];
        for (int k = n - 1; k >= 0; k--) {
            onward[k] = segment(costs, usable, k, k == n - 1 ? null : onward[k + 1]);
            if (onward[k][least(onward[k])] >= WayCosts.NONE) {
                return Optional.empty();
            }
        }
        int c = least(onward[0]);
        List<Integer> configurations = new ArrayList<>();
        configurations.add(c);
        for (int k = 1; k < n; k++) {
            c = least(sums(costs.changesAfter(k - 1).from(c), onward[k]));
            configurations.add(c);
        }
        long whole = onward[0][configurations.get(0)];
        return Optional.of(new Way(configurations, WayCosts.seconds(whole), WayCosts.changes(whole)));
    }

    /** The least cost of each configuration from the beginning of a segment to the end of the route. */
    private static long[] segment(WayCosts costs, BitSet usable, int k, long[] next) {
        long[] here = new long[costs.configurations()];
        WayCosts.Segment segment = costs.segments().get(k);
        for (int c = 0; c < here.length; c++) {
            if (!usable.get(c) || !segment.admits(c)) {
                here[c] = WayCosts.NONE;
                continue;
            }
            long best = next == null ? 0 : WayCosts.NONE;
            if (next != null) {
                long[] change = costs.changesAfter(k).from(c);
                for (int to = 0; to < change.length; to++) {
                    best = Math.min(best, change[to] + next[to]);
                }
            }
            here[c] = Math.min(WayCosts.NONE, segment.packed(c) + best);
        }
        return here;
    }

    private static long[] sums(long[] a, long[] b) {
        long[] sums = new long[a.length];
        Arrays.setAll(sums, i -> a[i] + b[i]);
        return sums;
    }

    /** The first of the least. */
    private static int least(long[] values) {
        int least = 0;
        for (int i = 1; i < values.length; i++) {
            least = values[i] < values[least] ? i : least;
        }
        return least;
    }
}
