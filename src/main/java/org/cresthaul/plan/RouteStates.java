package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
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
        int n = layout.segments();
        int count = changes.setUps().size();
        long[][] seconds = new long[n][count];
        int[][] violated = new int[n][count];
        int[][] conditions = new int[n][count];
        double[][] reserve = new double[n][count];
        for (double[] row : reserve) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        for (int k = 0; k < layout.clusters().size(); k++) {
            RouteLayout.Cluster cluster = layout.clusters().get(k);
            for (int c = 0; c < count; c++) {
                ClusterChoice choice = choice(k, c);
                boolean raised = !choice.raise().equals(Raise.NONE);
                seconds[cluster.segment()][c] += raised ? raiseSeconds() + lowerSeconds() : 0;
                for (int p : cluster.places()) {
                    seconds[cluster.segment()][c] += crawlSeconds(places.get(p), c, raised);
                    conditions[cluster.segment()][c] += fewestConditions ? conditions(places.get(p), c, choice.raise()) : 0;
                    if (!choice.violated().contains(p)) {
                        reserve[cluster.segment()][c] =
                                Math.min(reserve[cluster.segment()][c], admission.reserve(places.get(p), c, choice.raise()));
                    }
                }
                violated[cluster.segment()][c] += choice.violated().size();
            }
        }
        List<List<BitSet>> spanning = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            spanning.add(new ArrayList<>(Collections.nCopies(count, new BitSet())));
        }
        for (int s = 0; s < layout.spanning().size(); s++) {
            RouteLayout.Spanning over = layout.spanning().get(s);
            for (int c = 0; c < count; c++) {
                for (int k = over.firstSegment(); k <= over.lastSegment(); k++) {
                    if (over.holdsIn(k)) {
                        conditions[k][c] += fewestConditions ? conditions(places.get(over.place()), c, Raise.NONE) : 0;
                        reserve[k][c] = Math.min(reserve[k][c], admission.reserve(places.get(over.place()), c, Raise.NONE));
                    }
                }
                if (!admission.inTransport(places.get(over.place()), c)) {
                    for (int k = over.firstSegment(); k <= over.lastSegment(); k++) {
                        if (over.holdsIn(k)) {
                            BitSet more = (BitSet) spanning.get(k).get(c).clone();
                            more.set(s);
                            spanning.get(k).set(c, more);
                        }
                    }
                }
            }
        }
        List<WayCosts.Segment> segments = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            segments.add(new WayCosts.Segment(seconds[k], violated[k], spanning.get(k), reserve[k], conditions[k]));
        }
        return new WayCosts(
                count, layout.spanning().size(), segments, layout.stops().stream().map(changes::at).toList());
    }

    /** Conditions of one passage: accepted or set aside, and of a crossing those that its time and its room beyond make. */
    int conditions(PlanPlace place, int configuration, Raise raise) {
        int count = admission.isCondition(place, configuration, raise) ? 1 : 0;
        if (place.hazard().isPresent() && place.hazard().get() instanceof RailCrossing crossing) {
            Plan.SetUp set = changes.setUps().get(configuration);
            CrossingTime time = CrossingTimes.of(crossing, set.configuration(), set.lengthM(), times.crawlMps());
            count += Boolean.TRUE.equals(time.fits()) && Boolean.TRUE.equals(time.storageFits()) ? 0 : 1;
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

    /** Over crossings and round corners always, over and under other places when they are not clear or it is raised. */
    boolean crawls(PlanPlace place, int configuration, boolean raised) {
        boolean clear = place.cells().get(configuration).verdict().equals(Verdict.CLEAR.word());
        return place.pointLike() && (place.crawled() || raised || place.raisable() && !clear);
    }

    /** From the front reaching the place until the rear has left it, rounded up; nothing at road speed. */
    long crawlSeconds(PlanPlace place, int configuration, boolean raised) {
        double wayM = place.toM() - place.fromM() + changes.setUps().get(configuration).lengthM();
        return crawls(place, configuration, raised) ? (long) Math.ceil(wayM / times.crawlMps()) : 0;
    }
}
