package org.cresthaul.posture;

import org.cresthaul.geometry.Interval;
import org.cresthaul.road.RolledProfile;

/**
 * Bounds on how far the points of one unit stray from moving evenly while the steer axle advances from one position to the
 * next. Even motion is the straight interpolation between both placements; what is added to it is called bow here, as of a
 * line over its chord.
 *
 * <p>With pivot K, sine S and cosine c of the pitch, a carrying wheel's centre at (x, u) from the pivot stands on its path:
 * Z_K + x S + u c = zc(X), and the mean travel of those that carry is fixed. Taking bows on both sides, with m the slope and
 * e the bow of each path's chord, gives x̄ bow(S) = mean(e + m bow(X)) − bow(Z_K) − ū bow(c) exactly. All terms but e and
 * bow(Z_K) are of second order and are bounded by magnitude. Good on rough ground, where the slopes differ much and the
 * heights little. Nothing may be concluded while {@link #known} is false.
 */
final class UnitBow {
    boolean known;
    private final Interval pivotRise = new Interval();
    private double pivotForward;
    private double pivotXM;
    private double pivotHM;
    /** x̄, negative: the wheels stand behind the pivot. */
    private double centre;

    /** How many wheels rule. */
    private int ruling;

    private final Interval ground = new Interval();
    private double groundSlack;
    private double sine;
    private double cosine;
    private double leastCosine;
    private double mostPitch;
    private double turned;

    /** Bows at the point asked for last: of its height, and the greatest along the road. */
    double riseLo;

    double riseHi;
    double forward;

    private final Interval path = new Interval();

    /**
     * Bounds for a group between two placements.
     *
     * @param motion of this unit over the same step
     * @param pivotBow of the pivot along the road, metres
     * @param pivotRiseBow of the pivot's height, metres
     */
    void compute(
            PivotedGroup group,
            RolledProfile[] rolled,
            PlacedUnit a,
            PlacedUnit b,
            MotionBounds motion,
            double pivotBow,
            Interval pivotRiseBow) {
        known = false;
        mostPitch = Math.max(Math.abs(motion.pitchLo), Math.abs(motion.pitchHi));
        if (!motion.known
                || group.valve >= 0 && group.rest < -group.reboundM
                || mostPitch > FrameOutline.MOST_PITCH) {
            return;
        }
        pivotForward = pivotBow;
        pivotRise.set(pivotRiseBow.lo, pivotRiseBow.hi);
        pivotXM = group.pivotXM;
        pivotHM = group.pivotHM;
        // sin p ≤ p, cos p ≥ 1 − p²/2.
        leastCosine = 1 - 0.5 * mostPitch * mostPitch;
        double tangent = mostPitch / leastCosine;
        turned = Math.abs(b.pose.pitchRad() - a.pose.pitchRad());
        double curved = turned * turned / (8 * leastCosine * leastCosine * leastCosine);
        ground.set(0, 0);
        centre = 0;
        double up = 0;
        double still = 0;
        double perSine = 0;
        int n = 0;
        for (int i = 0; i < group.size(); i++) {
            if (!rules(group, a, b, i)) {
                continue;
            }
            double xA = a.wheelX[i];
            double xB = b.wheelX[i];
            if (!(xB > xA)) {
                return;
            }
            path.clear();
            rolled[i].addBow(xA, xB, path);
            ground.set(ground.lo + path.lo, ground.hi + path.hi);
            double slope = Math.abs((b.wheelZ[i] - a.wheelZ[i]) / (xB - xA));
            double along = group.xM[i] - pivotXM;
            double upA = group.radiusM[i] + a.travel[i] - pivotHM;
            double upB = group.radiusM[i] + b.travel[i] - pivotHM;
            double strays = group.valve < 0 ? Math.abs(upA - upB) + motion.travelPadM : 0;
            double upMost = Math.max(Math.abs(upA), Math.abs(upB)) + strays;
            still += slope * (pivotForward + Math.abs(along) * curved + mostPitch * strays
                    + 0.25 * Math.abs(upA - upB) * turned);
            perSine += slope * (Math.abs(along) * tangent + upMost);
            centre += along;
            up += upA;
            n++;
        }
        ruling = n;
        ground.set(ground.lo / n, ground.hi / n);
        centre /= n;
        double upMean = Math.abs(up / n);
        still = still / n + upMean * curved;
        perSine = perSine / n + upMean * tangent;
        double room = Math.abs(centre) - perSine;
        if (n == 0 || centre >= 0 || room <= 0) {
            return;
        }
        sine = (ground.magnitude() + pivotRise.magnitude() + still) / room;
        cosine = tangent * sine + curved;
        groundSlack = still + perSine * sine;
        known = motion.steady
                || staysWithinLimits(group, rolled, a, b, motion)
                        && (!motion.mayCarry || fixedWheelStaysOff(group, rolled, a, b));
    }

    /** Whether an axle has a part in the group's rule: the one that the valve reads, or all that do not hang at both ends. */
    private static boolean rules(PivotedGroup group, PlacedUnit a, PlacedUnit b, int i) {
        return group.valve >= 0
                ? i == group.valve
                : a.travel[i] >= -group.reboundM || b.travel[i] >= -group.reboundM;
    }

    /**
     * Whether every axle keeps its part in the rule. While all do, travel d of axle i bows as d + u = (zc(X) − Z_K − x S) / c
     * does; if that leaves it within its limits, or hanging, all the way, there is no first moment at which it changes.
     */
    private boolean staysWithinLimits(
            PivotedGroup group, RolledProfile[] rolled, PlacedUnit a, PlacedUnit b, MotionBounds motion) {
        for (int i = 0; i < group.size(); i++) {
            if (i == group.valve) {
                continue;
            }
            boolean rules = rules(group, a, b, i);
            double low = Math.min(a.travel[i], b.travel[i]);
            double high = Math.max(a.travel[i], b.travel[i]);
            // A valve lets other axles hang.
            boolean mayHang = group.valve >= 0;
            if (rules && low <= -group.reboundM || high >= group.jounceM) {
                return false;
            }
            // Where the ground asks a wheel to be: a hanging one is higher.
            double xA = a.pose.worldXM(group.xM[i], group.radiusM[i] + a.travel[i]);
            double xB = b.pose.worldXM(group.xM[i], group.radiusM[i] + b.travel[i]);
            if (!(xB > xA)) {
                return false;
            }
            path.clear();
            rolled[i].addBow(xA, xB, path);
            double slope = Math.abs((b.pose.worldZM(group.xM[i], group.radiusM[i] + b.travel[i])
                            - a.pose.worldZM(group.xM[i], group.radiusM[i] + a.travel[i]))
                    / (xB - xA));
            double along = group.xM[i] - pivotXM;
            double up = Math.abs(group.radiusM[i] - pivotHM) + Math.max(Math.abs(low), Math.abs(high)) + motion.travelPadM;
            double strays = high - low + motion.travelPadM;
            double forwardBow = pivotForward + Math.abs(along) * cosine + up * sine + mostPitch * strays
                    + 0.25 * (high - low) * turned;
            double share = along / centre;
            double rise = fromMean(rules && group.valve < 0 ? 1.0 / ruling : 0)
                    + Math.abs(1 - share) * (ground.magnitude() + pivotRise.magnitude())
                    + slope * forwardBow
                    + Math.abs(share) * groundSlack;
            // The reciprocal of c bows by little over bow(c); what it multiplies is u + d, times c.
            double bow = (rise + 2 * up * cosine + 0.25 * (high - low + up * mostPitch * turned) * mostPitch * turned)
                    / (leastCosine * leastCosine * leastCosine);
            boolean keeps = rules
                    ? low - bow > -group.reboundM && high + bow < group.jounceM
                    : high + bow < (mayHang ? group.jounceM : -group.reboundM);
            if (!keeps) {
                return false;
            }
        }
        return true;
    }

    /** Most that the bow of the path in {@code path} differs from the mean over the ruling wheels, of which it has a part. */
    private double fromMean(double part) {
        double rest = 1 - part;
        return Math.max(
                Math.abs(rest * path.hi - (ground.lo - part * path.lo)),
                Math.abs(rest * path.lo - (ground.hi - part * path.hi)));
    }

    /** Whether a carrying booster's wheel keeps off the ground as long as it does not carry: then it never begins to. */
    private boolean fixedWheelStaysOff(PivotedGroup group, RolledProfile[] rolled, PlacedUnit a, PlacedUnit b) {
        if (!(b.fixedX > a.fixedX)) {
            return false;
        }
        path.clear();
        rolled[group.size()].addBow(a.fixedX, b.fixedX, path);
        at(group.fixedXM, group.fixedHM);
        double slope = Math.abs((b.fixedZ - b.fixedGap - (a.fixedZ - a.fixedGap)) / (b.fixedX - a.fixedX));
        return Math.min(a.fixedGap, b.fixedGap) + riseLo - slope * forward - path.hi > PlacedUnit.TOUCHES_M;
    }

    /** Puts the bows of a point of the unit's frame into {@link #riseLo}, {@link #riseHi} and {@link #forward}. */
    void at(double xM, double hM) {
        double along = xM - pivotXM;
        double up = Math.abs(hM - pivotHM);
        double share = along / centre;
        double rest = 1 - share;
        double slack = Math.abs(share) * groundSlack + up * cosine;
        riseLo = (rest >= 0 ? rest * pivotRise.lo : rest * pivotRise.hi)
                + (share >= 0 ? share * ground.lo : share * ground.hi) - slack;
        riseHi = (rest >= 0 ? rest * pivotRise.hi : rest * pivotRise.lo)
                + (share >= 0 ? share * ground.hi : share * ground.lo) + slack;
        forward = pivotForward + Math.abs(along) * cosine + up * sine;
    }

    /** Bow of the slope of a line fixed to the unit whose slope never exceeds {@code most} over the step. */
    double ofSlope(double most) {
        double secant = 1 + most * most;
        double first = secant / leastCosine;
        double second = secant * (2 * most + mostPitch / leastCosine) / (leastCosine * leastCosine);
        return first * sine + second * turned * turned / 8;
    }
}
