package org.cresthaul.clearance.bound;

import java.util.function.Supplier;
import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.posture.PivotedGroup;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.road.WheelPath;

/**
 * Bounds on how far the points of one unit stray from moving evenly while the steer axle advances from one position to
 * the next. Even motion is the straight interpolation between both placements; what is added to it is called bow here,
 * as of a line over its chord.
 *
 * <p>With pivot K, sine S and cosine c of the pitch, a carrying wheel's center at (x, u) from the pivot stands on its
 * path: Z_K + x S + u c = zc(X), and the mean travel of those that carry is fixed. Taking bows on both sides, with m
 * the slope and e the bow of each path's chord, gives x̄ bow(S) = mean(e + m bow(X)) − bow(Z_K) − ū bow(c) exactly. All
 * terms but e and bow(Z_K) are of second order and are bounded by magnitude. It holds while the same axles carry within
 * their limits, which their own bows show. Good on rough ground, where the slopes differ much and the heights little;
 * with the parabolas of {@link Bow}, which wheels and the line below share, also on long curves. Nothing may be
 * concluded while {@link #known} is false.
 */
public final class UnitBow {
    public boolean known;
    private PivotedGroup group;
    private WheelPath[] rolled;
    private PlacedUnit a;
    private PlacedUnit b;
    private MotionBounds motion;
    private final Interval pivotRise = new Interval();
    private Supplier<Bow> pivotBow;
    private double pivotForward;
    private double pivotXM;
    private double pivotHM;
    /** x̄, negative: the wheels stand behind the pivot. */
    private double center;

    /** How many wheels rule. */
    private int ruling;

    /** Mean over the wheels that rule, of their paths. */
    private final Interval ground = new Interval();

    private double groundSlack;
    private double sine;
    private double cosine;
    private double leastCosine;
    private double mostPitch;
    private double turned;

    /** Bows at the point asked for last: of its height, and the greatest along the road. */
    public double riseLo;

    public double riseHi;
    public double forward;
    private double share;
    private double slack;
    private final Bow rise = new Bow();

    /** Of pivot and wheels, with their parabolas; set when first asked for. */
    private boolean parabolas;

    private final Bow pivot = new Bow();
    private final Bow wheels = new Bow();

    private final Interval path = new Interval();
    private final Bow ofPath = new Bow();

    /**
     * Bounds for a group between two placements.
     *
     * @param motion of this unit over the same step
     * @param pivotForward bow of the pivot along the road, meters
     * @param pivotRise of the pivot's height, meters
     * @param pivotBow the same with its parabola; asked for only if need be, and before anything else moves on
     */
    public void compute(
            PivotedGroup group,
            WheelPath[] rolled,
            PlacedUnit a,
            PlacedUnit b,
            MotionBounds motion,
            double pivotForward,
            Interval pivotRise,
            Supplier<Bow> pivotBow) {
        known = false;
        parabolas = false;
        mostPitch = Math.max(Math.abs(motion.pitchLo), Math.abs(motion.pitchHi));
        if (!motion.known || group.valve >= 0 && group.rest < -group.reboundM || mostPitch > FrameOutline.MOST_PITCH) {
            return;
        }
        this.group = group;
        this.rolled = rolled;
        this.a = a;
        this.b = b;
        this.motion = motion;
        this.pivotForward = pivotForward;
        this.pivotRise.set(pivotRise.lo, pivotRise.hi);
        this.pivotBow = pivotBow;
        pivotXM = group.pivotXM;
        pivotHM = group.pivotHM;
        // sin p ≤ p, cos p ≥ 1 − p²/2.
        leastCosine = 1 - 0.5 * mostPitch * mostPitch;
        double tangent = mostPitch / leastCosine;
        turned = Math.abs(b.pose.pitchRad() - a.pose.pitchRad());
        double curved = turned * turned / (8 * leastCosine * leastCosine * leastCosine);
        ground.set(0, 0);
        center = 0;
        double up = 0;
        double still = 0;
        double perSine = 0;
        int n = 0;
        for (int i = 0; i < group.size(); i++) {
            if (!rules(i)) {
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
            double slope = slopeOf(path.magnitude(), xA, xB, a.wheelZ[i], b.wheelZ[i]);
            double along = group.xM[i] - pivotXM;
            double upA = group.radiusM[i] + a.travel[i] - pivotHM;
            double upB = group.radiusM[i] + b.travel[i] - pivotHM;
            double strays = group.valve < 0 ? Math.abs(upA - upB) + motion.travelPadM : 0;
            double upMost = Math.max(Math.abs(upA), Math.abs(upB)) + strays;
            still += slope
                    * (pivotForward
                            + Math.abs(along) * curved
                            + mostPitch * strays
                            + 0.25 * Math.abs(upA - upB) * turned);
            perSine += slope * (Math.abs(along) * tangent + upMost);
            center += along;
            up += upA;
            n++;
        }
        ruling = n;
        ground.set(ground.lo / n, ground.hi / n);
        center /= n;
        double upMean = Math.abs(up / n);
        still = still / n + upMean * curved;
        perSine = perSine / n + upMean * tangent;
        double room = Math.abs(center) - perSine;
        if (n == 0 || center >= 0 || room <= 0) {
            return;
        }
        sine = (ground.magnitude() + pivotRise.magnitude() + still) / room;
        cosine = tangent * sine + curved;
        groundSlack = still + perSine * sine;
        known = motion.steady || staysWithinLimits() && (!motion.mayCarry || fixedWheelStaysOff());
    }

    /**
     * Whether an axle has a part in the group's rule: the one that the valve reads, or all that do not hang at both
     * ends.
     */
    private boolean rules(int i) {
        return group.valve >= 0 ? i == group.valve : a.travel[i] >= -group.reboundM || b.travel[i] >= -group.reboundM;
    }

    /**
     * Whether every axle keeps its part in the rule. While all do, travel d of axle i bows as d + u = (zc(X) − Z_K − x
     * S) / c does; if that leaves it within its limits, or hanging, all the way, there is no first moment at which it
     * changes.
     */
    private boolean staysWithinLimits() {
        for (int i = 0; i < group.size(); i++) {
            if (i == group.valve) {
                continue;
            }
            boolean rules = rules(i);
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
            double slope = slopeOf(
                    0,
                    xA,
                    xB,
                    a.pose.worldZM(group.xM[i], group.radiusM[i] + a.travel[i]),
                    b.pose.worldZM(group.xM[i], group.radiusM[i] + b.travel[i]));
            double along = group.xM[i] - pivotXM;
            double up =
                    Math.abs(group.radiusM[i] - pivotHM) + Math.max(Math.abs(low), Math.abs(high)) + motion.travelPadM;
            double strays = high - low + motion.travelPadM;
            double forwardBow = pivotForward
                    + Math.abs(along) * cosine
                    + up * sine
                    + mostPitch * strays
                    + 0.25 * (high - low) * turned;
            double share = along / center;
            double strayed = fromMean(rules && group.valve < 0 ? 1.0 / ruling : 0)
                    + Math.abs(1 - share) * (ground.magnitude() + pivotRise.magnitude())
                    + slope * forwardBow
                    + Math.abs(share) * groundSlack;
            // The reciprocal of c bows by little over bow(c); what it multiplies is u + d, times c.
            double bow =
                    (strayed + 2 * up * cosine + 0.25 * (high - low + up * mostPitch * turned) * mostPitch * turned)
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

    /**
     * Most that the bow of the path in {@code path} differs from the mean over the ruling wheels, of which it has a
     * part.
     */
    private double fromMean(double part) {
        double others = 1 - part;
        return Math.max(
                Math.abs(others * path.hi - (ground.lo - part * path.lo)),
                Math.abs(others * path.lo - (ground.hi - part * path.hi)));
    }

    /** How much higher a place on a path can be for being farther along: by its chord's slope and its parabola's. */
    private static double slopeOf(double peak, double xA, double xB, double zA, double zB) {
        return (Math.abs(zB - zA) + 4 * Math.abs(peak)) / (xB - xA);
    }

    /**
     * Whether a carrying booster's wheel keeps off the ground as long as it does not carry: then it never begins to.
     */
    private boolean fixedWheelStaysOff() {
        if (!(b.fixedX > a.fixedX)) {
            return false;
        }
        path.clear();
        rolled[group.size()].addBow(a.fixedX, b.fixedX, path);
        at(group.fixedXM, group.fixedHM);
        double slope = slopeOf(0, a.fixedX, b.fixedX, a.fixedZ - a.fixedGap, b.fixedZ - b.fixedGap);
        return Math.min(a.fixedGap, b.fixedGap) + riseLo - slope * forward - path.hi > PlacedUnit.TOUCHES_M;
    }

    private void setParabolas() {
        if (parabolas) {
            return;
        }
        parabolas = true;
        pivot.clear();
        pivot.add(1, pivotBow.get());
        wheels.clear();
        for (int i = 0; i < group.size(); i++) {
            if (rules(i)) {
                rolled[i].bow(a.wheelX[i], b.wheelX[i], ofPath);
                wheels.add(1, ofPath);
            }
        }
        wheels.scale(1.0 / ruling);
    }

    /** Puts the bows of a point of the unit's frame into {@link #riseLo}, {@link #riseHi} and {@link #forward}. */
    public void at(double xM, double hM) {
        double along = xM - pivotXM;
        double up = Math.abs(hM - pivotHM);
        share = along / center;
        double rest = 1 - share;
        slack = Math.abs(share) * groundSlack + up * cosine;
        riseLo = (rest >= 0 ? rest * pivotRise.lo : rest * pivotRise.hi)
                + (share >= 0 ? share * ground.lo : share * ground.hi)
                - slack;
        riseHi = (rest >= 0 ? rest * pivotRise.hi : rest * pivotRise.lo)
                + (share >= 0 ? share * ground.hi : share * ground.lo)
                + slack;
        forward = pivotForward + Math.abs(along) * cosine + up * sine;
    }

    /** The bow of the height of the point asked for last, with its parabola. */
    public Bow rise() {
        setParabolas();
        rise.clear();
        rise.add(1 - share, pivot);
        rise.add(share, wheels);
        rise.widen(slack);
        return rise;
    }

    /**
     * The bow of the gap between the point asked for last and a line.
     *
     * @param line its bow between both places of the point
     * @param side +1 over the line, -1 under it
     * @param zA height of the line at the first place, zB at the last
     */
    Bow over(Bow line, int side, double xA, double xB, double zA, double zB) {
        rise();
        if (side < 0) {
            rise.scale(-1);
        }
        rise.add(-side, line);
        rise.widen(slopeOf(line.peak, xA, xB, zA, zB) * forward);
        return rise;
    }

    /**
     * Puts the bow of the unit's pitch into an interval, radians: that of its sine, (mean(ground) − pivot) / x̄, over a
     * cosine that is at least the least, and what the sine's inverse bows itself.
     */
    public void pitch(Interval into) {
        double a = (ground.lo - pivotRise.hi - groundSlack) / center;
        double b = (ground.hi - pivotRise.lo + groundSlack) / center;
        double curved = turned * turned * mostPitch / (8 * leastCosine * leastCosine * leastCosine);
        into.set(
                Math.min(0, Math.min(a, b)) / leastCosine - curved, Math.max(0, Math.max(a, b)) / leastCosine + curved);
    }

    /** Bow of the slope of a line fixed to the unit whose slope never exceeds {@code most} over the step. */
    public double ofSlope(double most) {
        return perSine(most) * sine + curvedSlope(most);
    }

    /** Most of that bow's parabola, absolute. */
    public double peakOfSlope(double most) {
        setParabolas();
        return perSine(most) * Math.abs((wheels.peak - pivot.peak) / center);
    }

    /** What that bow differs from its parabola, at most. */
    public double restOfSlope(double most) {
        setParabolas();
        double apart = Math.max(Math.abs(wheels.rest.hi - pivot.rest.lo), Math.abs(wheels.rest.lo - pivot.rest.hi));
        return perSine(most) * (apart + groundSlack) / Math.abs(center) + curvedSlope(most);
    }

    /** Slope per sine of the pitch. */
    private double perSine(double most) {
        return (1 + most * most) / leastCosine;
    }

    private double curvedSlope(double most) {
        double second = (1 + most * most) * (2 * most + mostPitch / leastCosine) / (leastCosine * leastCosine);
        return second * turned * turned / 8;
    }
}
