package org.cresthaul.paper;

import java.util.List;
import org.cresthaul.check.Report;

/** The foot of every page: which program, which files. */
final class Imprint {
    /** Enough of a hash to tell files apart; the whole stands under Inputs. */
    private static final int SHORT = 16;

    private Imprint() {}

    static List<String> of(String version, Report.CheckedRoute route, Report.CheckedRig rig) {
        return List.of(
                "Cresthaul " + version,
                "route " + shortened(route.sha256()),
                "rig " + shortened(rig.sha256()),
                "as declared and surveyed, no warranty");
    }

    private static String shortened(String sha256) {
        return sha256 == null ? "not from a file" : sha256.substring(0, Math.min(SHORT, sha256.length()));
    }
}
