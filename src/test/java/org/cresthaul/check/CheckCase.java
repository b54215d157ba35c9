package org.cresthaul.check;

import java.util.List;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;

/** A straight invented road with one hazard on it, and a rig to take over it. */
public final class CheckCase {
    /** Level road, 30 m either way, points every meter near the middle. */
    static final String LEVEL_POINTS = points(x -> 0.0);

    private CheckCase() {}

    public interface Elevation {
        double at(double distanceM);
    }

    /** Points of a line from -30 m to 30 m, a meter apart. */
    public static String points(Elevation elevation) {
        StringBuilder text = new StringBuilder();
        for (int i = -30; i <= 30; i++) {
            text.append(text.isEmpty() ? "" : ",")
                    .append("[\"" + i + " m\",\"" + Math.round(elevation.at(i) * 1e6) / 1e6 + " m\"]");
        }
        return text.toString();
    }

    /** A route whose only hazard has these properties, besides id and name. */
    public static Route route(String properties) {
        String text = """
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "One hazard", "note": "Invented.",
                 "features": [
                  {"type": "Feature", "properties": {"route": "Straight"},
                   "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}},
                  {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.09, 44.6]},
                   "properties": {"id": "H1", "name": "The hazard", %s}}]}
                """.formatted(properties);
        try {
            return RouteFile.parse(text);
        } catch (InputRejected e) {
            throw new IllegalArgumentException(e);
        }
    }

    /** A crossing with these points on one line, declared approaches on the level, and a survey accuracy. */
    public static Route crossing(String points, String accuracy) {
        return route(crossingProperties(points, accuracy)
                + ", \"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + " \"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"}");
    }

    static String crossingProperties(String points, String accuracy) {
        return "\"hazard\": \"rail-crossing\", \"survey\": {\"accuracy\": \"" + accuracy
                + "\", \"source\": \"level\"}, \"tracks\": [\"0 m\"], \"profile\": [{\"line\": \"center\", \"points\": ["
                + points + "]}]";
    }

    public static Rig rig() {
        try {
            return RigFile.parse(RigTexts.RIG);
        } catch (InputRejected e) {
            throw new IllegalArgumentException(e);
        }
    }

    public static Report check(Route route, Margins margins) {
        Rig rig = rig();
        return RouteCheck.check(new Haul(route, rig, rig.stances().get(0), margins), new Inputs("route", "rig"));
    }

    public static ReportCell cell(Report report, String configuration) {
        return report.hazards().get(0).cells().stream()
                .filter(c -> c.configuration().equals(configuration))
                .findFirst()
                .orElseThrow();
    }

    static List<String> verdicts(Report report) {
        return report.hazards().get(0).cells().stream()
                .map(c -> c.verdict().word())
                .distinct()
                .toList();
    }
}
