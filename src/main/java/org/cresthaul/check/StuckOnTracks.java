package org.cresthaul.check;

import java.util.Optional;

/** What to do when stuck on a rail crossing: people first, in one order and the same words wherever it is said. */
public final class StuckOnTracks {
    /** First of all. */
    public static final String PEOPLE =
            "Stuck on the tracks: get everyone out and away from the tracks. Move toward the"
                    + " oncoming train at an angle away from the rails.";

    private StuckOnTracks() {}

    /** Then the railroad, then the emergency number. */
    public static String call(Optional<String> crossingNumber) {
        return "Then call the number on the blue sign and give the crossing number"
                + crossingNumber.map(n -> ", " + n).orElse("") + "; then call 911.";
    }

    /** Both, in this order. */
    public static String caution(Optional<String> crossingNumber) {
        return PEOPLE + " " + call(crossingNumber);
    }
}
