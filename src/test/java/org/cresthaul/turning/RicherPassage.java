package org.cresthaul.turning;

import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;

/**
 * The gaps along a line, fast and rough: followed by the classical Runge-Kutta rule piece by piece (1 m and then 3 m
 * beyond the steering) and looked at after every second one, rooms read from a {@link RicherField} at points of the
 * outlines. Lines of as many nodes have as many gaps, one for every unit at every look.
 */
final class RicherPassage {
    private static final int LOOKS_BEFORE = 20;
    private static final double BEFORE_M = 4;
    /** Points along a body's outline this far apart. */
    private static final double POINT_M = 1.2;
    /** A radian that is left to a coupling's limit counts as so many meters of gap. */
    private static final double LIMIT_M = 20;
    /** An island passed on its wrong side takes so much from every gap, meters. */
    private static final double WRONG_M = 10;

    private final TurningCombination combination;
    private final RicherField field;
    private final double[] gaps;
    private int looks;

    private RicherPassage(TurningCombination combination, RicherField field, int looks) {
        this.combination = combination;
        this.field = field;
        gaps = new double[looks * combination.chain().size()];
    }

    static double[] gapsM(TurningCombination combination, RicherLine.Steered line, RicherField field) {
        int steps = line.from().length;
        int near = 50;
        int far = 35;
        RicherPassage passage = new RicherPassage(combination, field, LOOKS_BEFORE + 1 + steps / 2 + near + far);
        passage.drive(line, steps, near, far);
        return passage.gaps;
    }

    /**
     * The least of the gaps; softened, those not much larger pull it down too: minus the logarithm of the sum of e to
     * the power of minus each over the softness.
     */
    static double leastM(double[] gaps, double softM) {
        double least = Double.POSITIVE_INFINITY;
        for (double g : gaps) {
            least = Math.min(least, g);
        }
        if (softM == 0) {
            return least;
        }
        double sum = 0;
        for (double g : gaps) {
            sum += Math.exp((least - g) / softM);
        }
        return least - softM * Math.log(sum);
    }

    private void drive(RicherLine.Steered line, int steps, int near, int far) {
        double[] state = new double[3 + combination.chain().size()];
        state[0] = line.xM();
        state[1] = line.yM();
        java.util.Arrays.fill(state, 2, state.length, line.headingRad());
        // What lies behind the rear when the steering starts.
        double[] before = state.clone();
        for (int i = 0; i < LOOKS_BEFORE; i++) {
            before[0] -= BEFORE_M * Math.cos(line.headingRad());
            before[1] -= BEFORE_M * Math.sin(line.headingRad());
            look(before);
        }
        RicherField.Sides sides = field.sides(state[0], state[1], line.headingRad());
        look(state);
        for (int i = 0; i < steps + near + far; i++) {
            // Curvature may jump from piece to piece, never within one.
            if (i < steps) {
                step(state, line.from()[i], line.to()[i], RicherLine.Steered.PIECE_M);
            } else {
                step(state, 0, 0, i < steps + near ? 1 : 3);
            }
            sides.pass(state[0], state[1]);
            if (i % 2 == 1 || i >= steps) {
                look(state);
            }
        }
        int wrong = sides.wrong(state[2]);
        for (int i = 0; i < gaps.length && wrong > 0; i++) {
            gaps[i] -= WRONG_M * wrong;
        }
    }

    private void step(double[] y, double fromPerM, double toPerM, double on) {
        double middle = (fromPerM + toPerM) / 2;
        double[] a = rate(y, fromPerM);
        double[] b = rate(moved(y, a, on / 2), middle);
        double[] c = rate(moved(y, b, on / 2), middle);
        double[] d = rate(moved(y, c, on), toPerM);
        for (int i = 0; i < y.length; i++) {
            y[i] += on / 6 * (a[i] + 2 * b[i] + 2 * c[i] + d[i]);
        }
    }

    private static double[] moved(double[] y, double[] rate, double by) {
        double[] moved = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            moved[i] = y[i] + by * rate[i];
        }
        return moved;
    }

    private double[] rate(double[] y, double curvature) {
        double[] r = new double[y.length];
        r[0] = Math.cos(y[2]);
        r[1] = Math.sin(y[2]);
        r[2] = curvature;
        // Speed and direction of one hitch after the other.
        double speed = 1;
        double way = y[2];
        for (int k = 0; k < y.length - 3; k++) {
            double off = way - y[3 + k];
            TurningUnit unit = combination.chain().get(k);
            double turn = speed * Math.sin(off) / unit.hitchToAxleM();
            r[3 + k] = turn;
            double along = speed * Math.cos(off);
            double aside = -unit.couplingBehindM() * turn;
            speed = Math.hypot(along, aside);
            way = y[3 + k] + Math.atan2(aside, along);
        }
        return r;
    }

    private void look(double[] y) {
        double x = y[0];
        double z = y[1];
        int units = combination.chain().size();
        for (int k = 0; k < units; k++) {
            double c = Math.cos(y[3 + k]);
            double s = Math.sin(y[3 + k]);
            TurningUnit unit = combination.chain().get(k);
            x -= unit.hitchToAxleM() * c;
            z -= unit.hitchToAxleM() * s;
            double least = 5;
            for (AxleLine a : combination.units().get(k).tires()) {
                for (int side = -1; side <= 1; side += 2) {
                    for (int end = -1; end <= 1; end += 2) {
                        double ahead = a.aheadM() + end * a.contactM() / 2;
                        double outer = side * a.halfWidthM();
                        double inner = side * (a.halfWidthM() - a.treadM());
                        least = Math.min(least, field.tireRoomM(x + ahead * c - outer * s, z + ahead * s + outer * c));
                        least = Math.min(least, field.tireRoomM(x + ahead * c - inner * s, z + ahead * s + inner * c));
                    }
                }
            }
            if (field.keepsBodies()) {
                for (Body b : combination.units().get(k).bodies()) {
                    least = Math.min(least, bodyM(b, x, z, c, s));
                }
            }
            if (k > 0) {
                double left = combination.articulationLimitRad().get(k - 1) - Math.abs(y[2 + k] - y[3 + k]);
                least = Math.min(least, LIMIT_M * (left - 0.002));
            }
            gaps[looks * units + k] = least;
            x -= unit.couplingBehindM() * c;
            z -= unit.couplingBehindM() * s;
        }
        looks++;
    }

    private double bodyM(Body b, double x, double z, double c, double s) {
        double least = 5;
        int parts = (int) Math.ceil((b.frontM() - b.rearM()) / POINT_M);
        for (int i = 0; i <= parts; i++) {
            double ahead = b.rearM() + (b.frontM() - b.rearM()) * i / parts;
            for (int side = -1; side <= 1; side++) {
                double left = side * b.halfWidthM();
                if (side != 0 || i == 0 || i == parts) {
                    least = Math.min(least, field.bodyRoomM(x + ahead * c - left * s, z + ahead * s + left * c));
                }
            }
        }
        return least;
    }
}
