package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.hipparchus.ode.sampling.ODEStateInterpolator;
import org.hipparchus.ode.sampling.ODEStepHandler;

/**
 * A whole passage by a general integrator: Hipparchus' Dormand-Prince 8(5,3) on the lead point's place and every unit's
 * heading together. Of the lead path only its start and its curvature are read; where it lies is integrated anew.
 * Before the path everything stands straight behind it, beyond the path the lead point goes straight on.
 *
 * <p>States lie {@link #STEP_M} apart from where the steering begins to where every unit is straight again; between
 * them cubic Hermite interpolation leaves less than a micrometer (a step to the fourth over 384, times a fourth
 * derivative).
 */
final class ReferencePassage {
    static final double STEP_M = 0.05;
    /** Bent by less than moves its farthest point by this, a unit is straight; meters. */
    static final double STRAIGHT_M = 0.0005;
    /** A chain that is still bent this far beyond its path is not followed on, meters. */
    private static final double FARTHEST_M = 900;

    private static final double TOLERANCE = 1e-11;

    final TurningCombination combination;
    private final int units;
    /** Where the steering begins and where everything is straight again: stations of the path, or beyond its end. */
    final double steersFromM;

    final double straightFromM;
    /** How far a point was off the straight where the given path ended, meters. */
    final double bentAtPathEndM;

    final double pathLengthM;
    private final double endHeadingRad;
    private final List<double[]> states = new ArrayList<>();
    private final List<double[][]> axles = new ArrayList<>();
    private final double[] reachM;

    /** The front wheels' largest angle to the tractor. */
    final double mostSteerRad;

    /** How fast the front wheels are turned at most, radians for each meter rolled; infinite at a kink of the path. */
    final double mostWheelRatePerM;

    private double wheelRatePerM;
    final double[] mostArticulationRad;

    ReferencePassage(TurningCombination combination, LeadPath path) {
        this.combination = combination;
        units = combination.chain().size();
        reachM = new double[units];
        for (int k = 0; k < units; k++) {
            double ahead = combination.chain().get(k).hitchToAxleM();
            reachM[k] = ahead;
            for (TurningCombination.Body b : combination.units().get(k).bodies()) {
                reachM[k] = Math.max(reachM[k], Math.max(ahead - b.rearM(), b.frontM()) + b.halfWidthM());
            }
        }
        pathLengthM = path.lengthM();
        int first = 0;
        while (first < path.pieces() && straight(path, first)) {
            first++;
        }
        int last = path.pieces() - 1;
        while (last >= first && straight(path, last)) {
            last--;
        }
        boolean kinked = false;
        for (int i = 0; i < path.pieces(); i++) {
            kinked |= path.kinkedAt(i);
        }
        double[] start = path.at(0);
        steersFromM = first < path.pieces() ? path.stationM(first) : path.lengthM();
        double[] state = new double[3 + units];
        state[0] = start[0] + steersFromM * Math.cos(start[2]);
        state[1] = start[1] + steersFromM * Math.sin(start[2]);
        for (int k = 2; k < state.length; k++) {
            state[k] = start[2];
        }
        states.add(state);
        for (int i = first; i <= last; i++) {
            state = follow(
                    state,
                    path.stationM(i),
                    path.stationM(i + 1),
                    path.curvatureAt(i, path.stationM(i)),
                    path.curvatureAt(i, path.stationM(i + 1)));
        }
        double at = last >= first ? path.stationM(last + 1) : steersFromM;
        double atPathEnd = at >= path.lengthM() ? bentM(state) : -1;
        while (bentM(state) > STRAIGHT_M && at < path.lengthM() + FARTHEST_M) {
            // The end of the path is met exactly, to tell how bent the chain was there.
            double on = at < path.lengthM() ? Math.min(2, path.lengthM() - at) : 2;
            state = follow(state, at, at + on, 0, 0);
            at += on;
            if (atPathEnd < 0 && at >= path.lengthM() - 1e-9) {
                atPathEnd = bentM(state);
            }
        }
        bentAtPathEndM = Math.max(0, atPathEnd);
        straightFromM = at;
        // The last state kept lies a little before the end, where the path may still turn.
        endHeadingRad = state[2];
        for (int k = 0; k < units; k++) {
            axles.add(new double[states.size()][]);
        }
        mostWheelRatePerM = kinked ? Double.POSITIVE_INFINITY : wheelRatePerM;
        double steer = 0;
        mostArticulationRad = new double[units - 1];
        for (double[] s : states) {
            steer = Math.max(steer, Math.abs(s[2] - s[3]));
            for (int k = 0; k + 1 < units; k++) {
                mostArticulationRad[k] = Math.max(mostArticulationRad[k], Math.abs(s[3 + k] - s[4 + k]));
            }
        }
        mostSteerRad = steer;
    }

    private static boolean straight(LeadPath path, int piece) {
        return path.mostCurvature(piece) == 0 && !path.kinkedAt(piece);
    }

    /** How far the bends that are left can hold a point off the straight, meters. */
    private double bentM(double[] state) {
        double sum = 0;
        for (int k = 0; k < units; k++) {
            sum += Math.abs(state[3 + k] - state[2]) * reachM[k];
        }
        return sum;
    }

    /** Goes on from one station to another while the curvature changes evenly; keeps the states between. */
    private double[] follow(double[] state, double from, double to, double fromPerM, double toPerM) {
        if (to - from < 1e-9) {
            return state;
        }
        double rate = (toPerM - fromPerM) / (to - from);
        noteWheels(state, fromPerM);
        OrdinaryDifferentialEquation motion = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 3 + units;
            }

            @Override
            public double[] computeDerivatives(double s, double[] y) {
                return derivative(y, fromPerM + rate * (s - from));
            }
        };
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 20, TOLERANCE, TOLERANCE);
        integrator.addStepHandler(new ODEStepHandler() {
            @Override
            public void handleStep(ODEStateInterpolator step) {
                double end = step.getCurrentState().getTime();
                double next = steersFromM + states.size() * STEP_M;
                while (next <= end) {
                    double[] at = step.getInterpolatedState(next).getPrimaryState();
                    noteWheels(at, fromPerM + rate * (next - from));
                    states.add(at);
                    next = steersFromM + states.size() * STEP_M;
                }
            }
        });
        ODEStateAndDerivative end = integrator.integrate(motion, new ODEState(from, state), to);
        noteWheels(end.getPrimaryState(), toPerM);
        return end.getPrimaryState();
    }

    /** Their angle δ is between path and tractor; the path turns by δ' + sin δ / L. */
    private void noteWheels(double[] state, double curvaturePerM) {
        double heldPerM =
                Math.sin(state[2] - state[3]) / combination.chain().get(0).hitchToAxleM();
        wheelRatePerM = Math.max(wheelRatePerM, Math.abs(curvaturePerM - heldPerM));
    }

    /** Rolling without side slip at each effective axle: a unit's heading turns by what its hitch moves across it. */
    private double[] derivative(double[] y, double curvaturePerM) {
        double[] rate = new double[3 + units];
        double vx = Math.cos(y[2]);
        double vy = Math.sin(y[2]);
        rate[0] = vx;
        rate[1] = vy;
        rate[2] = curvaturePerM;
        for (int k = 0; k < units; k++) {
            double c = Math.cos(y[3 + k]);
            double n = Math.sin(y[3 + k]);
            double along = vx * c + vy * n;
            double bend = k == 0 ? 0 : Math.IEEEremainder(y[2 + k] - y[3 + k], 2 * Math.PI);
            double across = vy * c - vx * n;
            double turn = ReferenceRolling.turn(combination.chain().get(k), along, across, bend);
            double backM = combination.chain().get(k).hitchToAxleM()
                    + combination.chain().get(k).couplingBehindM();
            double aside = across - backM * turn;
            rate[3 + k] = turn;
            vx = along * c - aside * n;
            vy = along * n + aside * c;
        }
        return rate;
    }

    /** Number of states kept; the first is at {@link #steersFromM}, the next each a step on. */
    int states() {
        return states.size();
    }

    double lastStateM() {
        return steersFromM + (states.size() - 1) * STEP_M;
    }

    double endHeadingRad() {
        return endHeadingRad;
    }

    /** Place of the lead point and headings (x, y, direction, units) at any station, before and beyond the path too. */
    double[] at(double stationM) {
        double along = stationM - steersFromM;
        int i = (int) Math.floor(along / STEP_M);
        if (along <= 0) {
            return moved(states.get(0), along);
        }
        if (i >= states.size() - 1) {
            return moved(states.get(states.size() - 1), stationM - lastStateM());
        }
        double t = along / STEP_M - i;
        double[] a = states.get(i);
        double[] b = states.get(i + 1);
        double[] found = new double[a.length];
        double[] da = derivative(a, 0);
        double[] db = derivative(b, 0);
        for (int k = 0; k < found.length; k++) {
            if (k == 2) {
                found[k] = a[k] + t * (b[k] - a[k]);
                continue;
            }
            double t2 = t * t;
            double t3 = t2 * t;
            found[k] = (2 * t3 - 3 * t2 + 1) * a[k]
                    + (t3 - 2 * t2 + t) * STEP_M * da[k]
                    + (3 * t2 - 2 * t3) * b[k]
                    + (t3 - t2) * STEP_M * db[k];
        }
        return found;
    }

    private static double[] moved(double[] state, double byM) {
        double[] moved = state.clone();
        moved[0] += byM * Math.cos(state[2]);
        moved[1] += byM * Math.sin(state[2]);
        return moved;
    }

    /** The effective axle of a unit in one of the states kept. */
    double[] axleOfState(int state, int unit) {
        double[][] known = axles.get(unit);
        if (known[state] == null) {
            known[state] = axle(states.get(state), unit);
        }
        return known[state];
    }

    /** The effective axle of a unit in a state: x, y, cosine and sine of its heading. */
    double[] axle(double[] state, int unit) {
        double x = state[0];
        double y = state[1];
        for (int k = 0; ; k++) {
            double c = Math.cos(state[3 + k]);
            double s = Math.sin(state[3 + k]);
            double back = combination.chain().get(k).hitchToAxleM();
            x -= back * c;
            y -= back * s;
            if (k == unit) {
                return new double[] {x, y, c, s};
            }
            double on = combination.chain().get(k).couplingBehindM();
            x -= on * c;
            y -= on * s;
        }
    }
}
