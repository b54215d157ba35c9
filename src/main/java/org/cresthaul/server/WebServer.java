package org.cresthaul.server;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.HandlerType;
import io.javalin.util.JavalinException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** The page and the API over HTTP, on this machine's loopback unless told otherwise. */
public final class WebServer implements AutoCloseable {
    private static final int MOST_THREADS = 16;
    private static final long LONGEST_WAIT_MS = 30_000;

    private final Javalin javalin;
    private final String address;

    private WebServer(Javalin javalin, String address) {
        this.javalin = javalin;
        this.address = address;
    }

    /** @throws UncheckedIOException when the port cannot be had */
    public static WebServer start(ServerOptions options) {
        AnswerHeaders headers = new AnswerHeaders(options.tiles());
        WorkGate gate = new WorkGate(Runtime.getRuntime().availableProcessors(), LONGEST_WAIT_MS);
        List<Endpoint> endpoints = new Api(options.samples(), options.tiles(), gate).endpoints();
        Javalin javalin = Javalin.create(config -> {
            jetty(config, headers);
            HostGuard guard = new HostGuard(options.host());
            config.routes.before(ctx -> headers.all().forEach(ctx::header));
            config.routes.before(guard::require);
            for (Endpoint endpoint : endpoints) {
                config.routes.addHttpHandler(endpoint.method(), endpoint.path(), endpoint.handler());
                if (endpoint.method() == HandlerType.GET) {
                    config.routes.head(endpoint.path(), endpoint.handler());
                }
            }
            config.routes.get("/*", Pages::serve);
            config.routes.head("/*", Pages::serve);
            new ProblemAnswers(endpoints).install(config);
        });
        try {
            javalin.start(options.address(), options.port());
        } catch (JavalinException e) {
            throw new UncheckedIOException(new IOException("cannot listen on port " + options.port(), e));
        }
        return new WebServer(javalin, options.address());
    }

    private static void jetty(JavalinConfig config, AnswerHeaders headers) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.jetty.threadPool = new QueuedThreadPool(MOST_THREADS, 4);
        config.jetty.modifyServer(server -> server.setErrorHandler(new JettyProblems(headers)));
        config.jetty.modifyHttpConfiguration(http -> http.setSendServerVersion(false));
    }

    public int port() {
        return javalin.port();
    }

    /** Where to open the page. */
    public String url() {
        return "http://" + (address.contains(":") ? "[" + address + "]" : address) + ":" + port() + "/";
    }

    @Override
    public void close() {
        javalin.stop();
    }
}
