package org.cresthaul.paper;

import java.util.List;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.CheckedRig;
import org.cresthaul.report.CheckedRoute;

/** The foot of every page: which program, which files. */
final class Imprint {
    /** Enough of a hash to tell files apart; the whole stands under Inputs. */
    private static final int SHORT = 16;

    private Imprint() {}

    static List<String> of(String version, CheckedRoute route, CheckedRig rig, Catalog catalog) {
        return List.of(
                Sentence.of(Code.IMPRINT_PROGRAM).with("version", version).in(catalog),
                Sentence.of(Code.IMPRINT_ROUTE)
                        .with("hash", shortened(route.sha256()))
                        .in(catalog),
                Sentence.of(Code.IMPRINT_RIG)
                        .with("hash", shortened(rig.sha256()))
                        .in(catalog),
                catalog.text(Code.IMPRINT_WARRANTY));
    }

    private static Sentence shortened(String sha256) {
        return sha256 == null
                ? Sentence.of(Code.IMPRINT_NO_FILE)
                : Sentence.verbatim(sha256.substring(0, Math.min(SHORT, sha256.length())));
    }
}
