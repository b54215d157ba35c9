package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.units.Problems;

/**
 * The routes and rigs that were read last, by the hash of their bytes: a page sends both with every question, and most
 * of reading a route is drawing its corners from their templates. Only sound ones are kept. Safe to share.
 */
final class KeptDocuments {
    private static final int MOST = 8;

    private final LastMade<String, Route> routes = new LastMade<>(MOST);
    private final LastMade<String, Rig> rigs = new LastMade<>(MOST);

    /** As {@link RouteFile#read}. */
    Optional<Route> route(JsonNode node, String pointer, Optional<String> sha256, Problems problems) {
        return sha256.flatMap(routes::find).or(() -> {
            Optional<Route> read = RouteFile.read(node, pointer, problems);
            read.ifPresent(r -> sha256.ifPresent(h -> routes.keep(h, r)));
            return read;
        });
    }

    /** As {@link RigFile#read}. */
    Optional<Rig> rig(JsonNode node, String pointer, Optional<String> sha256, Problems problems) {
        return sha256.flatMap(rigs::find).or(() -> {
            Optional<Rig> read = RigFile.read(node, pointer, problems);
            read.ifPresent(r -> sha256.ifPresent(h -> rigs.keep(h, r)));
            return read;
        });
    }

    /** What was read elsewhere. A route with the limits of another file is not the one of its own. */
    void keep(Haul haul, Inputs inputs) {
        rigs.keep(inputs.rigSha256(), haul.rig());
        if (inputs.limitsSha256().isEmpty()) {
            routes.keep(inputs.routeSha256(), haul.route());
        }
    }
}
