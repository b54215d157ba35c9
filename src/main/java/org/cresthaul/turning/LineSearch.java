package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.StopSignal;

/**
 * Climbs from one line to a better one: a damped Gauss-Newton method on what is lacking of a wanted room, at every
 * place that lacks it, with the steering's limit and rate as bounds. A line that has the wanted room everywhere has
 * nothing left to climb. The same line gives the same answer.
 */
final class LineSearch {
    private static final int MOST_STEPS = 40;
    /** A step that leaves more than this share of what was lacking is the last. */
    private static final double SLOW = 0.95;

    /** What lacks less of the room wanted has it: trials are no more exact, meters. */
    private static final double NEARLY_M = 0.005;

    private static final double FIRST_DAMPING = 1e-3;
    private static final double LEAST_DAMPING = 1e-5;
    private static final double MOST_DAMPING = 5;
    /** Smoothness of the steering, against meters squared of lack. */
    private static final double SMOOTH = 2e-4;

    /** Bounds that a step would leave hold it by this, against meters squared. */
    private static final double HELD = 1e4;

    private static final double CLOSED = 1e5;
    private static final double BEND_MARGIN_RAD = Math.toRadians(0.3);
    /** So much of the margin may be left to steps that end there. */
    private static final double BEND_SLACK_RAD = Math.toRadians(0.1);
    /** A bend beyond its limit, radians, against meters of lack. */
    private static final double BEND_WEIGHT = 1e4;

    /** A bend nearer to its limit than this may be brought to it by a step. */
    private static final double WATCH_RAD = 0.1;

    /** How often a step is taken anew with what it would take. */
    private static final int MOST_ROUNDS = 12;

    private final StopSignal stop = StopSignal.current();
    private final LineTrial.Setting setting;
    private final SteppedWay way;
    private final double turnRad;
    private final double limitRad;
    private final double ratePerM;

    LineSearch(LineTrial.Setting setting) {
        this.setting = setting;
        way = setting.space().way;
        turnRad = setting.space().turnRad;
        limitRad = setting.combination().steeringLimitRad();
        ratePerM = setting.combination().steeringRatePerM();
    }

    /** A line with what it lacks of the room wanted there. */
    final class Tried {
        final SteeredLine line;
        final double wantedM;
        final double stateM;
        final double lateM;
        /** The line, and where they are asked for, the same begun early and late. */
        final List<LineTrial> trials = new ArrayList<>();

        final List<SteeredLine> lines = new ArrayList<>();
        /** By trial, what lacks room and what nearly does. */
        final List<List<LineTrial.TightPlace>> places = new ArrayList<>();

        double cost;
        int steps;
        double leastM = Double.POSITIVE_INFINITY;

        Tried(SteeredLine line, double wantedM, double lateM, double stateM) {
            this.line = line;
            this.wantedM = wantedM;
            this.lateM = lateM;
            this.stateM = stateM;
            add(line, wantedM);
            if (!way.passesIslandsLike(trials.get(0).track)) {
                cost = Double.POSITIVE_INFINITY;
                leastM = Double.NEGATIVE_INFINITY;
                return;
            }
            if (lateM > 0) {
                for (double late : new double[] {-lateM, lateM}) {
                    Optional<SteeredLine> begun = line.begun(late, limitRad, ratePerM);
                    if (begun.isEmpty()) {
                        cost += 1;
                        leastM = Double.NEGATIVE_INFINITY;
                    } else {
                        add(begun.get(), wantedM);
                    }
                }
            }
        }

        private void add(SteeredLine of, double wantedM) {
            LineTrial trial = new LineTrial(setting, of, stateM);
            List<LineTrial.TightPlace> near = new ArrayList<>();
            trial.places(wantedM, near);
            for (LineTrial.TightPlace place : near) {
                double lack = wantedM - place.freeM;
                cost += lack > 0 ? lack * lack : 0;
                leastM = Math.min(leastM, place.freeM);
            }
            leastM = Math.min(leastM, wantedM + LineTrial.WATCH_M);
            for (LineTrial.Bend bend : trial.bends(BEND_MARGIN_RAD, 0)) {
                cost += BEND_WEIGHT * bend.overRad() * bend.overRad();
                // At its limit a bend takes no room; what is over by more than the margin's share is no way round.
                leastM = bend.overRad() > BEND_SLACK_RAD ? Math.min(leastM, -bend.overRad()) : leastM;
            }
            trials.add(trial);
            lines.add(of);
            places.add(near);
        }

        /** Whether the room that was wanted is there everywhere, as nearly as trials can tell. */
        boolean isEnough() {
            return leastM >= wantedM - NEARLY_M;
        }
    }

    Tried tried(SteeredLine line, double wantedM, double lateM, double stateM) {
        return new Tried(line, wantedM, lateM, stateM);
    }

    /** The best line near another for a wanted room. */
    Tried climb(SteeredLine from, double wantedM, double lateM, double stateM) {
        return climb(from, wantedM, lateM, stateM, Double.POSITIVE_INFINITY);
    }

    /**
     * The same, but given up on when it stays well behind.
     *
     * @param rivalCost what another line lacks
     */
    Tried climb(SteeredLine from, double wantedM, double lateM, double stateM, double rivalCost) {
        Tried at = tried(from, wantedM, lateM, stateM);
        double damping = FIRST_DAMPING;
        for (int step = 0; step < MOST_STEPS && !at.isEnough() && at.cost < Double.POSITIVE_INFINITY; step++) {
            stop.poll();
            List<Demand> demands = demands(at, wantedM);
            double[][] normal = normal(at.line, demands);
            double before = at.cost;
            boolean better = false;
            while (!better && damping <= MOST_DAMPING) {
                Optional<SteeredLine> next = stepped(at.line, normal, demands, damping);
                Tried there = next.map(l -> tried(l, wantedM, lateM, stateM)).orElse(null);
                if (there != null && there.cost < at.cost) {
                    at = there;
                    better = true;
                    damping = Math.max(LEAST_DAMPING, damping / 6);
                } else {
                    damping *= 6;
                }
            }
            boolean behind = step >= 12 && at.cost > 3 * rivalCost;
            if (!better || behind || at.cost > SLOW * before) {
                break;
            }
        }
        return at;
    }

    /**
     * What a step is asked for: {@code row} times the step is at least so much. With less than nothing asked, that is
     * what a step may not take.
     */
    private record Demand(double[] row, double atLeast, double weight) {
        double missing(double[] step) {
            double gained = 0;
            for (int i = 0; i < row.length; i++) {
                gained += row[i] * step[i];
            }
            return atLeast - gained;
        }
    }

    private List<Demand> demands(Tried at, double wantedM) {
        int n = 1 + at.line.free();
        LineTrial first = at.trials.get(0);
        LineSensitivity moves = new LineSensitivity(first, setting.combination(), at.line, setting.runInM());
        List<Demand> demands = new ArrayList<>();
        for (int t = 0; t < at.trials.size(); t++) {
            LineTrial trial = at.trials.get(t);
            LineSensitivity of = t == 0
                    ? moves
                    : trial.track.size() == first.track.size()
                            ? moves.at(trial)
                            : new LineSensitivity(trial, setting.combination(), at.lines.get(t), setting.runInM());
            for (LineTrial.TightPlace place : at.places.get(t)) {
                double[] row = new double[n];
                of.room(place, row);
                demands.add(new Demand(row, wantedM - place.freeM, 1));
            }
            for (LineTrial.Bend bend : trial.bends(BEND_MARGIN_RAD, WATCH_RAD)) {
                double[] row = new double[n];
                of.bend(bend.coupling(), bend.state(), row);
                double sign = Math.signum(trial.track.articulationRad(bend.state(), bend.coupling()));
                for (int m = 0; m < n; m++) {
                    row[m] *= -sign;
                }
                demands.add(new Demand(row, bend.overRad(), BEND_WEIGHT));
            }
        }
        return demands;
    }

    /** The normal equations of all that lacks: a square, and what is asked for in its last column. */
    private double[][] normal(SteeredLine line, List<Demand> demands) {
        int n = 1 + line.free();
        double[][] normal = new double[n][n + 1];
        for (Demand demand : demands) {
            if (demand.atLeast > 0) {
                add(normal, demand.row, demand.atLeast, demand.weight);
            }
        }
        double[] row = new double[n];
        double[] steer = line.steerRad;
        for (int m = 1; m < n; m++) {
            Arrays.fill(row, 0);
            row[m] = -2;
            if (m > 1) {
                row[m - 1] = 1;
            }
            if (m + 1 < n) {
                row[m + 1] = 1;
            }
            add(normal, row, -(steer[m - 1] - 2 * steer[m] + steer[m + 1]), SMOOTH);
        }
        for (int m = 1; m < n; m++) {
            row[m] = Math.cos(steer[m]);
        }
        row[0] = 0;
        double size = line.spacingM / setting.combination().chain().get(0).hitchToAxleM();
        add(normal, row, 0, CLOSED * size * size);
        return normal;
    }

    private static void add(double[][] normal, double[] row, double wanted, double weight) {
        int n = row.length;
        for (int i = 0; i < n; i++) {
            double wi = weight * row[i];
            if (wi == 0) {
                continue;
            }
            for (int j = i; j < n; j++) {
                normal[i][j] += wi * row[j];
            }
            normal[i][n] += wi * wanted;
        }
    }

    /** One step, those bounds held that it would leave, and what it would take kept. */
    private Optional<SteeredLine> stepped(SteeredLine line, double[][] normal, List<Demand> demands, double damping) {
        int n = normal.length;
        double most = ratePerM * line.spacingM;
        double[][] held = new double[n][];
        for (int i = 0; i < n; i++) {
            held[i] = normal[i].clone();
        }
        double[] step = null;
        double[] row = new double[n];
        List<Demand> watched = new ArrayList<>(demands);
        watched.removeIf(d -> d.atLeast > 0);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            step = DampedSquare.solve(held, damping);
            boolean left = false;
            for (Iterator<Demand> each = watched.iterator(); each.hasNext(); ) {
                Demand demand = each.next();
                if (demand.missing(step) > 0) {
                    add(held, demand.row, demand.atLeast, demand.weight);
                    each.remove();
                    left = true;
                }
            }
            for (int m = 1; m < n; m++) {
                double over = beyond(line.steerRad[m] + step[m], limitRad);
                if (Math.abs(over) > 1e-6) {
                    Arrays.fill(row, 0);
                    row[m] = 1;
                    add(held, row, step[m] - over, HELD);
                    left = true;
                }
                double last = m > 1 ? line.steerRad[m - 1] + step[m - 1] : 0;
                over = beyond(line.steerRad[m] + step[m] - last, most);
                if (Math.abs(over) > 1e-6) {
                    Arrays.fill(row, 0);
                    row[m] = 1;
                    if (m > 1) {
                        row[m - 1] = -1;
                    }
                    add(held, row, step[m] - (m > 1 ? step[m - 1] : 0) - over, HELD);
                    left = true;
                }
            }
            if (!left) {
                break;
            }
        }
        double[] angles = line.steerRad.clone();
        for (int m = 1; m < n; m++) {
            angles[m] += step[m];
        }
        return SteeredLine.closed(line.moved(0, step[0]).steered(angles), turnRad, limitRad, ratePerM);
    }

    private static double beyond(double value, double most) {
        return value > most ? value - most : value < -most ? value + most : 0;
    }
}
