package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.rig.Setting;

/**
 * A coupling at which units can meet, and the gaps there by their bend: the same on every way and in every leveling.
 */
record CoupledGaps(Coupling coupling, UnitGaps gaps) {
    /** Front to rear; those at which nothing lies beyond the coupling's reach are left out. */
    static List<CoupledGaps> of(CombinationShape shape, Setting setting) {
        List<CoupledGaps> all = new ArrayList<>();
        for (int k = 1; k < shape.units().size(); k++) {
            Coupling coupling = Coupling.aheadOf(shape, k);
            UnitSolids.at(shape, setting, k).ifPresent(gaps -> all.add(new CoupledGaps(coupling, gaps)));
        }
        return List.copyOf(all);
    }

    /** The least gap over a range of bends. */
    UnitGaps.Nearest least(double fromRad, double toRad) {
        return gaps.least(fromRad, toRad, out -> 0);
    }

    /**
     * The least gap less what a demand needs, over a range of bends.
     *
     * @param factor of {@link BendLeverage}
     */
    UnitGaps.Nearest leastSpare(double fromRad, double toRad, Demand demand, double factor) {
        return gaps.least(fromRad, toRad, out -> demand.at(out * factor));
    }
}
