package org.cresthaul.clearance.bound;

import org.cresthaul.geometry.Bow;

/**
 * Bounds below the gaps between the vertices of a line and one segment of a unit, over one stretch, while the segment
 * is over them.
 *
 * <p>The segment's height over a vertex is that of one of its points plus slope times how far that point is away; the
 * product of two even motions bows by at most a quarter of both changes. Set to one segment and one stretch at a time.
 */
final class SegmentBow {
    private UnitBow bow;
    private FrameOutline frame;
    private int segment;
    private double rearA;
    private double rearMoved;
    private double frontA;
    private double frontMoved;
    /** How far an end of the segment strays along the road from moving evenly. */
    private double strays;

    private double steepest;
    private double slopeBow;
    /** Whether what follows is set. */
    private boolean parabolas;

    private double slopePeak;
    private double slopeRest;
    private double slopeTurned;
    /**
     * Of the gap of any of the segment's points: each is concave along the segment, so the ends bound it from below.
     */
    private double leastWhole;

    private double leastPeak;
    private double leastRest;

    /**
     * Sets it.
     *
     * @param steepest slope that the segment never exceeds over the stretch, absolute
     * @return false where an end does not move forward
     */
    boolean set(UnitBow bow, FrameOutline frame, int segment, PlacedOutlines from, PlacedOutlines to, double steepest) {
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
        parabolas = false;
        bow.at(frame.rx[segment], frame.rh[segment]);
        strays = bow.forward;
        leastWhole = whole();
        bow.at(frame.fx[segment], frame.fh[segment]);
        strays = Math.max(strays, bow.forward);
        leastWhole = Math.min(leastWhole, whole());
        return rearMoved > 0 && frontMoved > 0;
    }

    private void setParabolas() {
        if (parabolas) {
            return;
        }
        parabolas = true;
        slopePeak = bow.peakOfSlope(steepest);
        slopeRest = bow.restOfSlope(steepest);
        bow.at(frame.rx[segment], frame.rh[segment]);
        Bow rise = bow.rise();
        leastPeak = frame.side * rise.peak;
        leastRest = rest(rise);
        bow.at(frame.fx[segment], frame.fh[segment]);
        bow.rise();
        leastPeak = Math.min(leastPeak, frame.side * rise.peak);
        leastRest = Math.min(leastRest, rest(rise));
    }

    private double whole() {
        return frame.side > 0 ? bow.riseLo : -bow.riseHi;
    }

    private double rest(Bow rise) {
        return frame.side > 0 ? rise.rest.lo : -rise.rest.hi;
    }

    /**
     * A bound below the gap to a vertex; not improved once it reaches {@code enough}.
     *
     * @param gapA at the first position, with the segment extended as far as need be
     * @param gapB at the last
     */
    double least(double x, double gapA, double gapB, double enough) {
        // Shares of the way between which the segment may be over the vertex.
        double first = Math.max(0, (x - strays - frontA) / frontMoved);
        double last = Math.min(1, (x + strays - rearA) / rearMoved);
        if (first > last) {
            return Double.POSITIVE_INFINITY;
        }
        double even = Math.min(gapA + first * (gapB - gapA), gapA + last * (gapB - gapA));
        // The point that is over the vertex half way through.
        double middle = 0.5 * (first + last);
        double rear = rearA + middle * rearMoved;
        double front = frontA + middle * frontMoved;
        double t = (x - rear) / (front - rear);
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
        bow.at(frame.rx[k] + t * (frame.fx[k] - frame.rx[k]), frame.rh[k] + t * (frame.fh[k] - frame.rh[k]));
        return even + whole() - bend - steepest * bow.forward;
    }

    /** The same by the parabolas of the bows. */
    private double smooth(double gapA, double gapB, double first, double last, double moved, double turn) {
        setParabolas();
        double off = Math.abs(moved)
                * (slopePeak * mostOff(first, 0.5 * (first + last), last) + 0.5 * (last - first) * slopeRest);
        return Bow.least(gapA, gapB, leastPeak + turn, first, last) + leastRest - off - steepest * strays;
    }

    /** The most of 4 t (1 − t) |middle − t| between two shares of the way. */
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
