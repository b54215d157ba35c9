package org.cresthaul.turning;

/** Places on a path, and the direction there: they are laid in equal steps from a known one on. */
final class PathNodes {
    final double[] x;
    final double[] y;
    /** Cosine and sine of the direction. */
    final double[] c;

    final double[] s;

    PathNodes(int count) {
        x = new double[count];
        y = new double[count];
        c = new double[count];
        s = new double[count];
    }

    /** Straight on. */
    void line(double stepM, int steps, int at) {
        double c = this.c[at];
        double s = this.s[at];
        double x0 = x[at];
        double y0 = y[at];
        for (int i = 1; i <= steps; i++) {
            double d = i * stepM;
            x[at + i] = x0 + d * c;
            y[at + i] = y0 + d * s;
            this.c[at + i] = c;
            this.s[at + i] = s;
        }
    }

    /** Every step is the one before, turned. */
    void arc(double turnRad, double stepM, int steps, int at) {
        double half = Math.sin(0.5 * turnRad);
        double cos = 1 - 2 * half * half;
        double sin = Math.sin(turnRad);
        // Below a hundred-millionth, 1 and half the turn are exact to rounding, and zero is no trouble.
        boolean hardly = Math.abs(turnRad) < 1e-8;
        double ahead = hardly ? stepM : stepM * sin / turnRad;
        double aside = hardly ? 0.5 * stepM * turnRad : stepM * 2 * half * half / turnRad;
        double c = this.c[at];
        double s = this.s[at];
        double px = x[at];
        double py = y[at];
        for (int i = at + 1; i <= at + steps; i++) {
            px += ahead * c - aside * s;
            py += ahead * s + aside * c;
            double turned = cos * c - sin * s;
            s = cos * s + sin * c;
            c = turned;
            x[i] = px;
            y[i] = py;
            this.c[i] = c;
            this.s[i] = s;
        }
    }

    /** Direction from the piece's start, which is turned by at most a quarter radian; positions by Hermite's rule. */
    void clothoid(double c0, double s0, double k0, double rate, double doneM, double stepM, int steps, int at) {
        double halfRate = 0.5 * rate;
        double half = 0.5 * stepM;
        double twelfth = stepM * stepM / 12;
        double k = k0 + 2 * halfRate * doneM;
        double c = this.c[at];
        double s = this.s[at];
        double px = x[at];
        double py = y[at];
        for (int i = 1; i <= steps; i++) {
            double u = doneM + i * stepM;
            double turn = u * (k0 + halfRate * u);
            double cos = cosOfSmall(turn);
            double sin = sinOfSmall(turn);
            double c1 = c0 * cos - s0 * sin;
            double s1 = s0 * cos + c0 * sin;
            double k1 = k0 + 2 * halfRate * u;
            px += half * (c + c1) + twelfth * (k1 * s1 - k * s);
            py += half * (s + s1) - twelfth * (k1 * c1 - k * c);
            x[at + i] = px;
            y[at + i] = py;
            this.c[at + i] = c1;
            this.s[at + i] = s1;
            c = c1;
            s = s1;
            k = k1;
        }
    }

    /** Up to a quarter radian the terms left out are below rounding, of both series. */
    private static double cosOfSmall(double a) {
        double q = a * a;
        return 1 - q * (1.0 / 2 - q * (1.0 / 24 - q * (1.0 / 720 - q * (1.0 / 40_320 - q * (1.0 / 3_628_800)))));
    }

    private static double sinOfSmall(double a) {
        double q = a * a;
        return a * (1 - q * (1.0 / 6 - q * (1.0 / 120 - q * (1.0 / 5040 - q * (1.0 / 362_880)))));
    }
}
