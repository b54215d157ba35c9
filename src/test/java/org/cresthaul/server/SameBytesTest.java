package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpClient;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.RouteTexts;
import org.junit.jupiter.api.Test;

/** Answers and papers are the same bytes with one thread and with five, under any locale and in any time zone. */
class SameBytesTest {
    private static Map<String, String> bodies() {
        Map<String, String> bodies = new LinkedHashMap<>();
        for (String path : new String[] {
            "/api/route",
            "/api/check",
            "/api/passage",
            "/api/loads",
            "/api/corner",
            "/api/plan",
            "/api/comparison",
            "/api/combinations"
        }) {
            bodies.put(path, Requests.bodyFor(path));
        }
        String weighed = "{\"route\":" + RouteTexts.ROUTE + ",\"rig\":" + WeightsTexts.RIG;
        for (String paper : new String[] {"/api/runsheet", "/api/statement"}) {
            for (String form : new String[] {"json", "html", "pdf"}) {
                bodies.put(paper + "?" + form, weighed + ",\"form\":\"" + form + "\"}");
            }
        }
        bodies.put("/api/check?weighed", weighed + "}");
        bodies.put("/api/plan?weighed", weighed + "}");
        return bodies;
    }

    private static Map<String, byte[]> answers(int threads) throws Exception {
        Map<String, byte[]> answers = new LinkedHashMap<>();
        WorkGate.Limits limits = new WorkGate.Limits(1, 1, 60_000, threads, 60_000, 60_000);
        HttpClient client = HttpClient.newHttpClient();
        try (TestServer server = new TestServer(limits, BodyGate.usual())) {
            for (Map.Entry<String, String> asked : bodies().entrySet()) {
                HttpResponse<byte[]> response = client.send(
                        server.request(asked.getKey().replaceAll("\\?.*", ""))
                                .header("Content-Type", "application/json")
                                .POST(BodyPublishers.ofString(asked.getValue()))
                                .build(),
                        BodyHandlers.ofByteArray());
                assertEquals(200, response.statusCode(), asked.getKey());
                answers.put(asked.getKey(), response.body());
            }
        }
        return answers;
    }

    @Test
    void whateverTheMachineIsSetTo() throws Exception {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        Map<String, byte[]> first = answers(1);
        try {
            // Digits and a decimal sign of its own, an i without a dot, and three quarters of an hour beside every
            // other zone.
            for (String tag : new String[] {"ar-EG", "tr-TR", "de-DE"}) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
                Map<String, byte[]> again = answers(5);
                first.forEach((path, bytes) -> assertArrayEquals(bytes, again.get(path), tag + " " + path));
            }
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
        assertEquals(16, first.size());
        first.forEach((path, bytes) -> assertTrue(bytes.length > 200, path));
    }
}
