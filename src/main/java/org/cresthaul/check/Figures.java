package org.cresthaul.check;

/** Rounding of lengths in a report to 0.1 mm, never to the side that looks safer. */
final class Figures {
    private static final double STEPS_PER_M = 10_000;
    /** What is a whole step but for rounding noise stays that step. */
    private static final double HAIR = 1e-6;

    private Figures() {}

    /** Down: for clearances. */
    static double down(double meters) {
        return plain(Math.floor(meters * STEPS_PER_M + HAIR));
    }

    /** Up: for uncertainties, demands and raises. */
    static double up(double meters) {
        return plain(Math.ceil(meters * STEPS_PER_M - HAIR));
    }

    /** Nearest: for places. */
    static double near(double meters) {
        return plain(Math.rint(meters * STEPS_PER_M));
    }

    /** To the micrometer: for limits as they are declared, which nothing may be told beyond. */
    static double exact(double meters) {
        return Math.rint(meters * 1e6) / 1e6;
    }

    private static double plain(double steps) {
        return (steps == 0 ? 0.0 : steps) / STEPS_PER_M;
    }
}
