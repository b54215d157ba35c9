package org.cresthaul.clearance.bound;

import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.geometry.Range;
import org.cresthaul.posture.PinnedWheels;
import org.cresthaul.posture.PivotedGroup;
import org.cresthaul.posture.PlacedUnit;

/**
 * Bounds on how far the points of one unit stray from moving evenly over one stretch. Even motion is the straight
 * interpolation between both placements; what is added to it is called bow here, as of a line over its chord. This is
 * step 5 of docs/model.md, §9, with its symbols. What it answers never changes; not to be shared between threads.
 *
 * <p>With pivot K, sine S and cosine c of the pitch, a carrying wheel's center at (x, u) from the pivot stands on its
 * path: Z_K + x S + u c = zc(X), and the mean travel of those that carry is fixed. Taking bows on both sides, with m
 * the slope and e the bow of each path's chord, gives x̄ bow(S) = mean(e + m bow(X)) − bow(Z_K) − ū bow(c) exactly. All
 * terms but e and bow(Z_K) are of second order and are bounded by magnitude. It holds while the same axles carry within
 * their limits, which their own bows show. Good on rough ground, where the slopes differ much and the heights little;
 * with the parabolas of {@link Bow}, which wheels and the line below share, also on long curves. Nothing may be
 * concluded while {@link #known} is false.
 *
 * <p>Two facts stand behind every constant here. What is f(p) of an evenly moving p bows by at most max|f''| Δ²/8, the
 * eighth being the most of t (1 − t)/2. The product of two even motions bows by at most a quarter of both changes, the
 * quarter being the most of t (1 − t).
 */
public final class UnitBow {
    private static final UnitBow UNKNOWN = new UnitBow(null, null, null, null);

    public final boolean known;

    private final Stretch on;
    private final MotionBounds motion;
    private final PivotBow pivot;
    private final Rule rule;
    /** The most of |bow(S)|. */
    private final double sine;
    /** The most of |bow(c)|. */
    private final double cosine;
    /** The most of |mean(m bow(X)) − ū bow(c)|, which is of second order. */
    private final double second;
    /** Worked out when first needed, always the same. */
    private Parabolas parabolas;

    /**
     * How the unit is pitched. With p its pitch, |S| ≤ |p| and c ≥ 1 − p²/2.
     *
     * @param most of |p|, and of |S|
     * @param turned how far p and S differ between the ends, at most
     * @param leastCosine below c
     * @param tangent the most that c changes with S
     * @param curved bow(c) where S moves evenly: c is √(1 − S²), its second derivative 1/c³ in magnitude
     */
    private record Tilt(double most, double turned, double leastCosine, double tangent, double curved) {
        static Tilt of(Stretch on, MotionBounds motion) {
            double most = motion.pitch.magnitude();
            double turned = on.pitchAtEnds().width();
            double cosine = 1 - 0.5 * most * most;
            return new Tilt(most, turned, cosine, most / cosine, turned * turned / (8 * cosine * cosine * cosine));
        }
    }

    /**
     * What the group's rule says, over the wheels that rule.
     *
     * @param wheels how many
     * @param center x̄, negative: they stand behind the pivot
     * @param ground mean(e)
     * @param still most of |mean(m bow(X)) − ū bow(c)| with no bow(S)
     * @param perSine what bow(S) adds to it, for each of itself
     */
    private record Rule(Tilt tilt, int wheels, double center, Range ground, double still, double perSine) {}

    /**
     * The bows with their parabolas.
     *
     * @param wheels mean over the ruling wheels, of their paths
     */
    private record Parabolas(Bow pivot, Bow wheels) {}

    private UnitBow(Stretch on, MotionBounds motion, PivotBow pivot, Rule rule) {
        this.on = on;
        this.motion = motion;
        this.pivot = pivot;
        this.rule = rule;
        known = rule != null;
        // |x̄| |bow(S)| is at most |mean(e)| + |bow(Z_K)| + still + perSine |bow(S)|.
        sine = known
                ? (rule.ground.magnitude() + pivot.rise().magnitude() + rule.still)
                        / (Math.abs(rule.center) - rule.perSine)
                : Double.POSITIVE_INFINITY;
        cosine = known ? rule.tilt.tangent * sine + rule.tilt.curved : Double.POSITIVE_INFINITY;
        second = known ? rule.still + rule.perSine * sine : Double.POSITIVE_INFINITY;
    }

    /** Nothing is known. */
    public static UnitBow unknown() {
        return UNKNOWN;
    }

    /**
     * Bounds for a unit over a stretch.
     *
     * @param motion of this unit over the same stretch
     * @param pivot how far its pivot strays from moving evenly
     */
    public static UnitBow of(Stretch on, MotionBounds motion, PivotBow pivot) {
        // Every wheel goes forward, so that it is on the way between its places at both ends.
        if (!motion.known
                || motion.speedOff >= 1
                || on.group.valve >= 0 && on.group.rest < -on.group.reboundM
                || motion.pitch.magnitude() > FrameOutline.MOST_PITCH) {
            return UNKNOWN;
        }
        Rule rule = rule(on, motion, pivot.forward());
        if (rule == null) {
            return UNKNOWN;
        }
        UnitBow bow = new UnitBow(on, motion, pivot, rule);
        boolean holds = motion.steady || bow.staysWithinLimits() && (!motion.mayCarry || bow.pinnedWheelsStayOff());
        return holds ? bow : UNKNOWN;
    }

    /** Null where no wheel rules, one does not move forward, or what is of second order outweighs x̄. */
    private static Rule rule(Stretch on, MotionBounds motion, double pivotForward) {
        Tilt tilt = Tilt.of(on, motion);
        Interval bow = new Interval();
        Range ground = Range.ZERO;
        double center = 0;
        double up = 0;
        double still = 0;
        double perSine = 0;
        int n = 0;
        for (int i = 0; i < on.group.size(); i++) {
            if (!rules(on, i)) {
                continue;
            }
            double xA = on.a.wheelX[i];
            double xB = on.b.wheelX[i];
            if (!(xB > xA)) {
                return null;
            }
            bow.clear();
            on.rolled[i].addBow(xA, xB, bow);
            ground = ground.plus(Range.of(bow));
            double slope = slopeOf(bow.magnitude(), xA, xB, on.a.wheelZ[i], on.b.wheelZ[i]);
            double along = on.group.xM[i] - on.group.pivotXM;
            double upA = up(on, i, on.a);
            double upB = up(on, i, on.b);
            double strays = on.group.valve < 0 ? Math.abs(upA - upB) + motion.travelPadM : 0;
            double upMost = Math.max(Math.abs(upA), Math.abs(upB)) + strays;
            // m bow(X), with X = X_K + x c − u S: u strays from where it was, and its product with S bows.
            still += slope
                    * (pivotForward
                            + Math.abs(along) * tilt.curved
                            + tilt.most * strays
                            + 0.25 * Math.abs(upA - upB) * tilt.turned);
            perSine += slope * (Math.abs(along) * tilt.tangent + upMost);
            center += along;
            up += upA;
            n++;
        }
        center /= n;
        // ū bow(c); the mean of u is fixed.
        double upMean = Math.abs(up / n);
        still = still / n + upMean * tilt.curved;
        perSine = perSine / n + upMean * tilt.tangent;
        return n == 0 || center >= 0 || Math.abs(center) <= perSine
                ? null
                : new Rule(tilt, n, center, ground.over(n), still, perSine);
    }

    /** u of an axle: how far above the pivot its wheel's center is in the frame. */
    private static double up(Stretch on, int i, PlacedUnit at) {
        return on.group.radiusM[i] + at.travel[i] - on.group.pivotHM;
    }

    /**
     * Whether an axle has a part in the group's rule: the one that the valve reads, or all that do not hang at both
     * ends.
     */
    private static boolean rules(Stretch on, int i) {
        PivotedGroup group = on.group;
        return group.valve >= 0
                ? i == group.valve
                : on.a.travel[i] >= -group.reboundM || on.b.travel[i] >= -group.reboundM;
    }

    /**
     * Whether every axle keeps its part in the rule: while all do, the bow of each travel shows that it stays within
     * its limits, or hanging, all the way; so there is no first moment at which one changes.
     */
    private boolean staysWithinLimits() {
        for (int i = 0; i < on.group.size(); i++) {
            if (i != on.group.valve && !keepsItsPart(i)) {
                return false;
            }
        }
        return true;
    }

    /** Travel d of axle i bows as d + u = (zc(X) − Z_K − x S) / c does. */
    private boolean keepsItsPart(int i) {
        PivotedGroup group = on.group;
        boolean rules = rules(on, i);
        double low = Math.min(on.a.travel[i], on.b.travel[i]);
        double high = Math.max(on.a.travel[i], on.b.travel[i]);
        if (rules && low <= -group.reboundM || high >= group.jounceM) {
            return false;
        }
        // Where the ground asks a wheel to be: a hanging one is higher.
        double hA = group.radiusM[i] + on.a.travel[i];
        double hB = group.radiusM[i] + on.b.travel[i];
        double xA = on.a.pose.worldXM(group.xM[i], hA);
        double xB = on.b.pose.worldXM(group.xM[i], hB);
        if (!(xB > xA)) {
            return false;
        }
        Interval path = new Interval();
        on.rolled[i].addBow(xA, xB, path);
        double slope = slopeOf(0, xA, xB, on.a.pose.worldZM(group.xM[i], hA), on.b.pose.worldZM(group.xM[i], hB));
        double bow = travelBow(i, Range.of(path), slope, rules);
        if (rules) {
            return low - bow > -group.reboundM && high + bow < group.jounceM;
        }
        // A valve lets other axles hang.
        return high + bow < (group.valve >= 0 ? group.jounceM : -group.reboundM);
    }

    /** (e_i − ē) + (1 − x_i/x̄)(ē − bow(Z_K)) and terms of second order, by magnitude. */
    private double travelBow(int i, Range path, double slope, boolean rules) {
        PivotedGroup group = on.group;
        Tilt tilt = rule.tilt;
        double dA = on.a.travel[i];
        double dB = on.b.travel[i];
        double moved = Math.abs(dA - dB);
        double along = group.xM[i] - group.pivotXM;
        double up =
                Math.abs(group.radiusM[i] - group.pivotHM) + Math.max(Math.abs(dA), Math.abs(dB)) + motion.travelPadM;
        double forwardBow = pivot.forward()
                + Math.abs(along) * cosine
                + up * sine
                + tilt.most * (moved + motion.travelPadM)
                + 0.25 * moved * tilt.turned;
        double share = along / rule.center;
        double strayed = fromMean(path, rules && group.valve < 0 ? 1.0 / rule.wheels : 0)
                + Math.abs(1 - share) * (rule.ground.magnitude() + pivot.rise().magnitude())
                + slope * forwardBow
                + Math.abs(share) * second;
        // The reciprocal of c bows by little over bow(c); what it multiplies is u + d, times c.
        return (strayed + 2 * up * cosine + 0.25 * (moved + up * tilt.most * tilt.turned) * tilt.most * tilt.turned)
                / (tilt.leastCosine * tilt.leastCosine * tilt.leastCosine);
    }

    /** Most that the bow of a path differs from the mean over the ruling wheels, of which it has a part. */
    private double fromMean(Range path, double part) {
        double others = 1 - part;
        return Math.max(
                Math.abs(others * path.hi() - (rule.ground.lo() - part * path.lo())),
                Math.abs(others * path.lo() - (rule.ground.hi() - part * path.hi())));
    }

    /**
     * How much higher a place on a path can be for being farther along: by its chord's slope and its parabola's, which
     * is 4 β at its ends.
     */
    static double slopeOf(double peak, double xA, double xB, double zA, double zB) {
        return (Math.abs(zB - zA) + 4 * Math.abs(peak)) / (xB - xA);
    }

    /**
     * Whether every wheel of a booster that could carry the unit keeps off the ground, at no travel, as long as none
     * carries: then none ever begins to.
     */
    private boolean pinnedWheelsStayOff() {
        int j = 0;
        for (PinnedWheels wheels : on.group.pinned) {
            for (int i = 0; i < wheels.size(); i++) {
                if (!pinnedWheelStaysOff(j++, wheels.xM[i], wheels.hM[i])) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean pinnedWheelStaysOff(int j, double xM, double hM) {
        double aX = on.a.fixedX[j];
        double bX = on.b.fixedX[j];
        if (!(bX > aX)) {
            return false;
        }
        double aGap = on.a.fixedGapM(j);
        double bGap = on.b.fixedGapM(j);
        Interval path = new Interval();
        on.fixedPath(j).addBow(aX, bX, path);
        PointBow wheel = at(xM, hM);
        double slope = slopeOf(0, aX, bX, on.a.fixedZ[j] - aGap, on.b.fixedZ[j] - bGap);
        return Math.min(aGap, bGap) + wheel.rise().lo() - slope * wheel.forward() - path.hi > PlacedUnit.TOUCHES_M;
    }

    /** The bows of a point of the unit's frame: bow(Z_P) = bow(Z_K) + x_P bow(S) + h_P bow(c). */
    public PointBow at(double xM, double hM) {
        double along = xM - on.group.pivotXM;
        double up = Math.abs(hM - on.group.pivotHM);
        double share = along / rule.center;
        double slack = Math.abs(share) * second + up * cosine;
        Range rise =
                pivot.rise().times(1 - share).plus(rule.ground.times(share)).widened(slack);
        return new PointBow(this, share, slack, rise, pivot.forward() + Math.abs(along) * cosine + up * sine);
    }

    /** Of a point that takes a share of the wheels' bow and the rest of the pivot's, a slack besides. */
    Bow parabola(double share, double slack) {
        Bow bow = new Bow();
        bow.add(1 - share, parabolas().pivot);
        bow.add(share, parabolas().wheels);
        bow.widen(slack);
        return bow;
    }

    private Parabolas parabolas() {
        if (parabolas == null) {
            Bow wheels = new Bow();
            Bow path = new Bow();
            for (int i = 0; i < on.group.size(); i++) {
                if (rules(on, i)) {
                    on.rolled[i].bow(on.a.wheelX[i], on.b.wheelX[i], path);
                    wheels.add(1, path);
                }
            }
            wheels.scale(1.0 / rule.wheels);
            parabolas = new Parabolas(pivot.parabola(), wheels);
        }
        return parabolas;
    }

    /**
     * The bow of the unit's pitch, radians: that of its sine, (mean(e) − bow(Z_K)) / x̄, over a cosine that is at least
     * the least, and what the sine's inverse bows itself: its second derivative is S/c³.
     */
    public Range pitch() {
        Tilt tilt = rule.tilt;
        double a = (rule.ground.lo() - pivot.rise().hi() - second) / rule.center;
        double b = (rule.ground.hi() - pivot.rise().lo() + second) / rule.center;
        double curved =
                tilt.turned * tilt.turned * tilt.most / (8 * tilt.leastCosine * tilt.leastCosine * tilt.leastCosine);
        return new Range(
                Math.min(0, Math.min(a, b)) / tilt.leastCosine - curved,
                Math.max(0, Math.max(a, b)) / tilt.leastCosine + curved);
    }

    /** Bow of the slope of a line fixed to the unit whose slope never exceeds {@code most} over the stretch. */
    public double ofSlope(double most) {
        return perSine(most) * sine + curvedSlope(most);
    }

    /** Most of that bow's parabola, absolute. */
    public double peakOfSlope(double most) {
        return perSine(most) * Math.abs((parabolas().wheels.peak - parabolas().pivot.peak) / rule.center);
    }

    /** What that bow differs from its parabola, at most. */
    public double restOfSlope(double most) {
        Range ground = Range.of(parabolas().wheels.rest);
        Range ofPivot = Range.of(parabolas().pivot.rest);
        double apart = ground.minus(ofPivot).magnitude();
        return perSine(most) * (apart + second) / Math.abs(rule.center) + curvedSlope(most);
    }

    /** Slope per sine of the pitch: tan' is 1 + m², over c. */
    private double perSine(double most) {
        return (1 + most * most) / rule.tilt.leastCosine;
    }

    /** What the slope bows where S moves evenly: an eighth of the second derivative of tan(φ + arcsin S) by S. */
    private double curvedSlope(double most) {
        Tilt tilt = rule.tilt;
        double derived =
                (1 + most * most) * (2 * most + tilt.most / tilt.leastCosine) / (tilt.leastCosine * tilt.leastCosine);
        return derived * tilt.turned * tilt.turned / 8;
    }
}
