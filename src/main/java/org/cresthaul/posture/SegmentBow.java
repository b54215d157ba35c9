package org.cresthaul.posture;

/**
 * Bounds below the gaps between the vertices of a line and one segment of a unit, over one stretch, while the segment is
 * over them.
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
    private double slopeTurned;
    /** Bow of any of the segment's points: it is concave along the segment, so the ends bound it from below. */
    private double leastRise;

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
        bow.at(frame.rx[segment], frame.rh[segment]);
        strays = bow.forward;
        leastRise = frame.side > 0 ? bow.riseLo : -bow.riseHi;
        bow.at(frame.fx[segment], frame.fh[segment]);
        strays = Math.max(strays, bow.forward);
        leastRise = Math.min(leastRise, frame.side > 0 ? bow.riseLo : -bow.riseHi);
        return rearMoved > 0 && frontMoved > 0;
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
        double bend = away * slopeBow + Math.max(0, 0.25 * frame.side * -slopeTurned * moved);
        if (t >= 0 && t <= 1) {
            double bound = even - bend - steepest * strays + leastRise;
            if (bound >= enough) {
                return bound;
            }
        }
        int k = segment;
        bow.at(frame.rx[k] + t * (frame.fx[k] - frame.rx[k]), frame.rh[k] + t * (frame.fh[k] - frame.rh[k]));
        return even - bend - steepest * bow.forward + (frame.side > 0 ? bow.riseLo : -bow.riseHi);
    }
}
