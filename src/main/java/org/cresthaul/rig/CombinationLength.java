package org.cresthaul.rig;

import java.util.ArrayList;
import java.util.List;

/**
 * How long a combination is from its foremost to its rearmost point, standing straight on level ground: bodies, tires
 * and load. Notch, raise and lift axle change it by less than anybody measures, so that only the booster counts.
 */
public final class CombinationLength {
    private CombinationLength() {}

    /** Length in a booster state the stance can run in, meters. */
    public static double meters(LevelStance stance, BoosterState state) {
        List<Double> ends = new ArrayList<>();
        Tractor tractor = stance.tractor();
        add(ends, tractor.underside(), 0);
        add(ends, tractor.topside(), 0);
        add(ends, tractor.steer(), 0);
        tractor.drive().axles().forEach(a -> add(ends, a, 0));
        Trailer trailer = stance.trailer();
        double trailerM = stance.trailerShiftM();
        for (int i = 0; i < stance.jeeps().size(); i++) {
            Jeep jeep = stance.jeeps().get(i);
            double jeepM = stance.jeepShiftM(i);
            add(ends, jeep.underside(), jeepM);
            add(ends, jeep.topside(), jeepM);
            jeep.axles().axles().forEach(a -> add(ends, a, jeepM));
        }
        add(ends, trailer.underside(), trailerM);
        add(ends, trailer.topside(), trailerM);
        trailer.load().forEach(o -> add(ends, o, trailerM));
        trailer.axles().axles().forEach(a -> add(ends, a, trailerM));
        for (int i = 0; state == BoosterState.TRAILING && i < stance.boosters().size(); i++) {
            addBooster(ends, stance.boosters().get(i), trailerM + stance.boosterShiftM(i));
        }
        if (state == BoosterState.CLOSE_COUPLED) {
            Booster b = stance.booster().orElseThrow();
            addBooster(
                    ends,
                    b,
                    trailerM
                            + (b.closeCoupledAxleXM().orElseThrow()
                                    - b.onlyAxle().xM()));
        } else if (state == BoosterState.CARRIED) {
            add(ends, stance.booster().orElseThrow().carried().orElseThrow(), trailerM);
        }
        return ends.stream().mapToDouble(x -> x).max().orElseThrow()
                - ends.stream().mapToDouble(x -> x).min().orElseThrow();
    }

    private static void addBooster(List<Double> ends, Booster booster, double shiftM) {
        add(ends, booster.underside(), shiftM);
        add(ends, booster.topside(), shiftM);
        booster.axles().axles().forEach(a -> add(ends, a, shiftM));
    }

    private static void add(List<Double> ends, Outline outline, double shiftM) {
        ends.add(outline.rearXM() + shiftM);
        ends.add(outline.frontXM() + shiftM);
    }

    private static void add(List<Double> ends, Axle axle, double shiftM) {
        ends.add(axle.xM() - axle.radiusM() + shiftM);
        ends.add(axle.xM() + axle.radiusM() + shiftM);
    }
}
