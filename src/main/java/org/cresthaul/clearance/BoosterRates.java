package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;

/**
 * How a trailing booster moves where the trailer turns by one radian about its kingpin: bounds. A booster that rides
 * turns about whichever of its axles carries; one at a limit of its hinge is a piece of the unit ahead, and so may all
 * be that stand between it and one that rides, or the trailer.
 *
 * @param drawn its outlines
 * @param movedM the most that any of its points rises
 * @param turned the most that it turns, radians
 * @param aheadTurned the most that the unit ahead turns, radians
 * @param bent the most that its hinge bends, radians
 * @param hingeRiseM how much higher or lower its hinge is than the one ahead, or the fifth wheel
 * @param hingeHM its hinge's height
 * @param outM how far it reaches from its hinge
 */
record BoosterRates(
        List<Outline> drawn,
        double movedM,
        double turned,
        double aheadTurned,
        double bent,
        double hingeRiseM,
        double hingeHM,
        double outM) {
    private static final double LEAST_TO_AXLE_M = 0.1;

    /**
     * A hinge on the way to a booster.
     *
     * @param behindM the kingpin
     * @param risesM the most that it rises
     * @param toAxleM to the first axle behind it
     */
    private record Hinge(double behindM, double risesM, double toAxleM) {
        /** What a point farther behind the kingpin rises by while the booster behind this hinge rides. */
        double risenM(double pointBehindM) {
            return risesM * Math.max(1, (pointBehindM - behindM) / toAxleM);
        }
    }

    /** Of every trailing booster, front to rear. */
    static List<BoosterRates> of(CombinationShape shape) {
        List<BoosterRates> all = new ArrayList<>();
        List<Hinge> hinges = new ArrayList<>();
        double aheadHM = shape.stance().trailerFifthWheel().hM();
        double aheadTurned = 1;
        double zeroBehindM = shape.stance().trailer().kingpinXM();
        for (TrailingBooster b : shape.trailing()) {
            double hingeM = zeroBehindM - b.hinge().xM();
            double toAxleM = Math.max(b.hingeXM() - b.axles().axles().get(0).xM(), LEAST_TO_AXLE_M);
            double rises = hinges.stream().mapToDouble(h -> h.risenM(hingeM)).reduce(hingeM, Math::max);
            hinges.add(new Hinge(hingeM, rises, toAxleM));
            double farM = hingeM + reachM(b);
            double moved = hinges.stream().mapToDouble(h -> h.risenM(farM)).reduce(farM, Math::max);
            double turned =
                    hinges.stream().mapToDouble(h -> h.risesM / h.toAxleM).reduce(1, Math::max);
            List<Outline> drawn = new ArrayList<>(b.outlines().undersides());
            drawn.addAll(b.outlines().topsides());
            all.add(new BoosterRates(
                    drawn,
                    moved,
                    turned,
                    aheadTurned,
                    aheadTurned + rises / toAxleM,
                    Math.abs(b.hinge().hM() - aheadHM),
                    b.hinge().hM(),
                    RaiseRates.farthest(
                            b.outlines(), new FramePoint(b.hingeXM(), b.hinge().hM()))));
            aheadTurned = turned;
            aheadHM = b.hinge().hM();
            zeroBehindM = hingeM + b.hingeXM();
        }
        return all;
    }

    /** How far anything of a booster lies behind its hinge, or ahead of its last axle. */
    private static double reachM(TrailingBooster b) {
        List<Axle> axles = b.axles().axles();
        double lastXM = axles.get(axles.size() - 1).xM();
        List<Outline> drawn = new ArrayList<>(b.outlines().undersides());
        drawn.addAll(b.outlines().topsides());
        return drawn.stream()
                .flatMap(o -> o.points().stream())
                .mapToDouble(p -> Math.max(b.hingeXM() - p.xM(), p.xM() - lastXM))
                .max()
                .orElseThrow();
    }
}
