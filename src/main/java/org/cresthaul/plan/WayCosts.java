package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * A route as a search sees it: segments between stops, and between two segments what a change costs. Configurations and
 * places that run over stops are numbers. Costs are packed into one {@code long} that adds and compares as a whole:
 * places violated (or, of a way that violates none, passed under conditions) first, then seconds, then changes.
 */
public final class WayCosts {
    /** No way; two of them still add without overflow. */
    static final long NONE = 1L << 61;

    private static final int CHANGE_BITS = 12;
    private static final int SECOND_BITS = 36;
    static final long VIOLATION = 1L << (CHANGE_BITS + SECOND_BITS);
    private static final long SECOND = 1L << CHANGE_BITS;
    /** Most segments, so that neither changes nor violations run over. */
    public static final int MOST_SEGMENTS = 4000;

    private final int configurations;
    private final int spanning;
    private final List<Segment> segments;
    private final List<Changes> changes;

    /**
     * What one segment costs.
     *
     * <p>Not a record: it holds arrays, copied in and never handed out.
     */
    public static final class Segment {
        /** Nobody writes to it. */
        private static final BitSet NOTHING = new BitSet();

        private final long[] seconds;
        private final int[] violated;
        private final List<BitSet> spanning;
        private final double[] reserve;
        private final int[] conditions;

        /**
         * @param seconds of slow passages, by configuration
         * @param violated how many places of this segment alone the configuration must not pass
         * @param spanning which of the places that run over stops it must not pass here, by configuration
         */
        public Segment(long[] seconds, int[] violated, List<BitSet> spanning) {
            this(seconds, violated, spanning, endless(seconds.length), new int[seconds.length]);
        }

        private static double[] endless(int length) {
            double[] all = new double[length];
            Arrays.fill(all, Double.POSITIVE_INFINITY);
            return all;
        }

        /**
         * @param reserve least reserve at any place of the segment, by configuration
         * @param conditions how many places are passed under a condition; they are part of the cost, before seconds
         */
        public Segment(long[] seconds, int[] violated, List<BitSet> spanning, double[] reserve, int[] conditions) {
            this.reserve = reserve.clone();
            this.conditions = conditions.clone();
            if (seconds.length != violated.length || seconds.length != spanning.size()) {
                throw new IllegalArgumentException("one entry for each configuration");
            }
            this.seconds = seconds.clone();
            this.violated = violated.clone();
            this.spanning = new ArrayList<>();
            spanning.forEach(s -> this.spanning.add(s.isEmpty() ? NOTHING : (BitSet) s.clone()));
        }

        boolean admits(int c) {
            return violated[c] == 0 && spanning.get(c).isEmpty();
        }

        long packed(int c) {
            return conditions[c] * VIOLATION + seconds[c] * SECOND;
        }

        double reserve(int c) {
            return reserve[c];
        }

        int violated(int c) {
            return violated[c];
        }

        BitSet spanning(int c) {
            return spanning.get(c);
        }
    }

    /** What it takes to go from one configuration to another at a stop. */
    public static final class Changes {
        private final long[][] packed;

        /** @param seconds from row to column; negative where the change cannot be made there; the diagonal is not read */
        public Changes(long[][] seconds) {
            packed = new long[seconds.length][];
            for (int from = 0; from < seconds.length; from++) {
                if (seconds[from].length != seconds.length) {
                    throw new IllegalArgumentException("changes make a square");
                }
                packed[from] = new long[seconds.length];
                for (int to = 0; to < seconds.length; to++) {
                    packed[from][to] = from == to ? 0 : seconds[from][to] < 0 ? NONE : seconds[from][to] * SECOND + 1;
                }
            }
        }

        long[] from(int c) {
            return packed[c];
        }
    }

    /**
     * @param spanning how many places run over stops
     * @param changes one less than segments: at the stop after each
     */
    public WayCosts(int configurations, int spanning, List<Segment> segments, List<Changes> changes) {
        this.configurations = configurations;
        this.spanning = spanning;
        this.segments = List.copyOf(segments);
        this.changes = List.copyOf(changes);
        if (segments.isEmpty() || segments.size() != changes.size() + 1 || segments.size() > MOST_SEGMENTS) {
            throw new IllegalArgumentException("1 to " + MOST_SEGMENTS + " segments with changes between them, not "
                    + segments.size() + " with " + changes.size());
        }
        long most = 0;
        for (Segment s : segments) {
            long slowest = 0;
            for (long t : s.seconds) {
                if (t < 0) {
                    throw new IllegalArgumentException("a passage takes " + t + " s");
                }
                slowest = Math.max(slowest, t);
            }
            most += slowest;
        }
        if (most >= 1L << (SECOND_BITS - 1)) {
            throw new IllegalArgumentException("the passages take " + most + " s: no such route");
        }
    }

    int configurations() {
        return configurations;
    }

    int spanning() {
        return spanning;
    }

    List<Segment> segments() {
        return segments;
    }

    Changes changesAfter(int segment) {
        return changes.get(segment);
    }

    static int violations(long packed) {
        return (int) (packed / VIOLATION);
    }

    static long seconds(long packed) {
        return packed % VIOLATION / SECOND;
    }

    static int changes(long packed) {
        return (int) (packed % SECOND);
    }
}
