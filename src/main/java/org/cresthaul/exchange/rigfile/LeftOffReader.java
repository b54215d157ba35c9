package org.cresthaul.exchange.rigfile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LeftOff;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;

/** Reads which units of a stance may be left off, and holds them to what that asks for: {@link LeftOff}. */
final class LeftOffReader {
    static final String IN = "in";
    static final String OUT = "out";

    private LeftOffReader() {}

    /** Whether a jeep's optional {@code states} say that the combination also runs without it. */
    static boolean mayBeLeftOff(JsonFields jeep) {
        return mayBeLeftOff(jeep, "a jeep", IN, OUT);
    }

    /** The states of a booster behind another: trailing, and left off where {@code states} says so. */
    static Set<BoosterState> boosterBehind(JsonFields booster) {
        return mayBeLeftOff(booster, "a booster behind another", BoosterState.TRAILING.word(), BoosterState.NONE.word())
                ? EnumSet.of(BoosterState.NONE, BoosterState.TRAILING)
                : EnumSet.of(BoosterState.TRAILING);
    }

    private static boolean mayBeLeftOff(JsonFields unit, String what, String coupled, String off) {
        Optional<List<JsonNode>> items = unit.findItems("states", 1, 2);
        if (items.isEmpty() || items.get().isEmpty()) {
            return false;
        }
        Set<String> states = new HashSet<>();
        for (int i = 0; i < items.get().size(); i++) {
            String state = items.get().get(i).asText();
            String at = unit.pointer("states") + "/" + i;
            if (!items.get().get(i).isTextual() || !List.of(coupled, off).contains(state)) {
                unit.problems()
                        .add(
                                "unknown-word",
                                "This is not a state of " + what + ".",
                                at,
                                "It must be one of: " + coupled + ", " + off + ".");
            } else if (!states.add(state)) {
                unit.problems()
                        .add("state-twice", "The state \"" + state + "\" is listed twice.", at, "Keep one of them.");
            }
        }
        if (states.equals(Set.of(off))) {
            unit.problem(
                    "states",
                    "never-coupled",
                    "This unit never runs: its only state is \"" + off + "\".",
                    "Add \"" + coupled + "\", or leave the unit out of the stance.");
        }
        return states.contains(off);
    }

    /** Units come off from the rear, and a jeep only where the next kingpin then stands as high as before. */
    static void requireFromRear(JsonFields stance, Tractor tractor, List<Jeep> jeeps, List<Booster> behind) {
        requireFromRear(stance, "jeeps", jeeps.stream().map(Jeep::mayBeLeftOff).toList(), 1, OUT);
        requireFromRear(
                stance,
                "boostersBehind",
                behind.stream().map(b -> b.states().contains(BoosterState.NONE)).toList(),
                2,
                BoosterState.NONE.word());
        FramePoint ahead = tractor.fifthWheel();
        for (int i = 0; i < jeeps.size(); i++) {
            Jeep jeep = jeeps.get(i);
            if (jeep.mayBeLeftOff() && Math.abs(ahead.hM() - jeep.fifthWheel().hM()) > LeftOff.SAME_HEIGHT_M) {
                stance.problems()
                        .add(
                                "other-height",
                                "Without " + UnitName.jeep(i + 1).told()
                                        + " the next kingpin would not be as high as it was measured: its fifth wheel"
                                        + " and the one ahead are not equally high.",
                                stance.pointer("jeeps") + "/" + i + "/states",
                                "Leave \"out\" out, and measure the combination without it as a stance of its own.");
            }
            ahead = jeep.fifthWheel();
        }
    }

    /** Without the jeeps that may be left off too no unit reaches past the one ahead: see {@link Couplings}. */
    static void requireUnitsApart(
            JsonFields stance, Tractor tractor, List<Jeep> jeeps, Trailer trailer, Optional<Booster> booster) {
        for (int staying = jeeps.size() - 1; staying >= 0 && jeeps.get(staying).mayBeLeftOff(); staying--) {
            Couplings.requireUnitsApart(stance, tractor, jeeps.subList(0, staying), trailer, booster);
        }
    }

    private static void requireFromRear(
            JsonFields stance, String key, List<Boolean> mayBeLeftOff, int firstNumber, String off) {
        for (int i = 0; i + 1 < mayBeLeftOff.size(); i++) {
            if (mayBeLeftOff.get(i) && !mayBeLeftOff.get(i + 1)) {
                String kind = firstNumber == 1 ? "jeep " : "booster ";
                stance.problems()
                        .add(
                                "not-from-rear",
                                "This unit may be left off, but " + kind + (i + 1 + firstNumber)
                                        + " behind it may not.",
                                stance.pointer(key) + "/" + i + "/states",
                                "Add \"" + off + "\" to the states of that one, or give what runs as a stance of its"
                                        + " own.");
            }
        }
    }
}
