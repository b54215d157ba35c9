package org.cresthaul.turning;

import java.util.List;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.hipparchus.ode.sampling.ODEStateInterpolator;
import org.hipparchus.ode.sampling.ODEStepHandler;

/**
 * The same motion by a general integrator: Hipparchus' Dormand–Prince 8(5,3) on the headings alone, the lead path given
 * by its heading as a function of the station. It shares no formula with the steps it is there to check.
 */
final class ReferenceFollowing {
    private final List<TurningUnit> chain;
    private final LeadPath path;
    private final double tolerance;
    private final boolean reversing;

    ReferenceFollowing(List<TurningUnit> chain, LeadPath path, double tolerance) {
        this(chain, path, tolerance, false);
    }

    ReferenceFollowing(List<TurningUnit> chain, LeadPath path, double tolerance, boolean reversing) {
        this.chain = chain;
        this.path = path;
        this.tolerance = tolerance;
        this.reversing = reversing;
    }

    /** Headings at each of the stations, which rise from zero. */
    double[][] headingsAt(double[] stations, double[] start) {
        double[][] found = new double[stations.length][];
        double[] state = start.clone();
        int[] next = {0};
        while (next[0] < stations.length && stations[next[0]] <= 0) {
            found[next[0]++] = state.clone();
        }
        for (int piece = 0; piece < path.pieces(); piece++) {
            double from = path.stationM(piece);
            double to = path.stationM(piece + 1);
            if (to - from < 1e-9) {
                continue;
            }
            DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 50, tolerance, tolerance);
            integrator.addStepHandler(new ODEStepHandler() {
                @Override
                public void handleStep(ODEStateInterpolator step) {
                    double end = step.getCurrentState().getTime();
                    while (next[0] < stations.length && stations[next[0]] <= end + 1e-12) {
                        double at = Math.min(stations[next[0]], end);
                        found[next[0]++] = step.getInterpolatedState(at).getPrimaryState();
                    }
                }
            });
            ODEStateAndDerivative end = integrator.integrate(equation(piece), new ODEState(from, state), to);
            state = end.getPrimaryState();
        }
        while (next[0] < stations.length) {
            found[next[0]++] = state.clone();
        }
        return found;
    }

    private OrdinaryDifferentialEquation equation(int piece) {
        return new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return chain.size();
            }

            @Override
            public double[] computeDerivatives(double s, double[] heading) {
                double direction = path.headingAt(piece, s);
                double vx = Math.cos(direction);
                double vy = Math.sin(direction);
                double[] rate = new double[chain.size()];
                for (int k = 0; k < rate.length; k++) {
                    double c = Math.cos(heading[k]);
                    double n = Math.sin(heading[k]);
                    double along = vx * c + vy * n;
                    double across = vy * c - vx * n;
                    rate[k] = ReferenceRolling.turn(chain.get(k), along, across, ahead(s, heading, k) - heading[k]);
                    double backM = chain.get(k).hitchToAxleM() + chain.get(k).couplingBehindM();
                    double aside = across - backM * rate[k];
                    vx = along * c - aside * n;
                    vy = along * n + aside * c;
                }
                return rate;
            }

            /** The direction of what the unit hangs on: of the path itself for the first. */
            private double ahead(double s, double[] heading, int unit) {
                double direction = unit > 0 ? heading[unit - 1] : path.headingAt(piece, s) + (reversing ? Math.PI : 0);
                return heading[unit] + Math.IEEEremainder(direction - heading[unit], 2 * Math.PI);
            }
        };
    }
}
