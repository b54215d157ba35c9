package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Trailer;

/**
 * The fastest that any gap of trailer or booster can change with a raise at one position of the tractor: meters per meter of
 * deck-front height, and per meter of rear raise by hand. Bounds, not estimates: whatever axles carry, hang or stand on
 * their stops.
 *
 * <p>With k, f and v the places of kingpin, deck front and valve axle, the kingpin drops in the frame by κ = (k − v)/(f − v)
 * per meter of height, and the sum of travels that the air keeps changes by no more than it does on level ground with every
 * axle carrying. The frame turns about the kingpin, whose place in the world stays, by what keeps the rule of the group; it
 * turns most when only its foremost axle carries. Slopes under wheels and points, and the sines of pitches, are covered by
 * {@value #SLACK}.
 *
 * @param front per meter of deck-front height
 * @param rear per meter of rear raise
 */
record RaiseRates(double front, double rear) {
    private static final double SLACK = 1.15;

    static RaiseRates of(CombinationShape shape, double steepest) {
        Trailer frame = shape.stance().trailer();
        double k = frame.kingpinXM();
        double v = frame.axles().axles().get(frame.valveAxle()).xM();
        double lever = frame.deckFront().xM() - v;
        double kappa = (k - v) / lever;
        double foremost = k - shape.axlesDown().stream().mapToDouble(Axle::xM).max().orElseThrow();
        double airFront = shape.axlesDown().stream().mapToDouble(a -> Math.abs(a.xM() - v)).sum() / lever;
        double airRear = shape.axlesDown().stream().mapToDouble(a -> (k - a.xM()) / (k - v)).sum();
        double turnFront = (kappa + airFront) / foremost;
        double turnRear = Math.max(airRear, 1) / foremost;
        List<Outline> outlines = new ArrayList<>(shape.trailer().undersides());
        outlines.addAll(shape.trailer().topsides());
        double behind = outlines.stream().flatMap(o -> o.points().stream()).mapToDouble(p -> k - p.xM()).max().orElseThrow();
        double ahead = outlines.stream().flatMap(o -> o.points().stream()).mapToDouble(p -> p.xM() - k).max().orElseThrow();
        double off = farthestOff(outlines, shape.stance().tractor().fifthWheel().hM());
        if (shape.trailing().isPresent()) {
            TrailingBooster b = shape.trailing().get();
            List<Outline> more = new ArrayList<>(b.outlines().undersides());
            more.addAll(b.outlines().topsides());
            double toAxle = Math.max(b.hingeXM() - b.axle().xM(), 0.1);
            double reach = more.stream().flatMap(o -> o.points().stream())
                    .mapToDouble(p -> Math.max(b.hingeXM() - p.xM(), p.xM() - b.axle().xM())).max().orElseThrow();
            double hinge = k - b.hinge().xM();
            // Held by its hinge limits it moves with the trailer; riding, it turns about its axle.
            behind = Math.max(behind, Math.max(hinge + reach, hinge * Math.max(1, reach / toAxle)));
            off = Math.max(off, Math.abs(b.hinge().hM() - shape.stance().tractor().fifthWheel().hM())
                    + farthestOff(more, b.hinge().hM()) * Math.max(1, hinge / toAxle));
        }
        double arm = Math.max(behind, ahead) + steepest * off;
        return new RaiseRates(SLACK * Math.max(kappa, arm * turnFront), SLACK * Math.max(1, arm * turnRear));
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
