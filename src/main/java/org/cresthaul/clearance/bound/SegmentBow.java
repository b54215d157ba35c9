package org.cresthaul.clearance.bound;

import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Range;

/**
 * Bounds below the gaps between the vertices of a line and one segment of a unit, over one stretch, while the segment
 * is over them: step 5 of docs/model.md, §9, for a vertex that stands still. What it answers never changes; not to be
 * shared between threads.
 *
 * <p>The segment's height over a vertex is that of one of its points plus slope times how far that point is away; the
 * product of two even motions bows by at most a quarter of both changes.
 */
final class SegmentBow {
    private final UnitBow bow;
    private final FrameOutline frame;
    private final int segment;
    private final double rearA;
    private final double rearMoved;
    private final double frontA;
    private final double frontMoved;
    /** Slope that the segment never exceeds over the stretch, absolute. */
    private final double steepest;

    private final double slopeBow;
    private final double slopeTurned;
    private final PointBow rear;
    private final PointBow front;
    /** How far an end of the segment strays along the road from moving evenly. */
    private final double strays;
    /**
     * Of the gap of any of the segment's points: each is concave along the segment, so the ends bound it from below.
     */
    private final double leastWhole;
    /** Worked out when first needed, always the same. */
    private Parabolas parabolas;

    /**
     * Bows taken apart into parabolas and what is left.
     *
     * @param leastPeak of the gap of any of the segment's points, as {@link #leastWhole} is; so is {@code leastRest}
     */
    private record Parabolas(double slopePeak, double slopeRest, double leastPeak, double leastRest) {}

    /**
     * A segment over a stretch; the bow is known.
     *
     * @param steepest slope that the segment never exceeds over the stretch, absolute
     */
    SegmentBow(UnitBow bow, FrameOutline frame, int segment, PlacedOutlines from, PlacedOutlines to, double steepest) {
        this.bow = bow;
        this.frame = frame;
        this.segment = segment;
        this.steepest = steepest;
        rearA = from.rearX[segment];
        rearMoved = to.rearX[segment] - rearA;
        frontA = from.frontX[segment];
        frontMoved = to.frontX[segment] - frontA;
        slopeBow = bow.ofSlope(steepest);
        slopeTurned = to.slope[segment] - from.slope[segment];
        rear = bow.at(frame.rx[segment], frame.rh[segment]);
        front = bow.at(frame.fx[segment], frame.fh[segment]);
        strays = Math.max(rear.forward(), front.forward());
        leastWhole = Math.min(least(rear.rise()), least(front.rise()));
    }

    /** False where an end does not move forward: then it bounds nothing. */
    private boolean isForward() {
        return rearMoved > 0 && frontMoved > 0;
    }

    /** The least of the gap's bow, toward the line. */
    private double least(Range rise) {
        return frame.side > 0 ? rise.lo() : -rise.hi();
    }

    private Parabolas parabolas() {
        if (parabolas == null) {
            Bow ofRear = rear.parabola();
            Bow ofFront = front.parabola();
            parabolas = new Parabolas(
                    bow.peakOfSlope(steepest),
                    bow.restOfSlope(steepest),
                    Math.min(frame.side * ofRear.peak, frame.side * ofFront.peak),
                    Math.min(least(Range.of(ofRear.rest)), least(Range.of(ofFront.rest))));
        }
        return parabolas;
    }

    /**
     * A bound below the gap to a vertex; not improved once it reaches {@code enough}.
     *
     * @param gapA at the first position, with the segment extended as far as need be
     * @param gapB at the last
     */
    double least(double x, double gapA, double gapB, double enough) {
        if (!isForward()) {
            return Double.NEGATIVE_INFINITY;
        }
        // Shares of the way between which the segment may be over the vertex.
        double first = Math.max(0, (x - strays - frontA) / frontMoved);
        double last = Math.min(1, (x + strays - rearA) / rearMoved);
        if (first > last) {
            return Double.POSITIVE_INFINITY;
        }
        double even = Math.min(gapA + first * (gapB - gapA), gapA + last * (gapB - gapA));
        // The point that is over the vertex half way through.
        double middle = 0.5 * (first + last);
        double rearX = rearA + middle * rearMoved;
        double frontX = frontA + middle * frontMoved;
        double t = (x - rearX) / (frontX - rearX);
        double moved = rearMoved + t * (frontMoved - rearMoved);
        double away = 0.5 * (last - first) * Math.abs(moved);
        // The turn and the way, both even, bow as a parabola; the bow of the slope counts the more the farther away.
        double turn = 0.25 * frame.side * slopeTurned * moved;
        double bend = away * slopeBow + Math.max(0, -turn);
        if (t >= 0 && t <= 1) {
            double bound = even + leastWhole - bend - steepest * strays;
            return bound >= enough ? bound : Math.max(bound, smooth(gapA, gapB, first, last, moved, turn));
        }
        int k = segment;
        PointBow over =
                bow.at(frame.rx[k] + t * (frame.fx[k] - frame.rx[k]), frame.rh[k] + t * (frame.fh[k] - frame.rh[k]));
        return even + least(over.rise()) - bend - steepest * over.forward();
    }

    /** The same by the parabolas of the bows. */
    private double smooth(double gapA, double gapB, double first, double last, double moved, double turn) {
        Parabolas p = parabolas();
        double off = Math.abs(moved)
                * (p.slopePeak * mostOff(first, 0.5 * (first + last), last) + 0.5 * (last - first) * p.slopeRest);
        return Bow.least(gapA, gapB, p.leastPeak + turn, first, last) + p.leastRest - off - steepest * strays;
    }

    /**
     * The most of 4 t (1 − t) |middle − t| between two shares of the way: at their ends, or where its derivative, 3 t²
     * − 2 (1 + middle) t + middle but for a factor, is zero.
     */
    private static double mostOff(double first, double middle, double last) {
        double root = Math.sqrt(1 - middle + middle * middle);
        double most = Math.max(off(first, middle), off(last, middle));
        double early = (1 + middle - root) / 3;
        double late = (1 + middle + root) / 3;
        most = early > first && early < last ? Math.max(most, off(early, middle)) : most;
        return late > first && late < last ? Math.max(most, off(late, middle)) : most;
    }

    private static double off(double t, double middle) {
        return 4 * t * (1 - t) * Math.abs(middle - t);
    }
}
