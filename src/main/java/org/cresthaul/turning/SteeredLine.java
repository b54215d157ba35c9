package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A lead line as a driver steers it: straight on the approach, then the front wheels turned by so much at places an
 * equal way apart and evenly between them, then straight on the exit. The front wheels roll where they point, so that
 * the line's curvature is δ' + sin δ / L. Steering limit and rate are bounds on the angles and on what two neighbors
 * differ by: a line within them is one that can be steered, and every line that can be steered is one of these, to the
 * spacing.
 */
public final class SteeredLine {
    /** Pieces of the path between two places where the angle is given. */
    static final int PIECES = 4;
    /** A line that comes this near to where it shall end ends there, meters. */
    private static final double LANDED_M = 0.01;

    private static final int MOST_ROUNDS = 8;

    /** Where steering begins: place and direction of the approach. */
    final double xM;

    final double yM;
    final double headingRad;
    final double spacingM;
    /** Front wheels' angles, positive to the left; the first and the last are zero. */
    final double[] steerRad;

    private final double wheelbaseM;

    SteeredLine(double xM, double yM, double headingRad, double spacingM, double[] steerRad, double wheelbaseM) {
        this.xM = xM;
        this.yM = yM;
        this.headingRad = headingRad;
        this.spacingM = spacingM;
        this.steerRad = steerRad;
        this.wheelbaseM = wheelbaseM;
    }

    /** The same angles from a place moved along and to the left of the approach. */
    SteeredLine moved(double alongM, double leftM) {
        double c = Math.cos(headingRad);
        double s = Math.sin(headingRad);
        return new SteeredLine(
                xM + alongM * c - leftM * s, yM + alongM * s + leftM * c, headingRad, spacingM, steerRad, wheelbaseM);
    }

    SteeredLine steered(double[] angles) {
        return new SteeredLine(xM, yM, headingRad, spacingM, angles, wheelbaseM);
    }

    double lengthM() {
        return spacingM * (steerRad.length - 1);
    }

    private double angle(int node, int piece) {
        double t = (double) piece / PIECES;
        return node + 1 < steerRad.length ? (1 - t) * steerRad[node] + t * steerRad[node + 1] : steerRad[node];
    }

    private double curvature(int node, double angle) {
        return (steerRad[node + 1] - steerRad[node]) / spacingM + Math.sin(angle) / wheelbaseM;
    }

    /** How far the line turns from approach to exit, exactly as {@link #path} is laid. */
    double turnRad() {
        double turn = 0;
        double piece = spacingM / PIECES;
        for (int i = 0; i + 1 < steerRad.length; i++) {
            for (int q = 0; q < PIECES; q++) {
                turn += 0.5 * piece * (curvature(i, angle(i, q)) + curvature(i, angle(i, q + 1)));
            }
        }
        return turn;
    }

    /** The whole way of the steer axle, with a straight run before and behind. */
    LeadPath path(double runInM, double runOutM) {
        LeadPath.Builder path = LeadPath.from(
                        xM - runInM * Math.cos(headingRad), yM - runInM * Math.sin(headingRad), headingRad)
                .line(runInM);
        steer(path);
        return path.line(runOutM).build();
    }

    private LeadPath.Builder steer(LeadPath.Builder path) {
        double piece = spacingM / PIECES;
        for (int i = 0; i + 1 < steerRad.length; i++) {
            for (int q = 0; q < PIECES; q++) {
                path.clothoid(piece, curvature(i, angle(i, q)), curvature(i, angle(i, q + 1)));
            }
        }
        return path;
    }

    /** Where steering ends. */
    double[] end() {
        LeadPath.Builder path = steer(LeadPath.from(xM, yM, headingRad));
        return new double[] {path.xM(), path.yM()};
    }

    /**
     * Angles within limit and rate that turn by just so much: held to the bounds, then changed as little as possible
     * where they are not at a bound.
     *
     * @return empty when the bounds do not let it turn so far over this length
     */
    static Optional<SteeredLine> closed(SteeredLine line, double turnRad, double limitRad, double rateRadPerM) {
        double most = rateRadPerM * line.spacingM;
        double[] angles = line.steerRad.clone();
        SteeredLine at = line;
        for (int round = 0; round < 12; round++) {
            hold(angles, limitRad, most);
            at = line.steered(angles.clone());
            double off = turnRad - at.turnRad();
            if (Math.abs(off) < 1e-13) {
                return Optional.of(at);
            }
            double weights = 0;
            double[] weight = new double[angles.length];
            for (int i = 1; i + 1 < angles.length; i++) {
                weight[i] = freedom(angles, i, Math.signum(off), limitRad, most);
                weights += weight[i] * Math.cos(angles[i]) * line.spacingM / line.wheelbaseM;
            }
            if (weights <= 0) {
                return Optional.empty();
            }
            for (int i = 1; i + 1 < angles.length; i++) {
                angles[i] += weight[i] * off / weights;
            }
        }
        // What is left after the rounds is made up for by angles that do not touch a bound; too much of it is no line.
        return Math.abs(turnRad - at.turnRad()) < 1e-9 ? Optional.of(at) : Optional.empty();
    }

    /** How much an angle may still change one way, between nothing and one, without a bound being met. */
    private static double freedom(double[] angles, int i, double way, double limitRad, double most) {
        double spare = limitRad - way * angles[i];
        spare = Math.min(spare, most - way * (angles[i] - angles[i - 1]));
        spare = Math.min(spare, most - way * (angles[i] - angles[i + 1]));
        return spare < 1e-12 ? 0 : Math.min(1, 0.02 + Math.abs(angles[i]) / limitRad);
    }

    private static void hold(double[] angles, double limitRad, double most) {
        int last = angles.length - 1;
        angles[0] = 0;
        angles[last] = 0;
        for (int i = 1; i < last; i++) {
            angles[i] = Math.max(-limitRad, Math.min(limitRad, angles[i]));
            angles[i] = Math.max(angles[i - 1] - most, Math.min(angles[i - 1] + most, angles[i]));
        }
        for (int i = last - 1; i > 0; i--) {
            angles[i] = Math.max(angles[i + 1] - most, Math.min(angles[i + 1] + most, angles[i]));
        }
    }

    /**
     * This line begun early or late by so much, and brought back onto its exit over the second half of the turn: what
     * becomes of it when the wheel goes over at the wrong place.
     *
     * @param lateM positive: late
     * @return empty when the steering does not let it come back
     */
    Optional<SteeredLine> begun(double lateM, double limitRad, double rateRadPerM) {
        double[] planned = end();
        return moved(lateM, 0).ending(planned[0], planned[1], halfTurned(), limitRad, rateRadPerM);
    }

    /**
     * This line changed from a place on so that its exit runs through a point.
     *
     * @param from the first angle that may change
     * @return empty when the steering does not let it
     */
    Optional<SteeredLine> ending(double throughXM, double throughYM, int from, double limitRad, double rateRadPerM) {
        double turn = turnRad();
        double exit = headingRad + turn;
        SteeredLine at = this;
        for (int round = 0; ; round++) {
            double[] ends = at.end();
            double off = (throughYM - ends[1]) * Math.cos(exit) - (throughXM - ends[0]) * Math.sin(exit);
            if (Math.abs(off) < LANDED_M) {
                return Optional.of(at);
            }
            Optional<SteeredLine> held = round == MOST_ROUNDS
                    ? Optional.empty()
                    : closed(at.steered(at.bent(from, off, exit, ends, limitRad)), turn, limitRad, rateRadPerM);
            if (held.isEmpty()) {
                return held;
            }
            at = held.get();
        }
    }

    private int halfTurned() {
        double all = 0;
        for (double a : steerRad) {
            all += Math.abs(a);
        }
        double sum = 0;
        for (int i = 0; i < steerRad.length; i++) {
            sum += Math.abs(steerRad[i]);
            if (sum >= 0.5 * all) {
                return Math.max(1, i);
            }
        }
        return 1;
    }

    /** The least change of angles from a place on that moves the end sideways and leaves its direction. */
    private double[] bent(int from, double asideM, double exit, double[] ends, double limitRad) {
        double ex = Math.cos(exit);
        double ey = Math.sin(exit);
        List<double[]> places = places();
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double[] lever = new double[steerRad.length];
        double[] weight = new double[steerRad.length];
        for (int i = from; i + 1 < steerRad.length; i++) {
            lever[i] = (ends[0] - places.get(i)[0]) * ex + (ends[1] - places.get(i)[1]) * ey;
            double used = steerRad[i] / limitRad;
            weight[i] = Math.max(0.02, 1 - used * used);
            s0 += weight[i];
            s1 += weight[i] * lever[i];
            s2 += weight[i] * lever[i] * lever[i];
        }
        double determinant = s0 * s2 - s1 * s1;
        double[] changed = steerRad.clone();
        if (determinant < 1e-9) {
            return changed;
        }
        double gain = asideM * wheelbaseM / spacingM;
        double p = gain * s0 / determinant;
        double q = -gain * s1 / determinant;
        for (int i = from; i + 1 < steerRad.length; i++) {
            changed[i] += weight[i] * (p * lever[i] + q);
        }
        return changed;
    }

    /** Where the lead point is at every given angle. */
    private List<double[]> places() {
        List<double[]> places = new ArrayList<>();
        LeadPath.Builder path = LeadPath.from(xM, yM, headingRad);
        double piece = spacingM / PIECES;
        for (int i = 0; i < steerRad.length; i++) {
            places.add(new double[] {path.xM(), path.yM()});
            for (int q = 0; q < PIECES && i + 1 < steerRad.length; q++) {
                path.clothoid(piece, curvature(i, angle(i, q)), curvature(i, angle(i, q + 1)));
            }
        }
        return places;
    }

    /** Number of angles that are free. */
    int free() {
        return steerRad.length - 2;
    }

    @Override
    public String toString() {
        return xM + ", " + yM + ": " + Arrays.toString(steerRad);
    }
}
