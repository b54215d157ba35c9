package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.locationtech.jts.geom.Polygon;

/**
 * The search behind {@link CornerFit}: over radius, swing in, swing out, offset in, and a fifth measure that lays the line
 * along the road. One search answers one question on one thread.
 */
final class CornerSearch {
    /** How many of the grid's places are looked into. */
    private static final int SEEDS = 5;

    private static final double LAST_STEP = 0.04;

    private final StopSignal stop = StopSignal.current();
    private final CornerSpace space;
    private final TurningCombination combination;
    private final double enoughM;
    private final double[] least;
    private final double[] most;
    /** Whether the fifth measure is the offset on the exit; on a nearly parallel exit it is the start instead. */
    private final boolean byExit;

    private final double turnSin;

    private record Found(double[] at, double clearanceM) {}

    CornerSearch(CornerSpace space, TurningCombination combination, double enoughM) {
        this.space = space;
        this.combination = combination;
        this.enoughM = enoughM;
        Corner corner = space.corner;
        turnSin = Math.sin(corner.exit().headingRad() - corner.approach().headingRad());
        byExit = Math.abs(turnSin) > CornerLine.NEARLY_PARALLEL;
        double tightest = 1.02 / combination.tightestPerM();
        double[] in = offsets(corner.approach());
        double[] out = offsets(corner.exit());
        boolean round = Math.abs(corner.turnRad()) < Math.toRadians(20)
                || Math.abs(corner.turnRad()) > Math.toRadians(150)
                || corner.pavement().getNumGeometries() == 1
                        && corner.pavement() instanceof Polygon p
                        && p.getNumInteriorRing() > 0;
        double swing = Math.toRadians(round ? 75 : 30);
        least = new double[] {tightest, 0, 0, in[0], byExit ? out[0] : -45};
        most = new double[] {Math.max(60, 2.5 * tightest), swing, swing, in[1], byExit ? out[1] : 5};
    }

    private double[] offsets(RoadEnd end) {
        double half = combination.units().get(0).tyres().get(0).halfWidthM();
        double lo = -space.rightM(end) + half;
        double hi = space.leftM(end) - half;
        return lo <= hi ? new double[] {lo, hi} : new double[] {0.5 * (lo + hi), 0.5 * (lo + hi)};
    }

    CornerFit best(double hopelessM) {
        List<Found> seeds = new ArrayList<>();
        double bar = Double.NEGATIVE_INFINITY;
        for (double radius : radii()) {
            // Gentle lines come first: the first that leaves enough room is taken.
            for (double in : steps(least[1], most[1], 4)) {
                for (double out : steps(least[2], most[2], 4)) {
                    double[] shape = {radius, in, out, 0, 0};
                    if (bar >= enoughM) {
                        break;
                    }
                    LineTrial trial = trial(shape);
                    Found found = bestPlace(trial, shape, bar - 1.0);
                    if (found != null) {
                        seeds.add(found);
                        seeds.sort(Comparator.comparingDouble(f -> -f.clearanceM));
                        if (seeds.size() > SEEDS) {
                            seeds.remove(SEEDS);
                        }
                        bar = seeds.get(0).clearanceM;
                    }
                }
            }
        }
        Found best = seeds.isEmpty() || seeds.get(0).clearanceM >= hopelessM ? null : seeds.get(0);
        boolean hopeless = best != null;
        for (Found seed : seeds) {
            if (!hopeless && (best == null || best.clearanceM < enoughM)) {
                Found near = climb(seed, 1, 0.25);
                Found found = best == null || near.clearanceM > best.clearanceM - 0.05 ? climb(near, 0.25, LAST_STEP) : near;
                best = best == null || found.clearanceM > best.clearanceM ? found : best;
            }
        }
        double[] at = best != null
                ? best.at
                : new double[] {least[0], 0, 0, 0.5 * (least[3] + most[3]), 0.5 * (least[4] + most[4])};
        CornerLine line = line(trial(at), at);
        return CornerFit.judge(space, combination, line);
    }

    private double[] radii() {
        double[] radii = new double[7];
        for (int i = 0; i < radii.length; i++) {
            radii[i] = most[0] * Math.pow(least[0] / most[0], i / (radii.length - 1.0));
        }
        return radii;
    }

    private static double[] steps(double from, double to, int count) {
        double[] steps = new double[to > from ? count : 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = steps.length == 1 ? from : from + (to - from) * i / (steps.length - 1);
        }
        return steps;
    }

    private LineTrial trial(double[] at) {
        return new LineTrial(space, combination, new CornerLine(at[0], at[1], at[2], 0, 0));
    }

    private Found bestPlace(LineTrial trial, double[] shape, double bar) {
        double[] best = null;
        double most4 = bar;
        double reach = byExit ? 0.6 : 4;
        int across = (int) Math.max(3, Math.min(9, (most[3] - least[3]) / 0.6 + 1));
        int along = (int) Math.max(3, Math.min(byExit ? 9 : 24, (most[4] - least[4]) / reach + 1));
        for (double in : steps(least[3], most[3], across)) {
            for (double place : steps(least[4], most[4], along)) {
                double[] at = {shape[0], shape[1], shape[2], in, place};
                double clearance = clearance(trial, at, most4);
                if (clearance > most4) {
                    most4 = clearance;
                    best = at;
                }
            }
        }
        return best == null ? null : new Found(best, most4);
    }

    /** Lays the trial's shape so that it has the offsets wanted. */
    private CornerLine line(LineTrial trial, double[] at) {
        double start = at[4];
        if (byExit) {
            CornerLine zero = new CornerLine(at[0], at[1], at[2], at[3], 0);
            double out = offsetOut(trial, zero);
            // Moving the start on by one moves the exit's offset by the sine between the roads.
            start = (out - at[4]) / turnSin;
        }
        return new CornerLine(at[0], at[1], at[2], at[3], start);
    }

    private double offsetOut(LineTrial trial, CornerLine line) {
        double[] from = from(line);
        return CornerLine.offsetOutM(space.corner, from[0] + trial.endXM, from[1] + trial.endYM);
    }

    private double[] from(CornerLine line) {
        RoadEnd in = space.corner.approach();
        double c = Math.cos(in.headingRad());
        double s = Math.sin(in.headingRad());
        return new double[] {
            in.xM() + line.startM() * c - line.offsetInM() * s, in.yM() + line.startM() * s + line.offsetInM() * c
        };
    }

    private double clearance(LineTrial trial, double[] at, double enough) {
        stop.poll();
        double[] from = from(line(trial, at));
        return Math.min(enoughM, trial.clearanceM(from[0], from[1], enough));
    }

    /** Moves one measure, or two together, as long as that gains room; then halves the steps. */
    private Found climb(Found seed, double from, double until) {
        double[] at = seed.at.clone();
        double reached = seed.clearanceM;
        double[] step = {
            0.12 * at[0], (most[1] - least[1]) / 6, (most[2] - least[2]) / 6, 0.3, byExit ? 0.3 : 2
        };
        LineTrial here = trial(at);
        for (double size = from; size >= until && reached < enoughM; size /= 2) {
            boolean moved = true;
            for (int round = 0; moved && round < 12 && reached < enoughM; round++) {
                moved = false;
                for (int[] way : WAYS) {
                    double[] next = at.clone();
                    boolean shape = false;
                    for (int d = 0; d < 5; d++) {
                        if (way[d] != 0) {
                            next[d] = Math.max(least[d], Math.min(most[d], next[d] + way[d] * size * step[d]));
                            shape |= d < 3 && next[d] != at[d];
                        }
                    }
                    if (Arrays.equals(next, at)) {
                        continue;
                    }
                    LineTrial trial = shape ? trial(next) : here;
                    double clearance = clearance(trial, next, reached);
                    if (clearance > reached + 1e-4) {
                        at = next;
                        reached = clearance;
                        here = trial;
                        moved = true;
                    }
                }
            }
        }
        return new Found(at, reached);
    }

    private static final int[][] WAYS = ways();

    private static int[][] ways() {
        List<int[]> ways = new ArrayList<>();
        // Places first: they need no following.
        for (int a : new int[] {3, 4, 0, 1, 2}) {
            for (int sign = -1; sign <= 1; sign += 2) {
                int[] way = new int[5];
                way[a] = sign;
                ways.add(way);
            }
        }
        int[][] pairs = {{3, 4}, {0, 4}, {0, 3}, {1, 3}, {2, 4}, {1, 2}};
        for (int[] pair : pairs) {
            for (int signs = 0; signs < 4; signs++) {
                int[] way = new int[5];
                way[pair[0]] = (signs & 1) == 0 ? 1 : -1;
                way[pair[1]] = (signs & 2) == 0 ? 1 : -1;
                ways.add(way);
            }
        }
        return ways.toArray(new int[0][]);
    }
}
