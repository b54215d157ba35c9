package org.cresthaul.clearance.bound;

import java.util.List;
import org.cresthaul.geometry.Interval;
import org.cresthaul.geometry.Range;
import org.cresthaul.posture.PinnedWheels;
import org.cresthaul.posture.PivotedGroup;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.Pose;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.road.WheelPath;

/**
 * Bounds on how one unit moves over one stretch, that is while the steer axle advances from one position to the next:
 * everything is per meter of steer travel. Immutable. Steps and symbols are those of docs/model.md, §9.
 *
 * <p>Step 1: with pivot K moving at (v, w) and the unit turning at ω, a point P of the unit moves forward at v − (Z_P −
 * Z_K) ω and up at w + (X_P − X_K) ω. A wheel i that carries obeys its path's slope q_i; for the group's rule this
 * gives exactly ω = mean(q_i v − w) / mean(a_i), with a_i = (X_i − X_K) + q_i (Z_i − Z_K) and the weights 1 / (cos θ +
 * q_i sin θ) in both means.
 *
 * <p>Step 2: which axles take part can change inside the stretch, so unless limits are surely out of reach the means
 * range over any choice of axles.
 *
 * <p>Step 3: slopes are gathered over windows that the wheels cannot leave: while every wheel has moved forward at a
 * rate between 1 − ε and 1 + ε it is inside its window, and inside the windows the rates are shown to be so; the first
 * moment of leaving cannot come. Where that cannot be shown, {@link #known} is false, nothing may be concluded, and no
 * other member means anything.
 */
public final class MotionBounds {
    /**
     * The ε that is assumed, the tighter first, with the greatest |ω| in radians per meter. Both are confirmed before
     * anything rests on them (step 3), so the numbers cost speed only: too small a pair is not confirmed, too large a
     * pair makes wide windows and weak bounds, and the stretch is halved. From one on a wheel may go back, and its
     * window reaches back as far.
     */
    private static final List<Assumed> ASSUMED = List.of(new Assumed(0.1, 0.05), new Assumed(0.6, 0.6));

    /**
     * Assumed besides on stretches this short, where even the weakest bounds are worth something: far back in a long
     * chain a hinge may go up and down by more than it goes along, and an axle on its travel back.
     */
    private static final Assumed LAST_ASSUMED = new Assumed(3, 3);

    private static final double LAST_ASSUMED_UP_TO_M = 0.02;

    /**
     * Arms are divided by, so they must be surely negative, meters. Any number up to zero is safe; a real arm is
     * meters, and a shorter one than this bounds nothing of use.
     */
    private static final double LEAST_ARM_M = -0.05;

    /**
     * The weights have cos θ + q sin θ below the line: it must be surely positive. Any number from zero on is safe; at
     * a tenth a unit stands at 84 degrees on level ground.
     */
    private static final double LEAST_WEIGHT = 0.1;

    /** The unit is not fixed to the one ahead. */
    private static final double NEVER_FIXED = -1;

    private static final MotionBounds UNKNOWN = new MotionBounds(
            null,
            null,
            null,
            new Carrying(true, false, Double.POSITIVE_INFINITY),
            new Step3(0, Double.POSITIVE_INFINITY, 0));

    public final boolean known;
    /** Whether a pinned wheel may carry somewhere on the way. */
    public final boolean mayCarry;
    /** Whether the same axles carry all the way, each within its limits, and no pinned wheel. */
    final boolean steady;
    /** How far the travel of any axle can lie outside its values at both ends, meters. */
    final double travelPadM;
    /** No wheel's forward rate differs from one by more than this. */
    public final double speedOff;
    /** Of the unit, radians. */
    public final Range pitch;

    private final Stretch on;
    private final Step3 confirmed;

    private final PointMotion pivot;
    private final Turning turning;

    /** What is assumed of every wheel's forward rate, and of |ω|. */
    private record Assumed(double slack, double pitchRate) {}

    /**
     * What step 3 has shown.
     *
     * @param slack the ε that was assumed
     * @param speedOff see the member of the same name
     * @param highM how far any of the wheels can lie above or below the pivot
     */
    private record Step3(double slack, double speedOff, double highM) {}

    /** Which wheels carry; see the members of the same name. */
    private record Carrying(boolean mayCarry, boolean steady, double travelPadM) {}

    /**
     * How a unit turns.
     *
     * @param wheelRise mean of q_i v over the wheels that carry
     * @param arm mean of a_i over the wheels that carry; negative
     * @param omega ω
     */
    private record Turning(Range wheelRise, Range arm, Range omega) {
        /** Step 1: ω = mean(q v − w) / mean(a). */
        static Turning of(Range slope, Range arm, PointMotion pivot) {
            Range wheelRise = slope.times(pivot.forward());
            return new Turning(wheelRise, arm, wheelRise.minus(pivot.rise()).over(arm));
        }
    }

    /**
     * Of one wheel.
     *
     * @param slopes q, over its window
     * @param arm a
     * @param highM how far it can lie above or below the pivot
     */
    private record Wheel(Range slopes, Range arm, double highM) {}

    /**
     * Of several wheels.
     *
     * @param slopes arms of any of them
     * @param meanSlope meanArm over all, or of the one that the valve reads
     */
    private record Wheels(Range slopes, Range arms, Range meanSlope, Range meanArm, double highM) {
        Wheels with(Wheel other) {
            return new Wheels(
                    slopes.hull(other.slopes), arms.hull(other.arm), meanSlope, meanArm, Math.max(highM, other.highM));
        }
    }

    private MotionBounds(Stretch on, PointMotion pivot, Turning turning, Carrying carrying, Step3 confirmed) {
        known = on != null;
        this.on = on;
        this.pivot = pivot;
        this.turning = turning;
        mayCarry = carrying.mayCarry;
        steady = carrying.steady;
        travelPadM = carrying.travelPadM;
        this.confirmed = confirmed;
        speedOff = confirmed.speedOff;
        pitch = known ? on.pitchAtEnds().widened(0.5 * on.lengthM * turning.omega.magnitude()) : Range.ZERO;
    }

    /** Nothing is known. */
    public static MotionBounds unknown() {
        return UNKNOWN;
    }

    /**
     * Bounds for a unit over a stretch.
     *
     * @param pivot how K moves, by all that is known of the unit ahead
     */
    public static MotionBounds of(Stretch on, PointMotion pivot) {
        return found(on, pivot, NEVER_FIXED);
    }

    /**
     * These, where the hinge of a booster may be at a limit now and then: they hold for its motion while it is not, and
     * for its windows in any case.
     *
     * @param aheadTurn ω of the unit ahead, with which it turns while it is
     */
    public MotionBounds orFixed(Range aheadTurn) {
        if (known && on.group.isRigid()) {
            double fixedOff = pivot.forward().plus(-1).magnitude() + confirmed.highM * aheadTurn.magnitude();
            if (fixedOff <= speedOff) {
                return this;
            }
            if (fixedOff <= confirmed.slack) {
                Step3 either = new Step3(confirmed.slack, fixedOff, confirmed.highM);
                return new MotionBounds(on, pivot, turning, new Carrying(mayCarry, steady, travelPadM), either);
            }
        }
        return on == null ? UNKNOWN : found(on, pivot, aheadTurn.magnitude());
    }

    private static MotionBounds found(Stretch on, PointMotion pivot, double fixedTurn) {
        if (!on.a.solved || !on.b.solved) {
            return UNKNOWN;
        }
        for (Assumed assumed : ASSUMED) {
            MotionBounds found = under(assumed, on, pivot, fixedTurn);
            if (found.known) {
                return found;
            }
        }
        return on.lengthM <= LAST_ASSUMED_UP_TO_M ? under(LAST_ASSUMED, on, pivot, fixedTurn) : UNKNOWN;
    }

    /**
     * Steps 2 and 3: what follows from the assumption, where that confirms the assumption.
     *
     * @param fixedTurn the most of |ω| while the unit is fixed to the one ahead, or {@link #NEVER_FIXED}
     */
    private static MotionBounds under(Assumed assumed, Stretch on, PointMotion pivot, double fixedTurn) {
        double h = on.lengthM;
        double steepest = on.pitchAtEnds().magnitude() + 0.5 * assumed.pitchRate * h;
        if (steepest >= 0.5 * Math.PI) {
            return UNKNOWN;
        }
        double sinMost = Math.sin(steepest);
        double cosLeast = Math.sqrt(1 - sinMost * sinMost);
        Wheels own = gather(on, pivot, assumed.slack);
        Wheel[] pinned = pinnedWheels(on, pivot, assumed.slack, steepest);
        Wheels any = own;
        for (Wheel wheel : pinned) {
            any = any.with(wheel);
        }
        if (any.arms.hi() >= LEAST_ARM_M || cosLeast - any.slopes.magnitude() * sinMost < LEAST_WEIGHT) {
            return UNKNOWN;
        }
        Turning turning = Turning.of(any.slopes, any.arms, pivot);
        if (!pinnedFollow(on, pinned, steepest)) {
            return UNKNOWN;
        }
        Wheels taking = own;
        for (int j = 0; j < pinned.length; j++) {
            if (mayTouch(on, pivot, pinned[j], j, turning, assumed)) {
                taking = taking.with(pinned[j]);
            }
        }
        boolean mayCarry = taking != own;
        if (pinned.length > 0 && !mayCarry) {
            turning = Turning.of(own.slopes, own.arms, pivot);
        }
        double turnMost = turning.omega.magnitude();
        if (turnMost > assumed.pitchRate) {
            return UNKNOWN;
        }
        double least = cosLeast - taking.slopes.magnitude() * sinMost;
        // An axle follows its own path while the frame over it keeps to the others':
        // its travel changes by (q_i − mean q) v + ω (mean a − a_i), over cos θ + q_i sin θ.
        double travelRate = ((1 + assumed.slack) * taking.slopes.width() + taking.arms.width() * turnMost) / least;
        // Step 3: v, the turn at a wheel's height, and the travel along a frame that leans.
        double rigidOff = pivot.forward().plus(-1).magnitude() + any.highM * turnMost;
        double speedOff = rigidOff + sinMost * travelRate;
        if (speedOff > assumed.slack && on.group.isRigid()) {
            speedOff = rigidOff;
        } else if (speedOff > assumed.slack && mayCarry) {
            // The same rate by what the axle itself does: q_i v − w − ω a_i.
            travelRate = Math.min(travelRate, followRate(pivot, own, turnMost, assumed.slack) / least);
            speedOff = rigidOff + sinMost * travelRate;
        }
        double travelPadM = 0.5 * travelRate * h;
        boolean steady = fixedTurn == NEVER_FIXED && !mayCarry && withinLimits(on, travelPadM);
        if (fixedTurn != NEVER_FIXED) {
            // While a booster turns with the unit ahead.
            double follows = on.group.isRigid() ? 0 : followRate(pivot, own, fixedTurn, assumed.slack) / least;
            double fixedOff = pivot.forward().plus(-1).magnitude() + any.highM * fixedTurn + sinMost * follows;
            speedOff = Math.max(speedOff, fixedOff);
        }
        if (steady) {
            turning = steadily(on, pivot, taking, turning, sinMost / least);
        }
        return speedOff <= assumed.slack
                ? new MotionBounds(
                        on,
                        pivot,
                        turning,
                        new Carrying(mayCarry, steady, travelPadM),
                        new Step3(assumed.slack, speedOff, any.highM))
                : UNKNOWN;
    }

    /** |q_i v − w − ω a_i| at most: how fast an axle has to travel, times cos θ + q_i sin θ. */
    private static double followRate(PointMotion pivot, Wheels own, double turn, double slack) {
        return (1 + slack) * own.slopes.magnitude() + pivot.rise().magnitude() + turn * own.arms.magnitude();
    }

    /** The same axles carry all the way: their own means count, or the one that the valve reads. */
    private static Turning steadily(Stretch on, PointMotion pivot, Wheels taking, Turning byAny, double tangentMost) {
        if (on.group.valve >= 0) {
            return Turning.of(taking.meanSlope, taking.meanArm, pivot);
        }
        // The weights 1 / (cos θ + q_i sin θ) are within this fraction of one another.
        double uneven = taking.slopes.width() * tangentMost;
        Range meanArm = taking.meanArm.widened(uneven * taking.arms.width());
        return meanArm.hi() >= LEAST_ARM_M
                ? byAny
                : Turning.of(taking.meanSlope.widened(uneven * taking.slopes.width()), meanArm, pivot);
    }

    private static Wheels gather(Stretch on, PointMotion pivot, double slack) {
        int n = on.group.size();
        int valve = on.group.valve;
        Wheels all = null;
        Range meanSlope = Range.ZERO;
        Range meanArm = Range.ZERO;
        for (int i = 0; i < n; i++) {
            PlacedUnit a = on.a;
            PlacedUnit b = on.b;
            Range above = on.above(a.wheelZ[i], b.wheelZ[i]);
            Window window = new Window(a.wheelX[i], b.wheelX[i], slack, 0, 0);
            Wheel wheel = wheel(on, pivot, on.rolled[i], above, window);
            if (valve < 0) {
                meanSlope = meanSlope.plus(wheel.slopes.over(n));
                meanArm = meanArm.plus(wheel.arm.over(n));
            } else if (i == valve) {
                meanSlope = wheel.slopes;
                meanArm = wheel.arm;
            }
            all = all == null ? new Wheels(wheel.slopes, wheel.arm, null, null, wheel.highM) : all.with(wheel);
        }
        return new Wheels(all.slopes, all.arms, meanSlope, meanArm, all.highM);
    }

    /**
     * Pinned wheels, in order. One of several that share their load is within its travel of where it stands at none, as
     * far along as the frame leans then, so its window and its arm are so much wider.
     */
    private static Wheel[] pinnedWheels(Stretch on, PointMotion pivot, double slack, double steepest) {
        Wheel[] all = new Wheel[on.a.fixedX.length];
        int j = 0;
        for (PinnedWheels wheels : on.group.pinned) {
            double travelM = wheels.mostTravelM;
            double alongM = travelM == 0 ? 0 : travelM * Math.sin(Math.min(0.5 * Math.PI, steepest + wheels.tiltRad));
            for (int i = 0; i < wheels.size(); i++) {
                Range above = on.above(on.a.fixedZ[j], on.b.fixedZ[j]);
                Window window = new Window(on.a.fixedX[j], on.b.fixedX[j], slack, alongM, travelM);
                all[j] = wheel(on, pivot, on.fixedPath(j), above, window);
                j++;
            }
        }
        return all;
    }

    /**
     * Whether the weights 1 / (cos θ + q sin θ) of pinned wheels that share their load are surely positive, θ the pitch
     * of their own frame: then their means are means, and a wheel above its path at no travel does not carry.
     */
    private static boolean pinnedFollow(Stretch on, Wheel[] pinned, double steepest) {
        int j = 0;
        for (PinnedWheels wheels : on.group.pinned) {
            double lean = steepest + wheels.tiltRad;
            for (int i = 0; i < wheels.size(); i++) {
                double slope = pinned[j++].slopes.magnitude();
                if (wheels.mostTravelM > 0
                        && (lean >= 0.5 * Math.PI || Math.cos(lean) - slope * Math.sin(lean) < LEAST_WEIGHT)) {
                    return false;
                }
            }
        }
        return true;
    }

    /**
     * Where a wheel passes.
     *
     * @param alongM how far ahead or behind of the place that is followed it can be, and {@code aboveM} above or below
     */
    private record Window(double xA, double xB, double slack, double alongM, double aboveM) {}

    /** Slopes in a wheel's window, a share ε wider than the stretch, and its arm a = (X − X_K) + q (Z − Z_K). */
    private static Wheel wheel(Stretch on, PointMotion pivot, WheelPath path, Range aboveAtEnds, Window w) {
        double h = on.lengthM;
        Interval gathered = new Interval();
        double back = Math.max(0, w.slack - 1) * h + w.alongM;
        path.addSlopes(w.xA - back, Math.max(w.xB, w.xA + (1 + w.slack) * h) + w.alongM, gathered);
        Range slopes = Range.of(gathered);
        // Half the stretch at the fastest: no moment is farther from its nearer end.
        Range above = aboveAtEnds.widened(
                0.5 * h * ((1 + w.slack) * slopes.magnitude() + pivot.rise().magnitude()) + w.aboveM);
        // Wheel and pivot each go forward at a rate between 1 − ε and 1 + ε, half the stretch: ε h between them.
        Range arm = on.along(w.xA, w.xB).widened(w.slack * h + w.alongM).plus(slopes.times(above));
        return new Wheel(slopes, arm, above.magnitude());
    }

    /**
     * Whether a pinned wheel may come to carry. However the unit turns with it carrying or not, this is the fastest
     * that its gap at no travel can close.
     */
    private static boolean mayTouch(
            Stretch on, PointMotion pivot, Wheel wheel, int j, Turning turning, Assumed assumed) {
        double reach = on.along(on.a.fixedX[j], on.b.fixedX[j]).magnitude() + assumed.slack * on.lengthM;
        double gapRate = (1 + assumed.slack) * wheel.slopes.magnitude()
                + pivot.rise().magnitude()
                + reach * Math.min(turning.omega.magnitude(), assumed.pitchRate);
        return Math.min(on.a.fixedGapM(j), on.b.fixedGapM(j)) <= 0.5 * gapRate * on.lengthM + PlacedUnit.TOUCHES_M;
    }

    /** Whether no axle reaches a limit that would take it out of the rule, or into it. */
    private static boolean withinLimits(Stretch on, double reachM) {
        PivotedGroup group = on.group;
        if (group.valve >= 0 && group.rest < -group.reboundM) {
            // The valve asks for more than its axle reaches: which axle the unit comes down on is open.
            return false;
        }
        for (int i = 0; i < group.size(); i++) {
            double low = Math.min(on.a.travel[i], on.b.travel[i]) - reachM;
            double high = Math.max(on.a.travel[i], on.b.travel[i]) + reachM;
            if (i != group.valve && (high >= group.jounceM || group.valve < 0 && low <= -group.reboundM)) {
                return false;
            }
        }
        return true;
    }

    /** ω, radians per meter. */
    public Range turn() {
        return turning.omega;
    }

    double lengthM() {
        return on.lengthM;
    }

    /** How K moves. */
    PointMotion pivot() {
        return pivot;
    }

    /** X − X_K of something at one place at the first position and at another at the last. */
    Range along(double xA, double xB) {
        return on.along(xA, xB);
    }

    /** Z − Z_K, likewise. */
    Range above(double zA, double zB) {
        return on.above(zA, zB);
    }

    /**
     * Step 1: the rise w + (X_P − X_K) ω of points whose X_P − X_K lies in a range. With t = (X_P − X_K) / mean(a) that
     * is (1 − t) w + t mean(q v), so that w is not counted twice; linear in t, it is greatest and least at the ends.
     */
    Range riseOf(Range along) {
        Range t = along.over(turning.arm);
        return riseAt(t.lo()).hull(riseAt(t.hi()));
    }

    private Range riseAt(double t) {
        return pivot.rise().times(1 - t).plus(turning.wheelRise.times(t));
    }

    /** Step 1: the forward rate v − (Z_P − Z_K) ω of points whose Z_P − Z_K lies in a range. */
    Range forwardOf(Range above) {
        return pivot.forward().minus(above.times(turning.omega));
    }

    /** Bounds on the motion of a point fixed to the unit, between two of its poses. */
    public PointMotion at(Pose a, Pose b, FramePoint point) {
        return at(a.worldXM(point), b.worldXM(point), a.worldZM(point), b.worldZM(point));
    }

    /** The same for a point whose places at both ends are known. */
    PointMotion at(double xA, double xB, double zA, double zB) {
        Range along = on.along(xA, xB);
        Range above = on.above(zA, zB);
        // X_P − X_K and Z_P − Z_K turn into one another: each strays from its nearer end value by this much.
        double angle = 0.5 * on.lengthM * turning.omega.magnitude();
        double padX = angle * (above.magnitude() + angle * along.magnitude());
        double padZ = angle * (along.magnitude() + angle * above.magnitude());
        return new PointMotion(forwardOf(above.widened(padZ)), riseOf(along.widened(padX)));
    }
}
