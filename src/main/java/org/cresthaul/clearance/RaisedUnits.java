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
     * @param spareM no more than it is, where that is less than was asked for; minus infinity where a search ended
     *     undecided
     * @param spent whether that was for want of work allowed
     * @param lane where; empty where nothing of the units can meet
     */
    record Left(double spareM, boolean spent, Optional<Lane> lane) {}

    RaisedUnits(LiftState lift, BoosterState booster, List<Lane> lanes) {
        this.lift = lift;
        this.booster = booster;
        this.lanes = List.copyOf(lanes);
    }

    /** At one raise, where less than {@code askedM} is; looks no further once that is found. */
    Left at(Raise raise, double askedM) {
        Left least = new Left(Double.POSITIVE_INFINITY, false, Optional.empty());
        UnitSearch first = null;
        for (Lane lane : lanes) {
            for (Leveling leveling : setting(raise).levelings()) {
                UnitSearch search = first == null
                        ? new UnitSearch(lane.passage(), setting(raise), leveling)
                        : first.on(lane.passage(), setting(raise), leveling);
                first = first == null ? search : first;
                if (!search.leaves(lane.demand(), askedM)) {
                    least = worse(least, search.lookAtSpares(List.of(lane.demand())), lane);
                }
                if (least.spareM < askedM) {
                    return least;
                }
            }
        }
        return least;
    }

    /** At one raise, whatever it is, by searches alone; looks no further where nothing is left. */
    Left whole(Raise raise) {
        Left least = new Left(Double.POSITIVE_INFINITY, false, Optional.empty());
        for (Lane lane : lanes) {
            for (Leveling leveling : setting(raise).levelings()) {
                UnitSearch search = new UnitSearch(lane.passage(), setting(raise), leveling);
                least = worse(least, search.searchSpares(List.of(lane.demand())), lane);
                if (least.spareM < 0) {
                    return least;
                }
            }
        }
        return least;
    }

    private Setting setting(Raise raise) {
        return new Setting(lift, booster, raise.deckFrontOffsetM(), 0, raise.rearM());
    }

    private static Left worse(Left least, UnitSearch.Look look, Lane lane) {
        if (look.undecided().isPresent()) {
            return new Left(Double.NEGATIVE_INFINITY, look.undecided().get().spent(), Optional.of(lane));
        }
        Left worse = least;
        for (UnitGap spare : look.spares()) {
            worse = spare.valueM() < worse.spareM ? new Left(spare.valueM(), false, Optional.of(lane)) : worse;
        }
        return worse;
    }

    /** The fastest that what is left can change with a raise. */
    RaiseRates rates() {
        return lanes.isEmpty()
                ? new RaiseRates(1, 1)
                : RaiseRates.betweenUnits(lanes.get(0).passage().shape(lift, booster));
    }
}
