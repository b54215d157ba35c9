package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.posture.UnitName;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;

/**
 * How much the height of a point on the combination moves with the height of the ground under each group of wheels: the
 * lever rule on the level stance. Each group counts as one support, at whichever of its axles weighs heavier, since its
 * axles may stand on one and the same surveyed stretch.
 *
 * <p>Used to carry survey accuracy into clearance: independent elevations with standard deviation σ give a clearance
 * standard deviation σ √(1 + Σ w²), the 1 being the ground under the point itself (error propagation; for a hump at
 * mid-wheelbase √1.5 = 1.2247).
 */
final class Leverage {
    /** Supports, in the order of the weights. */
    static final int STEER = 0;

    static final int DRIVE = 1;
    static final int TRAILER = 2;
    static final int BOOSTER = 3;
    static final int SUPPORTS = 4;

    private final Tractor tractor;
    private final Trailer trailer;
    private final List<Double> groupX;
    private final Optional<FramePoint> hinge;
    private final double boosterHingeX;
    private final double boosterAxleX;

    Leverage(LevelStance stance, Setting setting) {
        tractor = stance.tractor();
        trailer = stance.trailer();
        List<Axle> axles = trailer.axles().axles();
        int count = axles.size() - (setting.lift() == LiftState.UP ? 1 : 0);
        List<Double> x =
                new ArrayList<>(axles.subList(0, count).stream().map(Axle::xM).toList());
        if (setting.booster() == BoosterState.CLOSE_COUPLED) {
            x.add(stance.booster().orElseThrow().closeCoupledAxleXM().orElseThrow());
        }
        groupX = List.copyOf(x);
        boolean trailing = setting.booster() == BoosterState.TRAILING;
        hinge = trailing ? trailer.boosterHinge() : Optional.empty();
        boosterHingeX = trailing ? stance.booster().orElseThrow().hingeXM() : 0;
        boosterAxleX = trailing ? stance.booster().orElseThrow().axle().xM() : -1;
    }

    /** Absolute weights of the four supports for a point at {@code xM} in the unit's frame. */
    double[] weights(UnitName unit, double xM) {
        double[] w = new double[SUPPORTS];
        switch (unit) {
            case TRACTOR -> addTractor(xM, 1, w);
            case TRAILER -> addTrailer(xM, 1, w);
            case BOOSTER -> {
                double t = (xM - boosterHingeX) / (boosterAxleX - boosterHingeX);
                addTrailer(hinge.orElseThrow().xM(), Math.abs(1 - t), w);
                w[BOOSTER] = Math.abs(t);
            }
        }
        return w;
    }

    private void addTractor(double xM, double share, double[] w) {
        double steer = 0;
        double drive = 0;
        for (Axle axle : tractor.drive().axles()) {
            double t =
                    (xM - tractor.steer().xM()) / (axle.xM() - tractor.steer().xM());
            steer = Math.max(steer, Math.abs(1 - t));
            drive = Math.max(drive, Math.abs(t));
        }
        w[STEER] += share * steer;
        w[DRIVE] += share * drive;
    }

    private void addTrailer(double xM, double share, double[] w) {
        double kingpin = 0;
        double group = 0;
        for (double x : groupX) {
            double t = (xM - trailer.kingpinXM()) / (x - trailer.kingpinXM());
            kingpin = Math.max(kingpin, Math.abs(1 - t));
            group = Math.max(group, Math.abs(t));
        }
        addTractor(tractor.fifthWheel().xM(), share * kingpin, w);
        w[TRAILER] += share * group;
    }

    /** √(1 + Σ w²) for a point at {@code xM} in the unit's frame. */
    double surveyFactor(UnitName unit, double xM) {
        double sum = 1;
        for (double w : weights(unit, xM)) {
            sum += w * w;
        }
        return Math.sqrt(sum);
    }
}
