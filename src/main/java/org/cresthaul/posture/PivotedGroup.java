package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.posture.PinnedWheels.Excess;
import org.cresthaul.posture.PinnedWheels.Turned;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.road.WheelPath;

/**
 * A unit held at a pivot ahead (steer axle, kingpin, hinge) and standing on one axle group behind it; its pitch is the
 * one unknown.
 *
 * <p>As the nose goes up the frame comes down on its group, so every axle's travel grows with pitch. The pitch is the
 * largest that keeps the group's rule (held: the sum of travels, hanging axles counted at their rebound limit, does not
 * exceed {@code rest}; settled: the valve axle's travel does not exceed {@code rest}) or has every axle at its rebound
 * stop or beyond, keeps every axle within its jounce, and keeps the wheels of carrying boosters out of the ground. All
 * of these are increasing functions of pitch, so their maximum has one root, found by Newton steps inside a bracket.
 */
public final class PivotedGroup {
    /** Residual of the rule accepted as solved, meters. */
    static final double SOLVED_M = 1e-10;

    /** No unit is looked for beyond standing on its end. */
    private static final double ON_END_RAD = Math.PI / 2;

    /** Iterations that improve pitch and travels together before travels are solved for each pitch. */
    private static final int TOGETHER = 12;

    /** Steps in which an axle finds its travel; more means that it has none. */
    static final int TRAVEL_STEPS = 100;

    /**
     * So many trial pitches may leave travels unsolved. Only a unit that stands nearly on its end has so many, far
     * beyond what any search bounds, where none decides anything; each takes a hundred steps of every axle.
     */
    private static final int RELUCTANT = 4;

    public final double pivotXM;
    public final double pivotHM;
    public final double[] xM;
    public final double[] radiusM;
    public final double jounceM;
    public final double reboundM;
    /** Index of the axle the valve reads, or -1 when the air is held. */
    public final int valve;

    public final double rest;
    /** Wheels of boosters behind it that may lift it, front to rear. */
    public final List<PinnedWheels> pinned;

    /** How far axles travel, up and down, before a stop holds them. */
    private record Stops(double jounceM, double reboundM) {}

    /** What the air keeps: of axle {@code valve} its travel, or with -1 the sum of all travels. */
    private record Rule(int valve, double rest) {}

    private PivotedGroup(
            double pivotXM,
            double pivotHM,
            double[] xM,
            double[] radiusM,
            Stops stops,
            Rule rule,
            List<PinnedWheels> pinned) {
        this.pivotXM = pivotXM;
        this.pivotHM = pivotHM;
        this.xM = xM;
        this.radiusM = radiusM;
        jounceM = stops.jounceM();
        reboundM = stops.reboundM();
        valve = rule.valve();
        rest = rule.rest();
        this.pinned = List.copyOf(pinned);
    }

    /** Air shut in: the travels keep the sum {@code restM}. */
    static PivotedGroup held(
            double pivotXM, double pivotHM, List<Axle> axles, double jounceM, double reboundM, double restM) {
        return of(pivotXM, pivotHM, axles, new Stops(jounceM, reboundM), new Rule(-1, restM));
    }

    /** The valve has acted: axle {@code valve} keeps travel {@code restM}. */
    static PivotedGroup settled(
            double pivotXM,
            double pivotHM,
            List<Axle> axles,
            double jounceM,
            double reboundM,
            int valve,
            double restM) {
        return of(pivotXM, pivotHM, axles, new Stops(jounceM, reboundM), new Rule(valve, restM));
    }

    /** One axle fixed to the frame. */
    static PivotedGroup rigid(double pivotXM, double pivotHM, Axle axle) {
        double inf = Double.POSITIVE_INFINITY;
        return of(pivotXM, pivotHM, List.of(axle), new Stops(inf, inf), new Rule(0, 0));
    }

    private static PivotedGroup of(double pivotXM, double pivotHM, List<Axle> axles, Stops stops, Rule rule) {
        double[] x = axles.stream().mapToDouble(Axle::xM).toArray();
        double[] r = axles.stream().mapToDouble(Axle::radiusM).toArray();
        return new PivotedGroup(pivotXM, pivotHM, x, r, stops, rule, List.of());
    }

    /** The same group with wheels of boosters that lift it where the ground is too high. */
    PivotedGroup withPinned(List<PinnedWheels> wheels) {
        return with(new Rule(valve, rest), wheels);
    }

    /** The same group with its air shut in: the travels keep the sum {@code restM}. */
    PivotedGroup holding(double restM) {
        return with(new Rule(-1, restM), pinned);
    }

    private PivotedGroup with(Rule rule, List<PinnedWheels> wheels) {
        return new PivotedGroup(pivotXM, pivotHM, xM, radiusM, new Stops(jounceM, reboundM), rule, wheels);
    }

    public int size() {
        return xM.length;
    }

    /** Paths of its axles and then of the pinned wheels, which are boosters'. */
    public WheelPath[] rolledOn(WheelPaths ground, List<AxleKind> kinds) {
        List<WheelPath> rolled = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            rolled.add(ground.rolled(radiusM[i], kinds.get(i)));
        }
        for (PinnedWheels wheels : pinned) {
            for (double wheelRadiusM : wheels.radiusM) {
                rolled.add(ground.rolled(wheelRadiusM, AxleKind.BOOSTER));
            }
        }
        return rolled.toArray(WheelPath[]::new);
    }

    /** Whether the one axle is fixed to the frame. */
    public boolean isRigid() {
        return jounceM == Double.POSITIVE_INFINITY;
    }

    /** The travels that the ground asks of every axle with the unit at a given place and pitch; none when rigid. */
    double[] travelsAt(WheelPath[] rolled, double pivotX, double pivotZ, double pitch) {
        double[] travel = new double[size()];
        double[] heightThenSlope = new double[2];
        double c = Math.cos(pitch);
        double s = Math.sin(pitch);
        for (int i = 0; i < travel.length && !isRigid(); i++) {
            for (int k = 0; k < TRAVEL_STEPS; k++) {
                double up = radiusM[i] + travel[i] - pivotHM;
                rolled[i].locate(pivotX + (xM[i] - pivotXM) * c - up * s, heightThenSlope);
                double gap = pivotZ + (xM[i] - pivotXM) * s + up * c - heightThenSlope[0];
                travel[i] -= gap / (c + heightThenSlope[1] * s);
                if (Math.abs(gap) < 1e-12) {
                    break;
                }
            }
        }
        return travel;
    }

    /** How far a unit whose air is shut in, or that is rigid, is too low for its own wheels; negative: too high. */
    double excessM(PlacedUnit at, WheelPath[] rolled) {
        if (isRigid()) {
            return rolled[0].heightAt(at.wheelX[0]) - at.wheelZ[0];
        }
        double sum = 0;
        double largest = Double.NEGATIVE_INFINITY;
        for (double d : at.travel) {
            sum += Math.max(d, -reboundM);
            largest = Math.max(largest, d);
        }
        return Math.max(Math.min((sum - rest) / size(), largest + reboundM), largest - jounceM);
    }

    /**
     * The unit at rest with its pivot at a given place.
     *
     * @param rolled wheel paths in the order of {@link #rolledOn}
     * @param pivotX distance of the pivot, meters
     * @param pivotZ height of the pivot, meters
     * @param guessRad a pitch to start from; any finite value converges to the same answer
     * @return the unit; not {@link PlacedUnit#solved} when no posture was found, and then nothing may be concluded
     */
    public PlacedUnit place(WheelPath[] rolled, double pivotX, double pivotZ, double guessRad) {
        int n = xM.length;
        double[] travel = new double[n];
        double[] heightThenSlope = new double[2];
        double lo = Double.NEGATIVE_INFINITY;
        double hi = Double.POSITIVE_INFINITY;
        double step = 0.05;
        double pitch = guessRad;
        boolean solved = false;
        int reluctant = 0;
        for (int iteration = 0; iteration < 200; iteration++) {
            // Pitch and travels are improved together, one step each; only a reluctant case solves the travels
            // for every trial pitch.
            int travelSteps = iteration < TOGETHER ? 1 : TRAVEL_STEPS;
            double openGap = 0;
            double c = Math.cos(pitch);
            double s = Math.sin(pitch);
            double sum = 0;
            double sumRate = 0;
            double largest = Double.NEGATIVE_INFINITY;
            double largestRate = 0;
            for (int i = 0; i < n; i++) {
                double along = xM[i] - pivotXM;
                double d = travel[i];
                double x = 0;
                double z = 0;
                double q = 0;
                for (int k = 0; k < travelSteps; k++) {
                    double up = radiusM[i] + d - pivotHM;
                    x = pivotX + along * c - up * s;
                    z = pivotZ + along * s + up * c;
                    rolled[i].locate(x, heightThenSlope);
                    double gap = z - heightThenSlope[0];
                    q = heightThenSlope[1];
                    d -= gap / (c + q * s);
                    if (Math.abs(gap) < 1e-12 || k + 1 == travelSteps) {
                        openGap = Math.max(openGap, Math.abs(gap));
                        break;
                    }
                }
                travel[i] = d;
                double dRate = -((x - pivotX) + q * (z - pivotZ)) / (c + q * s);
                if (valve < 0 ? d > -reboundM : i == valve) {
                    sum += d;
                    sumRate += dRate;
                } else if (valve < 0) {
                    sum -= reboundM;
                }
                if (d > largest) {
                    largest = d;
                    largestRate = dRate;
                }
            }
            double excess = largest - jounceM;
            double rate = largestRate;
            double scale = valve < 0 ? n : 1;
            double rule = (sum - rest) / scale;
            double ruleRate = sumRate / scale;
            // With every axle at its rebound stop nothing holds the unit up: it comes down until one stands.
            if (largest + reboundM < rule) {
                rule = largest + reboundM;
                ruleRate = largestRate;
            }
            if (rule >= excess) {
                excess = rule;
                rate = ruleRate;
            }
            int first = n;
            for (int k = 0; k < pinned.size(); k++) {
                PinnedWheels wheels = pinned.get(k);
                if (wheels.size() == 1) {
                    double along = wheels.xM[0] - pivotXM;
                    double up = wheels.hM[0] - pivotHM;
                    double x = pivotX + along * c - up * s;
                    double z = pivotZ + along * s + up * c;
                    rolled[first].locate(x, heightThenSlope);
                    double depth = heightThenSlope[0] - z;
                    if (depth > excess) {
                        excess = depth;
                        rate = -((x - pivotX) + heightThenSlope[1] * (z - pivotZ));
                    }
                } else {
                    Excess lifted = wheels.excess(new Turned(pivotXM, pivotHM, pivotX, pivotZ, c, s), rolled, first);
                    openGap = Math.max(openGap, lifted.openM());
                    if (lifted.m() > excess) {
                        excess = lifted.m();
                        rate = lifted.perRad();
                    }
                }
                first += wheels.size();
            }
            boolean travelsSolved = openGap <= SOLVED_M;
            if (!travelsSolved && iteration >= TOGETHER && ++reluctant >= RELUCTANT) {
                break;
            }
            if (travelsSolved && Math.abs(excess) <= SOLVED_M) {
                solved = true;
                break;
            }
            if (travelsSolved && excess > 0) {
                hi = Math.min(hi, pitch);
            } else if (travelsSolved) {
                lo = Math.max(lo, pitch);
            }
            double next = rate > 0 ? pitch - excess / rate : Double.NaN;
            if (!(next > lo && next < hi) || Math.abs(next) > ON_END_RAD) {
                if (hi - lo < Double.POSITIVE_INFINITY) {
                    next = 0.5 * (lo + hi);
                } else {
                    next = excess > 0 ? pitch - step : pitch + step;
                    step *= 2;
                    if (Math.abs(next) > ON_END_RAD) {
                        break;
                    }
                }
            }
            if (travelsSolved && next == pitch || hi - lo < 1e-15) {
                // As near as numbers go.
                solved = travelsSolved;
                break;
            }
            pitch = next;
        }
        // An axle that is fixed to the frame keeps to it where the wheels of a booster behind lift the unit.
        return new PlacedUnit(this, rolled, pivotX, pivotZ, pitch, isRigid() ? new double[n] : travel, solved);
    }
}
