package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/**
 * What {@link FollowingBound} says of the terms that following leaves out of the Magnus series: the majorant y' = 2 + y
 * (1 − cot y), y(0) = 0, integrated by Hipparchus, less its first four terms. Those follow from the equation's own
 * series 1 + y + y²/3 + y⁴/45 + …: 1, 1/2, 5/18, 11/72, and 479/5400 for the fifth (Blanes, Casas, Oteo, Ros, J. Phys.
 * A 31, 1998, give the same for half the norm: 1, 1/4, 5/72, 11/576, 479/86400; from memory).
 */
class FollowingBoundTest {
    private static final double LARGEST = 0.5;

    @Test
    void theTermsBehindTheFourthTurnAUnitByLessThanTheFifthPower() {
        for (int i = 1; i <= 50; i++) {
            double x = LARGEST * i / 50;
            double y = majorant(x);
            double behind = y - (x + x * x / 2 + 5.0 / 18 * x * x * x + 11.0 / 72 * x * x * x * x);
            assertTrue(behind >= 0 && 2 * behind * Math.exp(2 * y) <= Math.pow(x, 5), "at " + x + ": " + behind);
            assertTrue(y <= x + x * x, "at " + x + ": " + y);
        }
    }

    @Test
    void theFifthTermIsTheEquationsOwn() {
        double x = 0.02;
        double behind = majorant(x) - (x + x * x / 2 + 5.0 / 18 * x * x * x + 11.0 / 72 * x * x * x * x);
        // The sixth term adds a share of about x.
        assertEquals(479.0 / 5400, behind / Math.pow(x, 5), 479.0 / 5400 * 2 * x);
    }

    private static double majorant(double x) {
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 0.01, 1e-15, 1e-15);
        OrdinaryDifferentialEquation equation = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 1;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                // y cot y = 1 − y²/3 − …: exactly 1 at the start.
                double cotangent = Math.abs(y[0]) < 1e-6 ? 1 : y[0] / Math.tan(y[0]);
                return new double[] {2 + y[0] - cotangent};
            }
        };
        return integrator.integrate(equation, new ODEState(0, new double[] {0}), x)
                .getPrimaryState()[0];
    }
}
