package org.cresthaul.clearance.bound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.posture.Pose;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;
import org.cresthaul.road.PiecewiseLine;
import org.junit.jupiter.api.Test;

/**
 * What is said to stay above a floor, against gaps at exact postures in between. The gaps are measured here vertex by
 * vertex, with no choice among them: an outline's vertices over the line, and the line's own under the outline. A floor
 * just above any of them must be refused; one somewhat below must often be granted, or the bounds are of no use.
 */
class GapBoundsTest {
    private static final int PLACES = 5_000;
    /** What the posture solver leaves, times levers of a few times the wheelbase. */
    private static final double SOLVED_M = 1e-8;
    /** A gap in between counts as the least where both ends have so much more. */
    private static final double HOLLOW_M = 1e-5;

    private static final double BELOW_M = 0.005;
    private static final double NO_FLOOR = Double.NEGATIVE_INFINITY;

    private final List<String> above = new ArrayList<>();
    private long asked;
    private long hollow;
    private long granted;

    @Test
    void noFloorAboveAGapIsEverGranted() {
        RandomStretch.forEach(PLACES, s -> {
            check(
                    s,
                    OutlineGaps.over(s.of().profile(), s.outlines().undersides(), List.of()),
                    s.outlines().undersides());
            check(
                    s,
                    OutlineGaps.under(s.of().soffit(), s.outlines().topsides()),
                    s.outlines().topsides());
            List<Outline> rod = List.of(rod(s));
            check(s, OutlineGaps.over(s.of().profile(), rod, List.of()), rod);
        });
        System.out.printf(
                "gap bounds, seed %d: %d stretches, least in between on %d, %d floors granted%n",
                RandomCase.SEED, asked, hollow, granted);
        assertEquals(List.of(), above.subList(0, Math.min(5, above.size())), above.size() + " above an exact gap");
        assertTrue(asked >= 10_000 && hollow > 300 && granted > asked / 10, hollow + " " + granted + " of " + asked);
    }

    /** Something thin that hangs down somewhere along the unit: only its tip is ever near the ground. */
    private static Outline rod(RandomStretch s) {
        List<FramePoint> along = s.outlines().undersides().get(0).points();
        double xM = s.of().random()
                .nextDouble(along.get(0).xM(), along.get(along.size() - 1).xM());
        return new Outline(
                List.of(new FramePoint(xM - 0.01, 1), new FramePoint(xM, 0.2), new FramePoint(xM + 0.01, 1)));
    }

    private void check(RandomStretch s, OutlineGaps gaps, List<Outline> outlines) {
        Need need = new Wanted(gaps.frame);
        double least = Double.POSITIVE_INFINITY;
        double spare = Double.POSITIVE_INFINITY;
        double leastAtEnds = Double.POSITIVE_INFINITY;
        boolean cut = false;
        for (int i = 0; i < s.positions(); i++) {
            boolean end = i == 0 || i + 1 == s.positions();
            Least at = new Least(gaps, outlines, s.exact().get(i).pose);
            least = Math.min(least, at.gap);
            spare = Math.min(spare, at.spare);
            cut |= at.cut;
            leastAtEnds = end ? Math.min(leastAtEnds, at.gap) : leastAtEnds;
        }
        if (least == Double.POSITIVE_INFINITY || cut) {
            // Nothing of the unit is under the structure, or not all that stands up is.
            return;
        }
        asked++;
        hollow += least < leastAtEnds - HOLLOW_M ? 1 : 0;
        PlacedOutlines from = gaps.place(s.on().a.pose);
        PlacedOutlines to = gaps.place(s.on().b.pose);
        UnitWay both = new UnitWay(s.motion(), s.bow());
        GapBounds bounds = new GapBounds(gaps, from, to, both, null, 0);
        GapBounds byRates = new GapBounds(gaps, from, to, new UnitWay(s.motion(), UnitBow.unknown()), null, 0);
        GapBounds needing = new GapBounds(gaps, from, to, both, need, 0);
        granted += bounds.staysAbove(new Floors(least - BELOW_M, NO_FLOOR)) ? 1 : 0;
        Floors justAbove = new Floors(least + SOLVED_M, NO_FLOOR);
        if (bounds.staysAbove(justAbove)
                || byRates.staysAbove(justAbove)
                || needing.staysAbove(new Floors(NO_FLOOR, spare + SOLVED_M))) {
            above.add(s + " side " + gaps.frame.side + ", gap " + least + ", spare " + spare);
        }
    }

    /** The least gap and the least gap less need at one pose. */
    private static final class Least {
        double gap = Double.POSITIVE_INFINITY;
        double spare = Double.POSITIVE_INFINITY;
        /**
         * Whether a face steeper than the line ever is stands under an end of the structure: its far end is looked at
         * when it is under the structure itself, where the gap is less.
         */
        boolean cut;

        Least(OutlineGaps gaps, List<Outline> outlines, Pose pose) {
            int side = gaps.frame.side;
            PiecewiseLine line = gaps.line;
            for (Outline outline : outlines) {
                FramePoint rear = null;
                for (FramePoint p : outline.points()) {
                    double x = pose.worldXM(p);
                    if (gaps.endless || x >= line.startM() && x <= line.endM()) {
                        offer(side * (pose.worldZM(p) - line.heightAt(x)), p.xM());
                    }
                    for (int k = 0; rear != null && k < line.size(); k++) {
                        double rearX = pose.worldXM(rear);
                        double t = (line.distanceM(k) - rearX) / (x - rearX);
                        if (t >= 0 && t <= 1) {
                            cut |= !gaps.endless && (k == 0 || k == line.size() - 1) && isSteep(gaps, rear, p);
                            double z = pose.worldZM(rear) + t * (pose.worldZM(p) - pose.worldZM(rear));
                            offer(side * (z - line.elevationM(k)), rear.xM() + t * (p.xM() - rear.xM()));
                        }
                    }
                    rear = p;
                }
            }
        }

        private static boolean isSteep(OutlineGaps gaps, FramePoint rear, FramePoint front) {
            double angle = Math.atan2(front.hM() - rear.hM(), front.xM() - rear.xM());
            return Math.abs(angle) > Math.atan(gaps.steepest) + FrameOutline.MOST_PITCH;
        }

        private void offer(double atGap, double xM) {
            gap = Math.min(gap, atGap);
            spare = Math.min(spare, atGap - Wanted.atM(xM));
        }
    }

    /** Some need that bulges downward along the unit. */
    private record Wanted(FrameOutline frame) implements Need {
        static double atM(double xM) {
            return 0.02 + 0.01 * Math.abs(xM + 4);
        }

        @Override
        public double atVertex(int i, double xA, double xB) {
            return atM(frame.vertex[i].xM());
        }

        @Override
        public double atTire(double xA, double xB) {
            throw new IllegalStateException("there is none");
        }

        @Override
        public double alongSegment(int k) {
            return Math.max(atM(frame.rx[k]), atM(frame.fx[k]));
        }

        @Override
        public double onSegment(int k, double t) {
            return atM(frame.rx[k] + t * (frame.fx[k] - frame.rx[k]));
        }

        @Override
        public double beyondSurvey(double xA, double xB) {
            return 0;
        }
    }
}
