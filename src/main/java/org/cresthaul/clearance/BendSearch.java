package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.clearance.UnitMotions.UnitMotion;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.clearance.bound.MotionBounds;
import org.cresthaul.clearance.bound.UnitBow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.geometry.Range;
import org.cresthaul.posture.CombinationShape.TrailingBooster;

/**
 * Branch and bound for the least and greatest bend at a coupling over every position of a passage, once as the road is
 * surveyed, and once for each demand with what ground beyond the survey may add to it there. The bend changes
 * continuously, so every value between is met as well. What {@link MotionBounds} and {@link UnitBow} say of both units
 * bounds it over a stretch; a stretch that cannot hold a bend beyond the extremes found, by more than
 * {@link #withinRad}, is dropped; any other is halved.
 */
final class BendSearch {
    /** What a first look at a stretch, with the placing of its ends, counts of the work allowed. */
    private static final long LOOK_STEPS = 2;

    /** A stretch this short is not halved any more: its bound then widens the range, meters. */
    private static final double SHORTEST_M = 1e-4;

    private final Passage passage;
    private final UnitPlaces places;
    private final UnitMotions motions;
    private final BendLeverage leverage;
    private final Coupling coupling;
    private final double withinRad;
    private final List<Extreme> extremes = new ArrayList<>();
    private final Interval bend = new Interval();
    private Undecided undecided;

    /**
     * Bends that are met on a passage.
     *
     * @param leastRad attained with the steer axle at {@code leastSteerM}, as is {@code mostRad} at {@code mostSteerM};
     *     with what ground beyond the survey may add
     * @param provenLeastRad nothing is below this, nor above {@code provenMostRad}
     */
    record Bends(
            double leastRad,
            double leastSteerM,
            double mostRad,
            double mostSteerM,
            double provenLeastRad,
            double provenMostRad) {}

    /** The greatest of the bend, or of its negative, plus what uncertain ground may add. */
    private static final class Extreme {
        final int sign;
        /** Null for the bend alone. */
        final Demand demand;

        double most = Double.NEGATIVE_INFINITY;
        double steerM;
        double proven = Double.NEGATIVE_INFINITY;

        Extreme(int sign, Demand demand) {
            this.sign = sign;
            this.demand = demand;
        }
    }

    /**
     * A search.
     *
     * @param demands for whose stray a range is wanted each, behind that of the bend alone
     * @param withinRad how far beyond the extremes found the true ones may lie
     */
    BendSearch(
            Passage passage,
            UnitPlaces places,
            Coupling coupling,
            BendLeverage leverage,
            List<Demand> demands,
            double withinRad) {
        this.passage = passage;
        this.places = places;
        this.coupling = coupling;
        this.leverage = leverage;
        this.withinRad = withinRad;
        motions = places.motions;
        extremes.add(new Extreme(-1, null));
        extremes.add(new Extreme(1, null));
        for (Demand demand : demands) {
            extremes.add(new Extreme(-1, demand));
            extremes.add(new Extreme(1, demand));
        }
    }

    /** Searches all positions. */
    void search() {
        List<Passage.Span> spans = passage.spans();
        look(spans.get(0).startM, places.first.get(0));
        if (!passage.limit().take(LOOK_STEPS * spans.size())) {
            undecided = new Undecided(Undecided.Cause.ROUGH, true, spans.get(0).startM);
            return;
        }
        for (int i = 0; i < spans.size(); i++) {
            look(spans.get(i).endM, places.first.get(i + 1));
        }
        for (int i = 0; i < spans.size() && undecided == null; i++) {
            search(spans.get(i), places.first.get(i), places.first.get(i + 1));
        }
    }

    /** Why it ended without an answer; the ranges then hold only what was met. */
    Optional<Undecided> undecided() {
        return Optional.ofNullable(undecided);
    }

    /** The range of the bend alone, then that of each demand. */
    List<Bends> ranges() {
        List<Bends> ranges = new ArrayList<>();
        for (int i = 0; i < extremes.size(); i += 2) {
            Extreme down = extremes.get(i);
            Extreme up = extremes.get(i + 1);
            ranges.add(new Bends(
                    within(-down.most),
                    down.steerM,
                    within(up.most),
                    up.steerM,
                    within(-Math.max(down.proven, down.most + withinRad)),
                    within(Math.max(up.proven, up.most + withinRad))));
        }
        return ranges;
    }

    /** No road bends a booster beyond its hinge's limits. */
    private double within(double bendRad) {
        if (!coupling.isHinge()) {
            return bendRad;
        }
        TrailingBooster joint = places.shape.joint(coupling.unit());
        return Math.max(-joint.downRad(), Math.min(joint.upRad(), bendRad));
    }

    private void look(double steerM, Placed placed) {
        double bendRad = placed.bendRad(coupling.unit());
        Demand last = null;
        double stray = 0;
        for (Extreme e : extremes) {
            if (e.demand != last) {
                last = e.demand;
                stray = strayRad(last, steerM, steerM, placed, placed);
            }
            double value = e.sign * bendRad + stray;
            if (value > e.most) {
                e.most = value;
                e.steerM = steerM;
            }
        }
    }

    private double strayRad(Demand demand, double fromM, double toM, Placed a, Placed b) {
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

    private void search(Passage.Span span, Placed a, Placed b) {
        if (undecided != null || isSettled(span, a, b)) {
            return;
        }
        boolean known = bend.lo <= bend.hi;
        if (span.lengthM() < SHORTEST_M && known) {
            widen(span, a, b);
            return;
        }
        if (span.lengthM() < SHORTEST_M || !passage.limit().take()) {
            undecided = new Undecided(
                    motions.bound(span, a, b) ? Undecided.Cause.ROUGH : Undecided.Cause.STEEP,
                    span.lengthM() >= SHORTEST_M,
                    span.startM);
            return;
        }
        Passage.Halves halves = span.halves();
        Placed middle = places.middle(span, halves.first().end, a, b);
        look(halves.first().endM, middle);
        search(halves.first(), a, middle);
        search(halves.second(), middle, b);
    }

    private boolean isSettled(Passage.Span span, Placed a, Placed b) {
        bound(span, a, b);
        if (!(bend.lo <= bend.hi)) {
            return false;
        }
        Demand last = null;
        double stray = 0;
        for (Extreme e : extremes) {
            if (e.demand != last) {
                last = e.demand;
                stray = strayRad(last, span.startM, span.endM, a, b);
            }
            if ((e.sign > 0 ? bend.hi : -bend.lo) + stray > e.most + withinRad) {
                return false;
            }
        }
        return true;
    }

    private void widen(Passage.Span span, Placed a, Placed b) {
        for (Extreme e : extremes) {
            double stray = strayRad(e.demand, span.startM, span.endM, a, b);
            e.proven = Math.max(e.proven, (e.sign > 0 ? bend.hi : -bend.lo) + stray);
        }
    }

    /** Bounds the bend over a stretch; leaves it empty where that cannot be. */
    private void bound(Passage.Span span, Placed a, Placed b) {
        bend.clear();
        if (!span.motion.known) {
            return;
        }
        UnitMotion[] ways = motions.upTo(span, a, b, coupling.unit(), motions.found(span));
        UnitMotion ahead = ways[coupling.unit() - 1];
        UnitMotion behind = ways[coupling.unit()];
        if (!ahead.way().known() || !behind.motion().known) {
            return;
        }
        double from = a.bendRad(coupling.unit());
        double to = b.bendRad(coupling.unit());
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
