package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import java.util.TreeMap;
import org.cresthaul.units.MutatedJson;
import org.junit.jupiter.api.Test;

/**
 * Mangled requests to every address that takes a body: each is answered or refused with a place, never failed on. The
 * seed is printed; with {@code -Dhostile.rounds} it goes on as long as wanted.
 */
class HostileRequestsTest {
    private static final long SEED = Long.getLong("hostile.seed", 20261128);
    private static final int ROUNDS = Integer.getInteger("hostile.rounds", 20);

    @Test
    void noMangledRequestIsFailedOn() throws Exception {
        System.out.println("hostile requests, seed " + SEED + ", rounds " + ROUNDS);
        Map<Integer, Integer> statuses = new TreeMap<>();
        try (TestServer server = new TestServer(TestServer.small())) {
            for (Map.Entry<String, String> address : SoundRequests.byAddress().entrySet()) {
                MutatedJson mutated = new MutatedJson(
                        address.getValue(), SEED + address.getKey().hashCode());
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
                    assertTrue(
                            response.statusCode() == 503
                                    || problem.at("/problems/0").has("remedy"),
                            what);
                }
            }
        }
        System.out.println("answers by status: " + statuses);
        assertTrue(statuses.getOrDefault(200, 0) > 0 && statuses.getOrDefault(422, 0) > 0, statuses.toString());
    }
}
