package org.cresthaul.clearance;

import java.util.function.Supplier;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.clearance.bound.GapBounds;
import org.cresthaul.clearance.bound.MotionBounds;
import org.cresthaul.clearance.bound.UnitBow;
import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.rig.FramePoint;

/**
 * How trailer and booster move over a stretch of steer positions. For one search at a time; set to one stretch at a
 * time.
 */
final class UnitMotions {
    final MotionBounds trailer = new MotionBounds();
    final MotionBounds booster = new MotionBounds();
    final UnitBow trailerBow = new UnitBow();
    final UnitBow boosterBow = new UnitBow();
    /**
     * Whether the booster keeps off its hinge's limits all the way; else it may be fixed to the trailer, or either in
     * turn.
     */
    boolean boosterFree;

    private final UnitPlaces places;
    private final Interval hingeRiseBow = new Interval();
    private final Supplier<Bow> hingeParabola = this::hingeBow;
    private final Interval hingeForward = new Interval();
    private final Interval hingeRise = new Interval();

    UnitMotions(UnitPlaces places) {
        this.places = places;
    }

    /** Over a stretch whose tractor's motion is known. */
    void ofTrailer(Passage.Span span, Placed a, Placed b) {
        trailer.compute(
                places.combination.trailer(),
                places.solver.trailerPaths(),
                a.trailer(),
                b.trailer(),
                span.lengthM(),
                span.kingpinForward,
                span.kingpinRise);
        trailerBow.known = false;
        if (span.bow.known) {
            trailerBow.compute(
                    places.combination.trailer(),
                    places.solver.trailerPaths(),
                    a.trailer(),
                    b.trailer(),
                    trailer,
                    span.kingpinBow,
                    span.kingpinRiseBow,
                    span.kingpinParabola);
        }
    }

    /** Of a trailing booster, once the trailer's is known. */
    void ofBooster(Passage.Span span, Placed a, Placed b) {
        TrailingBooster joint = places.shape.trailing().orElseThrow();
        PlacedUnit unitA = a.booster().unit();
        PlacedUnit unitB = b.booster().unit();
        hingeForward.clear();
        hingeRise.clear();
        trailer.addPoint(a.trailer().pose, b.trailer().pose, joint.hinge(), hingeForward, hingeRise);
        booster.compute(
                places.combination.booster().orElseThrow(),
                places.solver.boosterPaths(),
                unitA,
                unitB,
                span.lengthM(),
                hingeForward,
                hingeRise);
        double bendMost = Math.max(a.booster().bendRad(), b.booster().bendRad());
        double bendLeast = Math.min(a.booster().bendRad(), b.booster().bendRad());
        double reach = booster.known
                ? 0.5 * span.lengthM() * (booster.turn.magnitude() + trailer.turn.magnitude())
                : Double.POSITIVE_INFINITY;
        boosterFree = bendMost + reach < joint.upRad() && bendLeast - reach > -joint.downRad();
        boosterBow.known = false;
        if (boosterFree && trailerBow.known) {
            trailerBow.at(joint.hinge().xM(), joint.hinge().hM());
            hingeRiseBow.set(trailerBow.riseLo, trailerBow.riseHi);
            boosterBow.compute(
                    places.combination.booster().orElseThrow(),
                    places.solver.boosterPaths(),
                    unitA,
                    unitB,
                    booster,
                    trailerBow.forward,
                    hingeRiseBow,
                    hingeParabola);
        }
    }

    private Bow hingeBow() {
        FramePoint hinge = places.shape.trailing().orElseThrow().hinge();
        trailerBow.at(hinge.xM(), hinge.hM());
        return trailerBow.rise();
    }

    /** Whether everything moves so that it can be bounded; where not, a unit pitches too steeply or too fast. */
    boolean bound(Passage.Span span, Placed a, Placed b) {
        return span.motion.known
                && GapBounds.bounds(trailer, a.trailer().pose, b.trailer().pose)
                && (a.booster() == null
                        || GapBounds.bounds(
                                booster, a.booster().unit().pose, b.booster().unit().pose));
    }
}
