package org.cresthaul.server;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.cresthaul.check.CheckFollower;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanFollower;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;
import org.cresthaul.units.Worded;

/** How far one check, and the plan behind it, has come. Told by the threads that work, asked by others. */
final class CheckUnderway implements CheckFollower, PlanFollower {
    /** Of places that are not judged in every configuration yet. */
    private final Map<String, Integer> begun = new ConcurrentHashMap<>();

    private final List<Found> found = new ArrayList<>();
    /** By id, in the order they were told; guarded as those found are. */
    private final Map<String, Blocked> passedByNone = new LinkedHashMap<>();

    private volatile Phase phase = Phase.WAITING;
    private volatile int ofPlaces;
    private volatile int configurations;
    private volatile String at;
    private volatile List<Blocked> blocked;
    private final AtomicInteger asked = new AtomicInteger();
    private final AtomicInteger answered = new AtomicInteger();
    /** Whose answer is waited for; null when it is this one's own. */
    private volatile CheckUnderway leader;

    private enum Phase implements Worded {
        WAITING("waiting"),
        CHECKING("checking"),
        PLANNING("planning");

        private final String word;

        Phase(String word) {
            this.word = word;
        }

        @Override
        public String word() {
            return word;
        }
    }

    /**
     * A place that was judged. What is clear there says nothing of the route.
     *
     * @param clear in how many of the configurations it is clear in transport
     * @param best the best verdict of any
     */
    record Found(
            String hazard,
            HazardKind kind,
            String name,
            @Rounded(Rounding.LENGTH_NEAR) double chainageM,
            int clear,
            Verdict best) {}

    /** A place that stands in the way; of the whole route, its beginning. */
    record Blocked(
            String hazard,
            String name,
            @Rounded(Rounding.LENGTH_NEAR) double chainageM) {}

    /**
     * How far.
     *
     * @param state waiting, checking, planning; or none where nothing is under way
     * @param at the place that was judged in one configuration more just now, or of which a question of the plan was
     *     answered; or null
     * @param cells places judged, configuration by configuration, of {@code places} in {@code configurations} each
     * @param found those that are judged in all of them, in the order they were, from the one asked for
     * @param passedByNone those that no configuration passes, in transport or on a raise of its own, as far as is
     *     known: told long before all is judged; of a place that is not among them nothing is said
     * @param asked questions of the plan to the engines that are known so far
     * @param answered of these
     * @param blocked the fewest places that stand in every way; empty where there is one; null while that is not known
     */
    record State(
            String state,
            String at,
            int cells,
            int places,
            int configurations,
            List<Found> found,
            List<Blocked> passedByNone,
            int asked,
            int answered,
            List<Blocked> blocked) {
        static final State NONE = new State("none", null, 0, 0, 0, List.of(), List.of(), 0, 0, null);
    }

    State state(int from) {
        CheckUnderway other = leader;
        if (other != null && phase != Phase.CHECKING) {
            return other.state(from);
        }
        synchronized (found) {
            return new State(
                    phase.word,
                    at,
                    found.size() * configurations
                            + begun.values().stream()
                                    .mapToInt(Integer::intValue)
                                    .sum(),
                    ofPlaces,
                    configurations,
                    List.copyOf(found.subList(Math.min(Math.max(0, from), found.size()), found.size())),
                    List.copyOf(passedByNone.values()),
                    asked.get(),
                    answered.get(),
                    blocked);
        }
    }

    @Override
    public void waitsFor(CheckFollower other) {
        leader = other instanceof CheckUnderway followed ? followed : null;
    }

    @Override
    public void begins(int count, int each) {
        ofPlaces = count;
        configurations = each;
        CheckUnderway other = leader;
        if (other != null) {
            // What was told of the check that was waited for stays told; those places are kept.
            State told = other.state(0);
            synchronized (found) {
                found.addAll(told.found());
                told.passedByNone().forEach(p -> passedByNone.put(p.hazard(), p));
            }
        }
        phase = Phase.CHECKING;
    }

    @Override
    public void judges(String hazard) {
        at = hazard;
        begun.merge(hazard, 1, Integer::sum);
    }

    @Override
    public void refused(Hazard hazard) {
        HazardPlace place = hazard.place();
        refused(new Blocked(place.id(), place.name(), place.chainageM()));
    }

    private void refused(Blocked place) {
        synchronized (found) {
            passedByNone.putIfAbsent(place.hazard(), place);
        }
    }

    @Override
    public void judged(HazardFindings place) {
        if (place.cells().stream().allMatch(c -> c.verdict() != Verdict.CLEAR && c.raise() == null)) {
            refused(new Blocked(place.id(), place.name(), place.chainageM()));
        }
        List<Verdict> verdicts = place.cells().stream().map(ReportCell::verdict).toList();
        synchronized (found) {
            begun.remove(place.id());
            if (found.stream().anyMatch(f -> f.hazard().equals(place.id()))) {
                return;
            }
            found.add(new Found(
                    place.id(),
                    place.kind(),
                    place.name(),
                    place.chainageM(),
                    (int) verdicts.stream().filter(v -> v == Verdict.CLEAR).count(),
                    verdicts.stream().min(Verdict::compareTo).orElseThrow()));
        }
    }

    /** The report is there; what remains is the way, looked for by this one as long as it waits for no other. */
    void plans() {
        leader = null;
        at = null;
        phase = Phase.PLANNING;
    }

    @Override
    public void decided(List<Plan.Block> blocking) {
        blocked = blocking.stream()
                .map(b -> new Blocked(b.hazard(), b.name(), b.chainageM()))
                .toList();
    }

    @Override
    public void asks(int more) {
        asked.addAndGet(more);
    }

    @Override
    public void answered(String hazard) {
        at = hazard;
        answered.incrementAndGet();
    }
}
