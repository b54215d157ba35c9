package org.cresthaul.report;

import org.cresthaul.geometry.Finite;

/**
 * Spare gaps wanted on top of the uncertainty.
 *
 * @param groundM over the ground, meters
 * @param overheadM under a structure, meters
 * @param sideM in a corner: of tires to the edge of the pavement, of bodies to obstacles and opposing lanes, meters
 * @param lineM how far a driver strays to either side of the line that is driven in a corner, meters
 * @param turnInM how early or late a driver turns the wheel there, meters
 * @param unitM between coupled units, meters
 */
public record Margins(double groundM, double overheadM, double sideM, double lineM, double turnInM, double unitM) {
    private static final double INCH_M = 0.0254;
    private static final double SIDE_M = 6 * INCH_M;
    /** How well a line is held at a crawl with a spotter; common practice, no source. */
    private static final double LINE_M = 6 * INCH_M;
    /** How well the place to turn in is met; common practice, no source. */
    private static final double TURN_IN_M = 24 * INCH_M;
    /** Between gooseneck and tractor, booster and trailer: this program's choice, no source. */
    private static final double UNIT_M = INCH_M;
    /** Far finer than any margin is meant: only the noise of "3 in" as a binary fraction goes. */
    private static final double STEPS_PER_M = 1e9;

    public Margins {
        groundM = plain(Finite.requireAtLeast("groundM", 0, groundM));
        overheadM = plain(Finite.requireAtLeast("overheadM", 0, overheadM));
        sideM = plain(Finite.requireAtLeast("sideM", 0, sideM));
        lineM = plain(Finite.requireAtLeast("lineM", 0, lineM));
        turnInM = plain(Finite.requireAtLeast("turnInM", 0, turnInM));
        unitM = plain(Finite.requireAtLeast("unitM", 0, unitM));
    }

    private static double plain(double meters) {
        return Math.rint(meters * STEPS_PER_M) / STEPS_PER_M;
    }

    /** With the defaults beside. */
    public Margins(double groundM, double overheadM) {
        this(groundM, overheadM, SIDE_M);
    }

    /** With the usual driver. */
    public Margins(double groundM, double overheadM, double sideM) {
        this(groundM, overheadM, sideM, LINE_M, TURN_IN_M, UNIT_M);
    }

    /**
     * 2 in over the ground, 3 in under a structure, 6 in beside, a driver within 6 in of the line and 2 ft of the
     * turn-in, 1 in between units: this program's choice, shown in every report, to be edited.
     */
    public static Margins defaults() {
        return new Margins(2 * INCH_M, 3 * INCH_M, SIDE_M);
    }
}
