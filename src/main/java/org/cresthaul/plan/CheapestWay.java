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

    /** As {@link #find(WayCosts, BitSet, double)}, whatever the reserve. */
    public static Optional<Way> find(WayCosts costs, BitSet usable) {
        return find(costs, usable, Double.NEGATIVE_INFINITY);
    }

    /**
     * The cheapest way: least cost, which is fewest conditions where they count, then seconds, then changes; then the largest
     * least reserve; then the sequence that comes first when configurations are compared by number, segment by segment from the
     * start.
     *
     * @param usable configurations that may be used at all
     * @param above every place is passed with a reserve of more than this
     * @return empty when some place cannot be passed
     */
    static Optional<Way> find(WayCosts costs, BitSet usable, double above) {
        int n = costs.segments().size();
        long[][] onward = new long[n][];
        for (int k = n - 1; k >= 0; k--) {
            onward[k] = segment(costs, usable, k, k == n - 1 ? null : onward[k + 1], above);
            if (onward[k][least(onward[k])] >= WayCosts.NONE) {
                return Optional.empty();
            }
        }
        List<BitSet> cheapest = cheapest(costs, onward);
        double[][] reserve = reserves(costs, onward, cheapest);
        int[] chosen = new int[n];
        double most = cheapest.get(0).stream().mapToDouble(c -> reserve[0][c]).max().orElseThrow();
        for (int k = 0; k < n; k++) {
            BitSet there = cheapest.get(k);
            int next = -1;
            for (int c = there.nextSetBit(0); next < 0; c = there.nextSetBit(c + 1)) {
                if (reserve[k][c] >= most && (k == 0 || isOn(costs, onward, k - 1, chosen[k - 1], c))) {
                    next = c;
                }
            }
            chosen[k] = next;
        }
        long whole = onward[0][chosen[0]];
        return Optional.of(new Way(Arrays.stream(chosen).boxed().toList(), WayCosts.seconds(whole), WayCosts.changes(whole)));
    }

    /** Whether going on from one configuration in another costs the least. */
    private static boolean isOn(WayCosts costs, long[][] onward, int k, int from, int to) {
        return costs.segments().get(k).packed(from) + costs.changesAfter(k).from(from)[to] + onward[k + 1][to] == onward[k][from];
    }

    /** The configurations of each segment that some cheapest way has there. */
    private static List<BitSet> cheapest(WayCosts costs, long[][] onward) {
        List<BitSet> all = new ArrayList<>();
        for (int k = 0; k < onward.length; k++) {
            BitSet there = new BitSet();
            if (k == 0) {
                long best = onward[0][least(onward[0])];
                for (int c = 0; c < onward[0].length; c++) {
                    there.set(c, onward[0][c] == best);
                }
            } else {
                int at = k;
                all.get(k - 1).stream().forEach(from -> {
                    for (int to = 0; to < onward[at].length; to++) {
                        if (isOn(costs, onward, at - 1, from, to)) {
                            there.set(to);
                        }
                    }
                });
            }
            all.add(there);
        }
        return all;
    }

    /** The largest least reserve from the beginning of a segment on, of the cheapest ways. */
    private static double[][] reserves(WayCosts costs, long[][] onward, List<BitSet> cheapest) {
        double[][] reserve = new double[onward.length][costs.configurations()];
        for (int k = onward.length - 1; k >= 0; k--) {
            int at = k;
            cheapest.get(k).stream().forEach(c -> {
                double later = at == onward.length - 1
                        ? Double.POSITIVE_INFINITY
                        : cheapest.get(at + 1).stream()
                                .filter(to -> isOn(costs, onward, at, c, to))
                                .mapToDouble(to -> reserve[at + 1][to])
                                .max()
                                .orElseThrow();
                reserve[at][c] = Math.min(costs.segments().get(at).reserve(c), later);
            });
        }
        return reserve;
    }

    /** The least cost of each configuration from the beginning of a segment to the end of the route. */
    private static long[] segment(WayCosts costs, BitSet usable, int k, long[] next, double above) {
        long[] here = new long[costs.configurations()];
        WayCosts.Segment segment = costs.segments().get(k);
        for (int c = 0; c < here.length; c++) {
            if (!usable.get(c) || !segment.admits(c) || !(segment.reserve(c) > above)) {
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

    /** The first of the least. */
    private static int least(long[] values) {
        int least = 0;
        for (int i = 1; i < values.length; i++) {
            least = values[i] < values[least] ? i : least;
        }
        return least;
    }
}
