package org.cresthaul.clearance;

import java.util.Optional;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.clearance.bound.GapBounds;
import org.cresthaul.clearance.bound.MotionBounds;
import org.cresthaul.clearance.bound.Stretch;
import org.cresthaul.clearance.bound.UnitBow;
import org.cresthaul.clearance.bound.UnitWay;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.posture.PlacedUnit;

/** How trailer and booster move over stretches of steer positions. Immutable. */
final class UnitMotions {
    private final UnitPlaces places;

    UnitMotions(UnitPlaces places) {
        this.places = places;
    }

    /**
     * How a trailing booster moves.
     *
     * @param free whether it keeps off its hinge's limits all the way; else it may be fixed to the trailer, or either
     *     in turn
     */
    record BoosterWay(UnitWay way, boolean free) {
        MotionBounds motion() {
            return way.motion();
        }

        UnitBow bow() {
            return way.bow();
        }
    }

    /** Over a stretch whose tractor's motion is known. */
    UnitWay trailer(Passage.Span span, Placed a, Placed b) {
        Stretch on = new Stretch(
                places.combination.trailer(), places.solver.trailerPaths(), a.trailer(), b.trailer(), span.lengthM());
        MotionBounds motion = MotionBounds.of(on, span.kingpin);
        return new UnitWay(motion, span.bow.known ? UnitBow.of(on, motion, span.kingpinBow) : UnitBow.unknown());
    }

    /** Of a trailing booster, by how the trailer moves. */
    BoosterWay booster(Passage.Span span, Placed a, Placed b, UnitWay trailer) {
        if (!trailer.motion().known) {
            return new BoosterWay(
                    new UnitWay(MotionBounds.unknown(), Optional.of(trailer.motion()), UnitBow.unknown()), false);
        }
        TrailingBooster joint = places.shape.trailing().orElseThrow();
        PlacedUnit unitA = a.booster().unit();
        PlacedUnit unitB = b.booster().unit();
        Stretch on = new Stretch(
                places.combination.booster().orElseThrow(), places.solver.boosterPaths(), unitA, unitB, span.lengthM());
        MotionBounds motion =
                MotionBounds.of(on, trailer.motion().at(a.trailer().pose, b.trailer().pose, joint.hinge()));
        boolean free = motion.known && keepsOffItsLimits(span, a, b, trailer.motion(), motion);
        UnitBow bow = free && trailer.bow().known
                ? UnitBow.of(
                        on,
                        motion,
                        trailer.bow().at(joint.hinge().xM(), joint.hinge().hM()))
                : UnitBow.unknown();
        return new BoosterWay(new UnitWay(motion, free ? Optional.empty() : Optional.of(trailer.motion()), bow), free);
    }

    private boolean keepsOffItsLimits(
            Passage.Span span, Placed a, Placed b, MotionBounds trailer, MotionBounds booster) {
        TrailingBooster joint = places.shape.trailing().orElseThrow();
        double bendMost = Math.max(a.booster().bendRad(), b.booster().bendRad());
        double bendLeast = Math.min(a.booster().bendRad(), b.booster().bendRad());
        double reach = 0.5
                * span.lengthM()
                * (booster.turn().magnitude() + trailer.turn().magnitude());
        return bendMost + reach < joint.upRad() && bendLeast - reach > -joint.downRad();
    }

    /** Whether everything moves so that it can be bounded; where not, a unit pitches too steeply or too fast. */
    boolean bound(Passage.Span span, Placed a, Placed b) {
        if (!span.motion.known) {
            return false;
        }
        UnitWay trailer = trailer(span, a, b);
        return GapBounds.bounds(trailer.motion(), a.trailer().pose, b.trailer().pose)
                && (a.booster() == null
                        || GapBounds.bounds(
                                booster(span, a, b, trailer).motion(),
                                a.booster().unit().pose,
                                b.booster().unit().pose));
    }
}
