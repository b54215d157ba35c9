package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.MutatedJson;
import org.junit.jupiter.api.Test;

/**
 * Mangled requests to every address that takes a body: each is answered or refused with a place, never failed on. The
 * seed is printed; with {@code -Dhostile.rounds} it goes on as long as wanted.
 */
class HostileRequestsTest {
    private static final long SEED = Long.getLong("hostile.seed", 20261128);
    private static final int ROUNDS = Integer.getInteger("hostile.rounds", 20);

    private static Map<String, String> sound() {
        String files = "{\"route\":" + RouteTexts.ROUTE + ",\"rig\":" + WeightsTexts.RIG + ",\"limits\":" + LimitsTexts.LIMITS
                + ",\"stance\":\"loaded\",\"margins\":{\"ground\":\"2 in\",\"overhead\":\"3 in\",\"side\":\"6 in\"}";
        String plan = ",\"plan\":{\"times\":{\"notch\":\"20 min\"},\"forbid\":[\"up/none/3\"],\"fix\":\"down/none/3\","
                + "\"avoidRaising\":true,\"acceptTight\":[\"H01\"],\"setAside\":[\"H04\"]}";
        Map<String, String> sound = new LinkedHashMap<>();
        sound.put("/api/route", RouteTexts.ROUTE);
        sound.put("/api/check", files + "}");
        sound.put("/api/passage", files + ",\"hazard\":\"H01\",\"configuration\":\"down/none/3\",\"line\":\"left\","
                + "\"leveling\":\"held\",\"frontRaise\":\"1 in\",\"rearRaise\":\"0 in\"}");
        sound.put("/api/corner", files + ",\"hazard\":\"H05\",\"configuration\":\"down/none/3\"}");
        sound.put("/api/loads", files + ",\"configuration\":\"down/trailing/3\",\"hazard\":\"H01\",\"piece\":\"wheel loader\","
                + "\"pieceAt\":\"5 m\",\"regulator\":\"35 psi\",\"readings\":{\"trailer\":\"40 psi\",\"booster\":\"35 psi\"}}");
        sound.put("/api/plan", files + plan + "}");
        sound.put("/api/comparison", files + plan + "}");
        sound.put("/api/runsheet", files + plan + ",\"form\":\"html\",\"paper\":\"a4\",\"units\":\"metric\"}");
        sound.put("/api/statement", files + plan + ",\"form\":\"pdf\"}");
        return sound;
    }

    @Test
    void noMangledRequestIsFailedOn() throws Exception {
        System.out.println("hostile requests, seed " + SEED + ", rounds " + ROUNDS);
        Map<Integer, Integer> statuses = new TreeMap<>();
        try (TestServer server = new TestServer(TestServer.small())) {
            for (Map.Entry<String, String> address : sound().entrySet()) {
                MutatedJson mutated = new MutatedJson(address.getValue(), SEED + address.getKey().hashCode());
                for (int i = 0; i < ROUNDS; i++) {
                    String body = mutated.next();
                    var response = server.post(address.getKey(), body);
                    String what = address.getKey() + " round " + i + ", seed " + SEED + ": " + response.body();
                    statuses.merge(response.statusCode(), 1, Integer::sum);
                    if (response.statusCode() == 200) {
                        continue;
                    }
                    assertTrue(response.statusCode() == 422 || response.statusCode() == 503, what);
                    JsonNode problem = TestServer.json(response);
                    assertEquals(response.statusCode(), problem.get("status").intValue(), what);
                    assertTrue(response.statusCode() == 503 || problem.at("/problems/0").has("remedy"), what);
                }
            }
        }
        System.out.println("answers by status: " + statuses);
        assertTrue(statuses.getOrDefault(200, 0) > 0 && statuses.getOrDefault(422, 0) > 0, statuses.toString());
    }
}
