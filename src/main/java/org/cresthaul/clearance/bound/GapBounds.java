package org.cresthaul.clearance.bound;

import org.cresthaul.clearance.bound.FrameOutline.Straight;
import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.posture.Pose;

/**
 * Bounds below the gaps of one unit over a stretch of steer positions, from its exact postures at both ends and how it
 * can move between them. For one search at a time; set to one stretch at a time.
 */
public final class GapBounds {
    private final Interval rise = new Interval();
    private final Interval forward = new Interval();
    private final Interval slopes = new Interval();
    private final Interval lineWhole = new Interval();
    private final Bow lineBow = new Bow();
    private final SegmentBow over = new SegmentBow();

    private OutlineGaps gaps;
    private FrameOutline frame;
    private PlacedOutlines from;
    private PlacedOutlines to;
    private MotionBounds motion;
    private MotionBounds rigid;
    private UnitBow bow;
    private Need need;
    private Floors floors;
    /** How fast the roll raises what is looked at, per meter of steer travel. */
    private double rollRise;

    private double turnPad;
    private double pitchLo;
    private double pitchHi;
    /** Bounds on how fast any point of the unit can rise and move forward. */
    private double riseMost;

    private double forwardMost;

    /**
     * Whether, at every position between two poses, every gap is at least {@code floors.gapM}, and every gap less its
     * need at least {@code floors.spareM}; false where that cannot be shown.
     *
     * @param rigid a second motion the unit may share (a booster fixed to the trailer by its hinge limit), or null
     * @param bow of the same unit, where it is known
     * @param need null where no spare is asked for
     * @param unevenRad how far the roll can lie below even between both ends; above it, under a soffit
     */
    public boolean staysAbove(
            OutlineGaps gaps,
            PlacedOutlines from,
            PlacedOutlines to,
            MotionBounds motion,
            MotionBounds rigid,
            UnitBow bow,
            Need need,
            Floors floors,
            double unevenRad) {
        this.gaps = gaps;
        frame = gaps.frame;
        this.from = from;
        this.to = to;
        this.motion = motion;
        this.rigid = rigid;
        this.bow = bow;
        this.need = need;
        this.floors = floors;
        rollRise = (to.raiseM - from.raiseM) / motion.stepM;
        floors.padM = unevenRad * gaps.mostArmM(from.armM);
        if (!motion.known || rigid != null && !rigid.known) {
            return false;
        }
        double turnMost = motion.turn.magnitude();
        if (rigid != null) {
            turnMost = Math.max(turnMost, rigid.turn.magnitude());
        }
        turnPad = 0.5 * motion.stepM * turnMost;
        pitchLo = Math.min(from.pose.pitchRad(), to.pose.pitchRad()) - turnPad;
        pitchHi = Math.max(from.pose.pitchRad(), to.pose.pitchRad()) + turnPad;
        if (pitchLo < -FrameOutline.MOST_PITCH || pitchHi > FrameOutline.MOST_PITCH) {
            return false;
        }
        rise.clear();
        forwardMost = addReach(motion);
        if (rigid != null) {
            forwardMost = Math.max(forwardMost, addReach(rigid));
        }
        riseMost = rise.magnitude() + Math.abs(rollRise);
        for (int i : frame.loneVertices) {
            if (!vertexStaysAbove(i, vertexFloor(i))) {
                return false;
            }
        }
        for (RaisedTire tire : gaps.tires) {
            if (!tireStaysAbove(tire)) {
                return false;
            }
        }
        for (int k : frame.loneFaces) {
            if (!segmentStaysAbove(k, need == null ? 0 : need.alongSegment(k), 0)) {
                return false;
            }
        }
        for (int j = 0; j < frame.straights.length; j++) {
            if (!chordStaysAbove(j) && !wholeStaysAbove(j)) {
                return false;
            }
        }
        return true;
    }

    /** Whether a unit moves so that its gaps can be bounded at all between two poses; how well is another question. */
    public static boolean bounds(MotionBounds motion, Pose from, Pose to) {
        return motion.known && Math.max(Math.abs(from.pitchRad()), Math.abs(to.pitchRad())) < FrameOutline.MOST_PITCH;
    }

    private double vertexFloor(int i) {
        return floors.under(need == null ? 0 : need.atVertex(i, from.x[i], to.x[i]));
    }

    /** Whether the chord keeps so far above that nothing of a nearly straight stretch can be below. */
    private boolean chordStaysAbove(int straight) {
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
                && segmentStaysAbove(k, needed, s.offM());
    }

    private boolean wholeStaysAbove(int straight) {
        gaps.placeWhole(from, straight);
        gaps.placeWhole(to, straight);
        Straight s = frame.straights[straight];
        for (int i = s.rear() + 1; i < s.front(); i++) {
            if (!vertexStaysAbove(i, vertexFloor(i))) {
                return false;
            }
        }
        for (int k = s.firstFace(); k < s.endFace(); k++) {
            if (!segmentStaysAbove(k, need == null ? 0 : need.alongSegment(k), 0)) {
                return false;
            }
        }
        return true;
    }

    private boolean vertexStaysAbove(int i, double floor) {
        if (gaps.endless && Math.min(from.gap[i], to.gap[i]) < floor) {
            return false;
        }
        double xA = from.x[i];
        double xB = to.x[i];
        // No gap of this unit can fall by more than this between the mean of its ends and its least: a first sieve.
        double fall = 0.5 * motion.stepM * (riseMost + forwardMost * gaps.steepest);
        if (0.5 * (from.gap[i] + to.gap[i]) - fall >= floor
                || !gaps.endless && (xB < gaps.line.startM() || xA > gaps.line.endM())
                || bow.known && xB > xA && bowedVertexStaysAbove(i, floor)) {
            return true;
        }
        slopes.clear();
        gaps.line.addSlopes(xA, Math.max(xA, xB), slopes);
        return movingBound(xA, xB, from.z[i] - from.raiseM, to.z[i] - to.raiseM, rollRise, from.gap[i], to.gap[i])
                >= floor;
    }

    /**
     * The vertices of the line under a face or chord.
     *
     * @param needed there, without what the line's own vertex may need
     * @param extraM to keep off beyond the floor
     */
    private boolean segmentStaysAbove(int k, double needed, double extraM) {
        double[] kinkS = gaps.kinkS;
        int j = from.firstKink[k];
        // A vertex just under the segment's rear end belongs to it too.
        while (j > 0 && kinkS[j - 1] > from.rearX[k] - 1e-9) {
            j--;
        }
        double frontB = to.frontX[k];
        if (j == kinkS.length || kinkS[j] > frontB) {
            return true;
        }
        double slopeA = from.slope[k];
        double slopeB = to.slope[k];
        slopes.set(
                slopeTurned(Math.min(slopeA, slopeB), frame.angle[k], pitchLo, -turnPad),
                slopeTurned(Math.max(slopeA, slopeB), frame.angle[k], pitchHi, turnPad));
        double fall = 0.5 * motion.stepM * (riseMost + forwardMost * slopes.magnitude());
        boolean bowed = bow.known && over.set(bow, frame, k, from, to, slopes.magnitude());
        for (; j < kinkS.length && kinkS[j] <= frontB; j++) {
            double gapA = gaps.gapOver(from, k, j);
            double gapB = gaps.gapOver(to, k, j);
            double beyond = gaps.beyondSurvey(need, j);
            double floor = floors.under(needed + beyond) + extraM;
            double least = 0.5 * (gapA + gapB) - fall;
            least = least >= floor || !bowed ? least : Math.max(least, over.least(kinkS[j], gapA, gapB, floor));
            least = least >= floor ? least : Math.max(least, standingBound(j, gapA, gapB));
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
        double reach = 0.5 * motion.stepM * forwardMost;
        double length = Math.min(lengthA, lengthB) - 2 * reach;
        double pad = length > 0 ? reach / length : 1;
        return need.onSegment(k, share(Math.min(a, b) - pad), share(Math.max(a, b) + pad));
    }

    private static double share(double t) {
        return Math.min(1, Math.max(0, t));
    }

    private boolean tireStaysAbove(RaisedTire tire) {
        double xA = from.tireXM(tire);
        double xB = to.tireXM(tire);
        double zA = from.tireZM(tire);
        double zB = to.tireZM(tire);
        double gapA = zA - tire.path().heightAt(xA);
        double gapB = zB - tire.path().heightAt(xB);
        double floor = floors.under(need == null ? 0 : need.atTire(xA, xB));
        if (bow.known && xB > xA) {
            tire.path().bow(xA, xB, lineBow);
            bow.at(tire.circle().xM(), tire.circle().hM());
            if (bow.over(lineBow, 1, xA, xB, zA - gapA, zB - gapB).least(gapA, gapB) >= floor) {
                return true;
            }
        }
        slopes.clear();
        tire.path().addSlopes(xA, Math.max(xA, xB), slopes);
        double rollA = from.rollRad * tire.armM();
        double rollB = to.rollRad * tire.armM();
        return movingBound(xA, xB, zA - rollA, zB - rollB, (rollB - rollA) / motion.stepM, gapA, gapB) >= floor;
    }

    /** By the bows of the unit and the line under the vertex; their parabolas are looked at only if need be. */
    private boolean bowedVertexStaysAbove(int i, double floor) {
        lineWhole.clear();
        gaps.line.addBow(from.x[i], to.x[i], lineWhole);
        bow.at(frame.vx[i], frame.vh[i]);
        double lineA = from.z[i] - frame.side * from.gap[i];
        double lineB = to.z[i] - frame.side * to.gap[i];
        double along = Math.abs((lineB - lineA) / (to.x[i] - from.x[i])) * bow.forward;
        double ends = Math.min(from.gap[i], to.gap[i]) - along;
        double least = frame.side > 0 ? ends + bow.riseLo - lineWhole.hi : ends - bow.riseHi + lineWhole.lo;
        return least >= floor || parabolasStayAbove(i, lineA, lineB, floor);
    }

    private boolean parabolasStayAbove(int i, double lineA, double lineB, double floor) {
        gaps.line.bow(from.x[i], to.x[i], lineBow);
        return bow.over(lineBow, frame.side, from.x[i], to.x[i], lineA, lineB).least(from.gap[i], to.gap[i]) >= floor;
    }

    /** Slope of a segment after turning by at most {@code pad} further; {@code pitch} is where it ends up. */
    private static double slopeTurned(double slope, double angle, double pitch, double pad) {
        double within = 1 + 4 * slope * slope;
        // The tangent grows by at most (1 + m²) per radian, and m itself by little over a short turn.
        return Math.abs(pad) * within < 0.1 && Math.abs(slope) < 1
                ? slope + pad * (within + 0.1)
                : Math.tan(angle + pitch);
    }

    /** Adds the rise of the whole unit; returns the greatest forward rate in it. */
    private double addReach(MotionBounds moving) {
        // A line vertex may be passed by a segment extended over a step. With the pitch within MOST_PITCH, world
        // offsets
        // between vertices are at most their frame offsets, turned.
        Pose a = from.pose;
        Pose b = to.pose;
        double tilt = Math.sin(FrameOutline.MOST_PITCH);
        double slackX = moving.stepM
                + 2 * tilt * frame.heightM
                + tilt * frame.lengthM * 0.5 * moving.stepM * moving.turn.magnitude();
        double rearX = frame.vx[frame.rearmost];
        double rearH = frame.vh[frame.rearmost];
        double frontX = frame.vx[frame.foremost];
        double frontH = frame.vh[frame.foremost];
        double aLo =
                Math.min(a.worldXM(rearX, rearH) - moving.pivotXA, b.worldXM(rearX, rearH) - moving.pivotXB) - slackX;
        double aHi = Math.max(a.worldXM(frontX, frontH) - moving.pivotXA, b.worldXM(frontX, frontH) - moving.pivotXB)
                + slackX;
        moving.addRise(aLo, aHi, rise);
        double z = Math.max(
                        Math.abs(a.worldZM(rearX, rearH) - from.raiseM - moving.pivotZA),
                        Math.abs(b.worldZM(rearX, rearH) - to.raiseM - moving.pivotZB))
                + frame.heightM
                + moving.stepM
                + tilt * frame.lengthM;
        return moving.forward.hi + z * moving.turn.magnitude();
    }

    /** A unit point moving along the line, whose slopes are set; {@code zA} and {@code zB} are without its roll. */
    private double movingBound(double xA, double xB, double zA, double zB, double rolling, double gapA, double gapB) {
        rise.clear();
        forward.clear();
        motion.addPoint(xA, xB, zA, zB, forward, rise);
        if (rigid != null) {
            rigid.addPoint(xA, xB, zA, zB, forward, rise);
        }
        rise.set(rise.lo + rolling, rise.hi + rolling);
        return between(gapA, gapB);
    }

    /** A line vertex with an outline segment, extended as far as need be, passing over it; its slopes are set. */
    private double standingBound(int kink, double gapA, double gapB) {
        rise.clear();
        forward.clear();
        double zA = gaps.kinkZ[kink] + frame.side * gapA - from.raiseM;
        double zB = gaps.kinkZ[kink] + frame.side * gapB - to.raiseM;
        addStanding(motion, gaps.kinkS[kink], zA, zB);
        if (rigid != null) {
            addStanding(rigid, gaps.kinkS[kink], zA, zB);
        }
        rise.set(rise.lo + rollRise, rise.hi + rollRise);
        return between(gapA, gapB);
    }

    private void addStanding(MotionBounds moving, double x, double zA, double zB) {
        double aHi = x - Math.min(moving.pivotXA, moving.pivotXB);
        double aLo = x - Math.max(moving.pivotXA, moving.pivotXB);
        moving.addRise(aLo, aHi, rise);
        double dzA = zA - moving.pivotZA;
        double dzB = zB - moving.pivotZB;
        // The material passing over x stays within a step of slope of what passes at the ends.
        double pad = moving.stepM * (rise.magnitude() + moving.rise.magnitude() + 2 * slopes.magnitude());
        moving.addForward(Math.min(dzA, dzB) - pad, Math.max(dzA, dzB) + pad, forward);
    }

    /** Least value in between of a gap with known ends, whose rate is side × (rise − slope × forward). */
    private double between(double gapA, double gapB) {
        if (forward.lo < 0.05) {
            return Double.NEGATIVE_INFINITY;
        }
        double h = motion.stepM;
        double up = slopes.hi >= 0 ? slopes.hi * forward.hi : slopes.hi * forward.lo;
        double down = slopes.lo >= 0 ? slopes.lo * forward.lo : slopes.lo * forward.hi;
        double rateLo = rise.lo - up;
        double rateHi = rise.hi - down;
        if (frame.side < 0) {
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
