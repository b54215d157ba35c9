package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CombinationShape.UnitOutlines;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Trailer;

/**
 * The fastest that any gap of trailer or boosters can change with a raise at one position of the tractor: meters per
 * meter of deck-front height, and per meter of rear raise by hand. Bounds, not estimates: whatever axles carry, hang or
 * stand on their stops.
 *
 * <p>With k, f and v the places of kingpin, deck front and valve axle, the kingpin drops in the frame by κ = (k − v)/(f
 * − v) per meter of height, and the sum of travels that the air keeps changes by no more than it does on level ground
 * with every axle carrying. The frame turns about the kingpin, whose place in the world stays, by what keeps the rule
 * of the group; it turns most when only its foremost axle carries. Slopes under wheels and points, and the sines of
 * pitches, are covered by {@value #SLACK}.
 *
 * @param front per meter of deck-front height
 * @param rear per meter of rear raise
 */
record RaiseRates(double front, double rear) {
    private static final double SLACK = 1.15;

    /**
     * How a raise moves the trailer's frame.
     *
     * @param kappa how far the kingpin drops in the frame per meter of deck-front height
     * @param front how far the frame turns per meter of it, radians
     * @param rear how far it turns per meter of rear raise
     */
    private record Turn(double kappa, double front, double rear) {
        static Turn of(CombinationShape shape) {
            Trailer frame = shape.stance().trailer();
            double k = frame.kingpinXM();
            double v = frame.axles().axles().get(frame.valveAxle()).xM();
            double lever = frame.deckFront().xM() - v;
            double kappa = (k - v) / lever;
            double foremost =
                    k - shape.axlesDown().stream().mapToDouble(Axle::xM).max().orElseThrow();
            double airFront = shape.axlesDown().stream()
                            .mapToDouble(a -> Math.abs(a.xM() - v))
                            .sum()
                    / lever;
            double airRear = shape.axlesDown().stream()
                    .mapToDouble(a -> (k - a.xM()) / (k - v))
                    .sum();
            return new Turn(kappa, (kappa + airFront) / foremost, Math.max(airRear, 1) / foremost);
        }
    }

    static RaiseRates of(CombinationShape shape, double steepest) {
        Turn turn = Turn.of(shape);
        double k = shape.stance().trailer().kingpinXM();
        List<Outline> outlines = new ArrayList<>(shape.trailer().undersides());
        outlines.addAll(shape.trailer().topsides());
        double behind = outlines.stream()
                .flatMap(o -> o.points().stream())
                .mapToDouble(p -> k - p.xM())
                .max()
                .orElseThrow();
        double ahead = outlines.stream()
                .flatMap(o -> o.points().stream())
                .mapToDouble(p -> p.xM() - k)
                .max()
                .orElseThrow();
        double off = farthestOff(outlines, shape.stance().trailerFifthWheel().hM());
        double hingeOff = 0;
        for (BoosterRates b : BoosterRates.of(shape)) {
            behind = Math.max(behind, b.movedM());
            // A hinge's height turns with the unit that carries it.
            hingeOff += b.hingeRiseM() * b.aheadTurned();
            off = Math.max(off, hingeOff + farthestOff(b.drawn(), b.hingeHM()) * b.turned());
        }
        double arm = Math.max(behind, ahead) + steepest * off;
        return new RaiseRates(SLACK * Math.max(turn.kappa, arm * turn.front), SLACK * Math.max(1, arm * turn.rear));
    }

    /**
     * The same between coupled units: the trailer turns as above, and its gooseneck against it about the kingpin by
     * what moves its rear end with the deck front; the hinge rises as the trailer turns, and the booster turns about
     * its axle. A corner moves by no more than its distance from the pivot times that, and the deck by the kingpin's
     * drop besides.
     */
    static RaiseRates betweenUnits(CombinationShape shape) {
        Turn turn = Turn.of(shape);
        double k = shape.stance().trailer().kingpinXM();
        double reach = farthest(shape.aheadOfTrailer(), shape.stance().trailerFifthWheel());
        double neck = turn.kappa / (k - shape.stance().trailer().deckFront().xM());
        double front = turn.kappa + reach * (neck + turn.front);
        double rear = reach * turn.rear;
        for (BoosterRates b : BoosterRates.of(shape)) {
            front = Math.max(front, b.outM() * b.bent() * turn.front);
            rear = Math.max(rear, b.outM() * b.bent() * turn.rear);
        }
        return new RaiseRates(SLACK * front, SLACK * rear);
    }

    /** How far a unit reaches from its pivot. */
    static double farthest(UnitOutlines outlines, FramePoint pivot) {
        return Stream.concat(outlines.undersides().stream(), outlines.topsides().stream())
                .flatMap(o -> o.points().stream())
                .mapToDouble(p -> Math.hypot(p.xM() - pivot.xM(), p.hM() - pivot.hM()))
                .max()
                .orElseThrow();
    }

    private static double farthestOff(List<Outline> outlines, double heightM) {
        return outlines.stream()
                .flatMap(o -> o.points().stream())
                .mapToDouble(FramePoint::hM)
                .flatMap(h -> DoubleStream.of(Math.abs(h - heightM)))
                .max()
                .orElseThrow();
    }
}
