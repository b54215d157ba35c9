package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.util.Locale;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;

/** What is sent to be saved: the small invented route and rig. */
final class ProjectTexts {
    static final String BEGIN = project("Mill road move", "begun", files(RouteTexts.ROUTE, RigTexts.RIG));

    private ProjectTexts() {}

    static String project(String name, String reason, String files) {
        return String.format(
                Locale.ROOT,
                "{\"name\": \"%s\", \"author\": \"A. Planner\", \"reason\": \"%s\", \"view\": \"#hazard=H01\", \"files\": %s}",
                name,
                reason,
                files);
    }

    /** Set in byte for byte. */
    static String files(String route, String rig) {
        return "[{\"kind\": \"route\", \"name\": \"small.route.geojson\", \"document\":" + route
                + "}, {\"kind\": \"rig\", \"name\": \"small.rig.json\", \"document\":" + rig + "}]";
    }

    static String known(String sha256) {
        return "[{\"kind\": \"route\", \"name\": \"small.route.geojson\", \"sha256\": \"" + sha256 + "\"}]";
    }

    /** Removes a project at its latest revision. */
    static HttpResponse<String> remove(TestServer server, JsonNode project) throws Exception {
        return server.send(server.request("/api/projects/" + project.path("id").textValue() + "?author=B.%20Clerk")
                .header("If-Match", "\"" + project.path("revision").intValue() + "\"")
                .DELETE());
    }
}
