package org.cresthaul.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.cresthaul.server.SoundRequests;
import org.cresthaul.server.TestServer;

/** Requests to every address that takes a body: answered or refused with a place, never failed on. */
public final class RequestFuzz {
    private static final TestServer SERVER = TestServer.ofSmallFiles();
    private static final List<Map.Entry<String, String>> SOUND =
            List.copyOf(SoundRequests.byAddress().entrySet());

    private RequestFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) throws Exception {
        if (data.length == 0) {
            return;
        }
        Map.Entry<String, String> address = SOUND.get((data[0] & 0xff) % SOUND.size());
        String body = FuzzedDocument.of(Arrays.copyOfRange(data, 1, data.length), address.getValue());
        HttpResponse<String> response = SERVER.post(address.getKey(), body);
        int status = response.statusCode();
        assertTrue(
                status == 200 || status == 422 || status == 400 || status == 503,
                () -> address.getKey() + ": " + status + " " + response.body() + "\n" + body);
        assertTrue(!response.body().contains("\tat org."), () -> "a trace: " + response.body());
    }
}
