package org.cresthaul.clearance;

import java.util.List;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.geometry.Interval;
import org.cresthaul.geometry.Range;

/**
 * Shows that a bend keeps to a range at every position of a passage, and with what ground beyond the survey may add for
 * a demand to the range of that demand. Bounds of stretches have only to lie in the range, where {@link BendSearch} has
 * to find its ends: with some room to spare that takes a few stretches. It gives up soon, and then nothing is shown. A
 * proof of its own: nothing of it hangs on what a search would find.
 */
final class BendProof {
    /** Stretches that are halved before it gives up. */
    private static final int MOST_HALVED = 24;

    private final BendBounds bounds;
    private final Range plain;
    private final List<Kept> kept;
    private int left = MOST_HALVED;

    /** What a demand's bend is to keep to, radians. */
    record Kept(Demand demand, Range within) {}

    /** @param plain what the bend as the road is surveyed is to keep to, radians */
    BendProof(BendBounds bounds, Range plain, List<Kept> kept) {
        this.bounds = bounds;
        this.plain = plain;
        this.kept = kept;
    }

    /** Whether it is shown. */
    boolean holds() {
        List<Passage.Span> spans = bounds.passage.spans();
        List<Placed> places = bounds.places.first;
        if (!keeps(spans.get(0).startM, places.get(0))) {
            return false;
        }
        for (int i = 0; i < spans.size(); i++) {
            if (!keeps(spans.get(i).endM, places.get(i + 1))) {
                return false;
            }
        }
        for (int i = 0; i < spans.size(); i++) {
            if (!holds(spans.get(i), places.get(i), places.get(i + 1))) {
                return false;
            }
        }
        return true;
    }

    private boolean keeps(double steerM, Placed placed) {
        double bendRad = placed.bendRad(bounds.coupling.unit());
        return keeps(bendRad, bendRad, steerM, steerM, placed, placed);
    }

    private boolean keeps(double leastRad, double mostRad, double fromM, double toM, Placed a, Placed b) {
        if (!(leastRad >= plain.lo() && mostRad <= plain.hi())) {
            return false;
        }
        for (Kept each : kept) {
            double stray = bounds.strayRad(each.demand, fromM, toM, a, b);
            if (!(leastRad - stray >= each.within.lo() && mostRad + stray <= each.within.hi())) {
                return false;
            }
        }
        return true;
    }

    private boolean holds(Passage.Span span, Placed a, Placed b) {
        Interval bend = bounds.over(span, a, b);
        if (bend.lo <= bend.hi && keeps(bend.lo, bend.hi, span.startM, span.endM, a, b)) {
            return true;
        }
        if (left == 0) {
            return false;
        }
        left--;
        Passage.Halves halves = span.halves();
        Placed middle = bounds.places.middle(span, halves.first().end, a, b);
        return keeps(halves.first().endM, middle)
                && holds(halves.first(), a, middle)
                && holds(halves.second(), middle, b);
    }
}
