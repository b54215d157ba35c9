package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.javalin.Javalin;
import io.javalin.http.HandlerType;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Mistakes of the program itself end as a plain 500, with nothing of its inside. */
class ProblemAnswersTest {
    private record Unknown(double valueM) {}

    @ParameterizedTest
    @ValueSource(strings = {"/exception", "/error", "/unknown-number"})
    void hidesTheInside(String path) throws Exception {
        List<Endpoint> endpoints = List.of(
                new Endpoint(HandlerType.GET, "/exception", ctx -> {
                    throw new IllegalStateException("secret org.cresthaul.Inside");
                }),
                new Endpoint(HandlerType.GET, "/error", ctx -> {
                    throw new StackOverflowError("secret org.cresthaul.Inside");
                }),
                new Endpoint(
                        HandlerType.GET,
                        "/unknown-number",
                        ctx -> ctx.result(JsonAnswer.bytes(new Unknown(Double.NaN)))));
        Javalin javalin = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            endpoints.forEach(e -> config.routes.addHttpHandler(e.method(), e.path(), e.handler()));
            new ProblemAnswers(endpoints).install(config);
        });
        try {
            javalin.start("127.0.0.1", 0);
            HttpResponse<String> response = HttpClient.newHttpClient()
                    .send(
                            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + javalin.port() + path))
                                    .build(),
                            HttpResponse.BodyHandlers.ofString());

            BadRequestTest.requireProblem(response, 500, "internal");
        } finally {
            javalin.stop();
        }
    }

    @Test
    void writesNoNumberThatIsNotKnown() {
        assertThrows(IllegalArgumentException.class, () -> JsonAnswer.bytes(new Unknown(Double.POSITIVE_INFINITY)));
        assertThrows(IllegalArgumentException.class, () -> JsonAnswer.bytes(List.of(Double.NaN)));
        assertEquals("{\"valueM\":0.0}", new String(JsonAnswer.bytes(new Unknown(-0.0)), StandardCharsets.UTF_8));
    }
}
