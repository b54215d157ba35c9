package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.UnitName;

/**
 * How much the height of a point on the combination moves with the height of the ground under each group of wheels: the
 * lever rule on the level stance. Each group counts as one support, at whichever of its axles weighs heavier, since its
 * axles may stand on one and the same surveyed stretch. Supports are the steer axle and, behind it, the group of each
 * unit, front to rear.
 *
 * <p>Used to carry survey accuracy into clearance: independent elevations with standard deviation σ give a clearance
 * standard deviation σ √(1 + Σ w²), the 1 being the ground under the point itself (error propagation; for a hump at
 * mid-wheelbase √1.5 = 1.2247).
 */
final class Leverage {
    /** The steer axle's place among the supports. */
    static final int STEER = 0;

    /**
     * A unit held at its front and standing on a group behind.
     *
     * @param pivotXM where it is held, in its frame
     * @param groupXM its axles that carry
     * @param heldAtXM where the unit ahead holds it, in that unit's frame
     */
    record Lever(UnitName name, double pivotXM, List<Double> groupXM, double heldAtXM) {
        /** How much the height of the group moves that of the point, with the group at one of its axles. */
        double share(double xM, double axleXM) {
            return (xM - pivotXM) / (axleXM - pivotXM);
        }
    }

    private final List<Lever> units;
    private final int supports;

    Leverage(LevelStance stance, Setting setting) {
        units = levers(stance, setting);
        supports = supports(stance);
    }

    /** Front to rear. */
    static List<Lever> levers(LevelStance stance, Setting setting) {
        Tractor tractor = stance.tractor();
        List<Lever> all = new ArrayList<>();
        all.add(new Lever(
                UnitName.TRACTOR, tractor.steer().xM(), xOf(tractor.drive().axles()), Double.NaN));
        double heldAtXM = tractor.fifthWheel().xM();
        for (Jeep jeep : stance.jeeps()) {
            all.add(new Lever(
                    UnitName.jeep(all.size()),
                    jeep.kingpinXM(),
                    xOf(jeep.axles().axles()),
                    heldAtXM));
            heldAtXM = jeep.fifthWheel().xM();
        }
        List<Double> group = new ArrayList<>(xOf(stance.trailer().down(setting.lift())));
        if (setting.booster() == BoosterState.CLOSE_COUPLED) {
            group.add(stance.booster().orElseThrow().closeCoupledAxleXM().orElseThrow());
        }
        all.add(new Lever(UnitName.TRAILER, stance.trailer().kingpinXM(), List.copyOf(group), heldAtXM));
        for (int i = 0;
                setting.booster() == BoosterState.TRAILING
                        && i < stance.boosters().size();
                i++) {
            Booster booster = stance.boosters().get(i);
            all.add(new Lever(
                    UnitName.booster(i + 1),
                    booster.hingeXM(),
                    xOf(booster.axles().axles()),
                    stance.boosterHeldAt(i).xM()));
        }
        return List.copyOf(all);
    }

    private static List<Double> xOf(List<Axle> axles) {
        return axles.stream().map(Axle::xM).toList();
    }

    /** How many supports a stance has, whether all of its units are coupled or not. */
    static int supports(LevelStance stance) {
        return stance.units().size() + 1;
    }

    /** The support of a unit's group, counted from the front as the units are. */
    static int groupOf(int unit) {
        return unit + 1;
    }

    int supports() {
        return supports;
    }

    /** Absolute weights of the supports for a point at {@code xM} in the unit's frame. */
    double[] weights(UnitName unit, double xM) {
        double[] w = new double[supports()];
        int k = 0;
        while (!units.get(k).name.equals(unit)) {
            k++;
        }
        add(k, xM, 1, w);
        return w;
    }

    private void add(int unit, double xM, double share, double[] w) {
        Lever lever = units.get(unit);
        double pivot = 0;
        double group = 0;
        for (double x : lever.groupXM) {
            double t = lever.share(xM, x);
            pivot = Math.max(pivot, Math.abs(1 - t));
            group = Math.max(group, Math.abs(t));
        }
        if (unit == 0) {
            w[STEER] += share * pivot;
        } else {
            add(unit - 1, lever.heldAtXM, share * pivot, w);
        }
        w[groupOf(unit)] += share * group;
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
