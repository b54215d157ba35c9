package org.cresthaul.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import org.cresthaul.server.TestServer;

/** Bodies of an import, as a form of files and fields: answered or refused, never failed on. */
public final class FormFuzz {
    private static final TestServer SERVER = TestServer.ofSmallFiles();

    private FormFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) throws Exception {
        HttpResponse<String> response = SERVER.postForm(data);
        int status = response.statusCode();
        assertTrue(
                status == 200 || status == 422 || status == 400 || status == 503, () -> status + " " + response.body());
        assertTrue(!response.body().contains("\tat org."), () -> "a trace: " + response.body());
        assertTrue(status != 200 || response.body().contains("\"baseMap\""), response::body);
    }
}
