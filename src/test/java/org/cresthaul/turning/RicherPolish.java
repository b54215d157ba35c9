package org.cresthaul.turning;

import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The last steps to the best line nearby: damped Gauss-Newton steps (K. Levenberg 1944, D. Marquardt 1963) on e to the
 * power of (least − gap) / 2 softness, for every gap, by differences in every node's angle and in the start; softer
 * first, then ever harder, until only the least gaps count.
 */
final class RicherPolish {
    private static final double[] SOFT_M = {0.3, 0.1, 0.03, 0.01};
    private static final double TRY = 1e-4;

    private final TurningCombination combination;
    private final RicherField field;

    RicherPolish(TurningCombination combination, RicherField field) {
        this.combination = combination;
        this.field = field;
    }

    RicherLine better(RicherLine from, int steps) {
        RicherLine line = from;
        for (double soft : SOFT_M) {
            line = polished(line, soft, steps);
        }
        return line;
    }

    private double[] gaps(RicherLine line) {
        return line.steered()
                .map(s -> RicherPassage.gapsM(combination, s, field))
                .orElse(null);
    }

    private RicherLine polished(RicherLine from, double soft, int steps) {
        RicherLine line = from.asSteered();
        double[] gaps = gaps(line);
        double damping = 1;
        for (int i = 0; i < steps && gaps != null && damping < 1e7; i++) {
            double[] values = line.values();
            int n = values.length;
            double least = RicherPassage.leastM(gaps, 0);
            double[] residual = new double[gaps.length];
            for (int j = 0; j < gaps.length; j++) {
                residual[j] = Math.exp((least - gaps[j]) / (2 * soft));
            }
            RealMatrix normal = new Array2DRowRealMatrix(n, n);
            RealVector right = new ArrayRealVector(n);
            double[][] slope = new double[n][];
            for (int k = 0; k < n; k++) {
                double[] moved = values.clone();
                moved[k] += TRY * line.scale(k);
                double[] there = gaps(line.withValues(moved));
                slope[k] = new double[gaps.length];
                for (int j = 0; j < gaps.length && there != null; j++) {
                    // Per unit of the scale, so that angles and places are alike to the damping.
                    slope[k][j] = residual[j] * (gaps[j] - there[j]) / TRY / (2 * soft);
                }
            }
            for (int k = 0; k < n; k++) {
                for (int l = 0; l <= k; l++) {
                    double sum = 0;
                    for (int j = 0; j < gaps.length; j++) {
                        sum += slope[k][j] * slope[l][j];
                    }
                    normal.setEntry(k, l, sum);
                    normal.setEntry(l, k, sum);
                }
                double sum = 0;
                for (int j = 0; j < gaps.length; j++) {
                    sum -= slope[k][j] * residual[j];
                }
                right.setEntry(k, sum);
            }
            double before = RicherPassage.leastM(gaps, soft);
            boolean went = false;
            while (!went && damping < 1e7) {
                RicherLine next = stepped(line, normal, right, damping);
                double[] there = next == null ? null : gaps(next);
                if (there != null && RicherPassage.leastM(there, soft) > before + 1e-6) {
                    line = next;
                    gaps = there;
                    damping = Math.max(1e-3, damping / 4);
                    went = true;
                } else {
                    damping *= 5;
                }
            }
        }
        return line;
    }

    private static RicherLine stepped(RicherLine line, RealMatrix normal, RealVector right, double damping) {
        RealMatrix damped = normal.copy();
        for (int k = 0; k < right.getDimension(); k++) {
            damped.addToEntry(k, k, damping);
        }
        try {
            RealVector step = new CholeskyDecomposition(damped).getSolver().solve(right);
            double[] values = line.values();
            for (int k = 0; k < values.length; k++) {
                values[k] += Math.max(-0.3, Math.min(0.3, step.getEntry(k))) * line.scale(k);
            }
            return line.withValues(values).asSteered();
        } catch (MathRuntimeException singular) {
            return null;
        }
    }
}
