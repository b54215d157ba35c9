package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.route.LowStructure.Measured;
import org.cresthaul.route.OverheadWire;
import org.cresthaul.units.Length;

/**
 * What a wire over the road asks beyond a structure: a distance in every direction, and to know how low it may hang.
 */
final class OverWires {
    private OverWires() {}

    /** The same surroundings, with the distance kept and with what is not known about the wire. */
    static Surroundings of(OverheadWire wire, Surroundings under) {
        if (!wire.isSurveyed()) {
            return under;
        }
        List<Sentence> limits = new ArrayList<>(under.limits());
        if (!wire.isDistanceKnown()) {
            limits.add(Sentence.of(Code.WHY_VOLTAGE));
        }
        if (wire.height().measured() == Measured.SURVEYED && !wire.isLowest()) {
            limits.add(Sentence.of(Code.WHY_WIRE_LOWER));
        }
        List<String> notes = new ArrayList<>(under.notes());
        notes.add(distance(wire));
        return new Surroundings(
                under.lines(),
                under.lanes(),
                under.judgesGround(),
                under.surveyM(),
                under.structureM(),
                under.sagM(),
                wire.gapM(),
                List.copyOf(limits),
                under.terms(),
                List.copyOf(notes));
    }

    private static String distance(OverheadWire wire) {
        String feet = new Length(wire.keptAwayM()).inFeetAndInches(1);
        if (wire.keepAwayM().isPresent()) {
            return "kept away from the wire: " + feet + ", as its owner asks";
        }
        return switch (wire.carries()) {
            case COMMUNICATION -> "the wire is said to carry no power: no distance beyond the usual margin is kept";
            case POWER, UNKNOWN ->
                "kept away from the wire: " + feet + ", "
                        + (wire.isDistanceKnown() ? "for its voltage" : "its voltage being unknown")
                        + " (29 CFR 1926.1411, Table T, as a default: its owner decides)";
        };
    }
}
