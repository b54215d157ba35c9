package org.cresthaul.server;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.HandlerType;
import io.javalin.util.JavalinException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.cresthaul.check.CheckFollower;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Report;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** The page and the API over HTTP, on this machine's loopback unless told otherwise. */
public final class WebServer implements AutoCloseable {
    /** More than there are bodies and checks together, so that pages and cheap answers always find one free. */
    private static final int MOST_THREADS = 64;

    private final Javalin javalin;
    private final String address;
    private final WorkGate gate;
    private final CheckedReports reports;

    private WebServer(Javalin javalin, String address, WorkGate gate, CheckedReports reports) {
        this.javalin = javalin;
        this.address = address;
        this.gate = gate;
        this.reports = reports;
    }

    /** @throws UncheckedIOException when the port cannot be had */
    public static WebServer start(ServerOptions options) {
        return start(options, WorkGate.Limits.usual(), BodyGate.usual(), new CheckedReports());
    }

    static WebServer start(ServerOptions options, WorkGate.Limits limits, BodyGate bodies, CheckedReports reports) {
        AnswerHeaders headers = new AnswerHeaders(options.tiles());
        WorkGate gate = new WorkGate(limits);
        List<Endpoint> endpoints = new Api(options, gate, bodies, reports).endpoints();
        Javalin javalin = Javalin.create(config -> {
            jetty(config, headers);
            HostGuard guard = new HostGuard(options);
            config.routes.before(ctx -> headers.all().forEach(ctx::header));
            config.routes.before(guard::require);
            config.routes.before(SiteGuard::require);
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
            gate.close();
            throw new UncheckedIOException(new IOException("cannot listen on port " + options.port(), e));
        }
        return new WebServer(javalin, options.address(), gate, reports);
    }

    private static void jetty(JavalinConfig config, AnswerHeaders headers) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.jetty.threadPool = new QueuedThreadPool(MOST_THREADS, 4);
        config.jetty.modifyServer(server -> server.setErrorHandler(new JettyProblems(headers)));
        config.jetty.modifyHttpConfiguration(http -> http.setSendServerVersion(false));
    }

    /** A report, which is there then for whoever asks the server the same; who asks before is told how far it is. */
    public Report check(Haul haul, Inputs inputs) {
        reports.documents().keep(haul, inputs);
        return reports.of(new CheckRequest(haul, inputs), new CheckUnderway());
    }

    /**
     * For a server that people wait for: writes the report of what was checked and makes its plan, then lets imports be
     * quick the first time. Begins aside and ends by itself, and with the program.
     */
    public void prepare(Haul haul, Inputs inputs) {
        aside("preparation", () -> {
            CheckRequest check = new CheckRequest(haul, inputs);
            reports.json(check, CheckFollower.NONE);
            planAhead(check, reports);
            ImportRehearsal.run();
        });
    }

    /** For such a server too, while it checks: what opens the page is loaded before somebody opens it. */
    public void rehearseOpening(Samples samples) {
        aside("rehearsal", () -> OpeningRehearsal.run(url(), samples));
    }

    private static void aside(String name, Runnable work) {
        Thread aside = new Thread(work, name);
        aside.setDaemon(true);
        aside.setPriority(Thread.MIN_PRIORITY);
        aside.start();
    }

    /** The plan that the page asks for when it opens, made before it does; none that would be refused. */
    static void planAhead(CheckRequest check, CheckedReports reports) {
        try {
            PlanRequest.PLAIN.of(check.requireBoundedWork(), reports);
        } catch (Refusal tooMuch) {
            // The page is told so when it asks.
        }
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
        gate.close();
        javalin.stop();
    }
}
