package org.cresthaul.clearance.bound;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.cresthaul.clearance.bound.FrameOutline.Straight;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.posture.Redrawn;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;
import org.junit.jupiter.api.Test;

/** What an outline is taken apart into. Expected numbers: plane geometry, beside each. */
class FrameOutlineTest {
    private static final double GRADE = 0.1;
    private static final int OUTLINES = 600;

    @Test
    void aDeckThatSagsIsOneStretchWithItsChordLoweredByTheSag() {
        // 8 m long, 15 mm deep in the middle, level at both ends: 15 mm / cos 0.55 below the chord when pitched most.
        Outline deck = outline(-9, 0.5, -8, 0.20, -6, 0.19, -4, 0.185, -2, 0.19, 0, 0.20, 1, 0.9);
        FrameOutline frame = new FrameOutline(List.of(deck), 1, GRADE);
        assertEquals(1, frame.straights.length);
        Straight s = frame.straights[0];
        assertEquals(-8, frame.vx[s.rear()]);
        assertEquals(0, frame.vx[s.front()]);
        assertEquals(0.015 / Math.cos(0.55), s.offM(), 1e-12);
        assertEquals(4, s.endFace() - s.firstFace());
        assertArrayEquals(new double[] {-8, 0}, new double[] {frame.rx[frame.chordOf(0)], frame.fx[frame.chordOf(0)]});
    }

    /**
     * A step's tip given twice stays a vertex: found by a fuzzer, when the two hid each other and the step was not
     * seen.
     */
    @Test
    void aPointGivenTwiceIsOne() {
        FrameOutline once = new FrameOutline(List.of(outline(-4, 0.5, -2, 0.2, 0, 0.5)), 1, GRADE);
        FrameOutline twice = new FrameOutline(List.of(outline(-4, 0.5, -2, 0.2, -2, 0.2, -2, 0.2, 0, 0.5)), 1, GRADE);
        assertArrayEquals(new double[] {-4, -2, 0}, twice.vx);
        assertArrayEquals(once.vh, twice.vh);
        assertEquals(once.face.length, twice.face.length);
    }

    /** A chain that hangs down, an aerial: drawn without a width, down and up again at one x. */
    @Test
    void theTipOfARodWithoutAWidthIsAVertex() {
        Outline chain = outline(-4, 0.5, -2, 0.5, -2, 0.1, -2, 0.5, 0, 0.5);
        assertTrue(contains(new FrameOutline(List.of(chain), 1, GRADE).vh, 0.1));
        Outline aerial = outline(-4, 2.5, -2, 2.6, -2, 4.1, -2, 2.5, 0, 2.5);
        assertTrue(contains(new FrameOutline(List.of(aerial), -1, GRADE).vh, 4.1));
        // A face in two pieces has no tip.
        Outline face = outline(-4, 0.5, -2, 0.5, -2, 0.3, -2, 0.1, 0, 0.1);
        assertTrue(!contains(new FrameOutline(List.of(face), 1, GRADE).vh, 0.3));
    }

    private static boolean contains(double[] all, double value) {
        return Arrays.stream(all).anyMatch(v -> v == value);
    }

    @Test
    void whatIsFartherFromTheLineThanItsChordNeedsNoLowering() {
        // The middle vertices are 10 mm higher than the chord: over the ground away from it.
        Outline arched = outline(-4, 0.20, -3.5, 0.199, -2, 0.21, -1, 0.2099, -0.5, 0.199, 0, 0.20);
        FrameOutline over = new FrameOutline(List.of(arched), 1, GRADE);
        assertEquals(1, over.straights.length);
        // 1 mm below at -3.5 and -0.5.
        assertEquals(0.001 / Math.cos(0.55), over.straights[0].offM(), 1e-12);
    }

    @Test
    void aDeepOutriggerOrAShortFaceStaysByItself() {
        Outline stepped = outline(-8, 0.20, -6, 0.19, -4, 0.10, -2, 0.19, 0, 0.20);
        assertEquals(0, new FrameOutline(List.of(stepped), 1, GRADE).straights.length, "10 cm is not nearly straight");
        Outline few = outline(-8, 0.20, -4, 0.19, 0, 0.20);
        assertEquals(0, new FrameOutline(List.of(few), 1, GRADE).straights.length, "one vertex is not worth a chord");
    }

    @Test
    void atEveryPitchNoPointIsNearerThanItsChordByMoreThanItSays() {
        int stretches = 0;
        for (int i = 0; i < OUTLINES; i++) {
            RandomGenerator random =
                    RandomGeneratorFactory.of("L64X128MixRandom").create(RandomCase.SEED + i);
            Outline outline = Redrawn.dented(
                    outline(
                            -9, random.nextDouble(0.3, 0.6),
                            -8, random.nextDouble(0.1, 0.3),
                            -4, random.nextDouble(0.1, 0.3),
                            0, random.nextDouble(0.1, 0.3)),
                    random);
            int side = random.nextBoolean() ? 1 : -1;
            FrameOutline frame = new FrameOutline(List.of(outline), side, GRADE);
            for (Straight s : frame.straights) {
                stretches++;
                for (double pitch = -FrameOutline.MOST_PITCH; pitch <= FrameOutline.MOST_PITCH; pitch += 0.04) {
                    assertKeepsToChord(frame, s, outline, pitch);
                }
            }
        }
        assertTrue(stretches > OUTLINES / 2, "only " + stretches);
    }

    private static void assertKeepsToChord(FrameOutline frame, Straight s, Outline outline, double pitch) {
        FramePoint rear = frame.vertex[s.rear()];
        FramePoint front = frame.vertex[s.front()];
        double rearX = worldX(rear, pitch);
        double frontX = worldX(front, pitch);
        // A rod that stands on the rear end, or the front, is no part of the stretch.
        int from = outline.points().lastIndexOf(rear);
        int to = outline.points().indexOf(front);
        for (FramePoint p : outline.points().subList(from, to + 1)) {
            double x = worldX(p, pitch);
            double t = (x - rearX) / (frontX - rearX);
            double chord = worldZ(rear, pitch) + t * (worldZ(front, pitch) - worldZ(rear, pitch));
            assertTrue(t >= -1e-12 && t <= 1 + 1e-12, () -> p + " is beyond the chord at pitch " + pitch);
            double off = frame.side * (worldZ(p, pitch) - chord);
            assertTrue(off >= -s.offM() - 1e-12, () -> p + " is off by " + off + " at pitch " + pitch);
        }
    }

    private static double worldX(FramePoint p, double pitch) {
        return p.xM() * Math.cos(pitch) - p.hM() * Math.sin(pitch);
    }

    private static double worldZ(FramePoint p, double pitch) {
        return p.xM() * Math.sin(pitch) + p.hM() * Math.cos(pitch);
    }

    private static Outline outline(double... xh) {
        FramePoint[] points = new FramePoint[xh.length / 2];
        for (int i = 0; i < points.length; i++) {
            points[i] = new FramePoint(xh[2 * i], xh[2 * i + 1]);
        }
        return new Outline(List.of(points));
    }
}
