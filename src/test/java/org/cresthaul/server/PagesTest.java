package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The page's files go out compressed once, and are the same file however they are taken. */
class PagesTest {
    private static TestServer server;

    @BeforeAll
    static void start() throws Exception {
        server = TestServer.ofSmallFiles();
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    private static HttpResponse<byte[]> get(String path, String... headers) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(server.url() + path));
        if (headers.length > 0) {
            request.headers(headers);
        }
        return HttpClient.newHttpClient().send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
    }

    @Test
    void zippedIsTheSameFile() throws Exception {
        HttpResponse<byte[]> plain = get("app.js");
        HttpResponse<byte[]> zipped = get("app.js", "Accept-Encoding", "gzip, deflate, br");

        assertEquals("", plain.headers().firstValue("Content-Encoding").orElse(""));
        assertEquals("gzip", zipped.headers().firstValue("Content-Encoding").orElse(""));
        assertTrue(zipped.headers().allValues("Vary").contains("Accept-Encoding"));
        assertTrue(zipped.body().length < plain.body().length / 2);
        assertArrayEquals(plain.body(), new GZIPInputStream(new ByteArrayInputStream(zipped.body())).readAllBytes());
        for (String taken : new String[] {"gzip", "identity"}) {
            HttpResponse<byte[]> again = get(
                    "app.js",
                    "Accept-Encoding",
                    taken,
                    "If-None-Match",
                    zipped.headers().firstValue("ETag").orElseThrow());
            assertEquals(304, again.statusCode());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'gzip'                   | true",
                "'deflate, gzip;q=1.0, *' | true",
                "'br, gzip; q=0.5'        | true",
                "'gzip;q=0'               | false",
                "'gzip;q=0.000, br'       | false",
                "'br'                     | false",
                "'xgzip'                  | false",
                "''                       | false"
            })
    void takesZipped(String accepted, boolean taken) {
        assertEquals(taken, Pages.takesZipped(accepted));
    }

    @Test
    void whoSaysNothingTakesItPlain() {
        assertEquals(false, Pages.takesZipped(null));
    }
}
