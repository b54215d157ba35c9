package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.geometry.Finite;

/**
 * The way the lead point runs: straight lines, arcs and clothoids, one after the other, smooth unless told to kink.
 * Curvature is positive to the left. Positions are exact to rounding. Immutable.
 */
public final class LeadPath {
    /** Longest turn inside one piece, radians; it keeps the quadrature below at rounding error. */
    private static final double PIECE_TURN_RAD = 0.25;
    /** Directions that differ by less meet smoothly. */
    private static final double KINK_RAD = 1e-9;

    /** Gauss-Legendre with four points: on a piece that short it is off by less than a nanometer. */
    private static final double[] NODE = {
        -0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526
    };

    private static final double[] WEIGHT = {
        0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538
    };

    /** Piece i: station, position, heading and curvature at its start; its curvature grows at rate[i]. */
    private final double[] station;

    private final double[] x;
    private final double[] y;
    private final double[] heading;
    private final double[] curvature;
    private final double[] rate;
    private final double[] cosine;
    private final double[] sine;
    private final boolean[] kinked;

    private LeadPath(Builder builder) {
        int n = builder.pieces.size();
        station = new double[n + 1];
        x = new double[n];
        y = new double[n];
        heading = new double[n];
        curvature = new double[n];
        rate = new double[n];
        cosine = new double[n];
        sine = new double[n];
        kinked = new boolean[n];
        for (int i = 0; i < n; i++) {
            double[] piece = builder.pieces.get(i);
            station[i] = piece[0];
            x[i] = piece[1];
            y[i] = piece[2];
            heading[i] = piece[3];
            curvature[i] = piece[4];
            rate[i] = piece[5];
            kinked[i] = i > 0 && Math.abs(piece[6]) > KINK_RAD;
            cosine[i] = Math.cos(heading[i]);
            sine[i] = Math.sin(heading[i]);
        }
        station[n] = builder.station;
    }

    /** Starts a path at a point and heading (radians, counter-clockwise from the x axis). */
    public static Builder from(double xM, double yM, double headingRad) {
        return new Builder(xM, yM, headingRad);
    }

    /** A path through points, straight between them. */
    public static LeadPath through(List<double[]> points) {
        Builder builder = null;
        for (int i = 1; i < points.size(); i++) {
            double dx = points.get(i)[0] - points.get(i - 1)[0];
            double dy = points.get(i)[1] - points.get(i - 1)[1];
            double direction = Math.atan2(dy, dx);
            if (builder == null) {
                builder = from(points.get(0)[0], points.get(0)[1], direction);
            }
            builder.kink(direction - builder.heading).line(Math.hypot(dx, dy));
        }
        if (builder == null) {
            throw new IllegalArgumentException("a path needs two points");
        }
        return builder.build();
    }

    /** Adds piece after piece. Not for sharing. */
    public static final class Builder {
        private final List<double[]> pieces = new ArrayList<>();
        private final double[] end = new double[2];
        private double station;
        private double heading;
        /** How far the direction has jumped since the last piece. */
        private double kink;

        private Builder(double xM, double yM, double headingRad) {
            end[0] = Finite.require("xM", xM);
            end[1] = Finite.require("yM", yM);
            heading = Finite.require("headingRad", headingRad);
        }

        public Builder line(double lengthM) {
            return clothoid(lengthM, 0, 0);
        }

        public Builder arc(double lengthM, double curvaturePerM) {
            return clothoid(lengthM, curvaturePerM, curvaturePerM);
        }

        /**
         * Curvature changes evenly from one value to the other; a piece that does not reach a new station is left out.
         */
        public Builder clothoid(double lengthM, double fromPerM, double toPerM) {
            Finite.requireAtLeast("lengthM", 0, lengthM);
            double most = lengthM * Math.max(Math.abs(fromPerM), Math.abs(toPerM));
            int parts = Math.max(1, (int) Math.ceil(Finite.require("turn", most) / PIECE_TURN_RAD));
            double rate = lengthM > 0 ? (toPerM - fromPerM) / lengthM : 0;
            // A straight line and an arc have closed forms of any length.
            parts = rate == 0 ? 1 : parts;
            boolean reaches = station + lengthM / parts > station;
            for (int i = 0; i < parts && reaches; i++) {
                double part = lengthM / parts;
                double from = fromPerM + rate * i * part;
                pieces.add(new double[] {station, end[0], end[1], heading, from, rate, kink});
                kink = 0;
                double[] at = new double[2];
                offset(heading, from, rate, part, at);
                end[0] += at[0];
                end[1] += at[1];
                heading += part * (from + 0.5 * rate * part);
                station += part;
            }
            return this;
        }

        /** Turns on the spot, as a polyline does at its points. */
        public Builder kink(double turnRad) {
            double turn = Math.IEEEremainder(turnRad, 2 * Math.PI);
            heading += turn;
            kink += turn;
            return this;
        }

        /**
         * A whole turn as a driver steers it: curvature built up at a rate, held, and taken off again. A turn too short
         * to reach the curvature reaches less.
         *
         * @param turnRad positive to the left
         * @param mostPerM largest curvature, positive
         * @param ratePerM2 how fast curvature may change along the way, positive
         */
        public Builder turn(double turnRad, double mostPerM, double ratePerM2) {
            double size = Math.abs(turnRad);
            double peak = Math.min(mostPerM, Math.sqrt(ratePerM2 * size));
            if (peak <= 0) {
                return this;
            }
            double signed = Math.signum(turnRad) * peak;
            double ramp = peak / ratePerM2;
            return clothoid(ramp, 0, signed)
                    .arc(Math.max(0, size / peak - ramp), signed)
                    .clothoid(ramp, signed, 0);
        }

        public double headingRad() {
            return heading;
        }

        public double xM() {
            return end[0];
        }

        public double yM() {
            return end[1];
        }

        public LeadPath build() {
            if (pieces.isEmpty()) {
                throw new IllegalArgumentException("a path needs a length");
            }
            return new LeadPath(this);
        }
    }

    public double lengthM() {
        return station[station.length - 1];
    }

    int pieces() {
        return heading.length;
    }

    /** Where a piece starts; the end of the path for the number after the last. */
    double stationM(int piece) {
        return station[piece];
    }

    /** Largest curvature in a piece, per meter, not negative. */
    double mostCurvature(int piece) {
        double length = station[piece + 1] - station[piece];
        return Math.max(Math.abs(curvature[piece]), Math.abs(curvature[piece] + rate[piece] * length));
    }

    double curvatureRate(int piece) {
        return Math.abs(rate[piece]);
    }

    double curvatureAt(int piece, double stationM) {
        return curvature[piece] + rate[piece] * (stationM - station[piece]);
    }

    /** Direction at a station of a piece, radians. */
    double headingAt(int piece, double stationM) {
        double s = stationM - station[piece];
        return heading[piece] + s * (curvature[piece] + 0.5 * rate[piece] * s);
    }

    /** Puts x, y and the cosine and sine of the direction at a station of a piece into {@code into}. */
    void locate(int piece, double stationM, double[] into) {
        double s = stationM - station[piece];
        if (s == 0 || rate[piece] == 0 && curvature[piece] == 0) {
            into[0] = x[piece] + s * cosine[piece];
            into[1] = y[piece] + s * sine[piece];
            into[2] = cosine[piece];
            into[3] = sine[piece];
            return;
        }
        offset(heading[piece], curvature[piece], rate[piece], s, into);
        into[0] += x[piece];
        into[1] += y[piece];
        double h = headingAt(piece, stationM);
        into[2] = Math.cos(h);
        into[3] = Math.sin(h);
    }

    /** Whether the direction jumps where a piece starts. */
    boolean kinkedAt(int piece) {
        return kinked[piece];
    }

    private double endHeading(int piece) {
        return headingAt(piece, station[piece + 1]);
    }

    /** Puts x, y and the cosine and sine of the direction where a piece starts into a place of the four arrays. */
    void start(int piece, PathNodes nodes, int at) {
        nodes.x[at] = x[piece];
        nodes.y[at] = y[piece];
        nodes.c[at] = cosine[piece];
        nodes.s[at] = sine[piece];
    }

    /** Puts where the next piece starts over the end of a piece that was laid; the last piece ends as laid. */
    void land(int piece, PathNodes nodes, int at) {
        if (piece + 1 < pieces()) {
            nodes.x[at] = x[piece + 1];
            nodes.y[at] = y[piece + 1];
        }
    }

    /**
     * Goes on from a known place of a piece in equal steps: fills the nodes behind {@code at}. Lines and arcs are exact
     * to rounding; on a clothoid the direction is, and the position loses no more than {@link #layingErrorM} a step.
     *
     * @param doneM how far into the piece node {@code at} is
     */
    void lay(int piece, double doneM, double stepM, int steps, PathNodes nodes, int at) {
        if (rate[piece] != 0) {
            nodes.clothoid(cosine[piece], sine[piece], curvature[piece], rate[piece], doneM, stepM, steps, at);
        } else if (curvature[piece] != 0) {
            nodes.arc(curvature[piece] * stepM, stepM, steps, at);
        } else {
            nodes.line(stepM, steps, at);
        }
    }

    /**
     * How far steps of a piece can lay a position wrong: Hermite's rule leaves h⁵/720 of the direction's fourth
     * derivative, which is κ⁴ − 3κ'² − 6iκ²κ'.
     */
    double layingErrorM(int piece, double stepM) {
        double r = Math.abs(rate[piece]);
        double k2 = mostCurvature(piece) * mostCurvature(piece);
        double lengthM = station[piece + 1] - station[piece];
        return r == 0 ? 0 : lengthM * stepM * stepM * stepM * stepM * (k2 * k2 + 3 * r * r + 6 * k2 * r) / 720;
    }

    /** Position and direction at a station from 0 to {@link #lengthM()}: x, y, heading; at a kink, that ahead. */
    public double[] at(double stationM) {
        int i = 0;
        while (i + 1 < pieces() && station[i + 1] <= stationM) {
            i++;
        }
        double[] into = new double[4];
        locate(i, stationM, into);
        return new double[] {into[0], into[1], headingAt(i, stationM)};
    }

    /** The same way driven from its end to its start. */
    public LeadPath reversed() {
        double[] end = at(lengthM());
        Builder back = from(end[0], end[1], end[2] + Math.PI);
        for (int i = pieces() - 1; i >= 0; i--) {
            double length = station[i + 1] - station[i];
            back.kink(endHeading(i) + Math.PI - back.heading);
            back.clothoid(length, -(curvature[i] + rate[i] * length), -curvature[i]);
        }
        return back.build();
    }

    private static void offset(double heading, double curvature, double rate, double s, double[] into) {
        if (rate == 0) {
            double half = 0.5 * curvature * s;
            double chord = Math.abs(half) < 1e-4 ? s * (1 - half * half / 6) : s * Math.sin(half) / half;
            into[0] = chord * Math.cos(heading + half);
            into[1] = chord * Math.sin(heading + half);
            return;
        }
        double sumX = 0;
        double sumY = 0;
        for (int k = 0; k < NODE.length; k++) {
            double u = 0.5 * s * (1 + NODE[k]);
            double h = heading + u * (curvature + 0.5 * rate * u);
            sumX += WEIGHT[k] * Math.cos(h);
            sumY += WEIGHT[k] * Math.sin(h);
        }
        into[0] = 0.5 * s * sumX;
        into[1] = 0.5 * s * sumY;
    }
}
