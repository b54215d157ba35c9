package org.cresthaul.rig;

import org.cresthaul.units.JsonFields;
import org.cresthaul.units.LengthLimits;

/**
 * What the couplings of a stance are held to. Far outside of these a few millimeters under one wheel throw the unit
 * behind about, or back along the road: no such combination rolls, and no search can follow one.
 */
final class Couplings {
    /** Fifth wheel and hinge stand at some 1.2 m and 0.8 m (common practice, no source). */
    static final double HIGHEST_M = 2.5;

    static final double FIFTH_WHEEL_BEHIND_DRIVE_M = 1.5;
    static final double HINGE_BEHIND_AXLES_M = 8;
    /** By how much notch and hydraulics may turn the trailer about its valve axle, rise over run: some 11 degrees. */
    static final double MOST_TURN = 0.2;

    /** How far plate, ramps or joint may reach: not so far that a frame's end or a cab's back could be hidden by it. */
    static final LengthLimits REACH = new LengthLimits(0, 0.9);

    private Couplings() {}

    /** @param rearDriveXM NaN when not known */
    static void requireFifthWheel(JsonFields wheel, FramePoint at, double rearDriveXM) {
        if (at == null) {
            return;
        }
        requireHeight(wheel, at, "The fifth wheel");
        if (at.xM() < rearDriveXM - FIFTH_WHEEL_BEHIND_DRIVE_M) {
            wheel.problem(
                    "x",
                    "order",
                    "The fifth wheel is more than 1.5 m behind the last drive axle.",
                    "Give its x in the tractor's frame; it lies over the drive axles.");
        }
    }

    /** @param lastAxleXM NaN when not known */
    static void requireHinge(JsonFields hinge, FramePoint at, double lastAxleXM) {
        if (at == null) {
            return;
        }
        requireHeight(hinge, at, "The booster's hinge");
        if (at.xM() < lastAxleXM - HINGE_BEHIND_AXLES_M) {
            hinge.problem(
                    "x",
                    "order",
                    "The booster's hinge is more than 8 m behind the last trailer axle.",
                    "Give its x in the trailer's frame, at the trailer's rear end.");
        }
    }

    private static void requireHeight(JsonFields coupling, FramePoint at, String what) {
        if (at.hM() > HIGHEST_M) {
            coupling.problem(
                    "h",
                    "coupling-height",
                    what + " is higher than 2.5 m above the ground.",
                    "Check the unit of its height.");
        }
    }

    /** Coupled and straight, every axle of a unit stands behind every axle of the unit ahead. */
    static void requireAxlesApart(JsonFields stance, Tractor tractor, Trailer trailer, Booster booster) {
        double firstBehindDrive = tractor.fifthWheel().xM()
                - trailer.kingpinXM()
                + trailer.axles().axles().get(0).xM();
        if (firstBehindDrive >= rearmostXM(tractor.drive())) {
            stance.problem(
                    "trailer",
                    "axle-order",
                    "Coupled, the first trailer axle is not behind the tractor's drive axles.",
                    "Check the x of fifth wheel, kingpin and axles, each in its own unit's frame.");
        }
        if (booster != null && trailer.boosterHinge().isPresent()) {
            double axleXM = trailer.boosterHinge().get().xM()
                    - booster.hingeXM()
                    + booster.axle().xM();
            if (axleXM >= rearmostXM(trailer.axles())) {
                stance.problem(
                        "booster",
                        "axle-order",
                        "Trailing, the booster's axle is not behind the trailer's axles.",
                        "Check the x of the trailer's hinge, and of hinge and axle of the booster.");
            }
        }
    }

    private static double rearmostXM(AxleGroup group) {
        return group.axles().get(group.axles().size() - 1).xM();
    }

    /**
     * The front must not be set so high or low that the trailer stands on end.
     *
     * @param mostM the notch or limit farthest from the reference notch; the others may be NaN when not known
     */
    static void requireTurn(JsonFields trailer, double mostM, double deckFrontXM, double valveXM) {
        double leverM = deckFrontXM - valveXM;
        // Nearer than that it is told already.
        if (leverM >= StanceReader.DECK_FRONT_AHEAD_OF_VALVE_M && mostM > MOST_TURN * leverM) {
            trailer.problem(
                    "deckFront",
                    "turned-too-far",
                    "The notches or the hydraulic raise limit would turn the trailer by more than 20 % about its valve axle.",
                    "Check them, and the places of deck front and valve axle.");
        }
    }
}
