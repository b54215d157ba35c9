package org.cresthaul.clearance;

import java.util.List;
import java.util.Optional;
import org.cresthaul.clearance.bound.Floors;
import org.cresthaul.clearance.bound.MotionBounds;
import org.cresthaul.clearance.bound.UnitBow;
import org.cresthaul.geometry.WorkLimit;
import org.cresthaul.posture.PlacedUnit;

/**
 * Branch and bound over the steer positions of a passage, for up to two answers at once: the least gap, or gap less
 * need, and which of several demands is met everywhere.
 *
 * <p>Each stretch of positions gets a lower bound on the gap from the exact postures at its ends and what
 * {@link MotionBounds} and {@link UnitBow} say of the way between; a stretch that cannot hold a gap below the least
 * found so far, less {@value #WITHIN_M} m, nor one below what is demanded, is dropped; any other is halved. So the
 * least gap found is within that of the true minimum. Where a stretch cannot be bounded however short, or the work
 * allowed is spent, the search ends at once, undecided: what it has found so far is attained, and nothing else is
 * known.
 *
 * @param <P> what stands behind the tractor at one position
 */
abstract class SpanSearch<P> {
    /** How far above the true minimum the answer may lie, meters. */
    static final double WITHIN_M = 5e-4;

    /** A stretch this short that still cannot be bounded ends the search unproven, meters. */
    private static final double SHORTEST_M = 1e-4;

    /** Outlines of so many points and faces take as long to be looked at as all the rest of a stretch. */
    private static final int POINTS_PER_STEP = 400;

    private final WorkLimit limit;
    private final long lookSteps;
    private final Seeks seeks;
    private final List<Demand> demands;
    /** The least gap found so far, or with {@link Seeks#SPARE} the least gap less need. */
    final Nearest nearest = new Nearest();
    /** The least gap less the need now in force. */
    private Nearest tightest = new Nearest();

    private int inForce;
    /** Why the search ended without an answer; null as long as it has not. */
    private Undecided undecided;

    /** What the least of is sought. */
    enum Seeks {
        /** The least gap. */
        GAP,
        /** The least gap less the one demand. */
        SPARE,
        /** Any gap that falls short of the one demand by more than the ceiling says. */
        SHORT,
        /** Nothing: only whether demands are met. */
        NOTHING
    }

    /**
     * A search.
     *
     * @param ceilingM what is sought matters only below this
     * @param demands the strictest first, none asking more anywhere than the one before; with {@link Seeks#SPARE} and
     *     {@link Seeks#SHORT} just one
     * @param limit a step is a stretch looked at, halved ones and first ones alike; once it is spent the search ends
     *     undecided
     * @param points of the outlines that are looked at, and faces between them
     */
    SpanSearch(Seeks seeks, double ceilingM, List<Demand> demands, WorkLimit limit, int points) {
        this.limit = limit;
        lookSteps = lookSteps(points);
        this.seeks = seeks;
        this.demands = demands;
        nearest.gapM = ceilingM;
    }

    /** What stands behind the tractor in the middle of a stretch, between two neighbors already placed. */
    abstract P place(Passage.Span span, PlacedUnit tractor, P before, P after);

    /**
     * Offers the gaps at one position to {@code least}, and gaps less the need to {@code spare}.
     *
     * @param demand in force, or null: then nothing is offered to {@code spare}
     */
    abstract void measure(double steerM, PlacedUnit tractor, P placed, Demand demand, Nearest least, Nearest spare);

    /** Whether the gaps over a whole stretch surely keep above the floors; {@code demand} may be null. */
    abstract boolean staysAbove(Passage.Span span, P a, P b, Demand demand, Floors above);

    /** What keeps a stretch that {@link #staysAbove} has just refused from being bounded, however short it is. */
    abstract Undecided.Cause obstacle(Passage.Span span, P a, P b);

    /** What a look at a stretch counts of the work allowed, with outlines of so many points and faces. */
    static long lookSteps(int points) {
        return 1 + points / POINTS_PER_STEP;
    }

    final void search(List<Passage.Span> spans, List<P> places) {
        if (!limit.take(lookSteps * spans.size())) {
            endAt(spans.get(0), places.get(0), places.get(1), true);
            return;
        }
        look(spans.get(0).startM, spans.get(0).start, places.get(0));
        for (int i = 0; i < spans.size() && !isIdle(); i++) {
            look(spans.get(i).endM, spans.get(i).end, places.get(i + 1));
        }
        for (int i = 0; i < spans.size() && !isIdle(); i++) {
            searchSpan(spans.get(i), places.get(i), places.get(i + 1));
        }
    }

    private void searchSpan(Passage.Span span, P a, P b) {
        if (isIdle() || isSettled(span, a, b)) {
            return;
        }
        if (span.lengthM() < SHORTEST_M) {
            giveUpOn(span, a, b);
            return;
        }
        if (!limit.take(lookSteps)) {
            endAt(span, a, b, true);
            return;
        }
        Passage.Halves halves = span.halves();
        P middle = place(span, halves.first().end, a, b);
        look(halves.first().endM, halves.first().end, middle);
        searchSpan(halves.first(), a, middle);
        searchSpan(halves.second(), middle, b);
    }

    private boolean isSettled(Passage.Span span, P a, P b) {
        double gapM = seeks == Seeks.GAP ? nearest.gapM - WITHIN_M : Double.NEGATIVE_INFINITY;
        double spareM = spareOnly() ? nearest.gapM - WITHIN_M : demand() == null ? Double.NEGATIVE_INFINITY : 0;
        return staysAbove(span, a, b, demand(), new Floors(gapM, spareM));
    }

    /**
     * A demand that cannot be shown to be met is not; the least gap then is unproven when it cannot be bounded either.
     */
    private void giveUpOn(Passage.Span span, P a, P b) {
        while (!spareOnly() && demand() != null) {
            inForce++;
            if (isSettled(span, a, b)) {
                return;
            }
        }
        endAt(span, a, b, false);
    }

    private void endAt(Passage.Span span, P a, P b, boolean spent) {
        undecided = new Undecided(obstacle(span, a, b), spent, span.startM);
    }

    private void look(double steerM, PlacedUnit tractor, P placed) {
        boolean spareOnly = spareOnly();
        Nearest gaps = spareOnly ? new Nearest() : nearest;
        while (true) {
            measure(steerM, tractor, placed, demand(), gaps, spareOnly ? nearest : tightest);
            if (spareOnly || demand() == null || tightest.gapM >= 0) {
                return;
            }
            // What was dropped so far keeps the next demand as well: it asks no more.
            inForce++;
            tightest = new Nearest();
        }
    }

    private boolean spareOnly() {
        return seeks == Seeks.SPARE || seeks == Seeks.SHORT;
    }

    private Demand demand() {
        return inForce < demands.size() ? demands.get(inForce) : null;
    }

    private boolean isIdle() {
        return undecided != null
                || seeks == Seeks.NOTHING && demand() == null
                || seeks == Seeks.SHORT && nearest.unit != null;
    }

    boolean proven() {
        return undecided == null;
    }

    /** Why it is not proven; empty when it is. */
    Optional<Undecided> undecided() {
        return Optional.ofNullable(undecided);
    }

    /** Index of the first demand that is met at every position, or their number when none is shown to be. */
    int firstMet() {
        return undecided == null ? inForce : demands.size();
    }
}
