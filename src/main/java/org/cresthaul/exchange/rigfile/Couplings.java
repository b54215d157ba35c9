package org.cresthaul.exchange.rigfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;
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

    /**
     * Tires of neighbors with a jeep among them are not looked at against each other; so far apart they cannot meet.
     */
    static final double TIRES_APART_M = 0.15;

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

    /**
     * Of the hinge that holds the next booster, in the frame of the one ahead.
     *
     * @param lastAxleXM NaN when not known
     */
    static void requireNextHinge(JsonFields hinge, FramePoint at, double ownHingeXM, double lastAxleXM) {
        requireHeight(hinge, at, "The hinge of the booster behind");
        if (at.xM() >= ownHingeXM) {
            hinge.problem(
                    "x",
                    "order",
                    "The hinge of the booster behind is not behind the booster's own hinge.",
                    "x runs forward: give the own hinge the larger x.");
        }
        if (at.xM() < lastAxleXM - HINGE_BEHIND_AXLES_M) {
            hinge.problem(
                    "x",
                    "order",
                    "The hinge of the booster behind is more than 8 m behind the booster's last axle.",
                    "Give its x in the booster's frame, at its rear end.");
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

    /** A unit as it stands coupled and straight, x in the tractor's frame. */
    private record Standing(
            String pointer,
            String what,
            double firstAxleXM,
            double lastAxleXM,
            double firstTireXM,
            double lastTireXM,
            double frontXM,
            double rearXM) {
        static Standing of(String pointer, String what, double shiftM, AxleGroup axles, List<Outline> drawn) {
            double front = Double.NEGATIVE_INFINITY;
            double rear = Double.POSITIVE_INFINITY;
            for (Outline outline : drawn) {
                front = Math.max(front, outline.frontXM());
                rear = Math.min(rear, outline.rearXM());
            }
            Axle first = axles.axles().get(0);
            Axle last = axles.axles().get(axles.axles().size() - 1);
            double lastTireXM = last.xM() - last.radiusM();
            return new Standing(
                    pointer,
                    what,
                    first.xM() + shiftM,
                    last.xM() + shiftM,
                    first.xM() + first.radiusM() + shiftM,
                    lastTireXM + shiftM,
                    front + shiftM,
                    Math.min(rear, lastTireXM) + shiftM);
        }
    }

    /**
     * Coupled and straight, every axle of a unit stands behind every axle of the unit ahead, and no unit reaches past
     * the one ahead of it to the next: only neighbors are looked at for striking each other.
     */
    static void requireUnitsApart(
            JsonFields stance, Tractor tractor, List<Jeep> jeeps, Trailer trailer, Optional<Booster> booster) {
        List<Standing> units = new ArrayList<>();
        units.add(Standing.of(
                stance.pointer("tractor"),
                "the tractor",
                0,
                tractor.drive(),
                List.of(tractor.underside(), tractor.topside())));
        double fifthWheelXM = tractor.fifthWheel().xM();
        for (int i = 0; i < jeeps.size(); i++) {
            Jeep jeep = jeeps.get(i);
            double shiftM = fifthWheelXM - jeep.kingpinXM();
            units.add(Standing.of(
                    stance.pointer("jeeps") + "/" + i,
                    UnitName.jeep(i + 1).told(),
                    shiftM,
                    jeep.axles(),
                    List.of(jeep.underside(), jeep.topside())));
            fifthWheelXM = shiftM + jeep.fifthWheel().xM();
        }
        List<Outline> drawn = new ArrayList<>(trailer.load());
        drawn.add(trailer.underside());
        drawn.add(trailer.topside());
        booster.flatMap(Booster::carried).ifPresent(drawn::add);
        units.add(Standing.of(
                stance.pointer("trailer"), "the trailer", fifthWheelXM - trailer.kingpinXM(), trailer.axles(), drawn));
        for (int k = 1; k < units.size(); k++) {
            Standing unit = units.get(k);
            Standing ahead = units.get(k - 1);
            if (unit.firstAxleXM >= ahead.lastAxleXM) {
                stance.problems()
                        .add(
                                "axle-order",
                                "Coupled, the first axle of " + unit.what + " is not behind the last axle of "
                                        + ahead.what + ".",
                                unit.pointer,
                                "Check the x of fifth wheels, kingpins and axles, each in its own unit's frame.");
            } else if (!jeeps.isEmpty() && unit.firstTireXM > ahead.lastTireXM - TIRES_APART_M) {
                stance.problems()
                        .add(
                                "tires-near",
                                "Coupled, the first tires of " + unit.what + " are not 15 cm behind the last ones of "
                                        + ahead.what + ": whether they meet is not computed.",
                                unit.pointer,
                                "Check the x of fifth wheels, kingpins and axles, each in its own unit's frame.");
            } else if (k > 1 && unit.frontXM >= units.get(k - 2).rearXM) {
                stance.problems()
                        .add(
                                "reach",
                                "Coupled, " + unit.what + " reaches past " + ahead.what + " to " + units.get(k - 2).what
                                        + ": whether those two strike each other is not computed.",
                                unit.pointer,
                                "Check the x of fifth wheels and kingpins, and how far the outlines reach.");
            }
        }
    }

    /**
     * Trailing, every axle of a booster stands behind every axle of the unit ahead; and where boosters stand behind a
     * booster, none reaches past the one ahead of it to the next, nor do tires of two of them come near each other.
     *
     * @param boosters front to rear, as many as could be read
     */
    static void requireBoostersApart(JsonFields stance, Trailer trailer, List<Booster> boosters) {
        if (boosters.isEmpty() || trailer.boosterHinge().isEmpty()) {
            return;
        }
        List<Outline> drawn = new ArrayList<>(trailer.load());
        drawn.add(trailer.underside());
        drawn.add(trailer.topside());
        List<Standing> units = new ArrayList<>();
        units.add(Standing.of(stance.pointer("trailer"), "the trailer", 0, trailer.axles(), drawn));
        double hingeXM = trailer.boosterHinge().get().xM();
        for (int i = 0; i < boosters.size(); i++) {
            Booster booster = boosters.get(i);
            double shiftM = hingeXM - booster.hingeXM();
            units.add(Standing.of(
                    i == 0 ? stance.pointer("booster") : stance.pointer("boostersBehind") + "/" + (i - 1),
                    UnitName.booster(i + 1).told(),
                    shiftM,
                    booster.axles(),
                    List.of(booster.underside(), booster.topside())));
            hingeXM = shiftM + booster.nextHinge().map(h -> h.at().xM()).orElse(Double.NaN);
        }
        for (int k = 1; k < units.size(); k++) {
            requireBoosterApart(stance, units, k);
        }
    }

    private static void requireBoosterApart(JsonFields stance, List<Standing> units, int k) {
        Standing unit = units.get(k);
        Standing ahead = units.get(k - 1);
        if (unit.firstAxleXM >= ahead.lastAxleXM) {
            stance.problems()
                    .add(
                            "axle-order",
                            k == 1
                                    ? "Trailing, the booster's axle is not behind the trailer's axles."
                                    : "Trailing, the first axle of " + unit.what + " is not behind the last axle of "
                                            + ahead.what + ".",
                            unit.pointer,
                            "Check the x of the "
                                    + (k == 1
                                            ? "trailer's hinge, and of hinge and axle of the booster."
                                            : "hinges and axles, each in its own unit's frame."));
        } else if (k > 1 && unit.firstTireXM > ahead.lastTireXM - TIRES_APART_M) {
            stance.problems()
                    .add(
                            "tires-near",
                            "Trailing, the first tires of " + unit.what + " are not 15 cm behind the last ones of "
                                    + ahead.what + ": whether they meet is not computed.",
                            unit.pointer,
                            "Check the x of the hinges and axles, each in its own unit's frame.");
        } else if (k > 1 && unit.frontXM >= units.get(k - 2).rearXM) {
            stance.problems()
                    .add(
                            "reach",
                            "Trailing, " + unit.what + " reaches past " + ahead.what + " to " + units.get(k - 2).what
                                    + ": whether those two strike each other is not computed.",
                            unit.pointer,
                            "Check the x of the hinges, and how far the outlines reach.");
        }
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
