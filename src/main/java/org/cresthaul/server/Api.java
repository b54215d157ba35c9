package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Version;
import org.cresthaul.route.Route;
import org.cresthaul.store.PaperKind;
import org.cresthaul.units.Problems;
import org.cresthaul.view.RouteView;

/** The JSON API; {@code openapi.json} describes it. */
final class Api {
    private static final String JSON = "application/json";

    private final Samples samples;
    private final Optional<Tiles> tiles;
    private final WorkGate gate;
    private final BodyGate bodies;
    private final ImportDesk imports;
    private final CheckedReports reports;
    private final Underway<CheckUnderway> underway = new Underway<>();
    private final ProjectDesk projects;

    /** @param reports what was checked and planned before, here or by another server */
    Api(ServerOptions options, WorkGate gate, BodyGate bodies, CheckedReports reports) {
        this.samples = options.samples();
        this.tiles = options.tiles();
        this.gate = gate;
        this.bodies = bodies;
        this.imports = new ImportDesk(gate, bodies);
        this.reports = reports;
        this.projects = new ProjectDesk(options.projects(), bodies);
    }

    List<Endpoint> endpoints() {
        List<Endpoint> all = new ArrayList<>(projects.endpoints());
        all.addAll(List.of(
                new Endpoint(HandlerType.GET, "/api/version", this::version),
                new Endpoint(HandlerType.GET, "/api/health", this::health),
                new Endpoint(HandlerType.GET, "/api/settings", this::settings),
                new Endpoint(HandlerType.GET, "/api/samples", this::samples),
                new Endpoint(HandlerType.GET, "/api/samples/routes/{id}", ctx -> sample(ctx, samples.routes())),
                new Endpoint(HandlerType.GET, "/api/samples/rigs/{id}", ctx -> sample(ctx, samples.rigs())),
                new Endpoint(HandlerType.GET, "/api/samples/maps/{id}", ctx -> sample(ctx, samples.maps())),
                new Endpoint(HandlerType.POST, "/api/import", imports::make),
                new Endpoint(HandlerType.GET, "/api/import/{id}", imports::progress),
                new Endpoint(HandlerType.DELETE, "/api/import/{id}", imports::stop),
                new Endpoint(HandlerType.POST, "/api/route", this::route),
                new Endpoint(HandlerType.POST, "/api/check", this::check),
                new Endpoint(HandlerType.GET, "/api/check/{id}", this::progress),
                new Endpoint(HandlerType.POST, "/api/passage", this::passage),
                new Endpoint(HandlerType.POST, "/api/corner", this::corner),
                new Endpoint(HandlerType.POST, "/api/loads", this::loads),
                new Endpoint(HandlerType.POST, "/api/plan", this::plan),
                new Endpoint(HandlerType.POST, "/api/comparison", this::comparison),
                new Endpoint(HandlerType.POST, "/api/combinations", this::combinations),
                new Endpoint(HandlerType.POST, "/api/runsheet", ctx -> paper(ctx, PaperKind.RUN_SHEET)),
                new Endpoint(HandlerType.POST, "/api/statement", ctx -> paper(ctx, PaperKind.STATEMENT)),
                new Endpoint(HandlerType.POST, "/api/verify", this::verify),
                new Endpoint(HandlerType.GET, "/openapi.json", this::description)));
        return all;
    }

    /** @param version of the program */
    private record VersionAnswer(String version) {}

    /**
     * How the server is set up.
     *
     * @param tiles null when no base map is set up
     * @param projects whether projects are kept
     */
    private record SettingsAnswer(Tiles tiles, boolean projects) {}

    /**
     * How the server stands.
     *
     * @param status "ready" when it would take a check now, "busy" when not, "stuck" when a check does not end though
     *     it was stopped: then the program should be started again
     */
    private record HealthAnswer(String status, int running, int waiting, int stuck) {}

    /** @param kept where it can be had again, when it is kept */
    private record Made(String type, byte[] bytes, Optional<String> kept) {}

    private record SamplesAnswer(List<SampleEntry> routes, List<SampleEntry> rigs) {}

    /** @param map whether there is a base map of that id, to be drawn beneath it */
    private record SampleEntry(String id, String name, boolean map) {
        static List<SampleEntry> of(List<Sample> samples, List<Sample> maps) {
            return samples.stream()
                    .map(s -> new SampleEntry(s.id(), s.name(), maps.stream().anyMatch(m -> m.id().equals(s.id()))))
                    .toList();
        }
    }

    private void version(Context ctx) {
        answer(ctx, new VersionAnswer(Version.NUMBER));
    }

    private void settings(Context ctx) {
        answer(ctx, new SettingsAnswer(tiles.orElse(null), projects.keeps()));
    }

    private void samples(Context ctx) {
        answer(
                ctx,
                new SamplesAnswer(
                        SampleEntry.of(samples.routes(), samples.maps()), SampleEntry.of(samples.rigs(), List.of())));
    }

    private void sample(Context ctx, List<Sample> among) {
        Sample sample = among.stream()
                .filter(s -> s.id().equals(ctx.pathParam("id")))
                .findFirst()
                .orElseThrow(() -> new Refusal(ProblemKind.NOT_FOUND, "See /api/samples for what there is."));
        ctx.contentType(JSON).result(sample.document());
    }

    private void health(Context ctx) {
        WorkGate.State state = gate.state();
        boolean ready = state.takesMore() && bodies.takesMore();
        if (!ready) {
            // So that whoever watches over the program need not read further.
            ctx.status(ProblemKind.BUSY.status()).header("Retry-After", "10");
        }
        answer(
                ctx,
                new HealthAnswer(
                        state.stuck() > 0 ? "stuck" : ready ? "ready" : "busy",
                        state.running(),
                        state.waiting(),
                        state.stuck()));
    }

    private void route(Context ctx) throws Exception {
        made(ctx, body -> JsonAnswer.bytes(RouteView.of(routeOf(body))));
    }

    private Route routeOf(byte[] body) {
        Problems problems = new Problems();
        JsonNode root = JsonText.read(body, problems);
        Optional<Route> route = problems.isEmpty()
                ? reports.documents()
                        .route(root, "", Optional.of(RequestMembers.sha256(body, 0, body.length)), problems)
                : Optional.empty();
        return route.orElseThrow(() -> Refusal.of(problems.list()));
    }

    private void check(Context ctx) throws Exception {
        followed(ctx, (body, one) -> {
            CheckRequest asked = CheckRequest.read(body, reports.documents()).requireBoundedWork();
            return reports.json(asked, one);
        });
    }

    /** What may be asked after by the id that the request brings, while it runs. */
    private void followed(Context ctx, BiFunction<byte[], CheckUnderway, byte[]> json) throws Exception {
        CheckUnderway one = new CheckUnderway();
        underway.during(ctx.queryParam("id"), one, () -> made(ctx, body -> json.apply(body, one)));
    }

    private void progress(Context ctx) {
        String from = ctx.queryParam("from");
        int first = from != null && from.matches("\\d{1,6}") ? Integer.parseInt(from) : 0;
        answer(
                ctx,
                underway.find(ctx.pathParam("id")).map(one -> one.state(first)).orElse(CheckUnderway.State.NONE));
    }

    private void passage(Context ctx) throws Exception {
        made(ctx, body -> {
            CheckRequest.With<PassageRequest> asked =
                    CheckRequest.read(body, PassageRequest::read, reports.documents());
            return JsonAnswer.bytes(asked.more().of(asked.check()));
        });
    }

    private void corner(Context ctx) throws Exception {
        made(ctx, body -> {
            CheckRequest.With<CornerRequest> asked = CheckRequest.read(body, CornerRequest::read, reports.documents());
            return JsonAnswer.bytes(asked.more().of(asked.check()));
        });
    }

    private void loads(Context ctx) throws Exception {
        made(ctx, body -> {
            CheckRequest.With<LoadsRequest> asked = CheckRequest.read(body, LoadsRequest::read, reports.documents());
            return JsonAnswer.bytes(asked.more().of(asked.check()));
        });
    }

    private void plan(Context ctx) throws Exception {
        followed(ctx, (body, one) -> {
            CheckRequest.With<PlanRequest> asked = CheckRequest.read(body, PlanRequest::read, reports.documents());
            return JsonAnswer.bytes(asked.more()
                    .of(asked.check().requireBoundedWork(), reports, one)
                    .plan());
        });
    }

    private void comparison(Context ctx) throws Exception {
        made(ctx, body -> {
            CheckRequest.With<PlanRequest> asked = CheckRequest.read(body, PlanRequest::read, reports.documents());
            return JsonAnswer.bytes(asked.more().comparison(asked.check().requireBoundedWork(), reports));
        });
    }

    private void combinations(Context ctx) throws Exception {
        made(ctx, body -> {
            CheckRequest.With<PlanRequest> asked = CheckRequest.read(body, PlanRequest::read, reports.documents());
            Haul haul = asked.check().haul();
            CheckRequest check = asked.check().requireBoundedWork(haul.rig().combinationsWith(haul.stance()));
            return JsonAnswer.bytes(asked.more().combinations(check, reports));
        });
    }

    /** A record that somebody sends tells nothing but itself: its paper is made again and compared. */
    private void verify(Context ctx) throws Exception {
        made(ctx, record -> JsonAnswer.bytes(Verification.of(record)));
    }

    /** Makes a paper; of a project that is named, it is kept before it is answered. */
    private void paper(Context ctx, PaperKind kind) throws Exception {
        Optional<String> project = projects.projectOf(ctx);
        answered(ctx, body -> {
            PaperRecord.Made made = PaperRecord.make(kind, body, reports);
            Optional<String> kept = project.map(id -> projects.keep(id, kind, made, body));
            return new Made(made.mediaType(), made.bytes(), kept);
        });
    }

    private void made(Context ctx, Function<byte[], byte[]> json) throws Exception {
        answered(ctx, body -> new Made(JSON, json.apply(body), Optional.empty()));
    }

    /** Takes the body when there is room for it, and answers when its turn has come and as long as somebody waits. */
    private void answered(Context ctx, Function<byte[], Made> maker) throws Exception {
        try (BodyGate.Admitted room = bodies.admit()) {
            byte[] body = RequestBody.json(ctx, room);
            Asker asker = Asker.of(ctx.req());
            Made made = gate.run(asker, () -> maker.apply(body));
            made.kept.ifPresent(address -> ctx.header("Location", address));
            ctx.contentType(made.type).result(made.bytes);
            if (asker instanceof Asker.Connection connection && connection.hasSpoken()) {
                ctx.header("Connection", "close");
            }
        } catch (OutOfMemoryError e) {
            throw Refusal.memoryShort();
        }
    }

    private void description(Context ctx) throws IOException {
        try (InputStream document = Api.class.getResourceAsStream("/openapi.json")) {
            ctx.contentType(JSON).result(document.readAllBytes());
        }
    }

    private static void answer(Context ctx, Object value) {
        ctx.contentType(JSON).result(JsonAnswer.bytes(value));
    }
}
