package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.check.BounceAllowance;
import org.cresthaul.plan.Admission.Raise;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.PlanTimes;

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
    private List<WayCosts.Segment> segments;

    private final CrossingsShown shown;
    private final ClusterSearch search;
    private final Earlier earlier;

    RouteStates(
            List<PlanPlace> places,
            RouteLayout layout,
            ConfigurationChanges changes,
            PlanTimes times,
            Admission admission,
            boolean avoidRaising) {
        this(places, layout, changes, times, admission, new ClusterSearch(avoidRaising, false), Earlier.NONE);
    }

    /** The same, with clusters that cannot be passed searched for the fewest places in the way. */
    RouteStates searched() {
        return new RouteStates(
                places, layout, changes, times, admission, search.forFewest(true), new Earlier(this, List.of()));
    }

    /** The same with some places set aside. */
    RouteStates with(Admission opened, List<PlanPlace> moreSetAside) {
        return new RouteStates(
                places, layout, changes, times, opened, search.forFewest(false), new Earlier(this, moreSetAside));
    }

    /**
     * How clusters are searched.
     *
     * @param fewest whether one that cannot be passed is searched for the fewest places in the way
     */
    private record ClusterSearch(boolean avoidRaising, boolean fewest) {
        ClusterSearch forFewest(boolean wanted) {
            return new ClusterSearch(avoidRaising, wanted);
        }
    }

    /**
     * What need not be reckoned again.
     *
     * @param states of the same places, or null
     * @param changed places that are admitted otherwise than there
     */
    private record Earlier(RouteStates states, List<PlanPlace> changed) {
        static final Earlier NONE = new Earlier(null, List.of());
    }

    private RouteStates(
            List<PlanPlace> places,
            RouteLayout layout,
            ConfigurationChanges changes,
            PlanTimes times,
            Admission admission,
            ClusterSearch search,
            Earlier earlier) {
        this.places = places;
        this.layout = layout;
        this.changes = changes;
        this.times = times;
        this.admission = admission;
        this.search = search;
        this.earlier = earlier;
        RouteStates known = earlier.states();
        shown = known != null
                ? known.shown
                : new CrossingsShown(
                        changes.setUps().stream()
                                .mapToDouble(Plan.SetUp::lengthM)
                                .toArray(),
                        times.crawlMps());
        for (int k = 0; k < layout.clusters().size(); k++) {
            choices.add(
                    known != null
                                    && layout.clusters().get(k).places().stream()
                                            .noneMatch(p -> earlier.changed().contains(places.get(p)))
                            ? search.fewest() ? searched(k, known.choices.get(k)) : known.choices.get(k)
                            : chosen(k));
        }
        for (int k = 0; k < layout.segments(); k++) {
            int segment = k;
            clustersIn.add(new ArrayList<>());
            spanningIn.add(
                    layout.spanning().stream().filter(s -> s.holdsIn(segment)).toList());
        }
        for (int k = 0; k < layout.clusters().size(); k++) {
            clustersIn.get(layout.clusters().get(k).segment()).add(k);
        }
    }

    private List<ClusterChoice> chosen(int cluster) {
        List<ClusterChoice> row = new ArrayList<>();
        for (int c = 0; c < changes.setUps().size(); c++) {
            row.add(chosen(cluster, c));
        }
        return row;
    }

    private ClusterChoice chosen(int cluster, int configuration) {
        return ClusterChoice.of(
                layout.clusters().get(cluster).places(),
                places,
                configuration,
                admission,
                search.avoidRaising(),
                search.fewest());
    }

    /** The row itself where searching finds nothing else. */
    private List<ClusterChoice> searched(int cluster, List<ClusterChoice> row) {
        List<ClusterChoice> other = new ArrayList<>();
        for (int c = 0; c < row.size(); c++) {
            other.add(row.get(c).violated().isEmpty() ? row.get(c) : chosen(cluster, c));
        }
        return other.equals(row) ? row : other;
    }

    List<PlanPlace> places() {
        return places;
    }

    RouteLayout layout() {
        return layout;
    }

    ConfigurationChanges changes() {
        return changes;
    }

    Admission admission() {
        return admission;
    }

    ClusterChoice choice(int cluster, int configuration) {
        return choices.get(cluster).get(configuration);
    }

    /** Whether the fewest violated places are known in every cluster. */
    boolean exhausted() {
        return choices.stream().flatMap(List::stream).allMatch(ClusterChoice::exhausted);
    }

    WayCosts costs(WayCosts.Conditions conditions) {
        return new WayCosts(
                changes.setUps().size(),
                layout.spanning().size(),
                segments(),
                layout.stops().stream().map(changes::at).toList(),
                conditions);
    }

    /** Whether the configurations that may pass differ anywhere in how many conditions they pass under. */
    boolean conditionsDiffer(BitSet usable) {
        for (WayCosts.Segment segment : segments()) {
            int first = -1;
            for (int c = usable.nextSetBit(0); c >= 0; c = usable.nextSetBit(c + 1)) {
                if (segment.admits(c) && first >= 0 && segment.conditions(c) != segment.conditions(first)) {
                    return true;
                }
                first = first < 0 && segment.admits(c) ? c : first;
            }
        }
        return false;
    }

    private List<WayCosts.Segment> segments() {
        if (segments == null) {
            segments = new ArrayList<>();
            for (int k = 0; k < layout.segments(); k++) {
                segments.add(isKnown(k) ? earlier.states().segments.get(k) : segment(k));
            }
        }
        return segments;
    }

    /** Whether nothing in a segment is otherwise than it was. */
    private boolean isKnown(int segment) {
        RouteStates known = earlier.states();
        return known != null
                && known.segments != null
                && clustersIn.get(segment).stream().allMatch(k -> choices.get(k) == known.choices.get(k))
                && spanningIn.get(segment).stream()
                        .noneMatch(over -> earlier.changed().contains(places.get(over.place())));
    }

    private WayCosts.Segment segment(int k) {
        int count = changes.setUps().size();
        Tally tally = new Tally(count);
        for (int cluster : clustersIn.get(k)) {
            tally.add(cluster);
        }
        List<BitSet> closed = sets(count, spanningIn.get(k).isEmpty());
        List<BitSet> under = sets(count, spanningIn.get(k).isEmpty());
        boolean any = false;
        for (RouteLayout.Spanning over : spanningIn.get(k)) {
            PlanPlace place = places.get(over.place());
            int number = layout.spanning().indexOf(over);
            for (int c = 0; c < count; c++) {
                tally.reserve[c] = Math.min(tally.reserve[c], admission.ranked(place, c, Raise.NONE));
                closed.get(c).set(number, !admission.inTransport(place, c));
                under.get(c).set(number, admission.isCondition(place, c, Raise.NONE));
                any |= under.get(c).get(number);
            }
        }
        return new WayCosts.Segment(
                tally.seconds, tally.violated, closed, tally.reserve, tally.conditions, any ? under : List.of());
    }

    /** One for each configuration; where nothing is put into them, the same. */
    private static List<BitSet> sets(int count, boolean empty) {
        if (empty) {
            return Collections.nCopies(count, new BitSet());
        }
        List<BitSet> sets = new ArrayList<>();
        for (int c = 0; c < count; c++) {
            sets.add(new BitSet());
        }
        return sets;
    }

    /** Takes what is passed in a segment. */
    interface Passing {
        /** @param violated whether it must not be passed so; of places that run over stops that is not told here */
        void passed(PlanPlace place, Raise raise, boolean violated);
    }

    /**
     * Every place that is passed in a segment in one configuration: those of its clusters, then those that run over
     * stops.
     */
    void eachPassed(int segment, int configuration, Passing passing) {
        for (int k : clustersIn.get(segment)) {
            ClusterChoice choice = choice(k, configuration);
            for (int p : layout.clusters().get(k).places()) {
                passing.passed(places.get(p), choice.raise(), choice.violates(p));
            }
        }
        for (RouteLayout.Spanning over : spanningIn.get(segment)) {
            passing.passed(places.get(over.place()), Raise.NONE, false);
        }
    }

    /** Adds up what each configuration costs in one segment. */
    private final class Tally {
        private final long[] seconds;
        private final int[] violated;
        private final double[] reserve;
        private final int[] conditions;

        Tally(int count) {
            seconds = new long[count];
            violated = new int[count];
            reserve = new double[count];
            Arrays.fill(reserve, Double.POSITIVE_INFINITY);
            conditions = new int[count];
        }

        void add(int cluster) {
            for (int c = 0; c < seconds.length; c++) {
                seconds[c] += choice(cluster, c).raise().equals(Raise.NONE) ? 0 : raiseSeconds() + lowerSeconds();
            }
            for (int p : layout.clusters().get(cluster).places()) {
                PlanPlace place = places.get(p);
                boolean[] inTime = shown.at(place);
                for (int c = 0; c < seconds.length; c++) {
                    ClusterChoice choice = choice(cluster, c);
                    Raise raise = choice.raise();
                    seconds[c] += crawlSeconds(place, c, !raise.equals(Raise.NONE));
                    if (choice.violates(p)) {
                        violated[c]++;
                    } else {
                        reserve[c] = Math.min(reserve[c], admission.ranked(place, c, raise));
                        conditions[c] += (admission.isCondition(place, c, raise) ? 1 : 0) + (inTime[c] ? 0 : 1);
                    }
                }
            }
        }
    }

    /**
     * Conditions of one passage: accepted or set aside, and of a crossing those that its time and its room beyond make.
     */
    int conditions(PlanPlace place, int configuration, Raise raise) {
        return (admission.isCondition(place, configuration, raise) ? 1 : 0) + (shown.at(place)[configuration] ? 0 : 1);
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
     * Over crossings and round corners always, over and under other places when they are not clear, when it is raised,
     * or when what is left is not known to be enough for a bounce.
     */
    boolean crawls(PlanPlace place, int configuration, boolean raised) {
        return place.pointLike()
                && (place.crawled()
                        || raised
                        || place.raisable() && speedMps(place, configuration).isEmpty());
    }

    /**
     * The most at which a dip, crest or structure is passed in transport, for which its answer stands; empty where it
     * is a crawl.
     */
    private static OptionalDouble speedMps(PlanPlace place, int configuration) {
        ReportCell cell = place.cells().get(configuration);
        return cell.verdict() == Verdict.CLEAR ? BounceAllowance.speedMps(cell) : OptionalDouble.empty();
    }

    /** As a passage tells it; null where it crawls, and where speed has no bearing on the answer. */
    Double speedTold(PlanPlace place, int configuration, boolean raised) {
        return place.raisable() && !crawls(place, configuration, raised)
                ? Double.valueOf(speedMps(place, configuration).orElseThrow())
                : null;
    }

    /** From the front reaching the place until the rear has left it, rounded up; nothing at road speed. */
    long crawlSeconds(PlanPlace place, int configuration, boolean raised) {
        double wayM = place.toM()
                - place.fromM()
                + changes.setUps().get(configuration).lengthM();
        return crawls(place, configuration, raised) ? (long) Math.ceil(wayM / times.crawlMps()) : 0;
    }
}
