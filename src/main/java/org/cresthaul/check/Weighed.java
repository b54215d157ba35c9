package org.cresthaul.check;

import org.cresthaul.units.Rounding;

/** Loads in a drawing, to 0.1 kg. */
public final class Weighed {
    private Weighed() {}

    public static double near(double kilograms) {
        return Rounding.MASS_NEAR.of(kilograms);
    }
}
