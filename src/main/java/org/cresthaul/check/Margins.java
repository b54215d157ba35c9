package org.cresthaul.check;

import org.cresthaul.geometry.Finite;

/**
 * Spare gaps wanted on top of the uncertainty.
 *
 * @param groundM over the ground, metres
 * @param overheadM under a structure, metres
 */
public record Margins(double groundM, double overheadM) {
    private static final double INCH_M = 0.0254;

    public Margins {
        Finite.requireAtLeast("groundM", 0, groundM);
        Finite.requireAtLeast("overheadM", 0, overheadM);
    }

    /** 2 in over the ground and 3 in under a structure: this program's choice, shown in every report, to be edited. */
    public static Margins defaults() {
        return new Margins(2 * INCH_M, 3 * INCH_M);
    }
}
