package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.junit.jupiter.api.Test;

class ImportRehearsalTest {
    /**
     * What is rehearsed is what is played: every point is read and kept, each piece goes 1/16384 degree east and 9e-6
     * degree north or south (WGS 84 at the equator: 6,378,137 m, and 6,335,439 m along the meridian).
     */
    @Test
    void rehearsesAWholeImport() throws Exception {
        JsonNode answer = new ObjectMapper().readTree(ImportRehearsal.once());

        double eastM = Math.toRadians(ImportRehearsal.STEP_DEG) * 6_378_137;
        double northM = Math.toRadians(9e-6) * 6_335_439;
        double lengthM = (ImportRehearsal.POINTS - 1) * Math.hypot(eastM, northM);
        assertEquals(lengthM, answer.at("/preview/lengthM").asDouble(), 1e-4 * lengthM);
        assertEquals(ImportRehearsal.POINTS, answer.at("/preview/pointsKept").asInt());
        assertEquals(ImportRehearsal.POINTS, answer.at("/line/line/0").size());
        assertTrue(answer.path("route").asText().contains("\"cresthaul\": \"route/1\""));
    }
}
