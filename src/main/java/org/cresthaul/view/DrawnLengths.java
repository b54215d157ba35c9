package org.cresthaul.view;

import org.cresthaul.units.Rounding;

/** Lengths in a drawing, to 0.1 mm: rounded where the drawing is made, since nothing is judged from one. */
final class DrawnLengths {
    private DrawnLengths() {}

    /** For clearances. */
    static double down(double meters) {
        return Rounding.LENGTH_DOWN.of(meters);
    }

    /** For how far something encroaches. */
    static double up(double meters) {
        return Rounding.LENGTH_UP.of(meters);
    }

    /** For places. */
    static double near(double meters) {
        return Rounding.LENGTH_NEAR.of(meters);
    }
}
