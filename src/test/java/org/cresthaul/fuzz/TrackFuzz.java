package org.cresthaul.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.RouteImport;
import org.cresthaul.exchange.osm.MapProgress;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.exchange.track.TrackContent;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;

/**
 * Tracks of any kind: refused with help, or made into a route file that reads back and of which nothing is surveyed.
 */
public final class TrackFuzz {
    private TrackFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) {
        try {
            TrackContent content = TrackFile.parse(data, "track");
            RouteImport.Imported imported = RouteImport.of(
                    List.of(content),
                    new RouteImport.Options("", 0.25, 250, List.of(), List.of(), Optional.empty(), MapProgress.UNTOLD));
            Route route = RouteFile.parse(imported.document());
            assertEquals(imported.preview().lengthM(), route.lengthM());
            assertTrue(route.hazards().stream().noneMatch(h -> h.isSurveyed()));
        } catch (InputRejected e) {
            FuzzedDocument.requireHelp(e);
        }
    }
}
