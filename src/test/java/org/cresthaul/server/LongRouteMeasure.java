package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * How long a check and a plan of 200 hazards on 20,000 points take over HTTP: the hazards of a sample over and over,
 * each at a place of its own on a long straight road. Corners are left out, or taken along with {@code corners}.
 */
final class LongRouteMeasure {
    private static final int POINTS = 20_000;
    private static final int HAZARDS = 200;
    /** About 20 m of the parallel at 44 degrees north. */
    private static final double STEP_DEG = 0.00025;

    private static final ObjectMapper JSON = new ObjectMapper();

    private LongRouteMeasure() {}

    public static void main(String[] arguments) throws Exception {
        boolean corners = arguments.length > 0 && arguments[0].equals("corners");
        Samples samples = Samples.bundled();
        String route = longRoute(text(samples.routes(), "alder-county"), corners);
        String rig = text(samples.rigs(), "lowbed-loaded");
        try (TestServer server = new TestServer(samples)) {
            for (int round = 1; round <= 3; round++) {
                // Another margin each time: nothing is remembered of the round before.
                String more = ",\"margins\":{\"ground\":\"" + (50 + round) + " mm\"}";
                ask(server, "/api/check", Requests.check(route, rig, more), "check, round " + round);
                ask(server, "/api/plan", Requests.check(route, rig, more), "plan of it, round " + round);
            }
        }
    }

    private static void ask(TestServer server, String path, String body, String what) throws Exception {
        long begun = System.nanoTime();
        HttpResponse<String> answer = server.post(path, body);
        System.out.printf(
                Locale.ROOT,
                "%-22s %6.2f s, status %d, %d characters%n",
                what,
                (System.nanoTime() - begun) / 1e9,
                answer.statusCode(),
                answer.body().length());
    }

    private static String text(List<Sample> samples, String id) {
        return new String(
                samples.stream()
                        .filter(s -> s.id().equals(id))
                        .findFirst()
                        .orElseThrow()
                        .document(),
                StandardCharsets.UTF_8);
    }

    /** One leg along the parallel, with the hazards of a sample evenly along it. */
    static String longRoute(String sample, boolean corners) throws Exception {
        ObjectNode route = (ObjectNode) JSON.readTree(sample);
        Set<String> without = corners ? Set.of("stretch") : Set.of("corner", "stretch");
        List<ObjectNode> hazards = new ArrayList<>();
        ObjectNode leg = null;
        for (JsonNode feature : route.path("features")) {
            if (leg == null && feature.path("properties").has("route")) {
                leg = (ObjectNode) feature;
            }
            String kind = feature.path("properties").path("hazard").asText("");
            if (!kind.isEmpty() && !without.contains(kind)) {
                hazards.add((ObjectNode) feature);
            }
        }
        ArrayNode features = route.putArray("features");
        ArrayNode line = JSON.createArrayNode();
        for (int i = 0; i < POINTS; i++) {
            line.addArray().add(-99 + i * STEP_DEG).add(44.0);
        }
        ((ObjectNode) leg.path("geometry")).set("coordinates", line);
        features.add(leg);
        for (int k = 0; k < HAZARDS; k++) {
            ObjectNode hazard = hazards.get(k % hazards.size()).deepCopy();
            int at = (int) ((k + 0.5) * POINTS / HAZARDS);
            ((ObjectNode) hazard.path("geometry"))
                    .putArray("coordinates")
                    .add(-99 + at * STEP_DEG)
                    .add(44.0);
            ((ObjectNode) hazard.path("properties")).put("id", "N" + k);
            features.add(hazard);
        }
        return JSON.writeValueAsString(route);
    }
}
