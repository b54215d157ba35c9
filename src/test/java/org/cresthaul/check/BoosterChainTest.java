package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.axleload.AxleLoads;
import org.cresthaul.axleload.LoadBound;
import org.cresthaul.axleload.LoadTest;
import org.cresthaul.axleload.LoadWindow;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.posture.LevelUnderside.Slice;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.turning.LowPart;
import org.cresthaul.turning.TurningCombination;
import org.junit.jupiter.api.Test;

/** What is asked of a combination with boosters behind one another beyond its postures; on the thirteen-axle sample. */
class BoosterChainTest {
    private static final SampleHaul HAUL = SampleHaul.of("heron-bend", "lowbed-with-two-boosters");

    /**
     * With its pivots locked, trailer and boosters are one unit, and every slice of an underside lies as far behind the
     * kingpin as it does coupled and straight: by the hinges of the rig file.
     */
    @Test
    void lowPartsOfEveryBoosterLieWhereTheyAreWithLockedPivots() {
        LevelStance stance = HAUL.stance();
        TurningCombination free = TurningCombination.of(stance, LiftState.DOWN, BoosterState.TRAILING)
                .orElseThrow();
        TurningCombination locked = free.pivotLocked();
        RouteCorner corner = HAUL.route().hazards().stream()
                .filter(RouteCorner.class::isInstance)
                .map(RouteCorner.class::cast)
                .findFirst()
                .orElseThrow();
        Setting setting = Setting.transport(
                LiftState.DOWN, BoosterState.TRAILING, HAUL.rig().notches().get(3));
        CurbHeights heights = new CurbHeights(corner.shape().orElseThrow(), stance, setting, free, locked);
        int trailer = locked.units().size() - 1;
        double kingpinXM = stance.trailer().kingpinXM();
        int[] seen = new int[free.units().size()];
        for (Slice slice : heights.slices()) {
            if (slice.unit() < trailer) {
                continue;
            }
            seen[slice.unit()]++;
            double shiftM = slice.unit() == trailer ? 0 : stance.boosterShiftM(slice.unit() - trailer - 1);
            LowPart part = heights.part(slice, 0);
            assertEquals(trailer, part.unit());
            double leverM = locked.chain().get(trailer).hitchToAxleM();
            assertEquals(kingpinXM - slice.rearXM() - shiftM, leverM - part.rearM(), 1e-9);
            assertEquals(kingpinXM - slice.frontXM() - shiftM, leverM - part.frontM(), 1e-9);
        }
        for (int unit = trailer; unit < seen.length; unit++) {
            assertTrue(seen[unit] > 0, "unit " + unit);
        }
        assertEquals(trailer + 3, seen.length);
    }

    /**
     * Both charts are off by 4 % (the rig file): a hair inside of either end of what the regulator may be set to every
     * bound is kept at all four corners of that, and a little beyond an end, where the regulator does not end there
     * itself, one is not.
     */
    @Test
    void theRegulatorsRangeHoldsWithEveryChartOff() {
        LoadCase loadCase = LoadCase.of(HAUL.stance(), LiftState.UP, BoosterState.TRAILING);
        LoadJudge judge = new LoadJudge(loadCase);
        List<WeightLimits> sets = List.of(HAUL.route().limits().orElseThrow());
        LoadWindow window = LoadSheets.regulatorWindow(loadCase, judge, sets);
        LoadWindow.Range range = window.allowed().orElseThrow();
        List<LoadBound> bounds = Stream.concat(judge.ownBounds().stream(), judge.boundsOf(sets).stream())
                .toList();
        double behindKg = loadCase.behindRangesKg().stream()
                .mapToDouble(ends -> ends.get(0))
                .average()
                .orElseThrow();

        assertTrue(kept(loadCase, bounds, range.from() + 0.1, behindKg));
        assertTrue(kept(loadCase, bounds, range.to() - 0.1, behindKg));
        assertTrue(range.from() > window.from() || range.to() < window.to());
        if (range.from() > window.from()) {
            assertFalse(kept(loadCase, bounds, range.from() - 5, behindKg));
        }
        if (range.to() < window.to()) {
            assertFalse(kept(loadCase, bounds, range.to() + 5, behindKg));
        }
    }

    private static boolean kept(LoadCase loadCase, List<LoadBound> bounds, double firstKg, double behindKg) {
        for (double first : new double[] {0.96, 1.04}) {
            for (double behind : new double[] {0.96, 1.04}) {
                AxleLoads loads = loadCase.statics(List.of(first * firstKg, behind * behindKg))
                        .level();
                if (bounds.stream().anyMatch(b -> !new LoadTest(b, b.loadKg(loads)).isKept())) {
                    return false;
                }
            }
        }
        return true;
    }
}
