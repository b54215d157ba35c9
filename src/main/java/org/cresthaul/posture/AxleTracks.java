package org.cresthaul.posture;

import java.util.Arrays;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.rig.PlanDimensions.Tires;
import org.cresthaul.rig.PlanDimensions.Widths;

/**
 * How far beside a unit's middle its wheels stand: in the middle of what the tires of one side cover, a dual as a
 * whole. On ground that slopes across a dual gives way until it stands so; on a ridge narrower than itself it would
 * stand higher, and the frame with it.
 *
 * @param steerM driveM jeepM trailerM boosterM meters; of a jeep and a booster as of the trailer where there is none
 */
public record AxleTracks(double steerM, double driveM, double jeepM, double trailerM, double boosterM) {
    public static AxleTracks of(PlanDimensions plan) {
        double trailerM = halfM(plan.trailer(), plan.trailer().tires());
        return new AxleTracks(
                halfM(plan.tractor(), plan.steerTires()),
                halfM(plan.tractor(), plan.tractor().tires()),
                plan.jeep().map(j -> halfM(j, j.tires())).orElse(trailerM),
                trailerM,
                plan.booster().map(b -> halfM(b, b.tires())).orElse(trailerM));
    }

    private static double halfM(Widths unit, Tires tires) {
        return 0.5 * (unit.tiresM() - Math.min(tires.treadM(), 0.5 * unit.tiresM()));
    }

    public double halfM(AxleKind kind) {
        return switch (kind) {
            case STEER -> steerM;
            case DRIVE -> driveM;
            case JEEP -> jeepM;
            case TRAILER -> trailerM;
            case BOOSTER -> boosterM;
        };
    }

    public double leastM() {
        return Arrays.stream(AxleKind.values()).mapToDouble(this::halfM).min().orElseThrow();
    }

    public double mostM() {
        return Arrays.stream(AxleKind.values()).mapToDouble(this::halfM).max().orElseThrow();
    }
}
