package org.cresthaul.clearance;

import java.util.List;
import java.util.Optional;
import org.cresthaul.clearance.RaiseNeeded.Lane;
import org.cresthaul.clearance.RaiseNeeded.Raise;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;

/** What a raise leaves between coupled units over all lines of a hazard, beyond what is demanded. */
final class RaisedUnits {
    private final LiftState lift;
    private final BoosterState booster;
    private final List<Lane> lanes;

    /**
     * The least left.
     *
     * @param spareM no more than it is; minus infinity where a search ended undecided
     * @param spent whether that was for want of work allowed
     * @param lane where; empty where nothing of the units can meet
     */
    record Left(double spareM, boolean spent, Optional<Lane> lane) {}

    RaisedUnits(LiftState lift, BoosterState booster, List<Lane> lanes) {
        this.lift = lift;
        this.booster = booster;
        this.lanes = List.copyOf(lanes);
    }

    /** At one raise; looks no further once less than {@code askedM} is found. */
    Left at(Raise raise, double askedM) {
        Setting setting = new Setting(lift, booster, raise.deckFrontOffsetM(), 0, raise.rearM());
        Left least = new Left(Double.POSITIVE_INFINITY, false, Optional.empty());
        for (Lane lane : lanes) {
            for (Leveling leveling : setting.levelings()) {
                UnitSearch.Look look =
                        new UnitSearch(lane.passage(), setting, leveling).lookAtSpares(List.of(lane.demand()));
                if (look.undecided().isPresent()) {
                    return new Left(
                            Double.NEGATIVE_INFINITY, look.undecided().get().spent(), Optional.of(lane));
                }
                for (UnitGap spare : look.spares()) {
                    least = spare.valueM() < least.spareM ? new Left(spare.valueM(), false, Optional.of(lane)) : least;
                }
                if (least.spareM < askedM) {
                    return least;
                }
            }
        }
        return least;
    }

    /** The fastest that what is left can change with a raise. */
    RaiseRates rates() {
        return lanes.isEmpty()
                ? new RaiseRates(1, 1)
                : RaiseRates.betweenUnits(lanes.get(0).passage().shape(lift, booster));
    }
}
