package org.cresthaul.turning;

import java.util.List;
import org.cresthaul.geometry.Finite;

/**
 * How a chain of units follows a lead path at low speed, without side slip at its effective axles: θ' = sin(φ − θ) v / L.
 *
 * <p>With z = e^{iθ} and the hitch's velocity w = v e^{iφ} that is z' = (w − w̄ z²) / 2L, so over any hitch path the
 * heading changes by a Möbius map of the unit circle. The map of one step is the exponential of [[iα, d], [d̄, −iα]]
 * with d = D / 2L of the hitch's chord D, and α = S / 2L² of the signed area S between hitch path and chord: the Magnus
 * series (W. Magnus, Comm. Pure Appl. Math. 7, 1954) up to its second term, hence of fourth order. On a straight hitch
 * segment α = 0 and the step is exact: tan(ψ/2) shrinks by e^{−Δs/L}, the tractrix. Nothing here divides by a speed or
 * a cosine: reversing, jackknifed and overturned units are steps like any other.
 *
 * <p>Steps are no longer than wanted for states, and shorter where the bound on the error asks for it. The bound is that
 * of the series' third term with the rest of the series (h/2L ≤ 1/8 makes that under half as much again), and of the area under the
 * cubic through a step's ends, both from bounds on the hitch path's derivatives that are carried from unit to unit;
 * errors decay or grow by the linearised equation, and a hitch that is off by ε turns its unit by at most 2ε/L.
 */
public final class Following {
    /** States are within this of the exact ones, metres, unless {@link Track#errorBoundM()} says otherwise. */
    public static final double TOLERANCE_M = 0.002;
    /** How far apart states are by default, metres of lead path. */
    public static final double STATE_M = 0.25;

    /** Coefficients of cosh and of sinh x / x in x². */
    private static final double C2 = 1.0 / 2;

    private static final double C4 = 1.0 / 24;
    private static final double C6 = 1.0 / 720;
    private static final double C8 = 1.0 / 40_320;
    private static final double S3 = 1.0 / 6;
    private static final double S5 = 1.0 / 120;
    private static final double S7 = 1.0 / 5040;
    private static final double S9 = 1.0 / 362_880;
    private static final double SIXTIETH = 1.0 / 60;
    private static final int MOST_HALVINGS = 6;
    private static final int MOST_STATES = 2_000_000;

    private Following() {}

    /** Follows a path from its start, every unit straight behind, with states every {@link #STATE_M}. */
    public static Track along(List<TurningUnit> chain, LeadPath path) {
        double heading = path.at(0)[2];
        double[] headings = new double[chain.size()];
        java.util.Arrays.fill(headings, heading);
        return along(chain, path, headings, STATE_M, false);
    }

    /**
     * Follows a path.
     *
     * @param headingsRad of every unit at the start
     * @param stateM farthest apart two states may be, metres
     * @param reversing the lead point is pushed back along the path: only what counts as straight steering differs
     */
    public static Track along(
            List<TurningUnit> chain, LeadPath path, double[] headingsRad, double stateM, boolean reversing) {
        if (chain.isEmpty() || headingsRad.length != chain.size()) {
            throw new IllegalArgumentException("as many headings as units, at least one: " + headingsRad.length);
        }
        Finite.requireAtLeast("stateM", 1e-4, stateM);
        for (int halvings = 0; ; halvings++) {
            Run run = new Run(chain, path, headingsRad, stateM, 1 << halvings, reversing);
            run.go();
            if (run.track.errorBoundM() <= TOLERANCE_M || halvings == MOST_HALVINGS) {
                return run.track;
            }
        }
    }

    private static final class Run {
        private final int units;
        private final double[] length;
        private final double[] behind;
        private final double[] halfInverse;
        /** From hitch to next coupling, and that beyond the axle in parts of the unit. */
        private final double[] reach;

        private final double[] swerve;
        private final double[] stretch;
        private final double[] swing;
        private final LeadPath path;
        private final double stateM;
        private final int refine;
        private final Track track;
        private final double[] c;
        private final double[] s;
        /** Bounds on a hitch path's first derivative and, per step cubed and so on, on the error of a step. */
        private final double[] localRad;

        private final double[] headingBound;
        private final double[] from = new double[4];
        private final double[] to = new double[4];
        private double shortest = Double.POSITIVE_INFINITY;

        Run(List<TurningUnit> chain, LeadPath path, double[] headingsRad, double stateM, int refine, boolean reversing) {
            units = chain.size();
            length = new double[units];
            behind = new double[units];
            halfInverse = new double[units];
            reach = new double[units];
            swerve = new double[units];
            stretch = new double[units];
            swing = new double[units];
            localRad = new double[units];
            headingBound = new double[units];
            c = new double[units];
            s = new double[units];
            for (int k = 0; k < units; k++) {
                length[k] = chain.get(k).hitchToAxleM();
                behind[k] = k + 1 < units ? chain.get(k).couplingBehindM() : 0;
                halfInverse[k] = 0.5 / length[k];
                double beta = behind[k] / length[k];
                reach[k] = length[k] + behind[k];
                swerve[k] = beta;
                stretch[k] = Math.max(1, Math.abs(beta));
                swing[k] = Math.abs(1 + beta);
                shortest = Math.min(shortest, length[k]);
                c[k] = Math.cos(headingsRad[k]);
                s[k] = Math.sin(headingsRad[k]);
            }
            this.path = path;
            this.stateM = stateM;
            this.refine = refine;
            double states = path.lengthM() / stateM + path.pieces() + 2;
            if (states > MOST_STATES) {
                throw new IllegalArgumentException("a path of " + path.lengthM() + " m has too many states");
            }
            track = new Track(chain, (int) states + 1, reversing);
        }

        void go() {
            path.locate(0, 0, from);
            track.add(0, from, c, s);
            for (int piece = 0; piece < path.pieces(); piece++) {
                double start = path.stationM(piece);
                double span = path.stationM(piece + 1) - start;
                int states = (int) Math.ceil(span / stateM - 1e-9);
                double every = span / Math.max(1, states);
                int parts = Math.max(refine, (int) Math.ceil(every / Math.min(0.25 * shortest, 0.5)));
                double h = every / parts;
                boundStep(piece, h);
                path.locate(piece, start, from);
                for (int i = 1; i <= states; i++) {
                    for (int j = 1; j <= parts; j++) {
                        double at = start + (i - 1) * every + j * h;
                        path.advance(piece, at, h, from, to);
                        step(h);
                        System.arraycopy(to, 0, from, 0, 4);
                    }
                    track.add(start + i * every, to, c, s);
                }
            }
            double hitchM = 0;
            for (int k = 0; k < units; k++) {
                double heading = headingBound[k] + 2 * hitchM / length[k];
                hitchM += (length[k] + Math.abs(behind[k])) * heading;
            }
            track.bound(hitchM);
        }

        /**
         * Bounds of the derivatives of every hitch path in a piece, from the lead path's on; with them how far a step's
         * heading can be off.
         */
        private void boundStep(int piece, double h) {
            double k = path.mostCurvature(piece);
            double rate = path.curvatureRate(piece);
            double b1 = 1;
            double b2 = k;
            double b3 = rate + k * k;
            double b4 = 3 * k * rate + k * k * k;
            for (int u = 0; u < units; u++) {
                double l = length[u];
                double series = 1.5 * b1 * b1 * b2 * h * h * h * h / (18 * l * l * l);
                double area = b1 * b4 * h * h * h * h * h / (384 * l * l);
                localRad[u] = series + area;
                double t1 = b1 / l;
                double t2 = (b2 + t1 * b1) / l;
                double t3 = (b3 + 2 * t1 * b2 + t2 * b1 + t1 * t1 * b1) / l;
                double g = swing[u];
                double e = stretch[u];
                double s1 = g * t1;
                double s2 = g * t2 + 2 * g * t1 * t1;
                double s3 = g * t3 + 6 * g * t1 * t2 + 4 * g * t1 * t1 * t1;
                double n4 = e * b4 + 3 * s1 * b3 + 3 * s2 * b2 + s3 * b1;
                double n3 = e * b3 + 2 * s1 * b2 + s2 * b1;
                double n2 = e * b2 + s1 * b1;
                b1 = e * b1;
                b2 = n2;
                b3 = n3;
                b4 = n4;
            }
        }

        private void step(double h) {
            double dx = to[0] - from[0];
            double dy = to[1] - from[1];
            double m0x = h * from[2];
            double m0y = h * from[3];
            double m1x = h * to[2];
            double m1y = h * to[3];
            // Local names for the arrays: the loop below is what following costs.
            double[] c = this.c;
            double[] s = this.s;
            double[] halfInverse = this.halfInverse;
            double[] headingBound = this.headingBound;
            double[] localRad = this.localRad;
            double[] reach = this.reach;
            double[] swerve = this.swerve;
            int last = units - 1;
            for (int k = 0; k <= last; k++) {
                double c0 = c[k];
                double s0 = s[k];
                double area = 0.1 * (m0x * dy - m0y * dx + dx * m1y - dy * m1x) - SIXTIETH * (m0x * m1y - m0y * m1x);
                double half = halfInverse[k];
                double alpha = 2 * area * half * half;
                double px = dx * half;
                double py = dy * half;
                double q = px * px + py * py - alpha * alpha;
                // cosh √q and sinh √q / √q; q ≤ 1/64, so that the terms left out are below rounding.
                double ch = 1 + q * (C2 + q * (C4 + q * (C6 + q * C8)));
                double sh = 1 + q * (S3 + q * (S5 + q * (S7 + q * S9)));
                double ai = alpha * sh;
                px *= sh;
                py *= sh;
                // z → (a z + b) / (b̄ z + ā), a = ch + i ai, b = p; the denominator is the numerator's conjugate times z.
                double nx = ch * c0 - ai * s0 + px;
                double ny = ch * s0 + ai * c0 + py;
                double ex = px * c0 + py * s0 + ch;
                double ey = px * s0 - py * c0 - ai;
                double norm = ex * ex + ey * ey;
                double inverse = 1 / norm;
                // |z| stays 1 to rounding: numerator and denominator have the same size.
                double c1 = (nx * ex + ny * ey) * inverse;
                double s1 = (ny * ex - nx * ey) * inverse;
                double decay = (dx * (c0 + c1) + dy * (s0 + s1)) * half;
                // At least e^(−decay), either way, for steps of at most a quarter of the unit.
                headingBound[k] = headingBound[k] * (1 - decay + 2 * decay * decay) + localRad[k];
                c[k] = c1;
                s[k] = s1;
                if (k < last) {
                    double arm = reach[k];
                    double beta = swerve[k];
                    dx -= arm * (c1 - c0);
                    dy -= arm * (s1 - s0);
                    double along0 = m0x * c0 + m0y * s0;
                    double across0 = beta * (m0y * c0 - m0x * s0);
                    double along1 = m1x * c1 + m1y * s1;
                    double across1 = beta * (m1y * c1 - m1x * s1);
                    m0x = along0 * c0 + across0 * s0;
                    m0y = along0 * s0 - across0 * c0;
                    m1x = along1 * c1 + across1 * s1;
                    m1y = along1 * s1 - across1 * c1;
                }
            }
        }
    }
}
