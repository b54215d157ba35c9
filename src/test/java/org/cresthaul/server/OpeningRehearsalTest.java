package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class OpeningRehearsalTest {
    @Test
    void everythingIsThere() {
        Samples samples = TestServer.small();
        String url;
        try (TestServer server = new TestServer(samples)) {
            url = server.url();
            assertEquals(
                    Collections.nCopies(OpeningRehearsal.paths(samples).size(), 200),
                    OpeningRehearsal.run(url, samples));
        }
        assertEquals(List.of(), OpeningRehearsal.run(url, samples));
    }
}
