package org.cresthaul.check;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;

/**
 * A sample route and a sample rig in its first stance, checked once with the usual margins for all tests that ask about
 * them.
 */
public record SampleHaul(Route route, Rig rig, LevelStance stance, Margins margins, Report report) {
    private static final Path FOLDER = Path.of("sample-routes");
    private static final Map<String, SampleHaul> MADE = new ConcurrentHashMap<>();

    /**
     * @param route "alder-county", "sorrel-valley", "tern-flats" or "heron-bend"; rig "lowbed-loaded", "lowbed-empty",
     *     "lowbed-with-jeep" or "lowbed-with-two-boosters"
     */
    public static SampleHaul of(String route, String rig) {
        return MADE.computeIfAbsent(route + " " + rig, any -> made(route, rig));
    }

    /** What was checked. */
    public Haul whole() {
        return new Haul(route, rig, stance, margins);
    }

    private static SampleHaul made(String routeName, String rigName) {
        try {
            Route route = RouteFile.parse(Files.readAllBytes(FOLDER.resolve(routeName + ".route.geojson")));
            Rig rig = RigFile.parse(Files.readAllBytes(FOLDER.resolve(rigName + ".rig.json")));
            LevelStance stance = rig.stances().get(0);
            Margins margins = Margins.defaults();
            return new SampleHaul(
                    route,
                    rig,
                    stance,
                    margins,
                    RouteCheck.check(new Haul(route, rig, stance, margins), new Inputs("0a", "0b")));
        } catch (InputRejected | IOException e) {
            throw new IllegalArgumentException(routeName + " " + rigName, e);
        }
    }
}
