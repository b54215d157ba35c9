package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cresthaul.geometry.Interval;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;
import org.cresthaul.road.PiecewiseLine;
import org.cresthaul.road.RolledProfile;
import org.cresthaul.road.Soffit;

/**
 * The vertical gaps between one unit's outlines and one line: the underside over the ground, or the topside under a
 * soffit.
 *
 * <p>The gap between two polylines is least at a vertex of one of them: an outline vertex that bulges towards the line,
 * an outline end, or a vertex of the line that bulges towards the outline. Outline segments steeper than the line can
 * ever be need no line vertices: along them the gap falls all the way to an end. A raised tyre counts as a circle.
 */
final class OutlineGaps {
    /** No unit is ever pitched more than this, radians; the bounds say so when one is. */
    static final double MOST_PITCH = 0.4;

    private final PiecewiseLine line;
    /** +1: the unit is above the line; -1: the line is above the unit. */
    final int side;

    private final boolean endless;
    final FramePoint[] vertex;
    private final double[] vx;
    private final double[] vh;
    private final int rearmost;
    private final int foremost;
    private final double lengthM;
    private final double heightM;
    /** Segments that line vertices can be nearest to: rear and front end in the frame, and their angle. */
    private final FramePoint[][] face;

    final double[] rx;

    final double[] rh;
    final double[] fx;
    final double[] fh;
    private final double[] angle;
    private final double[] kinkS;
    private final double[] kinkZ;
    /** First kink at or after each vertex of the line. */
    private final int[] kinkFrom;

    private final double steepest;
    private final CombinationShape.Circle tyre;
    private final FramePoint tyreFoot;
    private final RolledProfile tyrePath;

    private OutlineGaps(
            List<Outline> outlines,
            PiecewiseLine line,
            int side,
            CombinationShape.Circle tyre,
            RolledProfile tyrePath) {
        this.line = line;
        this.side = side;
        this.endless = !(line instanceof Soffit);
        this.tyre = tyre;
        tyreFoot = tyre == null ? null : new FramePoint(tyre.xM(), tyre.hM() - tyre.radiusM(), "raised tyre");
        this.tyrePath = tyrePath;
        List<FramePoint> bulges = new ArrayList<>();
        List<FramePoint[]> faces = new ArrayList<>();
        double steep = Math.atan(line.steepest()) + MOST_PITCH;
        for (Outline outline : outlines) {
            List<FramePoint> points = outline.points();
            for (int i = 0; i < points.size(); i++) {
                FramePoint p = points.get(i);
                boolean end = i == 0 || i == points.size() - 1;
                if (end || side * turnAt(points.get(i - 1), p, points.get(i + 1)) > 0) {
                    bulges.add(p);
                }
                if (i > 0 && Math.abs(angle(points.get(i - 1), p)) <= steep) {
                    faces.add(new FramePoint[] {points.get(i - 1), p});
                }
            }
        }
        vertex = bulges.toArray(new FramePoint[0]);
        vx = bulges.stream().mapToDouble(FramePoint::xM).toArray();
        vh = bulges.stream().mapToDouble(FramePoint::hM).toArray();
        int rear = 0;
        int front = 0;
        for (int i = 0; i < vx.length; i++) {
            rear = vx[i] < vx[rear] ? i : rear;
            front = vx[i] > vx[front] ? i : front;
        }
        rearmost = rear;
        foremost = front;
        lengthM = vx[front] - vx[rear];
        heightM = Arrays.stream(vh).max().orElseThrow() - Arrays.stream(vh).min().orElseThrow();
        face = faces.toArray(new FramePoint[0][]);
        rx = faces.stream().mapToDouble(f -> f[0].xM()).toArray();
        rh = faces.stream().mapToDouble(f -> f[0].hM()).toArray();
        fx = faces.stream().mapToDouble(f -> f[1].xM()).toArray();
        fh = faces.stream().mapToDouble(f -> f[1].hM()).toArray();
        angle = faces.stream().mapToDouble(f -> angle(f[0], f[1])).toArray();
        List<Integer> kinks = new ArrayList<>();
        for (int i = 0; i < line.size(); i++) {
            boolean end = !endless && (i == 0 || i == line.size() - 1);
            if (end || side * (line.slopeBefore(i) - line.slopeBefore(i + 1)) > 0) {
                kinks.add(i);
            }
        }
        kinkFrom = new int[line.size() + 1];
        for (int i = 0, k = 0; i <= line.size(); i++) {
            while (k < kinks.size() && kinks.get(k) < i) {
                k++;
            }
            kinkFrom[i] = k;
        }
        steepest = line.steepest();
        kinkS = kinks.stream().mapToDouble(line::distanceM).toArray();
        kinkZ = kinks.stream().mapToDouble(line::elevationM).toArray();
    }

    /** Underside (and raised tyre, both null or neither) over the ground. */
    static OutlineGaps over(
            PiecewiseLine ground, List<Outline> undersides, CombinationShape.Circle tyre, RolledProfile tyrePath) {
        return new OutlineGaps(undersides, ground, 1, tyre, tyrePath);
    }

    /** Topside under a soffit. */
    static OutlineGaps under(Soffit soffit, List<Outline> topsides) {
        return new OutlineGaps(topsides, soffit, -1, null, null);
    }

    private static double turnAt(FramePoint a, FramePoint b, FramePoint c) {
        return (b.xM() - a.xM()) * (c.hM() - b.hM()) - (b.hM() - a.hM()) * (c.xM() - b.xM());
    }

    private static double angle(FramePoint rear, FramePoint front) {
        return Math.atan2(front.hM() - rear.hM(), front.xM() - rear.xM());
    }

    /** The outlines at one pose. */
    PlacedOutlines place(Pose pose) {
        PlacedOutlines at = new PlacedOutlines(pose, vx.length, rx.length);
        for (int i = 0; i < vx.length; i++) {
            at.x[i] = pose.worldXM(vx[i], vh[i]);
            at.z[i] = pose.worldZM(vx[i], vh[i]);
            at.gap[i] = side * (at.z[i] - line.heightAt(at.x[i]));
        }
        for (int k = 0; k < rx.length; k++) {
            at.rearX[k] = pose.worldXM(rx[k], rh[k]);
            at.rearZ[k] = pose.worldZM(rx[k], rh[k]);
            at.frontX[k] = pose.worldXM(fx[k], fh[k]);
            at.slope[k] = (pose.worldZM(fx[k], fh[k]) - at.rearZ[k]) / (at.frontX[k] - at.rearX[k]);
            at.firstKink[k] = kinkFrom[line.segmentAt(at.rearX[k])];
        }
        return at;
    }

    /**
     * Lowers {@code nearest} to the least gap at one pose, with its place, and {@code tightest} to the least gap less the
     * need; without a need the latter is left alone.
     */
    void measure(PlacedOutlines at, UnitName unit, double steerM, Need need, Nearest nearest, Nearest tightest) {
        for (int i = 0; i < vx.length; i++) {
            if (covers(at.x[i])) {
                nearest.offer(at.gap[i], steerM, unit, vertex[i], at.x[i]);
                if (need != null) {
                    tightest.offer(
                            at.gap[i] - need.atVertex(i, at.x[i], at.x[i]), steerM, unit, vertex[i], at.x[i]);
                }
            }
        }
        for (int k = 0; k < rx.length; k++) {
            double needed = need == null ? 0 : need.alongSegment(k);
            for (int j = at.firstKink[k]; j < kinkS.length && kinkS[j] < at.frontX[k]; j++) {
                double gap = side * (at.rearZ[k] + at.slope[k] * (kinkS[j] - at.rearX[k]) - kinkZ[j]);
                double spare = need == null ? Double.POSITIVE_INFINITY : gap - needed - beyondSurvey(need, j);
                if (gap < nearest.gapM || need != null && spare < tightest.gapM) {
                    double t = (kinkS[j] - at.rearX[k]) / (at.frontX[k] - at.rearX[k]);
                    FramePoint point = face[k][0].towards(face[k][1], t);
                    nearest.offer(gap, steerM, unit, point, kinkS[j]);
                    if (need != null) {
                        tightest.offer(spare, steerM, unit, point, kinkS[j]);
                    }
                }
            }
        }
        if (tyre != null) {
            double x = at.pose.worldXM(tyre.xM(), tyre.hM());
            double gap = at.pose.worldZM(tyre.xM(), tyre.hM()) - tyrePath.heightAt(x);
            nearest.offer(gap, steerM, unit, tyreFoot, x);
            if (need != null) {
                tightest.offer(gap - need.atTyre(x, x), steerM, unit, tyreFoot, x);
            }
        }
    }

    FramePoint tyreFoot() {
        return tyreFoot;
    }

    boolean hasTyre() {
        return tyre != null;
    }

    /** The ground's own vertices are surveyed; those of a soffit may stand over ground that is not. */
    private double beyondSurvey(Need need, int kink) {
        return need == null || endless ? 0 : need.beyondSurvey(kinkS[kink], kinkS[kink]);
    }

    private boolean covers(double x) {
        return endless || x >= line.startM() && x <= line.endM();
    }

    /** Scratch of one search. */
    static final class Scratch {
        final Interval rise = new Interval();
        final Interval forward = new Interval();
        final Interval slopes = new Interval();
        final Interval bow = new Interval();
        final SegmentBow over = new SegmentBow();
    }

    /**
     * Whether, at every position between two poses, every gap is at least {@code floors.gapM}, and every gap less its need
     * at least {@code floors.spareM}; false where that cannot be shown.
     *
     * @param rigid a second motion the unit may share (a booster fixed to the trailer by its hinge limit), or null
     * @param bow of the same unit, where it is known
     * @param need null where no spare is asked for
     */
    boolean staysAbove(
            PlacedOutlines from,
            PlacedOutlines to,
            MotionBounds motion,
            MotionBounds rigid,
            UnitBow bow,
            Need need,
            Floors floors,
            Scratch scratch) {
        Pose a = from.pose;
        Pose b = to.pose;
        if (!motion.known || rigid != null && !rigid.known) {
            return false;
        }
        double turnMost = motion.turn.magnitude();
        if (rigid != null) {
            turnMost = Math.max(turnMost, rigid.turn.magnitude());
        }
        double turnPad = 0.5 * motion.stepM * turnMost;
        double pitchLo = Math.min(a.pitchRad(), b.pitchRad()) - turnPad;
        double pitchHi = Math.max(a.pitchRad(), b.pitchRad()) + turnPad;
        if (pitchLo < -MOST_PITCH || pitchHi > MOST_PITCH) {
            return false;
        }
        // No gap of this unit can fall by more than this between the mean of its ends and its least: a first sieve.
        scratch.rise.clear();
        double forward = addReach(a, b, motion, scratch.rise);
        if (rigid != null) {
            forward = Math.max(forward, addReach(a, b, rigid, scratch.rise));
        }
        double riseMost = scratch.rise.magnitude();
        double fall = 0.5 * motion.stepM * (riseMost + forward * steepest);
        for (int i = 0; i < vx.length; i++) {
            double xA = from.x[i];
            double xB = to.x[i];
            double floor = floors.under(need == null ? 0 : need.atVertex(i, xA, xB));
            if (0.5 * (from.gap[i] + to.gap[i]) - fall >= floor
                    || !endless && (xB < line.startM() || xA > line.endM())
                    || bow.known && xB > xA && bowedVertex(bow, i, from, to, scratch) >= floor) {
                continue;
            }
            scratch.slopes.clear();
            line.addSlopes(xA, Math.max(xA, xB), scratch.slopes);
            if (!(movingBound(motion, rigid, xA, xB, from.z[i], to.z[i], from.gap[i], to.gap[i], scratch) >= floor)) {
                return false;
            }
        }
        if (tyre != null && !tyreStaysAbove(a, b, motion, rigid, bow, need, floors, scratch)) {
            return false;
        }
        for (int k = 0; k < rx.length; k++) {
            int j = from.firstKink[k];
            // A vertex just under the segment's rear end belongs to it too.
            while (j > 0 && kinkS[j - 1] > from.rearX[k] - 1e-9) {
                j--;
            }
            double xfB = to.frontX[k];
            if (j == kinkS.length || kinkS[j] > xfB) {
                continue;
            }
            double slopeA = from.slope[k];
            double slopeB = to.slope[k];
            scratch.slopes.set(
                    slopeTurned(Math.min(slopeA, slopeB), angle[k], pitchLo, -turnPad),
                    slopeTurned(Math.max(slopeA, slopeB), angle[k], pitchHi, turnPad));
            double needed = need == null ? 0 : need.alongSegment(k);
            double fallHere = 0.5 * motion.stepM * (riseMost + forward * scratch.slopes.magnitude());
            boolean bowed = bow.known && scratch.over.set(bow, this, k, from, to, scratch.slopes.magnitude());
            for (; j < kinkS.length && kinkS[j] <= xfB; j++) {
                double zA = from.rearZ[k] + slopeA * (kinkS[j] - from.rearX[k]);
                double zB = to.rearZ[k] + slopeB * (kinkS[j] - to.rearX[k]);
                double gapA = side * (zA - kinkZ[j]);
                double gapB = side * (zB - kinkZ[j]);
                double floor = floors.under(needed + beyondSurvey(need, j));
                if (0.5 * (gapA + gapB) - fallHere < floor
                        && !(bowed && scratch.over.least(kinkS[j], gapA, gapB, floor) >= floor)
                        && !(standingBound(motion, rigid, kinkS[j], zA, zB, gapA, gapB, scratch) >= floor)) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean tyreStaysAbove(
            Pose a,
            Pose b,
            MotionBounds motion,
            MotionBounds rigid,
            UnitBow bow,
            Need need,
            Floors floors,
            Scratch scratch) {
        double xA = a.worldXM(tyre.xM(), tyre.hM());
        double xB = b.worldXM(tyre.xM(), tyre.hM());
        double zA = a.worldZM(tyre.xM(), tyre.hM());
        double zB = b.worldZM(tyre.xM(), tyre.hM());
        double gapA = zA - tyrePath.heightAt(xA);
        double gapB = zB - tyrePath.heightAt(xB);
        double floor = floors.under(need == null ? 0 : need.atTyre(xA, xB));
        if (bow.known && xB > xA) {
            scratch.bow.clear();
            tyrePath.addBow(xA, xB, scratch.bow);
            bow.at(tyre.xM(), tyre.hM());
            double slope = Math.abs((zB - gapB - (zA - gapA)) / (xB - xA));
            if (Math.min(gapA, gapB) + bow.riseLo - slope * bow.forward - scratch.bow.hi >= floor) {
                return true;
            }
        }
        scratch.slopes.clear();
        tyrePath.addSlopes(xA, Math.max(xA, xB), scratch.slopes);
        return movingBound(motion, rigid, xA, xB, zA, zB, gapA, gapB, scratch) >= floor;
    }

    /** A bound below the gap of a vertex. */
    private double bowedVertex(UnitBow bow, int i, PlacedOutlines from, PlacedOutlines to, Scratch scratch) {
        scratch.bow.clear();
        line.addBow(from.x[i], to.x[i], scratch.bow);
        bow.at(vx[i], vh[i]);
        double lineA = from.z[i] - side * from.gap[i];
        double lineB = to.z[i] - side * to.gap[i];
        double along = Math.abs((lineB - lineA) / (to.x[i] - from.x[i])) * bow.forward;
        double ends = Math.min(from.gap[i], to.gap[i]);
        return side > 0
                ? ends + bow.riseLo - along - scratch.bow.hi
                : ends - bow.riseHi - along + scratch.bow.lo;
    }

    /** Slope of a segment after turning by at most {@code pad} further; {@code pitch} is where it ends up. */
    private static double slopeTurned(double slope, double angle, double pitch, double pad) {
        double within = 1 + 4 * slope * slope;
        // The tangent grows by at most (1 + m²) per radian, and m itself by little over a short turn.
        return Math.abs(pad) * within < 0.1 && Math.abs(slope) < 1 ? slope + pad * (within + 0.1) : Math.tan(angle + pitch);
    }

    /** Adds the rise of the whole unit; returns the greatest forward rate in it. */
    private double addReach(Pose a, Pose b, MotionBounds motion, Interval rise) {
        // A line vertex may be passed by a segment extended over a step. With the pitch within MOST_PITCH, world offsets
        // between vertices are at most their frame offsets, turned.
        double tilt = Math.sin(MOST_PITCH);
        double slackX = motion.stepM + 2 * tilt * heightM + tilt * lengthM * 0.5 * motion.stepM * motion.turn.magnitude();
        double aLo = Math.min(a.worldXM(vx[rearmost], vh[rearmost]) - motion.pivotXA,
                b.worldXM(vx[rearmost], vh[rearmost]) - motion.pivotXB) - slackX;
        double aHi = Math.max(a.worldXM(vx[foremost], vh[foremost]) - motion.pivotXA,
                b.worldXM(vx[foremost], vh[foremost]) - motion.pivotXB) + slackX;
        motion.addRise(aLo, aHi, rise);
        double z = Math.max(Math.abs(a.worldZM(vx[rearmost], vh[rearmost]) - motion.pivotZA),
                Math.abs(b.worldZM(vx[rearmost], vh[rearmost]) - motion.pivotZB)) + heightM + motion.stepM + tilt * lengthM;
        return motion.forward.hi + z * motion.turn.magnitude();
    }

    /** A unit point moving along the line. */
    private double movingBound(
            MotionBounds motion,
            MotionBounds rigid,
            double xA,
            double xB,
            double zA,
            double zB,
            double gapA,
            double gapB,
            Scratch scratch) {
        scratch.rise.clear();
        scratch.forward.clear();
        motion.addPoint(xA, xB, zA, zB, scratch.forward, scratch.rise);
        if (rigid != null) {
            rigid.addPoint(xA, xB, zA, zB, scratch.forward, scratch.rise);
        }
        return between(gapA, gapB, motion.stepM, scratch);
    }

    /** A line vertex with an outline segment, extended as far as need be, passing over it. */
    private double standingBound(
            MotionBounds motion,
            MotionBounds rigid,
            double x,
            double zA,
            double zB,
            double gapA,
            double gapB,
            Scratch scratch) {
        scratch.rise.clear();
        scratch.forward.clear();
        addStanding(motion, x, zA, zB, scratch);
        if (rigid != null) {
            addStanding(rigid, x, zA, zB, scratch);
        }
        return between(gapA, gapB, motion.stepM, scratch);
    }

    private static void addStanding(MotionBounds motion, double x, double zA, double zB, Scratch scratch) {
        double aHi = x - Math.min(motion.pivotXA, motion.pivotXB);
        double aLo = x - Math.max(motion.pivotXA, motion.pivotXB);
        motion.addRise(aLo, aHi, scratch.rise);
        double dzA = zA - motion.pivotZA;
        double dzB = zB - motion.pivotZB;
        // The material passing over x stays within a step of slope of what passes at the ends.
        double pad = motion.stepM * (scratch.rise.magnitude() + motion.rise.magnitude()
                + 2 * scratch.slopes.magnitude());
        motion.addForward(Math.min(dzA, dzB) - pad, Math.max(dzA, dzB) + pad, scratch.forward);
    }

    /**
     * Least value in between of a gap with known ends, whose rate is side × (rise − slope × forward).
     */
    private double between(double gapA, double gapB, double h, Scratch s) {
        if (s.forward.lo < 0.05) {
            return Double.NEGATIVE_INFINITY;
        }
        double up = s.slopes.hi >= 0 ? s.slopes.hi * s.forward.hi : s.slopes.hi * s.forward.lo;
        double down = s.slopes.lo >= 0 ? s.slopes.lo * s.forward.lo : s.slopes.lo * s.forward.hi;
        double rateLo = s.rise.lo - up;
        double rateHi = s.rise.hi - down;
        if (side < 0) {
            double swap = -rateHi;
            rateHi = -rateLo;
            rateLo = swap;
        }
        if (rateLo >= 0) {
            return gapA;
        }
        if (rateHi <= 0) {
            return gapB;
        }
        double at = (gapA - gapB + rateHi * h) / (rateHi - rateLo);
        return gapA + rateLo * Math.min(Math.max(at, 0), h);
    }
}
