package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;

/**
 * How much the bend at kingpin and hinge moves with the height of the ground under each group of wheels, radians per
 * meter, absolute: the lever rule on the level stance, each group at whichever of its axles weighs heavier. The order
 * is that of {@link Leverage}.
 */
final class BendLeverage {
    private final double[] atKingpin = new double[Leverage.SUPPORTS];
    private final double[] atHinge = new double[Leverage.SUPPORTS];

    BendLeverage(LevelStance stance, Setting setting) {
        List<Double> group = new ArrayList<>();
        List<Axle> axles = stance.trailer().axles().axles();
        axles.subList(0, axles.size() - (setting.lift() == LiftState.UP ? 1 : 0))
                .forEach(a -> group.add(a.xM()));
        if (setting.booster() == BoosterState.CLOSE_COUPLED) {
            group.add(stance.booster().orElseThrow().closeCoupledAxleXM().orElseThrow());
        }
        for (Axle drive : stance.tractor().drive().axles()) {
            for (double x : group) {
                weigh(stance, setting, drive.xM(), x);
            }
        }
    }

    /**
     * With the drive group at one of its axles and the trailer's at another, of which each weight keeps the greatest.
     */
    private void weigh(LevelStance stance, Setting setting, double driveXM, double groupXM) {
        double steerXM = stance.tractor().steer().xM();
        double wheelbase = steerXM - driveXM;
        double trailerBase = stance.trailer().kingpinXM() - groupXM;
        double share = (steerXM - stance.tractor().fifthWheel().xM()) / wheelbase;
        // Heights of steer axle, drive group and trailer group; the kingpin's is the share of the drive group.
        double[] tractorPitch = {1 / wheelbase, -1 / wheelbase, 0, 0};
        double[] kingpin = {1 - share, share, 0, 0};
        double[] trailerPitch = new double[Leverage.SUPPORTS];
        for (int k = 0; k < Leverage.SUPPORTS; k++) {
            trailerPitch[k] = (kingpin[k] - (k == Leverage.TRAILER ? 1 : 0)) / trailerBase;
            atKingpin[k] = Math.max(atKingpin[k], Math.abs(trailerPitch[k] - tractorPitch[k]));
        }
        if (setting.booster() == BoosterState.TRAILING) {
            double behind = stance.trailer().kingpinXM()
                    - stance.trailer().boosterHinge().orElseThrow().xM();
            double base = stance.booster().orElseThrow().hingeXM()
                    - stance.booster().orElseThrow().axle().xM();
            for (int k = 0; k < Leverage.SUPPORTS; k++) {
                double hinge = kingpin[k] - behind * trailerPitch[k];
                double boosterPitch = (hinge - (k == Leverage.BOOSTER ? 1 : 0)) / base;
                atHinge[k] = Math.max(atHinge[k], Math.abs(boosterPitch - trailerPitch[k]));
            }
        }
    }

    private double[] at(Coupling coupling) {
        return coupling == Coupling.KINGPIN ? atKingpin : atHinge;
    }

    /**
     * Root of the sum of the squared weights: independent heights of equal accuracy give the bend that many times
     * theirs.
     */
    double factor(Coupling coupling) {
        double sum = 0;
        for (double w : at(coupling)) {
            sum += w * w;
        }
        return Math.sqrt(sum);
    }

    /** What the bend may stray where each support's ground may stray by so much, radians. */
    double strayRad(Coupling coupling, double[] bySupportM) {
        double sum = 0;
        for (int k = 0; k < bySupportM.length; k++) {
            sum += at(coupling)[k] * bySupportM[k];
        }
        return sum;
    }
}
