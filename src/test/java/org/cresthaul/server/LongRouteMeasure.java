package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * How long a check and a plan of 200 hazards on 20,000 points take over HTTP, how soon the first place is told, how
 * long it takes when one place has changed, and how soon a check ends that nobody waits for: the hazards of a sample
 * over and over, each at a place of its own on a long straight road and with heights of its own. Corners are left out,
 * or taken along with {@code corners}.
 */
public final class LongRouteMeasure {
    private static final int POINTS = 20_000;
    private static final int HAZARDS = 200;
    /** About 20 m of the parallel at 44 degrees north. */
    private static final double STEP_DEG = 0.00025;

    private static final ObjectMapper JSON = new ObjectMapper();

    private LongRouteMeasure() {}

    public static void main(String[] arguments) throws Exception {
        boolean corners = arguments.length > 0 && arguments[0].equals("corners");
        Samples samples = Samples.bundled();
        String route = longRoute(text(samples.routes(), "alder-county"), HAZARDS, corners);
        String rig = text(samples.rigs(), "lowbed-loaded");
        try (TestServer server = new TestServer(samples)) {
            for (int round = 1; round <= 3; round++) {
                // Another margin each time: nothing is remembered of the round before.
                String more = ",\"margins\":{\"ground\":\"" + (50 + round) + " mm\"}";
                String whole = Requests.check(route, rig, more);
                Thread following = followed(server, "r" + round);
                ask(server, "/api/check?id=r" + round, whole, "check, round " + round);
                following.interrupt();
                following.join();
                ask(server, "/api/plan", whole, "plan of it, round " + round);
                String changed = Requests.check(route.replaceFirst("1512\\.40", "1512.41"), rig, more);
                ask(server, "/api/check", changed, "one place changed");
            }
            stop(server, Requests.check(route, rig, ",\"margins\":{\"ground\":\"70 mm\"}"));
        }
    }

    /** Tells when the first place was judged, and when which places no configuration passes was known. */
    private static Thread followed(TestServer server, String id) {
        long begun = System.nanoTime();
        Thread asking = new Thread(() -> {
            int found = 0;
            int refused = 0;
            try {
                while (true) {
                    JsonNode told = JSON.readTree(server.get("/api/check/" + id).body());
                    double seconds = (System.nanoTime() - begun) / 1e9;
                    if (found == 0 && told.path("found").size() > 0) {
                        System.out.printf(Locale.ROOT, "first place            %6.2f s%n", seconds);
                    }
                    found = Math.max(found, told.path("found").size());
                    if (told.path("passedByNone").size() > refused) {
                        refused = told.path("passedByNone").size();
                        System.out.printf(
                                Locale.ROOT,
                                "passed by none         %6.2f s, %d places, %d of all judged%n",
                                seconds,
                                refused,
                                found);
                    }
                    Thread.sleep(50);
                }
            } catch (InterruptedException ended) {
                // The check has ended.
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        asking.start();
        return asking;
    }

    /** Gives up a check in its middle, and tells how soon nothing runs any more. */
    private static void stop(TestServer server, String whole) throws Exception {
        try (Socket socket = new Socket("127.0.0.1", server.port())) {
            byte[] body = whole.getBytes(StandardCharsets.UTF_8);
            socket.getOutputStream()
                    .write(("POST /api/check?id=gone HTTP/1.1\r\nHost: 127.0.0.1:" + server.port()
                                    + "\r\nContent-Type: application/json\r\nContent-Length: " + body.length
                                    + "\r\n\r\n")
                            .getBytes(StandardCharsets.UTF_8));
            socket.getOutputStream().write(body);
            while (!server.get("/api/check/gone").body().contains("\"hazard\"")) {
                Thread.sleep(20);
            }
        }
        long left = System.nanoTime();
        while (!server.get("/api/health").body().contains("\"running\":0")) {
            Thread.sleep(5);
        }
        System.out.printf(Locale.ROOT, "stopped in             %6.2f s%n", (System.nanoTime() - left) / 1e9);
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
    public static String longRoute(String sample, int count, boolean corners) throws Exception {
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
        for (int k = 0; k < count; k++) {
            ObjectNode hazard = hazards.get(k % hazards.size()).deepCopy();
            int at = (int) ((k + 0.5) * POINTS / count);
            ((ObjectNode) hazard.path("geometry"))
                    .putArray("coordinates")
                    .add(-99 + at * STEP_DEG)
                    .add(44.0);
            ((ObjectNode) hazard.path("properties")).put("id", "N" + k);
            vary(hazard, k);
            features.add(hazard);
        }
        return JSON.writeValueAsString(route);
    }

    /** Heights some hundredths of a foot from those of every other, so that no answer is that of another place. */
    private static void vary(ObjectNode hazard, int k) {
        int i = 0;
        for (JsonNode line : hazard.path("profile")) {
            for (JsonNode point : line.path("points")) {
                String[] height = point.path(1).textValue().split(" ");
                double varied = Double.parseDouble(height[0]) + 0.002 * ((7 * k + 5 * i++) % 11) + 1e-5 * k;
                ((ArrayNode) point).set(1, String.format(Locale.ROOT, "%.5f %s", varied, height[1]));
            }
        }
    }
}
