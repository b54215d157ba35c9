package org.cresthaul.axleload;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.geometry.Finite;
import org.cresthaul.rig.Weights.ShimPlate;
import org.cresthaul.rig.Weights.ShimSet;

/**
 * How the booster's beam stands to the trailer's with a plate in the joint: the plate turns its tail down, load folds
 * the joint and turns it up. With the right plate both beams are parallel.
 */
public final class BoosterBeam {
    /** Beams within this of parallel count as parallel: about 1/8 in over the length of a booster. */
    public static final double PARALLEL_RAD = Math.toRadians(0.1);

    private final ShimSet shims;

    public BoosterBeam(ShimSet shims) {
        this.shims = shims;
    }

    /** Angle of the booster's beam to the trailer's under an axle load, radians; positive when its tail stands up. */
    public double angleRad(ShimPlate plate, double boosterKg) {
        return shims.foldRad() * Finite.require("boosterKg", boosterKg) / shims.foldKg()
                - Math.atan(plate.thicknessM() / shims.armM());
    }

    /**
     * One plate under one load.
     *
     * @param allowed whether the load is in the plate's range
     * @param trouble what goes wrong, empty when nothing does
     */
    public record Pairing(ShimPlate plate, double angleRad, boolean allowed, String trouble) {}

    /** Every plate of the rig under an axle load. */
    public List<Pairing> pairings(double boosterKg) {
        List<Pairing> all = new ArrayList<>();
        for (ShimPlate plate : shims.shims()) {
            double angleRad = angleRad(plate, boosterKg);
            boolean allowed =
                    boosterKg >= plate.leastKg() - LoadTest.NOISE_KG && boosterKg <= plate.mostKg() + LoadTest.NOISE_KG;
            all.add(new Pairing(plate, angleRad, allowed, allowed ? "" : trouble(plate, boosterKg, angleRad)));
        }
        return all;
    }

    private static String trouble(ShimPlate plate, double boosterKg, double angleRad) {
        String beam = Math.abs(angleRad) <= PARALLEL_RAD
                ? "the beams are parallel, but the joint is not made for this load with this plate"
                : angleRad > 0
                        ? "the joint folds and the booster's tail stands up: its hinge uses up its travel and the trailer's"
                                + " axles carry what the booster should"
                        : "the booster's tail points down: its axle is pressed on the road before the air presses it, and"
                                + " takes load off the trailer's axles";
        return (boosterKg < plate.leastKg() ? "too little load for this plate: " : "too much load for this plate: ")
                + beam;
    }
}
