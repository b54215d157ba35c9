package org.cresthaul.clearance.bound;

import org.cresthaul.clearance.bound.FrameOutline.Straight;
import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.geometry.Range;
import org.cresthaul.posture.Pose;

/**
 * Bounds below the gaps of one unit over one stretch, from its exact postures at both ends and how it can move between
 * them: steps 4 to 6 of docs/model.md, §9. What it answers never changes; not to be shared between threads, since it
 * places the vertices of nearly straight stretches when they are first needed.
 *
 * <p>A gap is tried by the cheapest bound first: by how fast anything of the unit can come nearer, then by bows (step
 * 5), then by the rates of the very point (step 4). Each is a bound of its own, so the best counts.
 */
public final class GapBounds {
    /**
     * A point must surely go forward, per meter of steer travel: else the slopes it passes are not all gathered. Any
     * number from zero on is safe; that slow a point moves on no stretch that is worth a bound.
     */
    private static final double LEAST_FORWARD = 0.05;

    /**
     * A vertex of the line that the segment's rear end has just passed belongs to it, meters: covers how both places
     * are rounded. More would only look at vertices that other bounds hold as well.
     */
    private static final double ROUNDING_M = 1e-9;

    private final OutlineGaps gaps;
    private final FrameOutline frame;
    private final PlacedOutlines from;
    private final PlacedOutlines to;
    private final UnitWay way;
    private final Need need;
    /** h, meters. */
    private final double lengthM;
    /** How fast the roll raises what is looked at, per meter of steer travel. */
    private final double rollRise;
    /** What a roll that is not even may take away, meters. */
    private final double padM;

    private final double turnPad;
    private final Range pitch;
    /** Bounds on how fast any point of the unit can rise and move forward, absolute. */
    private final double riseMost;

    private final double forwardMost;
    /** Whether there are bounds at all. */
    private final boolean known;

    /**
     * Bounds for one unit over a stretch.
     *
     * @param need null where no spare is asked for
     * @param unevenRad how far the roll can lie below even between both ends; above it, under a soffit
     */
    public GapBounds(
            OutlineGaps gaps, PlacedOutlines from, PlacedOutlines to, UnitWay way, Need need, double unevenRad) {
        this.gaps = gaps;
        frame = gaps.frame;
        this.from = from;
        this.to = to;
        this.way = way;
        this.need = need;
        padM = unevenRad * gaps.mostArmM(from.armM);
        if (!way.known()) {
            lengthM = Double.NaN;
            rollRise = Double.NaN;
            turnPad = Double.NaN;
            pitch = null;
            riseMost = Double.NaN;
            forwardMost = Double.NaN;
            known = false;
            return;
        }
        lengthM = way.motion().lengthM();
        rollRise = (to.raiseM - from.raiseM) / lengthM;
        double turnMost = way.motion().turn().magnitude();
        PointMotion any = anyPoint(way.motion());
        for (MotionBounds also : way.also()) {
            turnMost = Math.max(turnMost, also.turn().magnitude());
            any = any.hull(anyPoint(also));
        }
        turnPad = 0.5 * lengthM * turnMost;
        pitch = Range.between(from.pose.pitchRad(), to.pose.pitchRad()).widened(turnPad);
        riseMost = any.rise().magnitude() + Math.abs(rollRise);
        forwardMost = any.forward().hi();
        known = pitch.magnitude() <= FrameOutline.MOST_PITCH;
    }

    /** Whether a unit moves so that its gaps can be bounded at all between two poses; how well is another question. */
    public static boolean bounds(MotionBounds motion, Pose from, Pose to) {
        return motion.known && Math.max(Math.abs(from.pitchRad()), Math.abs(to.pitchRad())) < FrameOutline.MOST_PITCH;
    }

    /**
     * Whether, at every position of the stretch, every gap is at least {@code floors.gapM}, and every gap less its need
     * at least {@code floors.spareM}; false where that cannot be shown.
     */
    public boolean staysAbove(Floors floors) {
        return known && allStaysAbove(floors.padded(padM));
    }

    private boolean allStaysAbove(Floors floors) {
        for (int i : frame.loneVertices) {
            if (!vertexStaysAbove(i, vertexFloor(i, floors))) {
                return false;
            }
        }
        for (RaisedTire tire : gaps.tires) {
            if (!tireStaysAbove(tire, floors)) {
                return false;
            }
        }
        for (int k : frame.loneFaces) {
            if (!segmentStaysAbove(k, need == null ? 0 : need.alongSegment(k), 0, floors)) {
                return false;
            }
        }
        for (int j = 0; j < frame.straights.length; j++) {
            if (!chordStaysAbove(j, floors) && !wholeStaysAbove(j, floors)) {
                return false;
            }
        }
        return true;
    }

    private double vertexFloor(int i, Floors floors) {
        return floors.under(need == null ? 0 : need.atVertex(i, from.x[i], to.x[i]));
    }

    /** Step 6: whether the chord keeps so far above that nothing of a nearly straight stretch can be below. */
    private boolean chordStaysAbove(int straight, Floors floors) {
        Straight s = frame.straights[straight];
        int k = frame.chordOf(straight);
        double needed = 0;
        if (need != null) {
            // What is needed bulges downward along a unit and along the line, so that the ends bound it.
            needed = need.alongSegment(k)
                    + Math.max(
                            need.beyondSurvey(from.rearX[k], to.frontX[k]),
                            need.beyondSurvey(to.rearX[k], from.frontX[k]));
        }
        double floor = floors.under(needed) + s.offM();
        return vertexStaysAbove(s.rear(), floor)
                && vertexStaysAbove(s.front(), floor)
                && segmentStaysAbove(k, needed, s.offM(), floors);
    }

    private boolean wholeStaysAbove(int straight, Floors floors) {
        gaps.placeWhole(from, straight);
        gaps.placeWhole(to, straight);
        Straight s = frame.straights[straight];
        for (int i = s.rear() + 1; i < s.front(); i++) {
            if (!vertexStaysAbove(i, vertexFloor(i, floors))) {
                return false;
            }
        }
        for (int k = s.firstFace(); k < s.endFace(); k++) {
            if (!segmentStaysAbove(k, need == null ? 0 : need.alongSegment(k), 0, floors)) {
                return false;
            }
        }
        return true;
    }

    private boolean vertexStaysAbove(int i, double floor) {
        double gapA = from.gap[i];
        double gapB = to.gap[i];
        if (gaps.endless && Math.min(gapA, gapB) < floor) {
            return false;
        }
        double xA = from.x[i];
        double xB = to.x[i];
        if (0.5 * (gapA + gapB) - fall(gaps.steepest) >= floor
                || !gaps.endless && (xB < gaps.line.startM() || xA > gaps.line.endM())
                || way.bow().known && xB > xA && bowedVertexStaysAbove(i, floor)) {
            return true;
        }
        Interval passed = new Interval();
        gaps.line.addSlopes(xA, Math.max(xA, xB), passed);
        PointMotion moves =
                moving(xA, xB, from.z[i] - from.raiseM, to.z[i] - to.raiseM).rising(rollRise);
        return between(moves, Range.of(passed), gapA, gapB) >= floor;
    }

    /** No gap of this unit can fall by more than this between the mean of its ends and its least. */
    private double fall(double steepest) {
        return 0.5 * lengthM * (riseMost + forwardMost * steepest);
    }

    /** By the bows of the unit and the line under the vertex; their parabolas are looked at only if need be. */
    private boolean bowedVertexStaysAbove(int i, double floor) {
        double xA = from.x[i];
        double xB = to.x[i];
        Interval ofLine = new Interval();
        gaps.line.addBow(xA, xB, ofLine);
        PointBow point = way.bow().at(frame.vx[i], frame.vh[i]);
        double lineA = from.z[i] - frame.side * from.gap[i];
        double lineB = to.z[i] - frame.side * to.gap[i];
        double along = Math.abs((lineB - lineA) / (xB - xA)) * point.forward();
        double ends = Math.min(from.gap[i], to.gap[i]) - along;
        double least = frame.side > 0
                ? ends + point.rise().lo() - ofLine.hi
                : ends - point.rise().hi() + ofLine.lo;
        if (least >= floor) {
            return true;
        }
        Bow line = new Bow();
        gaps.line.bow(xA, xB, line);
        return point.over(line, frame.side, xA, xB, lineA, lineB).least(from.gap[i], to.gap[i]) >= floor;
    }

    /**
     * The vertices of the line under a face or chord.
     *
     * @param needed there, without what the line's own vertex may need
     * @param extraM to keep off beyond the floor
     */
    private boolean segmentStaysAbove(int k, double needed, double extraM, Floors floors) {
        double[] kinkS = gaps.kinkS;
        int j = from.firstKink[k];
        while (j > 0 && kinkS[j - 1] > from.rearX[k] - ROUNDING_M) {
            j--;
        }
        double frontB = to.frontX[k];
        if (j == kinkS.length || kinkS[j] > frontB) {
            return true;
        }
        Range slopes = segmentSlopes(k);
        double fall = fall(slopes.magnitude());
        SegmentBow bowed = null;
        for (; j < kinkS.length && kinkS[j] <= frontB; j++) {
            double gapA = gaps.gapOver(from, k, j);
            double gapB = gaps.gapOver(to, k, j);
            double beyond = gaps.beyondSurvey(need, j);
            double floor = floors.under(needed + beyond) + extraM;
            double least = 0.5 * (gapA + gapB) - fall;
            if (least < floor && way.bow().known) {
                bowed = bowed == null ? new SegmentBow(way.bow(), frame, k, from, to, slopes.magnitude()) : bowed;
                least = Math.max(least, bowed.least(kinkS[j], gapA, gapB, floor));
            }
            least = least >= floor
                    ? least
                    : Math.max(least, between(standing(j, gapA, gapB, slopes), slopes, gapA, gapB));
            // A chord that is not enough gives way to what it stands for; a face is looked at where it is over the
            // vertex.
            if (!(least >= floor)
                    && (need == null || extraM > 0 || !(least >= floors.under(neededOver(k, j) + beyond)))) {
                return false;
            }
        }
        return true;
    }

    /** What is needed of the part of a face that is over a vertex of the line at some time on the way. */
    private double neededOver(int k, int j) {
        double lengthA = from.frontX[k] - from.rearX[k];
        double lengthB = to.frontX[k] - to.rearX[k];
        double a = (gaps.kinkS[j] - from.rearX[k]) / lengthA;
        double b = (gaps.kinkS[j] - to.rearX[k]) / lengthB;
        // No place is farther in time from both ends than half the stretch, and none passes faster than that.
        double reach = 0.5 * lengthM * forwardMost;
        double length = Math.min(lengthA, lengthB) - 2 * reach;
        double pad = length > 0 ? reach / length : 1;
        return need.onSegment(k, share(Math.min(a, b) - pad), share(Math.max(a, b) + pad));
    }

    private static double share(double t) {
        return Math.min(1, Math.max(0, t));
    }

    private boolean tireStaysAbove(RaisedTire tire, Floors floors) {
        double xA = from.tireXM(tire);
        double xB = to.tireXM(tire);
        double zA = from.tireZM(tire);
        double zB = to.tireZM(tire);
        double gapA = zA - tire.path().heightAt(xA);
        double gapB = zB - tire.path().heightAt(xB);
        double floor = floors.under(need == null ? 0 : need.atTire(xA, xB));
        if (way.bow().known && xB > xA) {
            Bow line = new Bow();
            tire.path().bow(xA, xB, line);
            PointBow hub = way.bow().at(tire.circle().xM(), tire.circle().hM());
            if (hub.over(line, 1, xA, xB, zA - gapA, zB - gapB).least(gapA, gapB) >= floor) {
                return true;
            }
        }
        Interval passed = new Interval();
        tire.path().addSlopes(xA, Math.max(xA, xB), passed);
        double rollA = from.rollRad * tire.armM();
        double rollB = to.rollRad * tire.armM();
        PointMotion moves = moving(xA, xB, zA - rollA, zB - rollB).rising((rollB - rollA) / lengthM);
        return between(moves, Range.of(passed), gapA, gapB) >= floor;
    }

    /** Slopes of a segment at any time on the way. */
    private Range segmentSlopes(int k) {
        double slopeA = from.slope[k];
        double slopeB = to.slope[k];
        return new Range(
                slopeTurned(Math.min(slopeA, slopeB), frame.angle[k], pitch.lo(), -turnPad),
                slopeTurned(Math.max(slopeA, slopeB), frame.angle[k], pitch.hi(), turnPad));
    }

    /**
     * Slope of a segment after turning by at most {@code pad} further; {@code pitch} is where it ends up.
     *
     * <p>Spares a tangent where the turn is short: m = tan φ turned by p is at most m' = (|m| + τ)/(1 − |m| τ), τ = tan
     * |p|, and grows by at most 1 + m'² per radian. With |p| below 0.1 and |m| below 1, τ is below 0.1004 and m'² below
     * (|m| + 0.1004)²/0.809, which is below 4 m² + 0.1 for every m: the difference 2.76 m² − 0.25 |m| + 0.087 has no
     * root. So 1.1 + 4 m² per radian are enough; less than the 0.1 would not be.
     */
    private static double slopeTurned(double slope, double angle, double pitch, double pad) {
        double within = 1 + 4 * slope * slope;
        return Math.abs(pad) * within < 0.1 && Math.abs(slope) < 1
                ? slope + pad * (within + 0.1)
                : Math.tan(angle + pitch);
    }

    /**
     * How any point of the unit moves, and any place on its segments extended over a step, which a vertex of the line
     * may pass. With the pitch within {@link FrameOutline#MOST_PITCH}, offsets between vertices in the world are at
     * most those in the frame, turned.
     */
    private PointMotion anyPoint(MotionBounds moving) {
        Pose a = from.pose;
        Pose b = to.pose;
        double tilt = Math.sin(FrameOutline.MOST_PITCH);
        double turnMost = moving.turn().magnitude();
        double slackX = lengthM + 2 * tilt * frame.heightM + tilt * frame.lengthM * 0.5 * lengthM * turnMost;
        double rearX = frame.vx[frame.rearmost];
        double rearH = frame.vh[frame.rearmost];
        double frontX = frame.vx[frame.foremost];
        double frontH = frame.vh[frame.foremost];
        Range along = moving.along(a.worldXM(rearX, rearH), b.worldXM(rearX, rearH))
                .hull(moving.along(a.worldXM(frontX, frontH), b.worldXM(frontX, frontH)))
                .widened(slackX);
        double high = moving.above(a.worldZM(rearX, rearH) - from.raiseM, b.worldZM(rearX, rearH) - to.raiseM)
                        .magnitude()
                + frame.heightM
                + lengthM
                + tilt * frame.lengthM;
        return new PointMotion(moving.pivot().forward().widened(high * turnMost), moving.riseOf(along));
    }

    /** How a point of the unit moves; its heights are those without its roll. */
    private PointMotion moving(double xA, double xB, double zA, double zB) {
        PointMotion own = way.motion().at(xA, xB, zA, zB);
        PointMotion any = own;
        for (MotionBounds also : way.also()) {
            any = any.hull(also.at(xA, xB, zA, zB));
        }
        return any;
    }

    /** How what passes over a vertex of the line moves: an outline segment, extended as far as need be. */
    private PointMotion standing(int kink, double gapA, double gapB, Range slopes) {
        double x = gaps.kinkS[kink];
        double zA = gaps.kinkZ[kink] + frame.side * gapA - from.raiseM;
        double zB = gaps.kinkZ[kink] + frame.side * gapB - to.raiseM;
        Range rise = riseOver(way.motion(), x);
        for (MotionBounds also : way.also()) {
            rise = rise.hull(riseOver(also, x));
        }
        Range forward = forwardOver(way.motion(), zA, zB, rise, slopes);
        for (MotionBounds also : way.also()) {
            forward = forward.hull(forwardOver(also, zA, zB, rise, slopes));
        }
        return new PointMotion(forward, rise.plus(rollRise));
    }

    private static Range riseOver(MotionBounds moving, double x) {
        return moving.riseOf(moving.along(x, x));
    }

    private Range forwardOver(MotionBounds moving, double zA, double zB, Range rise, Range slopes) {
        // The material passing over x stays within a step of slope of what passes at the ends.
        double pad = lengthM * (rise.magnitude() + moving.pivot().rise().magnitude() + 2 * slopes.magnitude());
        return moving.forwardOf(moving.above(zA, zB).widened(pad));
    }

    /**
     * Step 4: the least value in between of a gap with known ends, whose rate is side × (rise − slope × forward): where
     * the two bounding lines cross.
     */
    private double between(PointMotion moves, Range slopes, double gapA, double gapB) {
        if (moves.forward().lo() < LEAST_FORWARD) {
            return Double.NEGATIVE_INFINITY;
        }
        Range rate = moves.rise().minus(slopes.times(moves.forward())).times(frame.side);
        if (rate.lo() >= 0) {
            return gapA;
        }
        if (rate.hi() <= 0) {
            return gapB;
        }
        double at = (gapA - gapB + rate.hi() * lengthM) / (rate.hi() - rate.lo());
        return gapA + rate.lo() * Math.min(Math.max(at, 0), lengthM);
    }
}
