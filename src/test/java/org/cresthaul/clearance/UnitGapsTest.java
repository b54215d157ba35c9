package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.cresthaul.clearance.UnitSolid.Corner;
import org.cresthaul.clearance.UnitSolid.Piece;
import org.cresthaul.rig.FramePoint;
import org.junit.jupiter.api.Test;

/** Gaps between two units that bend against each other, by closed forms of plane geometry. */
class UnitGapsTest {
    private static final double CLOSE_M = 1e-9;
    private static final FramePoint PIVOT = new FramePoint(0, 0);

    /** Frame from 1.9 m behind the pivot to the cab's back 1.4 m ahead of it, 150 mm below; the cab 2 m high. */
    private static UnitSolid.Builder tractor() {
        return new UnitSolid.Builder(0.5)
                .outline(
                        List.of(
                                at(-1.9, -0.6, "frame end"),
                                at(4, -0.6, ""),
                                at(4, 2, "cab"),
                                at(1.4, 2, "cab back"),
                                at(1.4, -0.15, "cab back"),
                                at(-1.9, -0.15, "frame end")),
                        PIVOT,
                        0);
    }

    /** A gooseneck whose flat underside is at the pivot's height, its nose 600 mm ahead and 400 mm deep. */
    private static UnitSolid gooseneck() {
        return new UnitSolid.Builder(0.5)
                .outline(List.of(at(-3, 0, ""), at(0.6, 0, "nose"), at(0.6, 0.4, "nose"), at(-3, 0.4, "")), PIVOT, 0)
                .build();
    }

    private static FramePoint at(double xM, double hM, String part) {
        return new FramePoint(xM, hM, part);
    }

    private static UnitGaps.Nearest least(UnitSolid ahead, UnitSolid behind, double fromRad, double toRad) {
        return new UnitGaps(ahead, behind).least(fromRad, toRad, out -> 0);
    }

    @Test
    void theFrameEndIsNearestToAStraightUndersideOverACrest() {
        for (double bend : new double[] {0.001, 0.02, 0.05}) {
            // A plane through the pivot, turned nose up: the frame's end is d cos φ − b sin φ from it.
            double expected = 0.15 * Math.cos(bend) - 1.9 * Math.sin(bend);
            UnitGaps.Nearest at = least(tractor().build(), gooseneck(), 0, bend);
            assertEquals(expected, at.gapM(), CLOSE_M);
            assertEquals(bend, at.bendRad(), 0);
            assertEquals("frame end", at.ahead().part());
            assertEquals(Math.hypot(1.9, 0.15), at.outM(), CLOSE_M);
        }
    }

    @Test
    void theNoseComesDownOnTheFrameInASag() {
        double bend = -0.2;
        // The nose's lower corner turns about the pivot; the frame is level, 150 mm below it.
        UnitGaps.Nearest at = least(tractor().build(), gooseneck(), bend, 0.03);
        assertEquals(0.15 + 0.6 * Math.sin(bend), at.gapM(), CLOSE_M);
        assertEquals("nose", at.behind().part());
    }

    @Test
    void theNosesUpperCornerSwingsTowardTheCabWhereThereIsRoomBelow() {
        UnitSolid cabOnly = new UnitSolid.Builder(0.5)
                .outline(List.of(at(0.75, -3, ""), at(4, -3, ""), at(4, 2, "cab"), at(0.75, 2, "cab back")), PIVOT, 0)
                .build();
        // It is farthest forward where it is level with the pivot, within the range: 750 mm less its radius.
        UnitGaps.Nearest at = least(cabOnly, gooseneck(), -1, 0.1);
        assertEquals(0.75 - Math.hypot(0.6, 0.4), at.gapM(), CLOSE_M);
        assertEquals(-Math.atan2(0.4, 0.6), at.bendRad(), CLOSE_M);
    }

    @Test
    void aDriveTireIsARoundPartOfTheTractor() {
        UnitSolid tractor =
                tractor().tire(at(-1.2, -0.6, "drive tire"), 0.5, PIVOT).build();
        double bend = 0.04;
        UnitGaps.Nearest at = least(tractor, gooseneck(), 0, bend);
        assertEquals(0.6 * Math.cos(bend) - 1.2 * Math.sin(bend) - 0.5, at.gapM(), CLOSE_M);
        assertEquals("drive tire", at.ahead().part());
    }

    @Test
    void whatOverlapsIsToldNoDeeperThanItIs() {
        double bend = 0.1;
        double depth = 1.9 * Math.sin(bend) - 0.15 * Math.cos(bend);
        UnitGaps.Nearest at = least(tractor().build(), gooseneck(), 0, bend);
        assertTrue(at.gapM() < 0 && at.gapM() >= -depth - CLOSE_M, at.toString());
        assertEquals(
                -depth, at.gapM(), CLOSE_M, "the frame's end is inside the gooseneck by its distance to the underside");
    }

    @Test
    void whatIsOverlappedWithoutACornerInsideTouches() {
        UnitSolid bar = new UnitSolid.Builder(0.5)
                .outline(List.of(at(-1.5, -1, ""), at(-1.4, -1, ""), at(-1.4, 1, "bar"), at(-1.5, 1, "bar")), PIVOT, 0)
                .build();
        assertTrue(least(bar, gooseneck(), 0, 0).gapM() < 0);
        assertTrue(least(bar, gooseneck(), -0.05, 0.05).gapM() < 0);
    }

    @Test
    void oneInsideTheOtherOverlapsEvenIfNoLinesCross() {
        UnitSolid box = new UnitSolid.Builder(0.5)
                .outline(List.of(at(-2, 0.1, ""), at(-1, 0.1, "box"), at(-1, 0.2, "box"), at(-2, 0.2, "")), PIVOT, 0)
                .build();
        assertEquals(-0.1, least(box, gooseneck(), 0, 0).gapM(), 0.1);
        assertTrue(least(box, gooseneck(), 0, 0).gapM() < -0.09);
    }

    @Test
    void onlyWhatIsWithinTheCouplingsReachIsLeftOut() {
        // A plate that stands on the gooseneck's underside: within reach nothing, a finger's width beyond it is
        // contact.
        for (double half : new double[] {0.49, 0.52}) {
            UnitSolid plate = new UnitSolid.Builder(0.5)
                    .outline(
                            List.of(
                                    at(-half, -0.5, ""),
                                    at(half, -0.5, ""),
                                    at(half, 0.01, "plate"),
                                    at(-half, 0.01, "plate")),
                            PIVOT,
                            0)
                    .build();
            assertEquals(half > 0.5, least(plate, gooseneck(), 0, 0).gapM() < 0, "half " + half);
        }
    }

    @Test
    void theClosedFormIsTheLeastOfManyTurns() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(3);
        TurningCorner pair = new TurningCorner();
        int inside = 0;
        for (int i = 0; i < 2000; i++) {
            Corner corner = Corner.at(random.nextDouble(-3, 3), random.nextDouble(-2, 2), 0, PIVOT);
            Piece piece = new Piece(
                    random.nextDouble(-3, 3),
                    random.nextDouble(-2, 2),
                    random.nextDouble(-3, 3),
                    random.nextDouble(-2, 2),
                    PIVOT,
                    PIVOT);
            double from = random.nextDouble(-1, 1);
            double to = from + random.nextDouble(0, 1.5);
            pair.measure(corner, piece, from, to);
            double least = Double.POSITIVE_INFINITY;
            int looks = 1500;
            for (int k = 0; k <= looks; k++) {
                double turn = from + (to - from) * k / looks;
                least = Math.min(
                        least,
                        piece.distanceM(
                                corner.x() * Math.cos(turn) - corner.h() * Math.sin(turn),
                                corner.x() * Math.sin(turn) + corner.h() * Math.cos(turn)));
            }
            // Half a step of the looks moves a corner by no more than this.
            double step = 0.5 * corner.outM() * (to - from) / looks;
            assertTrue(
                    pair.distanceM <= least + CLOSE_M && pair.distanceM >= least - step - CLOSE_M,
                    i + ": " + pair.distanceM + ", looks " + least);
            inside += pair.turnRad > from && pair.turnRad < to ? 1 : 0;
        }
        assertTrue(inside > 300, "only " + inside + " least within the range");
    }

    /** What is looked at goes with the corners of one unit times the pieces of the other, apart or not. */
    @Test
    void workIsCountedByPairs() {
        for (double upM : new double[] {1, -0.2}) {
            long[] steps = new long[3];
            for (int i = 0; i < steps.length; i++) {
                UnitGaps gaps = new UnitGaps(comb(1_000 << i, -1, 0.1), comb(1_000 << i, upM, 0.1));
                gaps.least(-0.01, 0.01, out -> 0);
                steps[i] = gaps.steps();
                assertEquals(0, gaps.steps(), "told once");
            }
            assertTrue(steps[0] > 10, "a thousand points each: " + steps[0]);
            assertEquals(4.0, (double) steps[1] / steps[0], 0.5);
            assertEquals(4.0, (double) steps[2] / steps[1], 0.5);
        }
    }

    /** So many teeth of a depth, from 4 m behind the pivot to 4 m ahead, at a height and 1 m thick. */
    private static UnitSolid comb(int teeth, double upM, double deepM) {
        List<FramePoint> points = new ArrayList<>();
        for (int i = 0; i < teeth; i++) {
            points.add(at(-4 + 8.0 * i / teeth, upM + (i % 2) * deepM, ""));
        }
        points.add(at(4, upM + 1, ""));
        points.add(at(-4, upM + 1, ""));
        return new UnitSolid.Builder(0.1).outline(points, PIVOT, 0).build();
    }
}
