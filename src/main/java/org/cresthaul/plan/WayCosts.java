package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * A route as a search sees it: segments between stops, and between two segments what a change costs. Configurations and
 * places that run over stops are numbers. Costs are packed into one {@code long} that adds and compares as a whole:
 * places violated (or, of a way that violates none, passed under conditions where those go first), then seconds, then
 * changes.
 */
public final class WayCosts {
    /**
     * What a place under a condition counts in seconds beside the way's own: 20 min, this program's choice. Somebody
     * else has to be there, or to agree: that is worth one stop where the notch or the lift axle is changed (18 min by
     * the default times), and not moving the booster (50 min and more).
     */
    public static final long CONDITION_SECONDS = 20 * 60;

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
    private final Conditions conditions;
    /** By segment: what it costs to come to one under a condition; null where nothing that runs over stops is. */
    private final List<Entering> entering;

    /** What places under conditions count. */
    public enum Conditions {
        /** Nothing: time alone. */
        FREE(0),
        /** {@link #CONDITION_SECONDS} each. */
        PRICED(CONDITION_SECONDS * SECOND),
        /** More than any time. */
        FIRST(VIOLATION);

        private final long each;

        Conditions(long each) {
            this.each = each;
        }
    }

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
        private final List<BitSet> under;
        private final boolean[] admits;

        /**
         * @param seconds of slow passages, by configuration
         * @param violated how many places of this segment alone the configuration must not pass
         * @param spanning which of the places that run over stops it must not pass here, by configuration
         */
        public Segment(long[] seconds, int[] violated, List<BitSet> spanning) {
            this(seconds, violated, spanning, endless(seconds.length), new int[seconds.length], List.of());
        }

        private static double[] endless(int length) {
            double[] all = new double[length];
            Arrays.fill(all, Double.POSITIVE_INFINITY);
            return all;
        }

        /**
         * @param reserve least reserve at any place of the segment, by configuration
         * @param conditions how many places of this segment alone are passed under a condition
         * @param under which of the places that run over stops are, by configuration; empty where none is in any
         */
        public Segment(
                long[] seconds,
                int[] violated,
                List<BitSet> spanning,
                double[] reserve,
                int[] conditions,
                List<BitSet> under) {
            if (seconds.length != violated.length
                    || seconds.length != spanning.size()
                    || !under.isEmpty() && seconds.length != under.size()) {
                throw new IllegalArgumentException("one entry for each configuration");
            }
            this.reserve = reserve.clone();
            this.conditions = conditions.clone();
            this.seconds = seconds.clone();
            this.violated = violated.clone();
            this.spanning = copied(spanning);
            this.under = copied(under);
            admits = new boolean[seconds.length];
            for (int c = 0; c < admits.length; c++) {
                admits[c] = violated[c] == 0 && spanning.get(c).isEmpty();
            }
        }

        private static List<BitSet> copied(List<BitSet> sets) {
            List<BitSet> all = new ArrayList<>();
            sets.forEach(s -> all.add(s.isEmpty() ? NOTHING : (BitSet) s.clone()));
            return all;
        }

        boolean admits(int c) {
            return admits[c];
        }

        /** Time alone. */
        long packed(int c) {
            return seconds[c] * SECOND;
        }

        double reserve(int c) {
            return reserve[c];
        }

        int conditions(int c) {
            return conditions[c] + (under.isEmpty() ? 0 : under.get(c).cardinality());
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
        private final long least;

        /**
         * @param seconds from row to column; negative where the change cannot be made there; the diagonal is not read
         */
        public Changes(long[][] seconds) {
            packed = new long[seconds.length][];
            long smallest = NONE;
            for (int from = 0; from < seconds.length; from++) {
                if (seconds[from].length != seconds.length) {
                    throw new IllegalArgumentException("changes make a square");
                }
                packed[from] = new long[seconds.length];
                for (int to = 0; to < seconds.length; to++) {
                    packed[from][to] = from == to ? 0 : seconds[from][to] < 0 ? NONE : seconds[from][to] * SECOND + 1;
                    smallest = from == to ? smallest : Math.min(smallest, packed[from][to]);
                }
            }
            least = smallest;
        }

        long[] from(int c) {
            return packed[c];
        }

        /** Of any change; staying costs nothing. */
        long least() {
            return least;
        }
    }

    /**
     * How many places under a condition are come to that were not passed under one just before, by what was and what
     * is.
     */
    private record Entering(int[] before, int[] here, int[][] count) {
        static Entering of(Segment before, Segment here) {
            if (here.under.isEmpty()) {
                return null;
            }
            List<BitSet> kindsBefore = before == null || before.under.isEmpty()
                    ? List.of(Segment.NOTHING)
                    : before.under.stream().distinct().toList();
            List<BitSet> kindsHere = here.under.stream().distinct().toList();
            int[][] count = new int[kindsBefore.size()][kindsHere.size()];
            for (int b = 0; b < count.length; b++) {
                for (int h = 0; h < count[b].length; h++) {
                    BitSet come = (BitSet) kindsHere.get(h).clone();
                    come.andNot(kindsBefore.get(b));
                    count[b][h] = come.cardinality();
                }
            }
            return new Entering(
                    before == null || before.under.isEmpty()
                            ? new int[here.under.size()]
                            : before.under.stream()
                                    .mapToInt(kindsBefore::indexOf)
                                    .toArray(),
                    here.under.stream().mapToInt(kindsHere::indexOf).toArray(),
                    count);
        }

        int count(int from, int to) {
            return count[before[from]][here[to]];
        }
    }

    /** Time alone. */
    public WayCosts(int configurations, int spanning, List<Segment> segments, List<Changes> changes) {
        this(configurations, spanning, segments, changes, Conditions.FREE);
    }

    /**
     * @param spanning how many places run over stops
     * @param changes one less than segments: at the stop after each
     */
    public WayCosts(
            int configurations, int spanning, List<Segment> segments, List<Changes> changes, Conditions conditions) {
        this.configurations = configurations;
        this.spanning = spanning;
        this.segments = List.copyOf(segments);
        this.changes = List.copyOf(changes);
        this.conditions = conditions;
        if (segments.isEmpty() || segments.size() != changes.size() + 1 || segments.size() > MOST_SEGMENTS) {
            throw new IllegalArgumentException("1 to " + MOST_SEGMENTS + " segments with changes between them, not "
                    + segments.size() + " with " + changes.size());
        }
        long most = 0;
        entering = new ArrayList<>();
        for (Segment s : segments) {
            long slowest = 0;
            for (long t : s.seconds) {
                if (t < 0) {
                    throw new IllegalArgumentException("a passage takes " + t + " s");
                }
                slowest = Math.max(slowest, t);
            }
            most += slowest;
            int k = entering.size();
            entering.add(conditions == Conditions.FREE ? null : Entering.of(k == 0 ? null : segments.get(k - 1), s));
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

    /** Of a segment by itself. */
    long passing(int segment, int c) {
        Segment s = segments.get(segment);
        return s.seconds[c] * SECOND + s.conditions[c] * conditions.each;
    }

    /** Of coming into the first segment, or from one segment into the next in the same configuration or another. */
    long into(int segment, int from, int to) {
        Entering e = entering.get(segment);
        long under = e == null ? 0 : e.count(from, to) * conditions.each;
        return segment == 0 ? under : under + changes.get(segment - 1).packed[from][to];
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
