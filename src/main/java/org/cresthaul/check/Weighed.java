package org.cresthaul.check;

/** Rounding of loads in a report to 0.1 kg; what is left to a limit never to the side that looks safer. */
final class Weighed {
    private static final double STEPS_PER_KG = 10;
    private static final double HAIR = 1e-5;

    private Weighed() {}

    static double near(double kilograms) {
        return plain(Math.rint(kilograms * STEPS_PER_KG));
    }

    static double down(double kilograms) {
        return plain(Math.floor(kilograms * STEPS_PER_KG + HAIR));
    }

    private static double plain(double steps) {
        return (steps == 0 ? 0.0 : steps) / STEPS_PER_KG;
    }
}
