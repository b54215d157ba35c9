package org.cresthaul.clearance;

import java.util.Arrays;
import java.util.List;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.clearance.bound.GapBounds;
import org.cresthaul.clearance.bound.MotionBounds;
import org.cresthaul.clearance.bound.PivotBow;
import org.cresthaul.clearance.bound.PointMotion;
import org.cresthaul.clearance.bound.Stretch;
import org.cresthaul.clearance.bound.UnitBow;
import org.cresthaul.clearance.bound.UnitWay;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.rig.FramePoint;

/**
 * How the units of a chain move over stretches of steer positions, each by how the one ahead does. What was found of
 * stretches that are kept is kept as well: the same setting is asked about at every place across the road, over the
 * ground, under a structure and between units. Not safe to share between threads.
 */
final class UnitMotions {
    /** Stretches of which it is kept, of some 3 kB each. */
    private static final int MOST_KEPT = 500;

    private final UnitPlaces places;
    /** By the number of the stretch, then by unit; null where it was not asked for. */
    private UnitMotion[][] known = {};

    private int kept;

    UnitMotions(UnitPlaces places) {
        this.places = places;
    }

    /**
     * How one unit moves.
     *
     * @param free whether it keeps off its hinge's limits all the way; else it may be fixed to the unit ahead, or
     *     either in turn. A kingpin has none
     */
    record UnitMotion(UnitWay way, boolean free) {
        MotionBounds motion() {
            return way.motion();
        }

        UnitBow bow() {
            return way.bow();
        }
    }

    /** Of the tractor. */
    static UnitMotion tractor(Passage.Span span) {
        return new UnitMotion(new UnitWay(span.motion, span.bow), true);
    }

    /** Of every unit; not to be written to. */
    UnitMotion[] all(Passage.Span span, Placed a, Placed b) {
        return upTo(span, a, b, a.size() - 1, found(span));
    }

    /** What is known of a stretch so far, to be filled by {@link #of}. */
    UnitMotion[] found(Passage.Span span) {
        int number = span.number;
        if (number >= 0 && number < known.length && known[number] != null) {
            return known[number];
        }
        UnitMotion[] ways = new UnitMotion[places.shape.units().size()];
        ways[0] = tractor(span);
        if (number >= 0 && kept < MOST_KEPT) {
            if (number >= known.length) {
                known = Arrays.copyOf(known, Math.max(number + 1, 2 * known.length));
            }
            known[number] = ways;
            kept++;
        }
        return ways;
    }

    /**
     * Of one unit over a stretch with its own places at both ends.
     *
     * @param found of the same stretch, those of all units ahead filled in
     */
    UnitMotion of(Passage.Span span, Placed a, Placed b, int unit, UnitMotion[] found) {
        if (found[unit] == null) {
            found[unit] = next(span, a, b, unit, found[unit - 1]);
        }
        return found[unit];
    }

    /** Filled up to one unit. */
    UnitMotion[] upTo(Passage.Span span, Placed a, Placed b, int unit, UnitMotion[] found) {
        for (int k = 1; k <= unit; k++) {
            of(span, a, b, k, found);
        }
        return found;
    }

    private UnitMotion next(Passage.Span span, Placed a, Placed b, int unit, UnitMotion ahead) {
        boolean onHinge = unit > places.shape.trailerIndex();
        if (!ahead.way().known()) {
            return new UnitMotion(
                    new UnitWay(MotionBounds.unknown(), onHinge ? ahead.way().motions() : List.of(), UnitBow.unknown()),
                    !onHinge);
        }
        Stretch on = new Stretch(
                places.combination.groups().get(unit),
                places.solver.paths(unit),
                a.unit(unit),
                b.unit(unit),
                span.lengthM());
        PointMotion pivot = pivotMotion(span, a, b, unit, ahead);
        MotionBounds motion = MotionBounds.of(on, pivot);
        if (onHinge && !(motion.known && keepsOffItsLimits(span, a, b, unit, ahead.way(), motion))) {
            MotionBounds either = motion.orFixed(ahead.way().turn());
            return new UnitMotion(new UnitWay(either, ahead.way().motions(), UnitBow.unknown()), false);
        }
        UnitBow bow = ahead.bow().known ? UnitBow.of(on, motion, pivotBow(span, unit, ahead)) : UnitBow.unknown();
        return new UnitMotion(new UnitWay(motion, bow), true);
    }

    private PointMotion pivotMotion(Passage.Span span, Placed a, Placed b, int unit, UnitMotion ahead) {
        return unit == 1 ? span.kingpin : ahead.way().at(a.unit(unit - 1).pose, b.unit(unit - 1).pose, heldAt(unit));
    }

    private PivotBow pivotBow(Passage.Span span, int unit, UnitMotion ahead) {
        return unit == 1
                ? span.kingpinBow
                : ahead.bow().at(heldAt(unit).xM(), heldAt(unit).hM());
    }

    private FramePoint heldAt(int unit) {
        return places.shape.units().get(unit).heldAt();
    }

    private boolean keepsOffItsLimits(
            Passage.Span span, Placed a, Placed b, int unit, UnitWay ahead, MotionBounds booster) {
        TrailingBooster joint = places.shape.joint(unit);
        double bendMost = Math.max(a.askedBendRad(unit), b.askedBendRad(unit));
        double bendLeast = Math.min(a.askedBendRad(unit), b.askedBendRad(unit));
        double reach = 0.5
                * span.lengthM()
                * (booster.turn().magnitude() + ahead.turn().magnitude());
        return bendMost + reach < joint.upRad() && bendLeast - reach > -joint.downRad();
    }

    /** Whether everything moves so that it can be bounded; where not, a unit pitches too steeply or too fast. */
    boolean bound(Passage.Span span, Placed a, Placed b) {
        UnitMotion[] ways = all(span, a, b);
        boolean all = span.motion.known;
        for (int k = 1; k < ways.length; k++) {
            all &= GapBounds.bounds(ways[k].motion(), a.unit(k).pose, b.unit(k).pose);
        }
        return all;
    }
}
