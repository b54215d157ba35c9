package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.cresthaul.check.Report;
import org.cresthaul.check.Verdict;
import org.cresthaul.plan.Admission.Raise;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.route.RailCrossing;

/** A report laid out for the search: what each configuration costs in each segment, and what it violates there. */
final class RouteStates {
    private final List<PlanPlace> places;
    private final RouteLayout layout;
    private final ConfigurationChanges changes;
    private final PlanTimes times;
    private final Admission admission;
    /** By cluster, then configuration. */
    private final List<List<ClusterChoice>> choices = new ArrayList<>();
    /** Numbers of clusters, by segment. */
    private final List<List<Integer>> clustersIn = new ArrayList<>();
    private final List<List<RouteLayout.Spanning>> spanningIn = new ArrayList<>();
    /** Reckoned when they are first asked for. */
    private Totals totals;
    private int[][] conditions;
    /** Crossings shown to be cleared in time with room beyond, by length of the combination. */
    private final Map<RailCrossing, Map<Double, Boolean>> shown = new IdentityHashMap<>();

    /** @param fewest whether clusters that cannot be passed are searched for the fewest places in the way */
    RouteStates(
            List<PlanPlace> places,
            RouteLayout layout,
            ConfigurationChanges changes,
            PlanTimes times,
            Admission admission,
            boolean avoidRaising,
            boolean fewest) {
        this.places = places;
        this.layout = layout;
        this.changes = changes;
        this.times = times;
        this.admission = admission;
        for (RouteLayout.Cluster cluster : layout.clusters()) {
            List<ClusterChoice> row = new ArrayList<>();
            for (int c = 0; c < changes.setUps().size(); c++) {
                row.add(ClusterChoice.of(cluster.places(), places, c, admission, avoidRaising, fewest));
            }
            choices.add(row);
        }
        for (int k = 0; k < layout.segments(); k++) {
            int segment = k;
            clustersIn.add(new ArrayList<>());
            spanningIn.add(layout.spanning().stream().filter(s -> s.holdsIn(segment)).toList());
        }
        for (int k = 0; k < layout.clusters().size(); k++) {
            clustersIn.get(layout.clusters().get(k).segment()).add(k);
        }
    }

    ClusterChoice choice(int cluster, int configuration) {
        return choices.get(cluster).get(configuration);
    }

    /** Whether the fewest violated places are known in every cluster. */
    boolean exhausted() {
        return choices.stream().flatMap(List::stream).allMatch(ClusterChoice::exhausted);
    }

    WayCosts costs() {
        return costs(false);
    }

    /** @param fewestConditions whether places passed under conditions are part of the cost, before seconds */
    WayCosts costs(boolean fewestConditions) {
        Totals t = totals();
        List<WayCosts.Segment> segments = new ArrayList<>();
        for (int k = 0; k < layout.segments(); k++) {
            segments.add(new WayCosts.Segment(t.seconds[k], t.violated[k], t.spanning.get(k), t.reserve[k],
                    fewestConditions ? conditions()[k] : new int[changes.setUps().size()]));
        }
        return new WayCosts(changes.setUps().size(), layout.spanning().size(), segments,
                layout.stops().stream().map(changes::at).toList());
    }

    /** Whether some way of the usable configurations might have fewer conditions, counted segment by segment. */
    boolean mayHaveFewerConditions(Way way, BitSet usable) {
        for (int k = 0; k < layout.segments(); k++) {
            int[] here = conditions()[k];
            int own = here[way.configurations().get(k)];
            if (usable.stream().anyMatch(c -> here[c] < own)) {
                return true;
            }
        }
        return false;
    }

    /** By segment, then configuration. */
    private record Totals(long[][] seconds, int[][] violated, double[][] reserve, List<List<BitSet>> spanning) {}

    /** Likewise. */
    private int[][] conditions() {
        if (conditions == null) {
            conditions = new int[layout.segments()][changes.setUps().size()];
            for (int k = 0; k < layout.segments(); k++) {
                int[] here = conditions[k];
                for (int c = 0; c < here.length; c++) {
                    int of = c;
                    eachPassed(k, c, (place, raise, violated) -> here[of] += conditions(place, of, raise));
                }
            }
        }
        return conditions;
    }

    private Totals totals() {
        if (totals != null) {
            return totals;
        }
        int n = layout.segments();
        int count = changes.setUps().size();
        long[][] seconds = new long[n][count];
        int[][] violated = new int[n][count];
        double[][] reserve = new double[n][count];
        for (int k = 0; k < n; k++) {
            for (int c = 0; c < count; c++) {
                Tally tally = new Tally(c);
                eachPassed(k, c, tally);
                seconds[k][c] = tally.seconds;
                violated[k][c] = tally.violated;
                reserve[k][c] = tally.reserve;
            }
        }
        for (int k = 0; k < layout.clusters().size(); k++) {
            int segment = layout.clusters().get(k).segment();
            for (int c = 0; c < count; c++) {
                seconds[segment][c] += choice(k, c).raise().equals(Raise.NONE) ? 0 : raiseSeconds() + lowerSeconds();
            }
        }
        totals = new Totals(seconds, violated, reserve, spanning(n, count));
        return totals;
    }

    /** Which places that run over stops each configuration must not pass on, by segment. */
    private List<List<BitSet>> spanning(int n, int count) {
        List<List<BitSet>> spanning = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            spanning.add(new ArrayList<>(Collections.nCopies(count, new BitSet())));
        }
        for (int s = 0; s < layout.spanning().size(); s++) {
            RouteLayout.Spanning over = layout.spanning().get(s);
            for (int c = 0; c < count; c++) {
                for (int k = over.firstSegment(); k <= over.lastSegment()
                        && !admission.inTransport(places.get(over.place()), c); k++) {
                    if (over.holdsIn(k)) {
                        BitSet more = (BitSet) spanning.get(k).get(c).clone();
                        more.set(s);
                        spanning.get(k).set(c, more);
                    }
                }
            }
        }
        return spanning;
    }

    /** Takes what is passed in a segment. */
    interface Passing {
        /** @param violated whether it must not be passed so; of places that run over stops that is not told here */
        void passed(PlanPlace place, Raise raise, boolean violated);
    }

    /** Every place that is passed in a segment in one configuration: those of its clusters, then those that run over stops. */
    void eachPassed(int segment, int configuration, Passing passing) {
        for (int k : clustersIn.get(segment)) {
            ClusterChoice choice = choice(k, configuration);
            for (int p : layout.clusters().get(k).places()) {
                passing.passed(places.get(p), choice.raise(), choice.violated().contains(p));
            }
        }
        for (RouteLayout.Spanning over : spanningIn.get(segment)) {
            passing.passed(places.get(over.place()), Raise.NONE, false);
        }
    }

    /** Adds up what one configuration costs in one segment. */
    private final class Tally implements Passing {
        private final int configuration;
        private long seconds;
        private int violated;
        private double reserve = Double.POSITIVE_INFINITY;

        Tally(int configuration) {
            this.configuration = configuration;
        }

        @Override
        public void passed(PlanPlace place, Raise raise, boolean no) {
            seconds += crawlSeconds(place, configuration, !raise.equals(Raise.NONE));
            violated += no ? 1 : 0;
            if (!no) {
                reserve = Math.min(reserve, admission.ranked(place, configuration, raise));
            }
        }
    }

    /** Conditions of one passage: accepted or set aside, and of a crossing those that its time and its room beyond make. */
    int conditions(PlanPlace place, int configuration, Raise raise) {
        int count = admission.isCondition(place, configuration, raise) ? 1 : 0;
        if (place.hazard().isPresent() && place.hazard().get() instanceof RailCrossing crossing) {
            // By length: a hundred configurations have a handful of them.
            count += shown.computeIfAbsent(crossing, x -> new HashMap<>())
                            .computeIfAbsent(changes.setUps().get(configuration).lengthM(),
                                    m -> CrossingTimes.isShown(crossing, m, times.crawlMps()))
                    ? 0
                    : 1;
        }
        return count;
    }

    /** Stopping and going up, before the first place of a raised cluster. */
    long raiseSeconds() {
        return times.stop() + times.raise();
    }

    /** Stopping and going down, after the last. */
    long lowerSeconds() {
        return times.stop() + times.lower();
    }

    /**
     * Over crossings and round corners always, over and under other places when they are not clear, when it is raised, or when
     * what is left is not known to be enough for a bounce.
     */
    boolean crawls(PlanPlace place, int configuration, boolean raised) {
        return place.pointLike() && (place.crawled() || raised || place.raisable() && speedMps(place, configuration).isEmpty());
    }

    /** The most at which a dip, crest or structure is passed in transport, for which its answer stands; empty where it is a crawl. */
    private static OptionalDouble speedMps(PlanPlace place, int configuration) {
        Report.Cell cell = place.cells().get(configuration);
        return cell.verdict().equals(Verdict.CLEAR.word()) ? BounceAllowance.speedMps(cell) : OptionalDouble.empty();
    }

    /** As a passage tells it; null where it crawls, and where speed has no bearing on the answer. */
    Double speedTold(PlanPlace place, int configuration, boolean raised) {
        return place.raisable() && !crawls(place, configuration, raised)
                ? Double.valueOf(Math.floor(speedMps(place, configuration).orElseThrow() * 1000) / 1000)
                : null;
    }

    /** From the front reaching the place until the rear has left it, rounded up; nothing at road speed. */
    long crawlSeconds(PlanPlace place, int configuration, boolean raised) {
        double wayM = place.toM() - place.fromM() + changes.setUps().get(configuration).lengthM();
        return crawls(place, configuration, raised) ? (long) Math.ceil(wayM / times.crawlMps()) : 0;
    }
}
