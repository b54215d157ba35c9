package org.cresthaul.posture;

import java.util.List;

/**
 * Branch and bound over the steer positions of a passage.
 *
 * <p>Each stretch of positions gets a lower bound on the gap from the exact postures at its ends and {@link
 * MotionBounds} in between; a stretch that cannot hold a gap below the least found so far, less {@value #WITHIN_M} m, is
 * dropped, any other is halved. So the least gap found is within that of the true minimum. With a need, gap less need is
 * searched instead; and when only asked whether it is nowhere negative, the search stops at the first answer.
 *
 * @param <P> what stands behind the tractor at one position
 */
abstract class SpanSearch<P> {
    /** How far above the true minimum the answer may lie, metres. */
    static final double WITHIN_M = 5e-4;

    /** A stretch this short that still cannot be bounded ends the search unproven, metres. */
    private static final double SHORTEST_M = 1e-4;

    private final boolean onlyWhetherMet;
    /** The least gap, or gap less need, found so far. */
    final Nearest nearest = new Nearest();

    private boolean proven = true;

    SpanSearch(boolean onlyWhetherMet) {
        this.onlyWhetherMet = onlyWhetherMet;
    }

    /** What stands behind the tractor, between two neighbours already placed. */
    abstract P place(PlacedUnit tractor, P before, P after);

    /** Offers the gaps at one position to {@link #nearest}. */
    abstract void measure(double steerM, PlacedUnit tractor, P placed);

    /** A bound below gap (less need) over a whole stretch; may stop early once below {@code enough}. */
    abstract double lowerBound(Passage.Span span, P a, P b, double enough);

    final void search(List<Passage.Span> spans, List<P> places) {
        measure(spans.get(0).startM, spans.get(0).start, places.get(0));
        for (int i = 0; i < spans.size() && !missed(); i++) {
            measure(spans.get(i).endM, spans.get(i).end, places.get(i + 1));
        }
        for (int i = 0; i < spans.size(); i++) {
            searchSpan(spans.get(i), places.get(i), places.get(i + 1));
        }
    }

    private void searchSpan(Passage.Span span, P a, P b) {
        double enough = onlyWhetherMet ? 0 : nearest.gapM - WITHIN_M;
        if (missed() || lowerBound(span, a, b, enough) >= enough) {
            return;
        }
        if (span.lengthM() < SHORTEST_M) {
            proven = false;
            return;
        }
        Passage.Span first = span.first();
        P middle = place(first.end, a, b);
        measure(first.endM, first.end, middle);
        searchSpan(first, a, middle);
        searchSpan(span.second(), middle, b);
    }

    private boolean missed() {
        return onlyWhetherMet && nearest.gapM < 0;
    }

    boolean proven() {
        return proven;
    }

    /** Whether the demand is met at every position; false when that cannot be shown. */
    boolean met() {
        return nearest.gapM >= 0 && proven;
    }
}
