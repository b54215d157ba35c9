package org.cresthaul.turning;

/**
 * Solves (A + d·diag A) x = b for a symmetric A that is at least nearly positive, by the square root method (Cholesky).
 * A few dozen unknowns, solved thousands of times: hence not a matrix library, whose objects would cost more than the
 * sums.
 */
final class DampedSquare {
    private DampedSquare() {}

    /**
     * @param system rows of A above the diagonal, with it, and b in the last column; left as it is
     * @param damping d, not negative
     */
    static double[] solve(double[][] system, double damping) {
        int n = system.length;
        double[][] root = new double[n][n];
        double[] x = new double[n];
        double largest = 0;
        for (int i = 0; i < n; i++) {
            largest = Math.max(largest, system[i][i]);
        }
        // What nothing depends on stays where it is.
        double floor = 1e-12 * Math.max(largest, 1e-30);
        for (int j = 0; j < n; j++) {
            double diagonal = system[j][j] * (1 + damping) + floor + 1e-6 * damping;
            for (int k = 0; k < j; k++) {
                diagonal -= root[k][j] * root[k][j];
            }
            double pivot = Math.sqrt(Math.max(diagonal, floor));
            root[j][j] = pivot;
            for (int i = j + 1; i < n; i++) {
                double sum = system[j][i];
                for (int k = 0; k < j; k++) {
                    sum -= root[k][j] * root[k][i];
                }
                root[j][i] = sum / pivot;
            }
        }
        for (int i = 0; i < n; i++) {
            double sum = system[i][n];
            for (int k = 0; k < i; k++) {
                sum -= root[k][i] * x[k];
            }
            x[i] = sum / root[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = x[i];
            for (int k = i + 1; k < n; k++) {
                sum -= root[i][k] * x[k];
            }
            x[i] = sum / root[i][i];
        }
        return x;
    }
}
