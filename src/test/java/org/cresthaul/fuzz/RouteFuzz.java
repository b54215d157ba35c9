package org.cresthaul.fuzz;

import com.networknt.schema.Schema;
import java.util.Optional;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.InputRejected;

/** Route files: refused with help, or taken, kept to by the schema and judged with sense for a small rig. */
public final class RouteFuzz {
    private static final Schema SCHEMA = Reading.schema("route-1");

    private RouteFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) {
        Optional<Route> read = read(data);
        if (read.isPresent() && FuzzedDocument.isJudged(data)) {
            Reading.requireSense(
                    read.get(), SmallFiles.RIG, SmallFiles.RIG.stances().get(0));
        }
    }

    /** Reads and judges nothing; empty where it is refused. */
    static Optional<Route> read(byte[] data) {
        String document = FuzzedDocument.of(data, RouteTexts.ROUTE);
        try {
            Route route = RouteFile.parse(document);
            Reading.requireSound(SCHEMA, document);
            return Optional.of(route);
        } catch (InputRejected e) {
            FuzzedDocument.requireHelp(e);
            return Optional.empty();
        }
    }
}
