package org.cresthaul.turning;

import java.util.Optional;

/**
 * A lead line by its curvature at evenly spaced nodes: first and last are zero, no two differ by more than the rate allows,
 * and together they turn by a given angle. What is asked for is brought within the rate, and turned by the same amount more
 * or less everywhere until the angle fits.
 *
 * @param asked curvature asked for at the inner nodes, per metre; then metres along the approach and to the left of it by
 *     which the start is moved
 */
final class SteeredLine {
    static final double NODE_M = 3;

    private final double[] asked;
    private final double xM;
    private final double yM;
    private final double headingRad;
    private final double turnRad;
    private final double mostPerM;
    private final double stepPerM;
    private final double lossM;

    /** Where it starts, and the curvature at every node, the first and last included. */
    record Steered(double xM, double yM, double headingRad, double[] curvature) {}

    SteeredLine(
            double[] asked, double xM, double yM, double headingRad, double turnRad, double mostPerM, double ratePerM2) {
        this(asked, xM, yM, headingRad, turnRad, mostPerM, ratePerM2 * NODE_M * 0.9999, 0);
    }

    private SteeredLine(double[] asked, double xM, double yM, double headingRad, double turnRad, double mostPerM,
            double stepPerM, double lossM) {
        this.asked = asked.clone();
        this.xM = xM;
        this.yM = yM;
        this.headingRad = headingRad;
        this.turnRad = turnRad;
        this.mostPerM = mostPerM;
        this.stepPerM = stepPerM;
        this.lossM = lossM;
    }

    double lossM() {
        return lossM;
    }

    SteeredLine withLoss(double m) {
        return new SteeredLine(asked, xM, yM, headingRad, turnRad, mostPerM, stepPerM, m);
    }

    double[] values() {
        return asked.clone();
    }

    SteeredLine withValues(double[] values) {
        return new SteeredLine(values, xM, yM, headingRad, turnRad, mostPerM, stepPerM, 0);
    }

    private boolean place(int i) {
        return i >= asked.length - 2;
    }

    double scale(int i) {
        return place(i) ? 4 : mostPerM;
    }

    double[] low() {
        double[] low = new double[asked.length];
        for (int i = 0; i < low.length; i++) {
            low[i] = place(i) ? -40 : -mostPerM;
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

    Optional<Steered> steered() {
        int n = asked.length - 2;
        double[] k = new double[n + 2];
        double lo = -2 * mostPerM;
        double hi = 2 * mostPerM;
        for (int i = 0; i < 44; i++) {
            double more = (lo + hi) / 2;
            if (turned(more, k) < turnRad) {
                lo = more;
            } else {
                hi = more;
            }
        }
        double turned = turned((lo + hi) / 2, k);
        if (Math.abs(turned - turnRad) > 1e-7) {
            return Optional.empty();
        }
        double along = asked[n];
        double left = asked[n + 1];
        double c = Math.cos(headingRad);
        double s = Math.sin(headingRad);
        return Optional.of(new Steered(xM + along * c - left * s, yM + along * s + left * c, headingRad, k));
    }

    /** Turns by so much with everything asked for raised by a curvature; lays the nodes' curvatures. */
    private double turned(double more, double[] k) {
        int n = asked.length - 2;
        k[0] = 0;
        k[n + 1] = 0;
        for (int i = 1; i <= n; i++) {
            k[i] = Math.max(-mostPerM, Math.min(mostPerM, asked[i - 1] + more));
            k[i] = Math.max(k[i - 1] - stepPerM, Math.min(k[i - 1] + stepPerM, k[i]));
        }
        double sum = 0;
        for (int i = n; i >= 1; i--) {
            k[i] = Math.max(k[i + 1] - stepPerM, Math.min(k[i + 1] + stepPerM, k[i]));
            sum += k[i];
        }
        return sum * NODE_M;
    }

    /** The same for the judge, with a straight before and behind; the last of the turn goes into its last piece. */
    Optional<LeadPath> path() {
        return steered().map(s -> {
            double back = 60;
            LeadPath.Builder path = LeadPath.from(
                    s.xM - back * Math.cos(s.headingRad), s.yM - back * Math.sin(s.headingRad), s.headingRad).line(back);
            for (int i = 1; i < s.curvature.length; i++) {
                path.clothoid(NODE_M, s.curvature[i - 1], s.curvature[i]);
            }
            return path.line(30).build();
        });
    }
}
