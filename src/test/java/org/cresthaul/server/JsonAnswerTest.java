package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class JsonAnswerTest {
    /** With questions that JSON libraries take for properties. */
    public record Place(String name, List<Double> lonLat) {
        public boolean isNamed() {
            return !name.isEmpty();
        }

        public double share() {
            return 0.5;
        }
    }

    @Test
    void theComponentsOfARecordAreItsOnlyKeys() {
        assertEquals(
                "{\"name\":\"dip\",\"lonLat\":[-93.1,44.6]}",
                new String(JsonAnswer.bytes(new Place("dip", List.of(-93.1, 44.6))), StandardCharsets.UTF_8));
    }
}
