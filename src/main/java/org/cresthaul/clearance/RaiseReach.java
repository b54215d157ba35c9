package org.cresthaul.clearance;

import java.util.List;
import java.util.Optional;
import org.cresthaul.clearance.RaiseNeeded.EndedBy;
import org.cresthaul.clearance.RaiseNeeded.Lane;
import org.cresthaul.clearance.RaiseNeeded.LeveledLane;
import org.cresthaul.clearance.RaiseNeeded.Raise;
import org.cresthaul.clearance.RaiseNeeded.Top;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;

/**
 * How much farther than a raise the deck front may go, the rear as it is, so that every raise in between meets every
 * demand. Walks up: what is left at one raise, over {@link RaiseRates}, is how far it holds from there at least.
 */
final class RaiseReach {
    /** More than this left at a raise makes no longer a step, meters: the search need not find how much more. */
    private static final double CEILING_M = 0.03;
    /** The walk ends where what is left carries no farther than this, meters. */
    private static final double LEAST_STEP_M = 1e-4;

    private static final int MOST_STEPS = 400;

    private final LiftState lift;
    private final BoosterState booster;
    private final List<LeveledLane> ways;
    private final RaisedUnits units;
    private final double frontRate;

    RaiseReach(LiftState lift, BoosterState booster, List<LeveledLane> ways, RaisedUnits units) {
        this.lift = lift;
        this.booster = booster;
        this.ways = ways;
        this.units = units;
        frontRate = ways.stream()
                .mapToDouble(w -> RaiseScan.rates(w, lift, booster).front())
                .max()
                .orElseThrow();
    }

    /** From a raise that meets every demand up to {@code highestM}; the raise itself where even that is not shown. */
    Top from(Raise least, double highestM) {
        double at = least.deckFrontOffsetM();
        Optional<Lane> last = Optional.empty();
        for (int i = 0; i < MOST_STEPS; i++) {
            StopSignal.current().poll();
            double left = CEILING_M;
            boolean shown = true;
            Optional<LeveledLane> tightest = Optional.empty();
            for (LeveledLane way : ways) {
                Optional<Clearance> spare = new PassageSearch(
                                way.lane().passage(), new Setting(lift, booster, at, 0, least.rearM()), way.leveling())
                        .leastSpareBelow(way.lane().soffit(), way.lane().demand(), left);
                if (spare.isPresent() && (!spare.get().proven() || spare.get().valueM() - SpanSearch.WITHIN_M < left)) {
                    tightest = Optional.of(way);
                    shown = spare.get().proven();
                    left = shown ? spare.get().valueM() - SpanSearch.WITHIN_M : 0;
                }
            }
            RaisedUnits.Left between = units.at(new Raise(at, least.rearM()), 0);
            double step = left / frontRate;
            double unitStep = Math.max(0, between.spareM()) / units.rates().front();
            boolean byUnits = unitStep < step;
            last = byUnits ? between.lane() : tightest.map(LeveledLane::lane);
            if (Math.min(step, unitStep) < LEAST_STEP_M) {
                return new Top(at, endedBy(byUnits, byUnits ? Double.isFinite(between.spareM()) : shown), last);
            }
            if (at + Math.min(step, unitStep) >= highestM) {
                return new Top(highestM, EndedBy.HYDRAULICS, Optional.empty());
            }
            at += Math.min(step, unitStep);
        }
        return new Top(at, EndedBy.SEARCH, last);
    }

    private static EndedBy endedBy(boolean units, boolean shown) {
        return !shown ? EndedBy.SEARCH : units ? EndedBy.UNITS : EndedBy.LINE;
    }
}
