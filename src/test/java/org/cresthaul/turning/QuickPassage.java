package org.cresthaul.turning;

import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;

/**
 * What a line costs, fast and rough: followed by the classical Runge-Kutta rule in steps of 0.4 m (a meter beyond the steering), until every unit
 * is nearly straight, rooms read from a {@link RoomField} at points of the outlines.
 */
final class QuickPassage {
    private static final double STEP_M = 0.4;
    private static final double STRAIGHT_STEP_M = 1;
    /** Points along a body's outline this far apart. */
    private static final double POINT_M = 1.2;
    /** Weight of a radian over a limit, as metres. */
    private static final double LIMIT_M = 20;

    private final TurningCombination combination;
    private final SteeredLine.Steered line;
    private final RoomField field;
    private double leastM = 5;
    private double sumM;
    private double overRad;

    QuickPassage(TurningCombination combination, SteeredLine.Steered line, RoomField field) {
        this.combination = combination;
        this.line = line;
        this.field = field;
    }

    /** Less is better: minus the least gap, a little of what is short everywhere, and much of what is over the limits. */
    double lossM() {
        int units = combination.chain().size();
        double[] state = new double[3 + units];
        state[0] = line.xM();
        state[1] = line.yM();
        java.util.Arrays.fill(state, 2, state.length, line.headingRad());
        double length = (line.curvature().length - 1) * SteeredLine.NODE_M;
        // What lies behind the rear when the steering starts.
        double[] before = state.clone();
        for (int i = 0; i < 30; i++) {
            before[0] -= 3 * Math.cos(line.headingRad());
            before[1] -= 3 * Math.sin(line.headingRad());
            look(before, false);
        }
        RoomField.Sides sides = field.sides(state[0], state[1], line.headingRad());
        double s = 0;
        double bent = 1;
        while (s < length || bent > 0.004 && s < length + 130) {
            look(state, true);
            double on = s < length ? STEP_M : STRAIGHT_STEP_M;
            step(state, s, on);
            s += on;
            sides.pass(state[0], state[1]);
            bent = 0;
            for (int k = 0; k < units; k++) {
                bent += Math.abs(state[3 + k] - state[2]);
            }
        }
        look(state, true);
        return -leastM + 0.02 * sumM + LIMIT_M * overRad + 10 * sides.wrong(state[2]);
    }

    private double curvature(double s) {
        double[] k = line.curvature();
        double at = s / SteeredLine.NODE_M;
        int i = (int) at;
        return i >= k.length - 1 ? 0 : k[i] + (at - i) * (k[i + 1] - k[i]);
    }

    private void step(double[] y, double s, double on) {
        int n = y.length;
        double[] a = rate(y, curvature(s));
        double[] b = rate(moved(y, a, on / 2), curvature(s + on / 2));
        double[] c = rate(moved(y, b, on / 2), curvature(s + on / 2));
        double[] d = rate(moved(y, c, on), curvature(s + on));
        for (int i = 0; i < n; i++) {
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

    private void look(double[] y, boolean limits) {
        double x = y[0];
        double z = y[1];
        double lacking = 0;
        for (int k = 0; k < combination.chain().size(); k++) {
            double c = Math.cos(y[3 + k]);
            double s = Math.sin(y[3 + k]);
            TurningUnit unit = combination.chain().get(k);
            x -= unit.hitchToAxleM() * c;
            z -= unit.hitchToAxleM() * s;
            double least = 5;
            for (AxleLine a : combination.units().get(k).tyres()) {
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
                    int parts = (int) Math.ceil((b.frontM() - b.rearM()) / POINT_M);
                    for (int i = 0; i <= parts; i++) {
                        double ahead = b.rearM() + (b.frontM() - b.rearM()) * i / parts;
                        for (int side = -1; side <= 1; side++) {
                            double left = side * b.halfWidthM();
                            if (side != 0 || i == 0 || i == parts) {
                                least = Math.min(
                                        least, field.bodyRoomM(x + ahead * c - left * s, z + ahead * s + left * c));
                            }
                        }
                    }
                }
            }
            leastM = Math.min(leastM, least);
            lacking += Math.max(0, 0.1 - least);
            x -= unit.couplingBehindM() * c;
            z -= unit.couplingBehindM() * s;
        }
        sumM += lacking * STEP_M;
        if (limits) {
            overRad = Math.max(overRad, Math.abs(y[2] - y[3]) - combination.steerLimitRad() + 0.001);
            for (int k = 0; k + 1 < combination.chain().size(); k++) {
                overRad = Math.max(overRad,
                        Math.abs(y[3 + k] - y[4 + k]) - combination.articulationLimitRad().get(k) + 0.001);
            }
        }
    }
}
