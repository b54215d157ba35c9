package org.cresthaul.clearance.bound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.cresthaul.posture.Pose;
import org.cresthaul.posture.RandomCase;
import org.junit.jupiter.api.Test;

/**
 * What is said to be below the gap between a segment and a vertex of the line, against that gap at exact postures in
 * between, wherever the segment is over the vertex. The vertices are drawn at random along what the segment passes.
 */
class SegmentBowTest {
    private static final int PLACES = 9_000;
    /** What the posture solver leaves, times levers of a few times the wheelbase. */
    private static final double SOLVED_M = 1e-8;

    private final List<String> above = new ArrayList<>();
    private long stretches;
    private long met;
    private double nearest = Double.POSITIVE_INFINITY;
    private double farthest;

    @Test
    void noGapOverAVertexIsBelowItsBound() {
        RandomStretch.forEach(PLACES, s -> {
            if (s.bow().known) {
                stretches++;
                check(s, OutlineGaps.over(s.of().profile(), s.outlines().undersides(), List.of()));
                check(s, OutlineGaps.under(s.of().soffit(), s.outlines().topsides()));
            }
        });
        System.out.printf(
                "segment bow, seed %d: %d stretches, %d gaps met, from %.3g to %.3g m above the bound%n",
                RandomCase.SEED, stretches, met, nearest, farthest);
        assertEquals(List.of(), above.subList(0, Math.min(5, above.size())), above.size() + " below the bound");
        assertTrue(stretches >= 10_000 && met > 50_000, stretches + " stretches, " + met + " gaps");
    }

    private void check(RandomStretch s, OutlineGaps gaps) {
        FrameOutline frame = gaps.frame;
        PlacedOutlines from = gaps.place(s.on().a.pose);
        PlacedOutlines to = gaps.place(s.on().b.pose);
        RandomGenerator random = s.of().random();
        int k = frame.face.length + (frame.rx.length > frame.face.length ? 0 : -1);
        if (k < 0) {
            return;
        }
        gapsOver(s, frame, k, from, to, random);
        if (frame.loneFaces.length > 0) {
            gapsOver(s, frame, frame.loneFaces[random.nextInt(frame.loneFaces.length)], from, to, random);
        }
    }

    private void gapsOver(
            RandomStretch s,
            FrameOutline frame,
            int k,
            PlacedOutlines from,
            PlacedOutlines to,
            RandomGenerator random) {
        double steepest = 0;
        for (int i = 0; i < s.positions(); i++) {
            steepest = Math.max(steepest, Math.abs(slope(frame, k, s.exact().get(i).pose)));
        }
        // Between the positions looked at it may be a little steeper.
        steepest += s.motion().turn().magnitude() * s.lengthM() / s.positions();
        SegmentBow bow = new SegmentBow(s.bow(), frame, k, from, to, steepest);
        double x = random.nextDouble(from.rearX[k], Math.max(to.frontX[k], from.frontX[k]));
        double gapA = gap(frame, k, s.on().a.pose, x);
        double gapB = gap(frame, k, s.on().b.pose, x);
        double simple = bow.least(x, gapA, gapB, Double.NEGATIVE_INFINITY);
        double best = bow.least(x, gapA, gapB, Double.POSITIVE_INFINITY);
        for (int i = 0; i < s.positions(); i++) {
            Pose pose = s.exact().get(i).pose;
            if (x < pose.worldXM(frame.rx[k], frame.rh[k]) || x > pose.worldXM(frame.fx[k], frame.fh[k])) {
                continue;
            }
            met++;
            double over = gap(frame, k, pose, x) - Math.max(simple, best);
            nearest = Math.min(nearest, over);
            farthest = Math.max(farthest, over);
            if (!(over >= -SOLVED_M)) {
                above.add(s + " segment " + k + " side " + frame.side + ": " + over);
            }
        }
    }

    private static double slope(FrameOutline frame, int k, Pose pose) {
        return (pose.worldZM(frame.fx[k], frame.fh[k]) - pose.worldZM(frame.rx[k], frame.rh[k]))
                / (pose.worldXM(frame.fx[k], frame.fh[k]) - pose.worldXM(frame.rx[k], frame.rh[k]));
    }

    /** Of the segment, extended as far as need be, over a vertex at height zero. */
    private static double gap(FrameOutline frame, int k, Pose pose, double x) {
        double rearX = pose.worldXM(frame.rx[k], frame.rh[k]);
        double rearZ = pose.worldZM(frame.rx[k], frame.rh[k]);
        return frame.side * (rearZ + slope(frame, k, pose) * (x - rearX));
    }
}
