package org.cresthaul.turning;

import java.util.Arrays;
import java.util.List;
import org.cresthaul.geometry.Finite;

/**
 * How a chain of units follows a lead path at low speed, without side slip at its effective axles: θ' = sin(φ − θ) v / L.
 *
 * <p>With the half angle's direction U = (cos θ/2, sin θ/2) and the hitch's velocity w that is linear: U' = A(w) U / 2L with
 * A = [[wx, wy], [wy, −wx]], up to a length of U that means nothing. So over any hitch path the heading changes by one
 * 2 × 2 matrix, whatever it was before. The matrix of one step is the exponential of A(D) / 2L + α [[0, −1], [1, 0]]
 * of the hitch's chord D, and α = S / 2L² of the signed area S between hitch path and chord: the Magnus series
 * (W. Magnus, Comm. Pure Appl. Math. 7, 1954) up to its second term, hence of fourth order. On a straight hitch segment
 * α = 0 and the step is exact: tan(ψ/2) shrinks by e^{−Δs/L}, the tractrix. Nothing here divides by a speed or a
 * cosine: reversing, jackknifed and overturned units are steps like any other.
 *
 * <p>Unit after unit goes over many steps at once: all of a step but two products is then free of what was before it.
 * Steps are no longer than wanted for states, and shorter where {@link FollowingBound} asks for it.
 */
public final class Following {
    /** States are within this of the exact ones, metres, unless {@link Track#errorBoundM()} says otherwise. */
    public static final double TOLERANCE_M = 0.002;
    /** How far apart states are by default, metres of lead path. */
    public static final double STATE_M = 0.25;

    /** Steps that are gone over at once: few enough for the nearest memory, and for no length of U to overflow. */
    private static final int BLOCK = 256;

    /** tanh x / x in x². */
    private static final double T2 = -1.0 / 3;

    private static final double T4 = 2.0 / 15;
    private static final double T6 = -17.0 / 315;
    private static final double LONGEST_M = 0.5;
    private static final double LONGEST_OF_UNIT = 0.4;
    private static final int MOST_HALVINGS = 6;
    private static final int MOST_STATES = 2_000_000;

    private Following() {}

    /** Follows a path from its start, every unit straight behind, with states every {@link #STATE_M}. */
    public static Track along(List<TurningUnit> chain, LeadPath path) {
        return along(chain, path, STATE_M);
    }

    /** The same with states at most so far apart, metres. */
    public static Track along(List<TurningUnit> chain, LeadPath path, double stateM) {
        double[] headings = new double[chain.size()];
        Arrays.fill(headings, path.at(0)[2]);
        return along(chain, path, headings, stateM, false);
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
        double longest = LONGEST_M;
        for (TurningUnit unit : chain) {
            longest = Math.min(longest, LONGEST_OF_UNIT * unit.hitchToAxleM());
        }
        int parts = (int) Math.ceil(stateM / longest);
        for (int halvings = 0; ; halvings++) {
            Run run = new Run(chain, path, headingsRad, stateM, parts << halvings, reversing);
            run.go();
            if (run.track.errorBoundM() <= TOLERANCE_M || halvings == MOST_HALVINGS) {
                return run.track;
            }
        }
    }

    private static int states(LeadPath path, int piece, double stateM) {
        double span = path.stationM(piece + 1) - path.stationM(piece);
        return Math.max(1, (int) Math.ceil(span / stateM - 1e-9));
    }

    private static final class Run {
        private final LeadPath path;
        private final double stateM;
        /** Steps from one state to the next. */
        private final int parts;

        private final int block;
        private final Track track;
        private final FollowingBound bound;
        private final double[] halfLength;
        private final double[] u;
        private final double[] v;
        private final double[] arm;
        private final double[] swerve;
        /** The hitch's path, of one unit after the other, and the cosine and sine of the unit behind it. */
        private final LeadPath.Nodes hitch;

        private final double[] c;
        private final double[] s;
        /** Of every step: its length squared over six, its matrix less one, and its determinant. */
        private final double[] sixth;

        private final double[] m00;
        private final double[] m01;
        private final double[] m10;
        private final double[] det;

        Run(List<TurningUnit> chain, LeadPath path, double[] headingsRad, double stateM, int parts, boolean reversing) {
            this.path = path;
            this.stateM = stateM;
            this.parts = parts;
            if (path.lengthM() / stateM + path.pieces() > MOST_STATES) {
                throw new IllegalArgumentException("a path of " + path.lengthM() + " m has too many states");
            }
            int states = 1;
            for (int piece = 0; piece < path.pieces(); piece++) {
                states += states(path, piece, stateM);
            }
            track = new Track(chain, states, reversing);
            bound = new FollowingBound(chain);
            block = Math.max(parts, Math.min(BLOCK / parts, states) * parts);
            int units = chain.size();
            halfLength = new double[units];
            u = new double[units];
            v = new double[units];
            arm = new double[units];
            swerve = new double[units];
            for (int k = 0; k < units; k++) {
                TurningUnit unit = chain.get(k);
                halfLength[k] = 0.5 / unit.hitchToAxleM();
                arm[k] = unit.hitchToAxleM() + unit.couplingBehindM();
                swerve[k] = unit.couplingBehindM() / unit.hitchToAxleM();
                u[k] = Math.cos(0.5 * headingsRad[k]);
                v[k] = Math.sin(0.5 * headingsRad[k]);
            }
            hitch = new LeadPath.Nodes(block + 1);
            c = new double[block + 1];
            s = new double[block + 1];
            sixth = new double[block];
            m00 = new double[block];
            m01 = new double[block];
            m10 = new double[block];
            det = new double[block];
        }

        /** Lays block after block; a kink ends one, as the hitch's velocity jumps there. */
        void go() {
            int steps = 0;
            int state = 0;
            path.start(0, hitch, 0);
            for (int piece = 0; piece < path.pieces(); piece++) {
                if (path.kinkedAt(piece)) {
                    follow(steps, state);
                    state += steps / parts;
                    steps = 0;
                    path.start(piece, hitch, 0);
                }
                int states = states(path, piece, stateM);
                double start = path.stationM(piece);
                double every = (path.stationM(piece + 1) - start) / states;
                for (int i = 1, at = state + steps / parts; i <= states; i++) {
                    track.station[at + i] = start + i * every;
                }
                double h = every / parts;
                for (int done = 0; done < states * parts; ) {
                    if (steps == block) {
                        follow(steps, state);
                        state += steps / parts;
                        steps = 0;
                    }
                    int now = Math.min(states * parts - done, block - steps);
                    bound.over(path, piece, h);
                    path.lay(piece, done * h, h, now, hitch, steps);
                    Arrays.fill(sixth, steps, steps + now, h * h / 6);
                    steps += now;
                    done += now;
                }
                path.land(piece, hitch, steps);
            }
            follow(steps, state);
            track.bound(bound.positionM());
        }

        /** Takes every unit over the steps that are laid, and leaves the hitch where the lead point is behind them. */
        private void follow(int steps, int state) {
            int last = halfLength.length - 1;
            double x = hitch.x[steps];
            double y = hitch.y[steps];
            double cos = hitch.c[steps];
            double sin = hitch.s[steps];
            keep(hitch.x, track.lead.x, steps, state);
            keep(hitch.y, track.lead.y, steps, state);
            keep(hitch.c, track.lead.c, steps, state);
            keep(hitch.s, track.lead.s, steps, state);
            bound.block();
            for (int k = 0; k <= last; k++) {
                double mostQ = matrices(steps, halfLength[k], hitch, sixth, m00, m01, m10, det);
                turn(k, steps, bound.stepRad(k, mostQ));
                keep(c, track.cosine[k], steps, state);
                keep(s, track.sine[k], steps, state);
                if (k < last) {
                    bound.coupling(k, Math.sqrt(move(steps, arm[k], swerve[k], hitch, c, s)));
                }
            }
            hitch.x[0] = x;
            hitch.y[0] = y;
            hitch.c[0] = cos;
            hitch.s[0] = sin;
        }

        private void keep(double[] from, double[] to, int steps, int state) {
            if (parts == 1) {
                System.arraycopy(from, 0, to, state, steps + 1);
                return;
            }
            for (int i = 0, at = state; i <= steps; i += parts, at++) {
                to[at] = from[i];
            }
        }

        /** The matrix of every step, one taken off. Returns the largest square of what is put into tanh x / x. */
        private static double matrices(int steps, double half, LeadPath.Nodes hitch, double[] sixth, double[] m00,
                double[] m01, double[] m10, double[] det) {
            double[] x = hitch.x;
            double[] y = hitch.y;
            double[] wx = hitch.c;
            double[] wy = hitch.s;
            double square = half * half;
            double most = 0;
            for (int i = 0; i < steps; i++) {
                // For a cubic the area is that of its end tangents to the fifth order.
                double alpha = sixth[i] * square * (wx[i] * wy[i + 1] - wy[i] * wx[i + 1]);
                double px = half * (x[i + 1] - x[i]);
                double py = half * (y[i + 1] - y[i]);
                double q = px * px + py * py - alpha * alpha;
                double tau = 1 + q * (T2 + q * (T4 + q * T6));
                m00[i] = tau * px;
                m01[i] = tau * (py - alpha);
                m10[i] = tau * (py + alpha);
                det[i] = 1 - tau * tau * q;
                if (q > most) {
                    most = q;
                }
            }
            return most;
        }

        /**
         * Turns a unit by its matrices. A small change of the heading is scaled by the determinant over the growth of |U|² in
         * every step, which tells how errors decay; in reverse they grow.
         */
        private void turn(int k, int steps, double stepRad) {
            double[] c = this.c;
            double[] s = this.s;
            double[] m00 = this.m00;
            double[] m01 = this.m01;
            double[] m10 = this.m10;
            double[] det = this.det;
            double u = this.u[k];
            double v = this.v[k];
            double norm = u * u + v * v;
            c[0] = (u * u - v * v) / norm;
            s[0] = 2 * u * v / norm;
            double off = bound.headingRad[k];
            double most = bound.mostHeadingRad[k];
            for (int i = 0; i < steps; i++) {
                double uu = u + (m00[i] * u + m01[i] * v);
                double vv = v + (m10[i] * u - m00[i] * v);
                u = uu;
                v = vv;
                double u2 = u * u;
                double v2 = v * v;
                double size = u2 + v2;
                double inverse = 1 / size;
                c[i + 1] = (u2 - v2) * inverse;
                s[i + 1] = 2 * u * v * inverse;
                off = off * (det[i] * norm * inverse) + stepRad;
                norm = size;
                if (off > most) {
                    most = off;
                }
            }
            double scale = 1 / Math.sqrt(norm);
            this.u[k] = u * scale;
            this.v[k] = v * scale;
            bound.headingRad[k] = off;
            bound.mostHeadingRad[k] = most;
        }

        /** From a unit's hitch to that of the next. Returns the largest square of the next hitch's speed at a node. */
        private static double move(int steps, double arm, double swerve, LeadPath.Nodes hitch, double[] c, double[] s) {
            double[] x = hitch.x;
            double[] y = hitch.y;
            double[] wx = hitch.c;
            double[] wy = hitch.s;
            double most = 0;
            for (int i = 0; i <= steps; i++) {
                double cos = c[i];
                double sin = s[i];
                x[i] -= arm * cos;
                y[i] -= arm * sin;
                double along = wx[i] * cos + wy[i] * sin;
                double across = swerve * (wy[i] * cos - wx[i] * sin);
                double square = along * along + across * across;
                wx[i] = along * cos + across * sin;
                wy[i] = along * sin - across * cos;
                if (square > most) {
                    most = square;
                }
            }
            return most;
        }
    }
}
