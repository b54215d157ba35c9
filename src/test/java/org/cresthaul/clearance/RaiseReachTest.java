package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.cresthaul.clearance.RaiseNeeded.EndedBy;
import org.cresthaul.geometry.WorkLimit;
import org.cresthaul.posture.RandomCase;
import org.junit.jupiter.api.Test;

/**
 * Every raise of the front from the least one to where the band ends meets every demand, and the band ends where it has
 * to.
 */
class RaiseReachTest {
    private static final int BANDS = Integer.getInteger("cresthaul.bands", 60);
    private static final int SCAN = 25;
    /** Left at most where ground or structure end a band: the search is closed within half a millimeter. */
    private static final double ENDS_WITHIN_M = 1e-3;

    @Test
    void holdsAgainstADenseScan() {
        int bands = 0;
        int wide = 0;
        int ended = 0;
        for (long seed = RandomCase.SEED; bands < BANDS; seed++) {
            Optional<RaiseNeededTest.Cell> maybe = RaiseNeededTest.cell(seed);
            if (maybe.isEmpty() || maybe.get().isMet(0, 0, 0)) {
                continue;
            }
            RaiseNeededTest.Cell cell = maybe.get();
            RaiseNeeded needed = new RaiseNeeded(
                    cell.lift(),
                    cell.booster(),
                    List.of(new RaiseNeeded.Lane(
                            new Passage(cell.stance(), cell.line()), Optional.empty(), cell.demand())),
                    List.of());
            Optional<RaiseNeeded.Raise> least = needed.from(0);
            if (least.isEmpty()) {
                continue;
            }
            bands++;
            RaiseNeeded.Top top = needed.above(least.get());
            double from = least.get().deckFrontOffsetM();
            assertTrue(
                    top.deckFrontOffsetM() >= from && top.deckFrontOffsetM() <= cell.highestM() + 1e-9, "seed " + seed);
            for (int i = 0; i <= SCAN; i++) {
                double front = from + (top.deckFrontOffsetM() - from) * i / SCAN;
                assertTrue(cell.isMet(front, least.get().rearM(), 0), "seed " + seed + " front " + front);
            }
            wide += top.deckFrontOffsetM() - from > 0.01 ? 1 : 0;
            if (top.by() == EndedBy.LINE) {
                ended++;
                assertFalse(cell.isMet(top.deckFrontOffsetM(), least.get().rearM(), ENDS_WITHIN_M), "seed " + seed);
            } else {
                assertTrue(
                        top.deckFrontOffsetM() >= cell.highestM() - 1e-9,
                        "seed " + seed + " ends short of the hydraulics");
            }
        }
        System.out.println(bands + " bands, " + wide + " wider than 1 cm, " + ended + " ended by the ground");
        assertTrue(wide > BANDS / 4 && ended > BANDS / 20, wide + " " + ended);
    }

    /** What a search did not come to is told so, and never as ground that comes too close or hydraulics that end. */
    @Test
    void workThatIsSpentIsTold() {
        int told = 0;
        int bands = 0;
        for (long seed = RandomCase.SEED; bands < 12; seed++) {
            Optional<RaiseNeededTest.Cell> maybe = RaiseNeededTest.cell(seed);
            if (maybe.isEmpty() || maybe.get().isMet(0, 0, 0)) {
                continue;
            }
            RaiseNeededTest.Cell cell = maybe.get();
            Optional<RaiseNeeded.Top> whole = above(cell, Long.MAX_VALUE);
            if (whole.isEmpty() || whole.get().by() != EndedBy.HYDRAULICS) {
                continue;
            }
            bands++;
            for (long steps = 1; steps <= 100_000; steps *= 10) {
                RaiseNeeded.Top top = above(cell, steps).orElseThrow();
                boolean isShort = top.deckFrontOffsetM() < whole.get().deckFrontOffsetM() - 1e-9;
                assertEquals(isShort ? EndedBy.SEARCH : EndedBy.HYDRAULICS, top.by(), "seed " + seed + " " + steps);
                told += isShort ? 1 : 0;
            }
        }
        assertTrue(told > 12, "" + told);
    }

    /** @param steps that the walk up may take, after the least raise was found with as many as it liked */
    private static Optional<RaiseNeeded.Top> above(RaiseNeededTest.Cell cell, long steps) {
        Passage passage = new Passage(cell.stance(), cell.line());
        RaiseNeeded needed = new RaiseNeeded(
                cell.lift(),
                cell.booster(),
                List.of(new RaiseNeeded.Lane(passage, Optional.empty(), cell.demand())),
                List.of());
        Optional<RaiseNeeded.Raise> least = needed.from(0);
        passage.share(WorkLimit.of(steps));
        return least.map(needed::above);
    }
}
