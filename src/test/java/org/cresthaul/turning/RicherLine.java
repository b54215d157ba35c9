package org.cresthaul.turning;

import java.util.Optional;

/**
 * A lead line by the front wheels' angle at evenly spaced nodes, even between them: first and last are zero, no two
 * differ by more than the steering rate allows, and together they turn the tractor by a given angle. The front wheels
 * roll where they point, so the curvature is δ' + sin δ / L. What is asked for is brought within limit and rate, and
 * turned by the same amount more or less everywhere until the angle fits.
 */
final class RicherLine {
    static final double NODE_M = 3;
    /** Pieces of the path from node to node. */
    private static final int PIECES = 8;
    /** The path's pieces are clothoids, which leave the angles asked for by less than this share. */
    private static final double RESERVE = 0.004;

    private final double[] asked;
    private final double xM;
    private final double yM;
    private final double headingRad;
    private final double turnRad;
    private final Steering steering;
    private final double lossM;

    /** Where it starts, and the curvature at the start and the end of every piece. */
    record Steered(double xM, double yM, double headingRad, double[] from, double[] to) {
        static final double PIECE_M = NODE_M / PIECES;
    }

    /**
     * What the front wheels can do: largest angle, angle for each meter rolled, distance to the effective drive axle.
     */
    record Steering(double limitRad, double ratePerM, double wheelbaseM) {
        static Steering of(TurningCombination combination) {
            double limit = combination.steerLimitRad() * (1 - RESERVE);
            return new Steering(
                    limit,
                    limit / combination.lockDistanceM(),
                    combination.chain().get(0).hitchToAxleM());
        }
    }

    /**
     * @param asked angles asked for at the inner nodes; then meters along the approach and to the left of it by which
     *     the start is moved
     */
    RicherLine(double[] asked, double xM, double yM, double headingRad, double turnRad, Steering steering) {
        this(asked, xM, yM, headingRad, turnRad, steering, 0);
    }

    private RicherLine(
            double[] asked, double xM, double yM, double headingRad, double turnRad, Steering steering, double lossM) {
        this.asked = asked.clone();
        this.xM = xM;
        this.yM = yM;
        this.headingRad = headingRad;
        this.turnRad = turnRad;
        this.steering = steering;
        this.lossM = lossM;
    }

    double lossM() {
        return lossM;
    }

    RicherLine withLoss(double m) {
        return new RicherLine(asked, xM, yM, headingRad, turnRad, steering, m);
    }

    double[] values() {
        return asked.clone();
    }

    RicherLine withValues(double[] values) {
        return new RicherLine(values, xM, yM, headingRad, turnRad, steering, 0);
    }

    private boolean place(int i) {
        return i >= asked.length - 2;
    }

    double scale(int i) {
        return place(i) ? 4 : steering.limitRad;
    }

    double[] low() {
        double[] low = new double[asked.length];
        for (int i = 0; i < low.length; i++) {
            low[i] = place(i) ? -40 : -steering.limitRad;
        }
        return low;
    }

    double[] high() {
        double[] high = low();
        for (int i = 0; i < high.length; i++) {
            high[i] = -high[i];
        }
        return high;
    }

    /** The same line asked for as it is steered: every angle then has room to move. */
    RicherLine asSteered() {
        double[] d = new double[asked.length];
        Optional<Steered> s = steered(d);
        return s.isPresent() ? withValues(d) : this;
    }

    Optional<Steered> steered() {
        return steered(new double[asked.length]);
    }

    private Optional<Steered> steered(double[] angles) {
        int n = asked.length - 2;
        Steered s = new Steered(
                xM + asked[n] * Math.cos(headingRad) - asked[n + 1] * Math.sin(headingRad),
                yM + asked[n] * Math.sin(headingRad) + asked[n + 1] * Math.cos(headingRad),
                headingRad,
                new double[(n + 1) * PIECES],
                new double[(n + 1) * PIECES]);
        double lo = -2 * steering.limitRad;
        double hi = 2 * steering.limitRad;
        for (int i = 0; i < 44; i++) {
            double more = (lo + hi) / 2;
            if (turned(more, s, angles) < turnRad) {
                lo = more;
            } else {
                hi = more;
            }
        }
        angles[n] = asked[n];
        angles[n + 1] = asked[n + 1];
        return Math.abs(turned((lo + hi) / 2, s, angles) - turnRad) > 1e-7 ? Optional.empty() : Optional.of(s);
    }

    /** Turns by so much with every angle asked for raised by as much; lays angles and curvatures. */
    private double turned(double more, Steered into, double[] angles) {
        int n = asked.length - 2;
        double step = steering.ratePerM * NODE_M;
        double[] d = new double[n + 2];
        for (int i = 1; i <= n; i++) {
            double wish = Math.max(-steering.limitRad, Math.min(steering.limitRad, asked[i - 1] + more));
            d[i] = Math.max(d[i - 1] - step, Math.min(d[i - 1] + step, wish));
        }
        for (int i = n; i >= 1; i--) {
            d[i] = Math.max(d[i + 1] - step, Math.min(d[i + 1] + step, d[i]));
        }
        System.arraycopy(d, 1, angles, 0, n);
        double sum = 0;
        for (int i = 0; i <= n; i++) {
            double rate = (d[i + 1] - d[i]) / NODE_M;
            double last = rate + Math.sin(d[i]) / steering.wheelbaseM;
            for (int k = 0; k < PIECES; k++) {
                double end = d[i] + (d[i + 1] - d[i]) * (k + 1) / PIECES;
                into.from[i * PIECES + k] = last;
                last = rate + Math.sin(end) / steering.wheelbaseM;
                into.to[i * PIECES + k] = last;
                sum += (into.from[i * PIECES + k] + last) / 2 * Steered.PIECE_M;
            }
        }
        return sum;
    }

    /** The same for the judge, with a straight before and behind. */
    Optional<LeadPath> path() {
        return steered().map(s -> {
            double back = 60;
            double x = s.xM - back * Math.cos(s.headingRad);
            double y = s.yM - back * Math.sin(s.headingRad);
            LeadPath.Builder path = LeadPath.from(x, y, s.headingRad).line(back);
            for (int i = 0; i < s.from.length; i++) {
                path.clothoid(Steered.PIECE_M, s.from[i], s.to[i]);
            }
            return path.line(30).build();
        });
    }
}
