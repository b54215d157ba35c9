package org.cresthaul.web;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/**
 * Stands before a server and hands on what is asked and answered, byte for byte. A question with a body that was
 * answered with 200 is not asked again: equal questions have equal answers, which {@code SameBytesTest} holds.
 */
final class RememberedAnswers implements AutoCloseable {
    private static final Set<String> NOT_HANDED_ON = Set.of(
            "host", "connection", "content-length", "transfer-encoding", "expect", "upgrade", "http2-settings", "date");

    private final String behind;
    private final HttpServer front;
    private final HttpClient client = HttpClient.newHttpClient();
    private final ExecutorService threads = Executors.newCachedThreadPool(r -> {
        Thread thread = new Thread(r, "remembered-answers");
        thread.setDaemon(true);
        return thread;
    });
    private final Map<String, CompletableFuture<HttpResponse<byte[]>>> remembered = new ConcurrentHashMap<>();

    RememberedAnswers(String url) throws IOException {
        behind = url.substring(0, url.length() - 1);
        front = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 50);
        front.setExecutor(threads);
        front.createContext("/", this::handOn);
        front.start();
    }

    String url() {
        return "http://127.0.0.1:" + front.getAddress().getPort() + "/";
    }

    private void handOn(HttpExchange exchange) throws IOException {
        try (exchange) {
            byte[] body = exchange.getRequestBody().readAllBytes();
            HttpResponse<byte[]> answer = exchange.getRequestMethod().equals("POST")
                    ? remembered(exchange, body)
                    : ask(request(exchange, body)).join();
            answer.headers().map().forEach((name, values) -> {
                if (!NOT_HANDED_ON.contains(name.toLowerCase(Locale.ROOT))) {
                    exchange.getResponseHeaders().put(name, List.copyOf(values));
                }
            });
            boolean bare =
                    answer.body().length == 0 || exchange.getRequestMethod().equals("HEAD");
            exchange.sendResponseHeaders(answer.statusCode(), bare ? -1 : answer.body().length);
            if (!bare) {
                exchange.getResponseBody().write(answer.body());
            }
        }
    }

    private HttpResponse<byte[]> remembered(HttpExchange exchange, byte[] body) {
        HttpRequest request = request(exchange, body);
        // The id that a question is followed by is not part of it.
        String key = exchange.getRequestURI().toString().replaceFirst("\\?id=[^&]*$", "") + " " + sha256(body);
        HttpResponse<byte[]> answer =
                remembered.computeIfAbsent(key, any -> ask(request)).join();
        if (answer.statusCode() != 200) {
            remembered.remove(key);
        }
        return answer;
    }

    private CompletableFuture<HttpResponse<byte[]>> ask(HttpRequest request) {
        return client.sendAsync(request, HttpResponse.BodyHandlers.ofByteArray());
    }

    private HttpRequest request(HttpExchange exchange, byte[] body) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(behind + exchange.getRequestURI()))
                .method(exchange.getRequestMethod(), HttpRequest.BodyPublishers.ofByteArray(body));
        exchange.getRequestHeaders().forEach((name, values) -> {
            if (!NOT_HANDED_ON.contains(name.toLowerCase(Locale.ROOT))) {
                values.forEach(value -> request.header(name, value));
            }
        });
        return request.build();
    }

    private static String sha256(byte[] body) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(body));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        front.stop(0);
        threads.shutdownNow();
    }
}
