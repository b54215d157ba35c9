package org.cresthaul.check;

import org.cresthaul.geometry.Finite;

/**
 * Spare gaps wanted on top of the uncertainty.
 *
 * @param groundM over the ground, metres
 * @param overheadM under a structure, metres
 * @param sideM in a corner: of tyres to the edge of the pavement, of bodies to obstacles and opposing lanes, metres
 */
public record Margins(double groundM, double overheadM, double sideM) {
    private static final double INCH_M = 0.0254;
    /** A driver keeps within about this of the line that was found. */
    private static final double SIDE_M = 6 * INCH_M;
    /** Far finer than any margin is meant: only the noise of "3 in" as a binary fraction goes. */
    private static final double STEPS_PER_M = 1e9;

    public Margins {
        groundM = plain(Finite.requireAtLeast("groundM", 0, groundM));
        overheadM = plain(Finite.requireAtLeast("overheadM", 0, overheadM));
        sideM = plain(Finite.requireAtLeast("sideM", 0, sideM));
    }

    private static double plain(double metres) {
        return Math.rint(metres * STEPS_PER_M) / STEPS_PER_M;
    }

    /** With the default beside. */
    public Margins(double groundM, double overheadM) {
        this(groundM, overheadM, SIDE_M);
    }

    /**
     * 2 in over the ground, 3 in under a structure and 6 in beside: this program's choice, shown in every report, to be
     * edited.
     */
    public static Margins defaults() {
        return new Margins(2 * INCH_M, 3 * INCH_M, SIDE_M);
    }
}
