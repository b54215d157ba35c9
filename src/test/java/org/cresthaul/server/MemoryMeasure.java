package org.cresthaul.server;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;

/**
 * What the server holds while four clients check, plan, save and leave for ten minutes, no question twice: the heap
 * after a collection every half minute, which must stop growing once what is kept of answers is full.
 */
public final class MemoryMeasure {
    private static final int CLIENTS = 4;
    private static final int LOOKS = 20;
    private static final Duration BETWEEN = Duration.ofSeconds(30);

    private final String url;
    private final HttpClient client = HttpClient.newHttpClient();
    private final AtomicLong asked = new AtomicLong();
    private final AtomicLong left = new AtomicLong();

    private MemoryMeasure(String url) {
        this.url = url;
    }

    public static void main(String[] arguments) throws Exception {
        try (ServedApart server = new ServedApart(arguments)) {
            MemoryMeasure measure = new MemoryMeasure(server.url());
            ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
            for (int i = 0; i < CLIENTS; i++) {
                clients.submit(measure::ask);
            }
            for (int look = 1; look <= LOOKS; look++) {
                Thread.sleep(BETWEEN.toMillis());
                ServedApart.Held held = server.held();
                System.out.printf(
                        Locale.ROOT,
                        "after %4d s: %.1f MB, %d threads; %d requests, %d of them left%n",
                        look * BETWEEN.toSeconds(),
                        held.heapBytes() / 1e6,
                        held.threads(),
                        measure.asked.get(),
                        measure.left.get());
            }
            clients.shutdownNow();
        }
        System.exit(0);
    }

    /** Every round another margin and another name. */
    private Void ask() throws Exception {
        for (int round = 0; ; round++) {
            String margins =
                    String.format(Locale.ROOT, ",\"margins\":{\"ground\":\"40.%09d mm\"}", asked.incrementAndGet());
            require(200, send(to("api/check").POST(BodyPublishers.ofString(Requests.check(margins)))));
            if (round % 4 == 0) {
                require(200, send(to("api/plan").POST(BodyPublishers.ofString(Requests.check(margins)))));
                asked.incrementAndGet();
            }
            if (round % 8 == 0) {
                leave(margins.replace("40.", "41."));
            }
            save("save " + asked.get());
        }
    }

    /** A check that its asker does not wait for. */
    private void leave(String margins) throws InterruptedException {
        var gone = client.sendAsync(
                to("api/check")
                        .POST(BodyPublishers.ofString(Requests.check(margins)))
                        .build(),
                BodyHandlers.ofString());
        Thread.sleep(2);
        gone.cancel(true);
        asked.incrementAndGet();
        left.incrementAndGet();
    }

    private void save(String reason) throws Exception {
        String files = ProjectTexts.files(RouteTexts.ROUTE.replace("Two legs", reason), RigTexts.RIG);
        HttpResponse<String> begun = send(to("api/projects").POST(BodyPublishers.ofString(ProjectTexts.BEGIN)));
        require(201, begun);
        String path = "api/projects/" + TestServer.json(begun).path("id").textValue();
        require(
                200,
                send(to(path).header("If-Match", "\"1\"")
                        .PUT(BodyPublishers.ofString(ProjectTexts.project("Mill road move", reason, files)))));
        require(200, send(to(path).GET()));
        asked.addAndGet(3);
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
        return client.send(request.build(), BodyHandlers.ofString());
    }

    private HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create(url + path)).header("Content-Type", "application/json");
    }

    /** A full queue is an answer too: its asker comes back later. */
    private static void require(int status, HttpResponse<String> response) throws InterruptedException {
        if (response.statusCode() == 503) {
            Thread.sleep(100);
        } else if (response.statusCode() != status) {
            System.err.println(response.statusCode() + ": " + response.body());
            throw new IllegalStateException(response.statusCode() + ": " + response.body());
        }
    }
}
