package org.cresthaul.units;

/**
 * How fine a figure is written, and to which side: never to the one that looks safer. What is a whole step but for the
 * noise of binary fractions stays that step.
 */
public enum Rounding {
    /** Clearances and whatever is left of something, to 0.1 mm. */
    LENGTH_DOWN(10_000, Side.DOWN, 1e-6),
    /** Uncertainties, needs and how far something swings, to 0.1 mm. */
    LENGTH_UP(10_000, Side.UP, 1e-6),
    /** Places, to 0.1 mm. */
    LENGTH_NEAR(10_000, Side.NEAR, 0),
    /** Limits as they are declared, to the micrometer: nothing is told beyond them. */
    LIMIT_NEAR(1_000_000, Side.NEAR, 0),
    /** How far one must see, to 0.1 m. */
    SIGHT_UP(10, Side.UP, 1e-6),
    /** Loads, to 0.1 kg. */
    MASS_NEAR(10, Side.NEAR, 0),
    /** What is left to a limit, to 0.1 kg. */
    MASS_DOWN(10, Side.DOWN, 1e-5),
    /** Angles, to 0.01 mrad. */
    ANGLE_NEAR(100_000, Side.NEAR, 0),
    /** How far a coupling is bent, to 0.1 mrad. */
    BEND_NEAR(10_000, Side.NEAR, 0),
    /** The most one may drive, to 1 mm/s. */
    SPEED_DOWN(1000, Side.DOWN, 1e-6),
    /** How long something takes, to 0.1 s. */
    TIME_UP(10, Side.UP, 1e-6),
    /** How much time is left, to 0.1 s. */
    TIME_DOWN(10, Side.DOWN, 1e-6);

    private enum Side {
        DOWN,
        UP,
        NEAR
    }

    private final double stepsPerUnit;
    private final Side side;
    /** In steps. */
    private final double hair;

    Rounding(double stepsPerUnit, Side side, double hair) {
        this.stepsPerUnit = stepsPerUnit;
        this.side = side;
        this.hair = hair;
    }

    /** As it is written; never a negative zero. What is not finite stays what it is. */
    public double of(double value) {
        double steps = value * stepsPerUnit;
        double whole =
                switch (side) {
                    case DOWN -> Math.floor(steps + hair);
                    case UP -> Math.ceil(steps - hair);
                    case NEAR -> Math.rint(steps);
                };
        return (whole == 0 ? 0.0 : whole) / stepsPerUnit;
    }
}
