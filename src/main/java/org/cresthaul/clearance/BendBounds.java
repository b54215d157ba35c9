package org.cresthaul.clearance;

import org.cresthaul.clearance.UnitMotions.UnitMotion;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.clearance.bound.MotionBounds;
import org.cresthaul.clearance.bound.UnitBow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.geometry.Range;

/**
 * Bounds on the bend at a coupling over a stretch, from what {@link MotionBounds} and {@link UnitBow} say of both
 * units, and what ground beyond the survey may add to it. For one search at a time.
 */
final class BendBounds {
    final Passage passage;
    final UnitPlaces places;
    final Coupling coupling;
    private final UnitMotions motions;
    private final BendLeverage leverage;
    private final Interval bend = new Interval();

    BendBounds(Passage passage, UnitPlaces places, Coupling coupling, BendLeverage leverage) {
        this.passage = passage;
        this.places = places;
        this.coupling = coupling;
        this.leverage = leverage;
        motions = places.motions;
    }

    /** What a demand's uncertain ground may add to the bend over a stretch, radians; nothing without a demand. */
    double strayRad(Demand demand, double fromM, double toM, Placed a, Placed b) {
        return demand == null ? 0 : leverage.strayRad(coupling, stray(passage, demand, fromM, toM, a, b));
    }

    /**
     * How far the ground under each support may stray over a stretch, meters: from the extended line beyond the survey,
     * and between two ways of driving from even.
     */
    static double[] stray(Passage passage, Demand demand, double fromM, double toM, Placed a, Placed b) {
        double[] stray = Stray.of(passage, demand, fromM, toM, a, b);
        double unevenM = passage.place().map(p -> p.unevenM(demand)).orElse(0.0);
        for (int k = 0; unevenM > 0 && k < stray.length; k++) {
            stray[k] += unevenM;
        }
        return stray;
    }

    /** The bend over a stretch, radians, until this is asked again; empty where it cannot be bounded. */
    Interval over(Passage.Span span, Placed a, Placed b) {
        bend.clear();
        if (!span.motion.known) {
            return bend;
        }
        int unit = coupling.unit();
        UnitMotion[] ways = motions.upTo(span, a, b, unit, motions.found(span));
        UnitMotion ahead = ways[unit - 1];
        UnitMotion behind = ways[unit];
        if (!ahead.way().known() || !behind.motion().known) {
            return bend;
        }
        double from = a.bendRad(unit);
        double to = b.bendRad(unit);
        Range rate = behind.motion().turn().minus(ahead.way().turn());
        double least = rate.lo();
        double most = rate.hi();
        if (!behind.free()) {
            // At its hinge's limit a booster does not bend.
            least = Math.min(0, least);
            most = Math.max(0, most);
        }
        bend.set(-peak(-from, -to, -most, -least, span.lengthM()), peak(from, to, least, most, span.lengthM()));
        if (ahead.bow().known && behind.bow().known) {
            Range bow = behind.bow().pitch().minus(ahead.bow().pitch());
            bend.set(
                    Math.max(bend.lo, Math.min(from, to) + bow.lo()), Math.min(bend.hi, Math.max(from, to) + bow.hi()));
        }
        return bend;
    }

    /** What keeps a stretch from being bounded, however short it is. */
    Undecided.Cause obstacle(Passage.Span span, Placed a, Placed b) {
        return motions.bound(span, a, b) ? Undecided.Cause.ROUGH : Undecided.Cause.STEEP;
    }

    /** The most that something can be between two values, changing at a rate between two bounds. */
    private static double peak(double from, double to, double leastRate, double mostRate, double length) {
        if (mostRate <= 0 || leastRate >= 0) {
            return Math.max(from, to);
        }
        double met = (mostRate * (to - leastRate * length) - leastRate * from) / (mostRate - leastRate);
        return Math.max(met, Math.max(from, to));
    }
}
