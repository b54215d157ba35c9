package org.cresthaul.turning;

/**
 * The steps of one unit after the other over one block of the lead path, and the memory for it: one for each thread,
 * used again and again, as following asks for more of it than for arithmetic. Nodes are the ends of steps.
 */
final class FollowingSteps {
    /** Most steps of a block: few enough for the nearest memory, and for no length of U to overflow. */
    static final int BLOCK = 128;

    private static final ThreadLocal<FollowingSteps> OF_THREAD = ThreadLocal.withInitial(FollowingSteps::new);

    /** tanh x / x in x². */
    private static final double T2 = -1.0 / 3;

    private static final double T4 = 2.0 / 15;
    private static final double T6 = -17.0 / 315;

    /** The hitch's path and velocity, first of the lead point, then of one unit after the other. */
    final PathNodes hitch = new PathNodes(BLOCK + 1);

    /** Of every step, its length squared over six. */
    final double[] sixth = new double[BLOCK];
    /** Cosine and sine of the unit at every node. */
    final double[] c = new double[BLOCK + 1];

    final double[] s = new double[BLOCK + 1];
    /** U at every node, and the sum of its squares up to there. */
    final double[] us = new double[BLOCK + 1];

    final double[] vs = new double[BLOCK + 1];
    final double[] sum = new double[BLOCK + 1];
    /** U of the unit now. */
    double u;

    double v;
    /** Of every step: half the chord over the unit's length, the α, and the matrix. */
    private final double[] px = new double[BLOCK];

    private final double[] py = new double[BLOCK];
    private final double[] alpha = new double[BLOCK];
    private final double[] tau = new double[BLOCK];
    private final double[] m00 = new double[BLOCK];
    private final double[] m01 = new double[BLOCK];
    private final double[] m10 = new double[BLOCK];
    private final double[] m11 = new double[BLOCK];

    private FollowingSteps() {}

    static FollowingSteps ofThread() {
        return OF_THREAD.get();
    }

    /** Takes a unit from node to node, its {@code half} being 1 / 2L. */
    void follow(int steps, double half) {
        matrices(steps, half);
        turn(steps);
        headings(steps);
    }

    /**
     * The matrix of every step, by the node at its start. Short loops, which the machine takes several steps at a time.
     */
    private void matrices(int steps, double half) {
        double[] x = hitch.x;
        double[] y = hitch.y;
        double[] wx = hitch.c;
        double[] wy = hitch.s;
        double[] px = this.px;
        double[] py = this.py;
        double[] alpha = this.alpha;
        double[] tau = this.tau;
        double square = half * half;
        for (int i = 0; i < steps; i++) {
            px[i] = half * (x[i + 1] - x[i]);
            py[i] = half * (y[i + 1] - y[i]);
        }
        // The area of a cubic is that of its end tangents, to the fifth order.
        for (int i = 0; i < steps; i++) {
            alpha[i] = square * (wx[i] * wy[i + 1] - wy[i] * wx[i + 1]);
        }
        for (int i = 0; i < steps; i++) {
            alpha[i] = alpha[i] * sixth[i];
        }
        for (int i = 0; i < steps; i++) {
            double q = px[i] * px[i] + py[i] * py[i] - alpha[i] * alpha[i];
            tau[i] = 1 + q * (T2 + q * (T4 + q * T6));
        }
        double[] m00 = this.m00;
        double[] m01 = this.m01;
        double[] m10 = this.m10;
        double[] m11 = this.m11;
        for (int i = 0; i < steps; i++) {
            m00[i] = 1 + tau[i] * px[i];
            m11[i] = 1 - tau[i] * px[i];
        }
        for (int i = 0; i < steps; i++) {
            m01[i] = tau[i] * (py[i] - alpha[i]);
            m10[i] = tau[i] * (py[i] + alpha[i]);
        }
    }

    /** The one thing that has to be done step after step. */
    private void turn(int steps) {
        double[] m00 = this.m00;
        double[] m01 = this.m01;
        double[] m10 = this.m10;
        double[] m11 = this.m11;
        double[] us = this.us;
        double[] vs = this.vs;
        double[] sum = this.sum;
        double u = this.u;
        double v = this.v;
        double sizes = u * u + v * v;
        us[0] = u;
        vs[0] = v;
        sum[0] = sizes;
        for (int i = 0; i < steps; i++) {
            double uu = m00[i] * u + m01[i] * v;
            v = m10[i] * u + m11[i] * v;
            u = uu;
            us[i + 1] = u;
            vs[i + 1] = v;
            sizes += u * u + v * v;
            sum[i + 1] = sizes;
        }
        double scale = 1 / Math.sqrt(u * u + v * v);
        this.u = u * scale;
        this.v = v * scale;
    }

    private void headings(int steps) {
        double[] us = this.us;
        double[] vs = this.vs;
        double[] c = this.c;
        double[] s = this.s;
        for (int i = 0; i <= steps; i++) {
            double u2 = us[i] * us[i];
            double v2 = vs[i] * vs[i];
            double inverse = 1 / (u2 + v2);
            c[i] = (u2 - v2) * inverse;
            s[i] = 2 * us[i] * vs[i] * inverse;
        }
    }

    /** From a unit's hitch to that of the next. */
    void move(int steps, double arm, double swerve) {
        double[] x = hitch.x;
        double[] y = hitch.y;
        double[] wx = hitch.c;
        double[] wy = hitch.s;
        double[] c = this.c;
        double[] s = this.s;
        for (int i = 0; i <= steps; i++) {
            x[i] -= arm * c[i];
            y[i] -= arm * s[i];
        }
        for (int i = 0; i <= steps; i++) {
            double along = wx[i] * c[i] + wy[i] * s[i];
            double across = swerve * (wy[i] * c[i] - wx[i] * s[i]);
            wx[i] = along * c[i] + across * s[i];
            wy[i] = along * s[i] - across * c[i];
        }
    }

    /** Largest speed of the hitch at a node, per speed of the lead point. */
    double fastest(int steps) {
        double most = 0;
        for (int i = 0; i <= steps; i++) {
            most = Math.max(most, hitch.c[i] * hitch.c[i] + hitch.s[i] * hitch.s[i]);
        }
        return Math.sqrt(most);
    }
}
