package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.units.JsonEdit;

/** A server on a free port with one small invented route and rig, and a client for it. */
public final class TestServer implements AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    /** Answers of all servers that remember: the same bytes have the same answer whoever asks. */
    private static final CheckedReports REMEMBERED = new CheckedReports(64);

    private final WebServer server;
    private final HttpClient client = HttpClient.newHttpClient();

    public TestServer(Samples samples) {
        this(new ServerOptions(Optional.empty(), 0, Optional.empty(), samples));
    }

    public TestServer(ServerOptions options) {
        this(WebServer.start(options));
    }

    TestServer(WebServer server) {
        this.server = server;
    }

    /** With limits of its own. */
    TestServer(WorkGate.Limits limits, BodyGate bodies) {
        this(WebServer.start(
                new ServerOptions(Optional.empty(), 0, Optional.empty(), small()),
                limits,
                bodies,
                new CheckedReports()));
    }

    /**
     * Serves samples to a test of what the page makes of the answers, not of how they are made: what another such
     * server has checked is not checked again.
     */
    public static TestServer remembering(Samples samples) {
        return remembering(new ServerOptions(Optional.empty(), 0, Optional.empty(), samples));
    }

    /** Likewise. */
    public static TestServer remembering(ServerOptions options) {
        return new TestServer(WebServer.start(options, WorkGate.Limits.usual(), BodyGate.usual(), REMEMBERED));
    }

    /** Serves them and keeps projects. */
    public static TestServer keeping(ProjectStore store) {
        return new TestServer(new ServerOptions(Optional.empty(), 0, Optional.empty(), small(), Optional.of(store)));
    }

    /** Serves two files of a few lines as its samples. */
    public static TestServer ofSmallFiles() {
        return new TestServer(small());
    }

    /** The same without the corner, which takes longer to be judged than all the rest of them. */
    public static TestServer ofSmallFilesWithoutCorner() {
        String without = JsonEdit.edit(RouteTexts.ROUTE, "/features/6", "absent");
        if (without.contains("\"template\"")) {
            throw new IllegalStateException("the corner is another feature now");
        }
        return new TestServer(small(without));
    }

    static Samples small() {
        return small(RouteTexts.ROUTE);
    }

    private static Samples small(String route) {
        return new Samples(
                List.of(new Sample("small.route.geojson", route.getBytes(StandardCharsets.UTF_8))),
                List.of(new Sample("small.rig.json", RigTexts.RIG.getBytes(StandardCharsets.UTF_8))),
                List.of(new Sample("small.basemap.geojson", BASE_MAP.getBytes(StandardCharsets.UTF_8))));
    }

    /** Of nothing but a road. */
    static final String BASE_MAP = """
            {"type": "FeatureCollection", "cresthaul": "basemap/1", "attribution": "invented", "whole": true,
             "features": [{"type": "Feature", "properties": {"layer": "minor-road"},
              "geometry": {"type": "MultiLineString", "coordinates": [[[-93.1, 44.6], [-93.09, 44.61]]]}}]}
            """;

    /** What is asked of a server of small files before somebody opens its page. */
    public static List<String> rehearsed() {
        return OpeningRehearsal.paths(small());
    }

    public int port() {
        return server.port();
    }

    public String url() {
        return server.url();
    }

    HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port() + path));
    }

    public HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(request(path).GET());
    }

    /** A body as it is, said to be the form of an import. */
    public HttpResponse<String> postForm(byte[] body) throws Exception {
        return send(request("/api/import")
                .header("Content-Type", ImportForm.TYPE)
                .POST(HttpRequest.BodyPublishers.ofByteArray(body)));
    }

    public HttpResponse<String> post(String path, String body) throws IOException, InterruptedException {
        return send(request(path)
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body)));
    }

    HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    public static JsonNode json(HttpResponse<String> response) throws IOException {
        return JSON.readTree(response.body());
    }

    @Override
    public void close() {
        server.close();
    }
}
