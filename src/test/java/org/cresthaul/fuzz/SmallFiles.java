package org.cresthaul.fuzz;

import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;

/** What a fuzzed file is judged with. */
final class SmallFiles {
    static final Rig RIG = rig(RigTexts.RIG);
    static final Rig WEIGHED = rig(WeightsTexts.RIG);
    /** One crossing with one line. Invented. */
    static final Route CROSSING = route("""
            {"type": "FeatureCollection", "cresthaul": "route/1", "name": "One crossing", "features": [
              {"type": "Feature", "properties": {"route": "County road"},
               "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}},
              {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.09, 44.6]},
               "properties": {"hazard": "rail-crossing", "id": "H01", "name": "Spur",
                 "survey": {"accuracy": "10 mm", "source": "level"},
                 "approachBefore": {"grade": "1 %", "accuracy": "0.2 %"}, "approachAfter": {"grade": "-1 %", "accuracy": "0.2 %"},
                 "profile": [{"line": "left", "points":
                   [["-9 m", "0 m"], ["-6 m", "0.05 m"], ["-3 m", "0.1 m"], ["-1 m", "0.2 m"], ["1 m", "0.2 m"], ["3 m", "0.1 m"],
                    ["6 m", "0.05 m"], ["9 m", "0 m"]]}],
                 "tracks": ["0 m"]}}]}
            """);

    /** A road with nothing on it. Invented. */
    static final Route ROAD = route("""
            {"type": "FeatureCollection", "cresthaul": "route/1", "name": "A road", "features": [
              {"type": "Feature", "properties": {"route": "County road"},
               "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}}]}
            """);

    private SmallFiles() {}

    private static Rig rig(String text) {
        try {
            return RigFile.parse(text);
        } catch (InputRejected e) {
            throw new IllegalStateException(e);
        }
    }

    private static Route route(String text) {
        try {
            return RouteFile.parse(text);
        } catch (InputRejected e) {
            throw new IllegalStateException(e);
        }
    }
}
