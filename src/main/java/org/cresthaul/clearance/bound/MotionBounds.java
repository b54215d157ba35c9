package org.cresthaul.clearance.bound;

import org.cresthaul.geometry.Interval;
import org.cresthaul.posture.PivotedGroup;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.Pose;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.road.WheelPath;

/**
 * Bounds on how one unit moves while the steer axle advances from one position to the next: everything is per meter of
 * steer travel.
 *
 * <p>With pivot K moving at (v, w) and the unit turning at ω, a point P of the unit moves forward at v − (Z_P − Z_K) ω
 * and up at w + (X_P − X_K) ω. A wheel i that carries obeys its path's slope q_i; for the group's rule this gives
 * exactly ω = mean(q_i v − w) / mean(a_i), with a_i = (X_i − X_K) + q_i (Z_i − Z_K) and one set of positive weights,
 * nearly equal, in both means. Which axles take part can change inside the interval, so unless limits are surely out of
 * reach the means range over any choice of axles.
 *
 * <p>Slopes are gathered over windows that the wheels cannot leave: while every wheel has moved forward at a rate
 * between zero and 1 + ε it is inside its window, and inside the windows the rates are shown to be so; the first moment
 * of leaving cannot come. Where that cannot be shown, {@link #known} is false and nothing may be concluded. See
 * docs/model.md, "Why the least clearance is proven".
 */
public final class MotionBounds {
    private static final double[] SPEED_SLACK = {0.1, 0.6};
    private static final double[] PITCH_RATE = {0.05, 0.6};

    public boolean known;
    /** Whether a fixed wheel may carry somewhere on the way. */
    public boolean mayCarry;
    /** Whether the same axles carry all the way, each within its limits, and no fixed wheel. */
    boolean steady;
    /** How far the travel of any axle can lie outside its values at both ends, meters. */
    double travelPadM;
    /** No wheel's forward rate differs from one by more than this. */
    public double speedOff;

    double stepM;
    double pivotXA;
    double pivotXB;
    double pivotZA;
    double pivotZB;
    double pitchLo;
    double pitchHi;
    final Interval forward = new Interval();
    final Interval rise = new Interval();
    public final Interval turn = new Interval();
    /** Mean of q_i v over the wheels that carry. */
    final Interval wheelRise = new Interval();
    /** Mean of a_i over the wheels that carry; negative. */
    final Interval arm = new Interval();

    private final Interval slopes = new Interval();
    private final Interval armOfOne = new Interval();
    private final Interval allSlopes = new Interval();
    private final Interval allArms = new Interval();
    private final Interval ownSlopes = new Interval();
    private final Interval ownArms = new Interval();
    private final Interval meanSlope = new Interval();
    private final Interval meanArm = new Interval();

    /** Bounds for a group between two placements {@code step} meters of steer travel apart. */
    public void compute(
            PivotedGroup group,
            WheelPath[] rolled,
            PlacedUnit a,
            PlacedUnit b,
            double step,
            Interval pivotForward,
            Interval pivotRise) {
        stepM = step;
        pivotXA = a.pivotX;
        pivotXB = b.pivotX;
        pivotZA = a.pivotZ;
        pivotZB = b.pivotZ;
        forward.set(pivotForward.lo, pivotForward.hi);
        rise.set(pivotRise.lo, pivotRise.hi);
        known = false;
        for (int tier = 0; a.solved && b.solved && tier < SPEED_SLACK.length && !known; tier++) {
            known = tryBounds(group, rolled, a, b, SPEED_SLACK[tier], PITCH_RATE[tier]);
        }
    }

    private boolean tryBounds(
            PivotedGroup group, WheelPath[] rolled, PlacedUnit a, PlacedUnit b, double slack, double pitchRate) {
        double h = stepM;
        double pitchA = a.pose.pitchRad();
        double pitchB = b.pose.pitchRad();
        double sinMost = Math.sin(Math.min(1.5, Math.max(Math.abs(pitchA), Math.abs(pitchB)) + 0.5 * pitchRate * h));
        double cosLeast = Math.sqrt(1 - sinMost * sinMost);
        int n = group.size();
        allSlopes.clear();
        allArms.clear();
        meanSlope.set(0, 0);
        meanArm.set(0, 0);
        double zMost = 0;
        for (int i = 0; i < n; i++) {
            zMost = Math.max(zMost, measure(rolled[i], a.wheelX[i], b.wheelX[i], a.wheelZ[i], b.wheelZ[i], slack));
            allSlopes.add(slopes);
            allArms.add(armOfOne);
            if (group.valve < 0) {
                meanSlope.set(meanSlope.lo + slopes.lo / n, meanSlope.hi + slopes.hi / n);
                meanArm.set(meanArm.lo + armOfOne.lo / n, meanArm.hi + armOfOne.hi / n);
            } else if (i == group.valve) {
                meanSlope.set(slopes.lo, slopes.hi);
                meanArm.set(armOfOne.lo, armOfOne.hi);
            }
        }
        mayCarry = false;
        if (group.hasFixedWheel()) {
            ownSlopes.set(allSlopes.lo, allSlopes.hi);
            ownArms.set(allArms.lo, allArms.hi);
            zMost = Math.max(zMost, measure(rolled[n], a.fixedX, b.fixedX, a.fixedZ, b.fixedZ, slack));
            allSlopes.add(slopes);
            allArms.add(armOfOne);
        }
        if (allArms.hi >= -0.05 || cosLeast - allSlopes.magnitude() * sinMost < 0.1) {
            return false;
        }
        setMeans(allSlopes, allArms);
        if (group.hasFixedWheel()) {
            // However it turns with the fixed wheel carrying or not, this is the fastest that its gap can close.
            double reach = Math.max(Math.abs(a.fixedX - pivotXA), Math.abs(b.fixedX - pivotXB)) + slack * h;
            double gapRate =
                    (1 + slack) * slopes.magnitude() + rise.magnitude() + reach * Math.min(turn.magnitude(), pitchRate);
            mayCarry = Math.min(a.fixedGap, b.fixedGap) <= 0.5 * gapRate * h + PlacedUnit.TOUCHES_M;
            if (!mayCarry) {
                allSlopes.set(ownSlopes.lo, ownSlopes.hi);
                allArms.set(ownArms.lo, ownArms.hi);
                setMeans(allSlopes, allArms);
            }
        }
        double least = cosLeast - allSlopes.magnitude() * sinMost;
        double turnMost = turn.magnitude();
        if (turnMost > pitchRate) {
            return false;
        }
        // An axle follows its own path while the frame over it keeps to the others':
        // its travel changes by (q_i − mean q) v + ω (mean a − a_i), over cos θ + q_i sin θ.
        double travelRate = ((1 + slack) * allSlopes.width() + allArms.width() * turnMost) / least;
        travelPadM = 0.5 * travelRate * h;
        steady = !mayCarry && withinLimits(group, a, b, travelPadM);
        if (steady) {
            if (group.valve < 0) {
                // The weights 1 / (cos θ + q_i sin θ) are within this fraction of one another.
                double uneven = allSlopes.width() * sinMost / least;
                meanSlope.set(meanSlope.lo - uneven * allSlopes.width(), meanSlope.hi + uneven * allSlopes.width());
                meanArm.set(meanArm.lo - uneven * allArms.width(), meanArm.hi + uneven * allArms.width());
            }
            setMeans(meanSlope, meanArm);
        }
        double pad = 0.5 * h * turn.magnitude();
        pitchLo = Math.min(pitchA, pitchB) - pad;
        pitchHi = Math.max(pitchA, pitchB) + pad;
        speedOff =
                Math.max(Math.abs(forward.lo - 1), Math.abs(forward.hi - 1)) + zMost * turnMost + sinMost * travelRate;
        return speedOff <= slack;
    }

    /** Gathers the slopes under one wheel and its arm; returns how far it can lie above or below the pivot. */
    private double measure(WheelPath path, double xA, double xB, double zA, double zB, double slack) {
        double h = stepM;
        slopes.clear();
        path.addSlopes(xA, Math.max(xB, xA + (1 + slack) * h), slopes);
        double padZ = 0.5 * h * ((1 + slack) * slopes.magnitude() + rise.magnitude());
        double dzLo = Math.min(zA - pivotZA, zB - pivotZB) - padZ;
        double dzHi = Math.max(zA - pivotZA, zB - pivotZB) + padZ;
        double lo1 = slopes.lo * dzLo;
        double lo2 = slopes.lo * dzHi;
        double hi1 = slopes.hi * dzLo;
        double hi2 = slopes.hi * dzHi;
        armOfOne.set(
                Math.min(xA - pivotXA, xB - pivotXB) - slack * h + Math.min(Math.min(lo1, lo2), Math.min(hi1, hi2)),
                Math.max(xA - pivotXA, xB - pivotXB) + slack * h + Math.max(Math.max(lo1, lo2), Math.max(hi1, hi2)));
        return Math.max(Math.abs(dzLo), Math.abs(dzHi));
    }

    private static boolean withinLimits(PivotedGroup group, PlacedUnit a, PlacedUnit b, double reach) {
        if (group.valve >= 0 && group.rest < -group.reboundM) {
            // The valve asks for more than its axle reaches: which axle the unit comes down on is open.
            return false;
        }
        for (int i = 0; i < group.size(); i++) {
            double low = Math.min(a.travel[i], b.travel[i]) - reach;
            double high = Math.max(a.travel[i], b.travel[i]) + reach;
            if (i != group.valve && (high >= group.jounceM || group.valve < 0 && low <= -group.reboundM)) {
                return false;
            }
        }
        return true;
    }

    private void setMeans(Interval slope, Interval arms) {
        wheelRise.set(
                Math.min(slope.lo * forward.lo, slope.lo * forward.hi),
                Math.max(slope.hi * forward.lo, slope.hi * forward.hi));
        arm.set(arms.lo, arms.hi);
        double numLo = wheelRise.lo - rise.hi;
        double numHi = wheelRise.hi - rise.lo;
        turn.set(Math.min(numHi / arm.lo, numHi / arm.hi), Math.max(numLo / arm.lo, numLo / arm.hi));
    }

    /** Bounds on the rise of unit points whose X − X_K lies in [aLo, aHi]. */
    void addRise(double aLo, double aHi, Interval into) {
        double t1 = Math.min(Math.min(aLo / arm.lo, aLo / arm.hi), Math.min(aHi / arm.lo, aHi / arm.hi));
        double t2 = Math.max(Math.max(aLo / arm.lo, aLo / arm.hi), Math.max(aHi / arm.lo, aHi / arm.hi));
        addRiseAt(t1, into);
        addRiseAt(t2, into);
    }

    private void addRiseAt(double t, Interval into) {
        double r = 1 - t;
        double lo = (r >= 0 ? rise.lo : rise.hi) * r + (t >= 0 ? wheelRise.lo : wheelRise.hi) * t;
        double hi = (r >= 0 ? rise.hi : rise.lo) * r + (t >= 0 ? wheelRise.hi : wheelRise.lo) * t;
        if (lo < into.lo) {
            into.lo = lo;
        }
        if (hi > into.hi) {
            into.hi = hi;
        }
    }

    /** Bounds on the forward rate of unit points whose Z − Z_K lies in [dzLo, dzHi]. */
    void addForward(double dzLo, double dzHi, Interval into) {
        double a = Math.max(Math.max(dzLo * turn.lo, dzLo * turn.hi), Math.max(dzHi * turn.lo, dzHi * turn.hi));
        double b = Math.min(Math.min(dzLo * turn.lo, dzLo * turn.hi), Math.min(dzHi * turn.lo, dzHi * turn.hi));
        into.lo = Math.min(into.lo, forward.lo - a);
        into.hi = Math.max(into.hi, forward.hi - b);
    }

    /** Bounds on the motion of a point fixed to the unit, between two of its poses. */
    public void addPoint(Pose a, Pose b, FramePoint point, Interval forwardInto, Interval riseInto) {
        addPoint(a.worldXM(point), b.worldXM(point), a.worldZM(point), b.worldZM(point), forwardInto, riseInto);
    }

    /** The same for a point whose places at both ends are known. */
    public void addPoint(double xA, double xB, double zA, double zB, Interval forwardInto, Interval riseInto) {
        double aA = xA - pivotXA;
        double aB = xB - pivotXB;
        double dzA = zA - pivotZA;
        double dzB = zB - pivotZB;
        double angle = 0.5 * stepM * turn.magnitude();
        double aMost = Math.max(Math.abs(aA), Math.abs(aB));
        double dzMost = Math.max(Math.abs(dzA), Math.abs(dzB));
        // X_P − X_K and Z_P − Z_K turn into one another: each strays from its nearer end value by this much.
        double padA = angle * (dzMost + angle * aMost);
        double padZ = angle * (aMost + angle * dzMost);
        addRise(Math.min(aA, aB) - padA, Math.max(aA, aB) + padA, riseInto);
        addForward(Math.min(dzA, dzB) - padZ, Math.max(dzA, dzB) + padZ, forwardInto);
    }
}
