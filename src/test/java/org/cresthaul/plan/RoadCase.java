package org.cresthaul.plan;

import java.util.List;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.check.SampleHaul;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.whatif.CompletePlan;
import org.cresthaul.whatif.Relaxations;

/** A route, a rig, and what the check says of them. Invented. */
public record RoadCase(Route route, Rig rig, LevelStance stance, Margins margins, Report report) {
    public interface Elevation {
        double at(double distanceM);
    }

    public Haul whole() {
        return new Haul(route, rig, stance, margins);
    }

    public static RoadCase of(String route, String rig) {
        return of(route, rig, Margins.defaults());
    }

    public static RoadCase of(String route, String rig, Margins margins) {
        try {
            Route r = RouteFile.parse(route);
            Rig c = RigFile.parse(rig);
            LevelStance stance = c.stances().get(0);
            return new RoadCase(
                    r, c, stance, margins, RouteCheck.check(new Haul(r, c, stance, margins), new Inputs("0", "0")));
        } catch (org.cresthaul.units.InputRejected e) {
            throw new IllegalArgumentException(e.problems().toString(), e);
        }
    }

    /** The sample haul. */
    public static RoadCase sample() {
        return sample("alder-county", "lowbed-loaded");
    }

    public static RoadCase sample(String route, String rig) {
        SampleHaul haul = SampleHaul.of(route, rig);
        return new RoadCase(haul.route(), haul.rig(), haul.stance(), haul.margins(), haul.report());
    }

    /** A straight road, 1.6 km, with these hazards 300 m apart; each is properties besides its id, H1, H2, ... */
    public static String road(String... hazards) {
        StringBuilder text = new StringBuilder("""
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Straight road", "note": "Invented.",
                 "features": [
                  {"type": "Feature", "properties": {"route": "Straight"},
                   "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}}
                """);
        for (int i = 0; i < hazards.length; i++) {
            text.append(",{\"type\": \"Feature\", \"geometry\": {\"type\": \"Point\", \"coordinates\": [")
                    .append(-93.096 + 0.004 * i)
                    .append(", 44.6]}, \"properties\": {\"id\": \"H")
                    .append(i + 1)
                    .append("\", \"name\": \"Place ")
                    .append(i + 1)
                    .append("\", ")
                    .append(hazards[i])
                    .append("}}");
        }
        return text.append("]}").toString();
    }

    /** A crest surveyed every meter from -30 m to 30 m, level before and after. */
    public static String crest(String accuracy, Elevation elevation) {
        return "\"hazard\": \"crest\", " + surveyed(accuracy, elevation);
    }

    public static String surveyed(String accuracy, Elevation elevation) {
        StringBuilder points = new StringBuilder();
        for (int i = -30; i <= 30; i++) {
            points.append(points.isEmpty() ? "" : ",")
                    .append("[\"" + i + " m\",\"" + Math.round(elevation.at(i) * 1e6) / 1e6 + " m\"]");
        }
        return "\"survey\": {\"accuracy\": \"" + accuracy + "\", \"source\": \"level\"},"
                + " \"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + " \"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + " \"profile\": [{\"line\": \"center\", \"points\": [" + points + "]}]";
    }

    public static String bridge(String gross) {
        return "\"hazard\": \"posted-bridge\", \"limits\": {\"source\": \"sign\", \"date\": \"2026-10-01\", \"gross\": \""
                + gross + "\"}";
    }

    public PlanOptions keeping(String key) {
        return new PlanOptions(rig.times(), List.of(), key, false, List.of(), List.of());
    }

    public Plan plan(PlanOptions options) {
        return CompletePlan.of(whole(), report, options);
    }

    public List<Plan.Relaxation> relaxations(String hazard, PlanOptions options) {
        return new Relaxations(whole(), report, options).at(hazard);
    }
}
