package org.cresthaul.server;

import java.util.Map;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.RouteTexts;

/** Bodies of requests about one small invented route and rig. */
public final class Requests {
    /** A base map along the small route: a road beside its second leg and a name. */
    public static final String BASE_MAP = """
            {"type": "FeatureCollection", "cresthaul": "basemap/1", "attribution": "invented for a test", "whole": true,
             "features": [
              {"type": "Feature", "properties": {"layer": "major-road"}, "geometry": {"type": "MultiLineString",
               "coordinates": [[[-93.0850, 44.6000], [-93.0850, 44.6150]]]}},
              {"type": "Feature", "properties": {"layer": "place", "name": "Quillan"},
               "geometry": {"type": "Point", "coordinates": [-93.0900, 44.6100]}}]}""";

    private Requests() {}

    /** A check; {@code more} is set in behind the files, such as {@code ,"stance": "loaded"}. */
    public static String check(String route, String rig, String more) {
        return "{\"route\":" + route + ",\"rig\":" + rig + more + "}";
    }

    static String check(String more) {
        return check(RouteTexts.ROUTE, RigTexts.RIG, more);
    }

    static String passage(String more) {
        return check(",\"hazard\":\"H01\",\"configuration\":\"down/none/3\"" + more);
    }

    /** A question about loads, with weights in the rig. */
    static String loads(String more) {
        return check(RouteTexts.ROUTE, WeightsTexts.RIG, ",\"configuration\":\"down/trailing/3\"" + more);
    }

    /** A sound body for a route of the API. */
    static String bodyFor(String path) {
        return Map.of(
                        "/api/runsheet",
                        check(""),
                        "/api/statement",
                        check(""),
                        "/api/route",
                        RouteTexts.ROUTE,
                        "/api/check",
                        check(""),
                        "/api/passage",
                        passage(""),
                        "/api/loads",
                        loads(""),
                        "/api/plan",
                        check(""),
                        "/api/comparison",
                        check(""),
                        "/api/combinations",
                        check(""),
                        "/api/corner",
                        check(",\"hazard\":\"H05\",\"configuration\":\"down/none/3\""))
                .get(path);
    }
}
