package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.cresthaul.posture.RaisedAxles;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.RoadProfile;
import org.junit.jupiter.api.Test;

/** A raise is found whenever one exists: against a dense scan of front and rear on random rigs and roads. */
class RaiseNeededTest {
    private static final int CELLS = Integer.getInteger("cresthaul.cells", 1000);
    private static final int FRONTS = 20;
    private static final int REARS = 8;

    /** @param hidden a raise that leaves 5 mm to spare, when one was put in */
    record Cell(
            LevelStance stance, LiftState lift, BoosterState booster, RoadProfile line, Demand demand, boolean hidden) {
        double highestM() {
            return stance.trailer().hydraulicRaiseLimitM();
        }

        double mostRearM() {
            Trailer t = stance.trailer();
            double valve = RaisedAxles.riseM(t, lift);
            return Math.max(0, Math.min(t.manualRaiseLimitM(), t.axles().reboundM() - valve));
        }

        boolean isMet(double front, double rear, double spareM) {
            Setting setting = new Setting(lift, booster, front, 0, rear);
            Passage passage = new Passage(stance, line);
            for (Leveling leveling : rear > 0 ? List.of(Leveling.HELD) : List.of(Leveling.HELD, Leveling.SETTLED)) {
                Optional<Clearance> least = new PassageSearch(passage, setting, leveling)
                        .leastSpareBelow(Optional.empty(), demand, spareM + 1e-3);
                if (least.isPresent() && (!least.get().proven() || least.get().valueM() < spareM)) {
                    return false;
                }
            }
            return true;
        }

        Optional<RaiseNeeded.Raise> found(double from) {
            return new RaiseNeeded(
                            lift,
                            booster,
                            List.of(new RaiseNeeded.Lane(new Passage(stance, line), Optional.empty(), demand)),
                            List.of())
                    .from(from);
        }
    }

    /** Mostly with the lift axle up, and asking what some raise or other might just leave. */
    static Optional<Cell> cell(long seed) {
        RandomCase it = RandomCase.of(seed);
        LiftState lift =
                it.stance().liftStates().contains(LiftState.UP) && it.random().nextInt(4) > 0
                        ? LiftState.UP
                        : it.setting().lift();
        BoosterState booster = it.setting().booster();
        Cell loose = new Cell(it.stance(), lift, booster, it.profile(), new Demand(0, 0, 0, true), false);
        // What a raise anywhere in the family leaves, to ask for nearly that much.
        double front = it.random().nextDouble(0.02, loose.highestM());
        double rear = it.random().nextInt(3) > 0 ? it.random().nextDouble() * loose.mostRearM() : 0;
        Setting setting = new Setting(lift, booster, front, 0, rear);
        double least = Double.POSITIVE_INFINITY;
        for (Leveling leveling : rear > 0 ? List.of(Leveling.HELD) : List.of(Leveling.HELD, Leveling.SETTLED)) {
            Clearance c = new PassageSearch(new Passage(it.stance(), it.profile()), setting, leveling)
                    .leastSpareBelow(Optional.empty(), loose.demand, Double.POSITIVE_INFINITY)
                    .orElseThrow();
            if (!c.proven()) {
                return Optional.empty();
            }
            least = Math.min(least, c.valueM());
        }
        boolean hidden = it.random().nextInt(3) > 0;
        double margin = least - (hidden ? 0.005 : -0.015);
        return margin <= 0
                ? Optional.empty()
                : Optional.of(
                        new Cell(it.stance(), lift, booster, it.profile(), new Demand(margin, 0, 0, true), hidden));
    }

    @Test
    void isFoundWheneverADenseScanFindsOne() {
        int cells = 0;
        int found = 0;
        int none = 0;
        int up = 0;
        int lost = 0;
        StringBuilder which = new StringBuilder();
        for (long seed = RandomCase.SEED; cells < CELLS; seed++) {
            Optional<Cell> maybe = cell(seed);
            if (maybe.isEmpty() || maybe.get().isMet(0, 0, 0)) {
                continue;
            }
            Cell cell = maybe.get();
            cells++;
            up += cell.lift.equals(LiftState.UP) ? 1 : 0;
            Optional<RaiseNeeded.Raise> raise = cell.found(0);
            if (raise.isPresent()) {
                found++;
                assertTrue(
                        cell.isMet(raise.get().deckFrontOffsetM(), raise.get().rearM(), 0), "seed " + seed);
                assertTrue(
                        raise.get().deckFrontOffsetM() <= cell.highestM() + 1e-9
                                && raise.get().rearM() <= cell.mostRearM() + 1e-9,
                        "seed " + seed + " " + raise);
                continue;
            }
            none++;
            if (cell.hidden) {
                lost++;
                which.append(" seed ").append(seed).append(" hidden");
                continue;
            }
            scan:
            for (int r = 0; r <= REARS; r++) {
                for (int f = 0; f <= FRONTS; f++) {
                    // 4 mm for the width of the search and of the scan's own steps.
                    if (cell.isMet(cell.highestM() * f / FRONTS, cell.mostRearM() * r / REARS, 0.004)) {
                        lost++;
                        which.append(" seed ")
                                .append(seed)
                                .append(" front ")
                                .append(cell.highestM() * f / FRONTS)
                                .append(" rear ")
                                .append(cell.mostRearM() * r / REARS);
                        break scan;
                    }
                }
            }
        }
        System.out.println(cells + " cells, " + up + " with the lift axle up, " + found + " raises, " + none
                + " without, " + lost + " lost");
        assertEquals(0, lost, which.toString());
        assertTrue(found > CELLS / 5 && none > CELLS / 10, found + " " + none);
    }
}
