package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The search on bare costs, where many places overlap, against trying every sequence. */
class SmallestBlockTest {
    private static final int CONFIGURATIONS = 3;
    private static final int SEGMENTS = 5;
    private static final int SPANNING = 6;

    private final SplittableRandom random = new SplittableRandom(20260307);
    private final long[][] passing = new long[SEGMENTS][CONFIGURATIONS];
    private final int[][] local = new int[SEGMENTS][CONFIGURATIONS];
    private final boolean[][][] over = new boolean[SEGMENTS][CONFIGURATIONS][SPANNING];
    private final long[][][] change = new long[SEGMENTS - 1][CONFIGURATIONS][CONFIGURATIONS];

    private void invent() {
        for (int s = 0; s < SPANNING; s++) {
            int from = random.nextInt(SEGMENTS);
            int to = from + random.nextInt(SEGMENTS - from);
            for (int c = 0; c < CONFIGURATIONS; c++) {
                boolean not = random.nextInt(2) == 0;
                for (int k = 0; k < SEGMENTS; k++) {
                    over[k][c][s] = not && k >= from && k <= to;
                }
            }
        }
        for (int k = 0; k < SEGMENTS; k++) {
            for (int c = 0; c < CONFIGURATIONS; c++) {
                passing[k][c] = random.nextInt(4) * 30;
                local[k][c] = random.nextInt(3) == 0 ? random.nextInt(3) : 0;
                for (int to = 0; to < CONFIGURATIONS && k + 1 < SEGMENTS; to++) {
                    change[k][c][to] = random.nextInt(4) == 0 ? -1 : random.nextInt(4) * 30;
                }
            }
        }
    }

    private WayCosts costs() {
        List<WayCosts.Segment> segments = new ArrayList<>();
        List<WayCosts.Changes> changes = new ArrayList<>();
        for (int k = 0; k < SEGMENTS; k++) {
            List<BitSet> spanning = new ArrayList<>();
            for (int c = 0; c < CONFIGURATIONS; c++) {
                BitSet set = new BitSet();
                for (int s = 0; s < SPANNING; s++) {
                    set.set(s, over[k][c][s]);
                }
                spanning.add(set);
            }
            segments.add(new WayCosts.Segment(passing[k], local[k], spanning));
            if (k + 1 < SEGMENTS) {
                changes.add(new WayCosts.Changes(change[k]));
            }
        }
        return new WayCosts(CONFIGURATIONS, SPANNING, segments, changes);
    }

    /** Violations, seconds and changes of one sequence; null when a change cannot be made. */
    private long[] tried(int[] sequence) {
        long[] sum = new long[3];
        boolean[] violated = new boolean[SPANNING];
        for (int k = 0; k < SEGMENTS; k++) {
            int c = sequence[k];
            sum[0] += local[k][c];
            sum[1] += passing[k][c];
            for (int s = 0; s < SPANNING; s++) {
                violated[s] |= over[k][c][s];
            }
            if (k > 0 && sequence[k - 1] != c) {
                long seconds = change[k - 1][sequence[k - 1]][c];
                if (seconds < 0) {
                    return null;
                }
                sum[1] += seconds;
                sum[2]++;
            }
        }
        for (boolean v : violated) {
            sum[0] += v ? 1 : 0;
        }
        return sum;
    }

    @Test
    void findsTheFewestPlacesAndAmongThemTheCheapestWay() {
        int blocked = 0;
        int open = 0;
        for (int i = 0; i < 3000; i++) {
            invent();
            long[] best = null;
            for (int code = 0; code < Math.pow(CONFIGURATIONS, SEGMENTS); code++) {
                int[] sequence = new int[SEGMENTS];
                for (int k = 0, rest = code; k < SEGMENTS; k++, rest /= CONFIGURATIONS) {
                    sequence[k] = rest % CONFIGURATIONS;
                }
                long[] sum = tried(sequence);
                if (sum != null && (best == null || java.util.Arrays.compare(sum, best) < 0)) {
                    best = sum;
                }
            }
            BitSet all = new BitSet();
            all.set(0, CONFIGURATIONS);
            SmallestBlock.Block block = SmallestBlock.find(costs(), all);
            assertTrue(block.proven());
            assertEquals(best[0], block.violated(), "case " + i);
            assertEquals(best[1], block.way().seconds(), "case " + i);
            assertEquals(best[2], block.way().changes(), "case " + i);
            int[] way = block.way().configurations().stream().mapToInt(c -> c).toArray();
            assertEquals(
                    List.of(best[0], best[1], best[2]),
                    java.util.Arrays.stream(tried(way)).boxed().toList());
            Optional<Way> cheapest = CheapestWay.find(costs(), all);
            assertEquals(best[0] == 0, cheapest.isPresent());
            if (best[0] == 0) {
                assertEquals(best[1], cheapest.get().seconds());
                open++;
            } else {
                blocked++;
            }
        }
        assertTrue(open > 100 && blocked > 1000, open + " open, " + blocked + " blocked");
    }

    @Test
    void saysSoWhenTooMuchOverlapsToTryEverything() {
        int n = 40;
        List<WayCosts.Segment> segments = new ArrayList<>();
        List<WayCosts.Changes> changes = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            List<BitSet> spanning = new ArrayList<>();
            for (int c = 0; c < 8; c++) {
                BitSet set = new BitSet();
                for (int s = 0; s < 60; s++) {
                    set.set(s, random.nextInt(10) == 0);
                }
                spanning.add(set);
            }
            segments.add(new WayCosts.Segment(new long[8], new int[8], spanning));
            if (k > 0) {
                changes.add(new WayCosts.Changes(new long[8][8]));
            }
        }
        BitSet all = new BitSet();
        all.set(0, 8);

        SmallestBlock.Block block = SmallestBlock.find(new WayCosts(8, 60, segments, changes), all);

        assertTrue(
                !block.proven()
                        && block.violated() > 0
                        && block.violated() == block.spanning().size(),
                block.toString());
    }
}
