package org.cresthaul.server;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;

/**
 * What the server does under load from another process: reads by the second, saves while checks take the whole machine,
 * and how often two who save on the same revision at the same time are told apart.
 */
public final class ServingMeasure {
    private static final int READERS = 16;
    private static final int READ_S = 15;
    private static final int SAVES = 500;
    private static final int TRIALS = 1000;

    private final String url;
    private final HttpClient client = HttpClient.newHttpClient();

    private ServingMeasure(String url) {
        this.url = url;
    }

    public static void main(String[] arguments) throws Exception {
        try (ServedApart server = new ServedApart()) {
            ServingMeasure measure = new ServingMeasure(server.url());
            measure.reads(false);
            measure.reads(true);
            measure.saves();
            measure.edits();
        }
        System.exit(0);
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
        return client.send(request.build(), BodyHandlers.ofString());
    }

    private HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create(url + path)).header("Content-Type", "application/json");
    }

    /** @param warm whether it counts */
    private void reads(boolean warm) throws Exception {
        String project = TestServer.json(send(to("api/projects").POST(BodyPublishers.ofString(ProjectTexts.BEGIN))))
                .path("id")
                .textValue();
        long end = System.nanoTime() + READ_S * 1_000_000_000L;
        List<Callable<List<Double>>> readers = new ArrayList<>();
        for (int i = 0; i < READERS; i++) {
            readers.add(() -> {
                List<Double> took = new ArrayList<>();
                while (System.nanoTime() < end) {
                    long begun = System.nanoTime();
                    require(200, send(to("api/projects/" + project).GET()));
                    took.add((System.nanoTime() - begun) / 1e6);
                }
                return took;
            });
        }
        List<Double> all = inOrder(readers);
        if (warm) {
            say("reads of a project, " + READERS + " at a time: " + all.size() / READ_S + "/s", all);
        }
    }

    /** One after the other, while as many checks run as the server takes. */
    private void saves() throws Exception {
        AtomicBoolean over = new AtomicBoolean();
        List<CompletableFuture<Integer>> checks = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            int own = i;
            checks.add(CompletableFuture.supplyAsync(() -> check(own, over), Executors.newCachedThreadPool()));
        }
        HttpResponse<String> begun = send(to("api/projects").POST(BodyPublishers.ofString(ProjectTexts.BEGIN)));
        String path = "api/projects/" + TestServer.json(begun).path("id").textValue();
        List<Double> took = new ArrayList<>();
        for (int i = 1; i <= SAVES; i++) {
            String body = ProjectTexts.project("Mill road move", "save " + i, files("Save " + i));
            long sent = System.nanoTime();
            require(200, save(path, i, body));
            took.add((System.nanoTime() - sent) / 1e6);
        }
        over.set(true);
        int checked = 0;
        for (CompletableFuture<Integer> one : checks) {
            checked += one.join();
        }
        say("saves while " + checked + " checks took the machine", took);
    }

    private static String files(String name) {
        return ProjectTexts.files(RouteTexts.ROUTE.replace("Two legs", name), RigTexts.RIG);
    }

    private HttpResponse<String> save(String path, int on, String body) throws Exception {
        return send(to(path).header("If-Match", "\"" + on + "\"").PUT(BodyPublishers.ofString(body)));
    }

    /** Another margin each time: nothing is remembered. */
    private int check(int own, AtomicBoolean over) {
        int made = 0;
        try {
            for (int i = 0; !over.get(); i++) {
                String margins = ",\"margins\":{\"ground\":\"" + (40 + own) + "." + (1000 + i) + " mm\"}";
                send(to("api/check").POST(BodyPublishers.ofString(Requests.check(margins))));
                made++;
            }
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
        return made;
    }

    /** Two at once on the same revision: one is saved and the other is told, and what is there is what was saved. */
    private void edits() throws Exception {
        HttpResponse<String> begun = send(to("api/projects").POST(BodyPublishers.ofString(ProjectTexts.BEGIN)));
        String path = "api/projects/" + TestServer.json(begun).path("id").textValue();
        int overwritten = 0;
        for (int trial = 1; trial <= TRIALS; trial++) {
            int on = trial;
            CyclicBarrier start = new CyclicBarrier(2);
            List<Callable<List<Integer>>> both = new ArrayList<>();
            for (String who : List.of("A", "B")) {
                String body = ProjectTexts.project("Mill road move", who + on, files(who + on));
                both.add(() -> {
                    start.await();
                    return List.of(save(path, on, body).statusCode());
                });
            }
            List<Integer> statuses = inOrder(both);
            String reason = TestServer.json(send(to(path).GET())).path("reason").textValue();
            String saved = (statuses.get(0) == 200 ? "A" : "B") + on;
            if (!(statuses.contains(200) && statuses.contains(412) && saved.equals(reason))) {
                overwritten++;
            }
        }
        System.out.printf(Locale.ROOT, "%d pairs of saves on one revision: %d not told apart%n", TRIALS, overwritten);
    }

    private static <T> List<T> inOrder(List<Callable<List<T>>> calls) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(calls.size());
        try {
            List<T> all = new ArrayList<>();
            for (Future<List<T>> one : threads.invokeAll(calls)) {
                all.addAll(one.get());
            }
            return all;
        } finally {
            threads.shutdown();
        }
    }

    private static void require(int status, HttpResponse<String> response) {
        if (response.statusCode() != status) {
            throw new IllegalStateException(response.statusCode() + ": " + response.body());
        }
    }

    private static void say(String what, List<Double> tookMs) {
        double[] sorted =
                tookMs.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        System.out.printf(
                Locale.ROOT,
                "%s; median %.1f ms, p99 %.1f ms, most %.1f ms%n",
                what,
                sorted[sorted.length / 2],
                sorted[(int) Math.ceil(sorted.length * 0.99) - 1],
                Arrays.stream(sorted).max().orElseThrow());
    }
}
