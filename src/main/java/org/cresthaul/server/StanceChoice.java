package org.cresthaul.server;

import java.util.Optional;
import java.util.stream.Collectors;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;

/**
 * Which stance of a rig is checked, and with which of its units: the one named, else "loaded", else the only one there
 * is.
 */
public final class StanceChoice {
    /** Code of the problem when none can be chosen. */
    public static final String CODE = "unknown-stance";
    /** Remedy of that problem. */
    public static final String REMEDY = "Name one of them.";

    private static final String USUAL = "loaded";

    private StanceChoice() {}

    /** Empty when the rig has no such stance, or several and none is named. */
    public static Optional<LevelStance> of(Rig rig, Optional<String> name) {
        String wanted = name.orElse(USUAL);
        Optional<LevelStance> found =
                rig.combinations().stream().filter(s -> s.name().equals(wanted)).findFirst();
        return found.isEmpty() && name.isEmpty() && rig.stances().size() == 1
                ? Optional.of(rig.stances().get(0))
                : found;
    }

    /** Why {@link #of} found none. */
    public static String message(Rig rig, Optional<String> name) {
        String known =
                rig.combinations().stream().map(s -> "\"" + s.name() + "\"").collect(Collectors.joining(", "));
        return name.map(n -> "The rig has no stance \"" + n + "\"; it has " + known + ".")
                .orElse("The rig has several stances and none is called \"" + USUAL + "\"; it has " + known + ".");
    }
}
