package org.cresthaul.turning;

import java.util.List;

/**
 * How far the states of a chain can be off, kept up while it is followed. For one thread.
 *
 * <p>A unit whose hitch is off by ε has an error η = δθ − ε·n/L with η' = −(w·t)/L η + (ε × w)/L²: it decays as the
 * unit straightens out, and every step adds its own error and that of the hitch over its length. Axle and next coupling
 * are then off by no more than ε + L|η| and max(1, |e|/L) ε + |L + e| |η|. This is to first order: squares of
 * millimeters over lengths of units are left out.
 *
 * <p>A step of length h leaves out h⁵ [b₁ (b₁ b₃ + b₂²) / 240 L³ + b₁³ b₂ / 240 L⁴] of the third and the fourth term of
 * the Magnus series, of which the linear part of w leaves nothing to the fourth order, and h⁵ [b₂ b₃ / 120 + b₁ b₄ /
 * 160] / L² of the area, with bounds b₁ to b₄ on the hitch's velocity and its derivatives, which are carried from unit
 * to unit. What is left out of the exponent Ω turns the unit by at most e^{2‖Ω‖} times as much. All terms behind the
 * fourth together are bounded by the series' own equation Ω' = Σ Bₙ/n! ad(Ω)ⁿ A: with ‖A‖ ≤ a it gives ‖Ω‖ ≤ y(ah), y'
 * = 2 + y (1 − cot y), whose own terms bound those of Ω. With x = b₁h / 2L ≤ ½ that makes ‖Ω‖ ≤ x + x², and x⁵ for the
 * turn by all that is behind; in fact x⁴ times the less of x and b₂h² / 2L, as each term holds a commutator of two
 * velocities, which are at most b₂h apart.
 */
final class FollowingBound {
    /** What is left out of tanh x / x. */
    private static final double T8 = 62.0 / 2835;

    /** Every how many nodes η is looked at. */
    private static final int EVERY = 4;
    /** Steps of one bound differ by no more than this factor. */
    private static final double ALIKE = 4;

    private final double[] lengthM;
    private final double[] reachM;
    private final double[] stretch;
    private final double[] swing;
    /** η of every unit now, and its largest so far, radians. */
    private final double[] headingRad;

    private final double[] mostHeadingRad;
    /** Largest error of every hitch so far, meters; of the lead point first. */
    private final double[] hitchM;

    /** Largest step, curvature and its rate of what is laid. */
    private double h;

    private double curvature;
    private boolean followed = true;
    private double rate;
    /** Of the hitch that is next. */
    private double b1;

    private double b2;
    private double b3;
    private double b4;

    FollowingBound(List<TurningUnit> chain) {
        int units = chain.size();
        lengthM = new double[units];
        reachM = new double[units];
        stretch = new double[units];
        swing = new double[units];
        headingRad = new double[units];
        mostHeadingRad = new double[units];
        hitchM = new double[units];
        for (int k = 0; k < units; k++) {
            TurningUnit unit = chain.get(k);
            double beta = unit.couplingBehindM() / unit.hitchToAxleM();
            lengthM[k] = unit.hitchToAxleM();
            reachM[k] = Math.abs(unit.hitchToAxleM() + unit.couplingBehindM());
            stretch[k] = Math.max(1, Math.abs(beta));
            swing[k] = Math.abs(1 + beta);
        }
    }

    /** Whether steps of a length can go with what is laid: one bound is for all of it. */
    boolean holdsFor(double stepM) {
        return followed || stepM <= ALIKE * h && h <= ALIKE * stepM;
    }

    /** Some steps of a piece belong to what is laid. */
    void over(LeadPath path, int piece, double stepM) {
        if (followed) {
            h = 0;
            curvature = 0;
            rate = 0;
            followed = false;
        }
        h = Math.max(h, stepM);
        curvature = Math.max(curvature, path.mostCurvature(piece));
        rate = Math.max(rate, path.curvatureRate(piece));
        hitchM[0] = Math.max(hitchM[0], path.layingErrorM(piece, stepM));
    }

    /** What is laid is now followed. */
    void block() {
        double k = curvature;
        b1 = 1;
        b2 = k;
        b3 = rate + k * k;
        b4 = 3 * k * rate + k * k * k;
        followed = true;
    }

    /** What a step can add to a unit's η, radians. */
    private double stepRad(int k) {
        double l = lengthM[k];
        double turn = b1 * h / l;
        if (turn > 1) {
            return Double.POSITIVE_INFINITY;
        }
        double h5 = h * h * h * h * h;
        double third = h5 * b1 * (b1 * b3 + b2 * b2 + b1 * b1 * b2 / l) / (240 * l * l * l);
        double area = h5 * (b2 * b3 / 120 + b1 * b4 / 160) / (l * l);
        double x = 0.5 * turn;
        double series = Math.exp(2 * (x + x * x)) * (third + area) + x * x * x * x * Math.min(x, 0.5 * b2 * h * h / l);
        double left = 2 * T8 * Math.pow(x, 9);
        double pulled = turn * (1 + turn + turn * turn) * hitchM[k] / l;
        return series + left + pulled;
    }

    /**
     * Takes a unit's η over a block. A step scales it by the determinant of its matrix, which is at most one but for
     * α², over the growth of |U|²: so what every step adds sums up with |U|². Looked at every few nodes: between them
     * it can grow no faster than a unit folds.
     */
    void followed(int k, int steps, FollowingSteps all) {
        double[] u = all.us;
        double[] v = all.vs;
        double[] sum = all.sum;
        double stepRad = stepRad(k);
        if (Double.isInfinite(stepRad)) {
            headingRad[k] = stepRad;
            mostHeadingRad[k] = stepRad;
            return;
        }
        double start = headingRad[k] * (u[0] * u[0] + v[0] * v[0]) - stepRad * sum[0];
        double most = mostHeadingRad[k];
        double grown = Math.exp((EVERY - 1) * b1 * h / lengthM[k]);
        for (int i = EVERY; i < steps; i += EVERY) {
            most = Math.max(most, grown * (start + stepRad * sum[i]) / (u[i] * u[i] + v[i] * v[i]));
        }
        double end = (start + stepRad * sum[steps]) / (u[steps] * u[steps] + v[steps] * v[steps]);
        headingRad[k] = end;
        mostHeadingRad[k] = Math.max(most, grown * end);
    }

    /**
     * Goes on to the next unit, when the states of one are known.
     *
     * @param speed largest of its coupling at a node
     */
    void coupling(int k, double speed) {
        double l = lengthM[k];
        double t1 = b1 / l;
        double t2 = (b2 + t1 * b1) / l;
        double t3 = (b3 + 2 * t1 * b2 + t2 * b1 + t1 * t1 * b1) / l;
        double g = swing[k];
        double e = stretch[k];
        double s1 = g * t1;
        double s2 = g * t2 + 2 * g * t1 * t1;
        double s3 = g * t3 + 6 * g * t1 * t2 + 4 * g * t1 * t1 * t1;
        b4 = e * b4 + 3 * s1 * b3 + 3 * s2 * b2 + s3 * b1;
        b3 = e * b3 + 2 * s1 * b2 + s2 * b1;
        b2 = e * b2 + s1 * b1;
        b1 = Math.min(e * b1, speed + 0.5 * h * b2);
        hitchM[k + 1] = Math.max(hitchM[k + 1], e * hitchM[k] + reachM[k] * mostHeadingRad[k]);
    }

    /** No position so far is off by more, meters. */
    double positionM() {
        double worst = 0;
        for (int k = 0; k < lengthM.length; k++) {
            worst = Math.max(worst, hitchM[k] + lengthM[k] * mostHeadingRad[k]);
        }
        return worst;
    }
}
