package org.cresthaul.clearance;

import java.util.List;
import org.cresthaul.clearance.Leverage.Lever;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Setting;

/**
 * How much the bend at a coupling moves with the height of the ground under each group of wheels, radians per meter,
 * absolute: the lever rule on the level stance, each group at whichever of its axles weighs heavier. The order is that
 * of {@link Leverage}.
 */
final class BendLeverage {
    private final List<Lever> units;
    /** By the unit behind the coupling. */
    private final double[][] at;

    BendLeverage(LevelStance stance, Setting setting) {
        units = Leverage.levers(stance, setting);
        at = new double[units.size()][Leverage.supports(stance)];
        double[] steer = new double[Leverage.supports(stance)];
        steer[Leverage.STEER] = 1;
        weigh(0, steer, new double[steer.length]);
    }

    /**
     * With the groups ahead each at one of its axles and this one at every one of its own in turn; each weight keeps
     * the greatest.
     *
     * @param pivot what each support does to the height where the unit is held
     * @param aheadPitch what it does to the pitch of the unit ahead
     */
    private void weigh(int unit, double[] pivot, double[] aheadPitch) {
        if (unit == units.size()) {
            return;
        }
        Lever lever = units.get(unit);
        for (double x : lever.groupXM()) {
            double base = lever.pivotXM() - x;
            double[] pitch = new double[pivot.length];
            for (int k = 0; k < pivot.length; k++) {
                pitch[k] = (pivot[k] - (k == Leverage.groupOf(unit) ? 1 : 0)) / base;
                if (unit > 0) {
                    at[unit][k] = Math.max(at[unit][k], Math.abs(pitch[k] - aheadPitch[k]));
                }
            }
            double[] next = new double[pivot.length];
            if (unit + 1 < units.size()) {
                double behind = lever.pivotXM() - units.get(unit + 1).heldAtXM();
                for (int k = 0; k < pivot.length; k++) {
                    next[k] = pivot[k] - behind * pitch[k];
                }
            }
            weigh(unit + 1, next, pitch);
        }
    }

    /**
     * Root of the sum of the squared weights: independent heights of equal accuracy give the bend that many times
     * theirs.
     */
    double factor(Coupling coupling) {
        double sum = 0;
        for (double w : at[coupling.unit()]) {
            sum += w * w;
        }
        return Math.sqrt(sum);
    }

    /** What the bend may stray where each support's ground may stray by so much, radians. */
    double strayRad(Coupling coupling, double[] bySupportM) {
        double sum = 0;
        for (int k = 0; k < bySupportM.length; k++) {
            sum += at[coupling.unit()][k] * bySupportM[k];
        }
        return sum;
    }
}
