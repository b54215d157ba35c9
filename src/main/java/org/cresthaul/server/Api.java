package org.cresthaul.server;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.check.Version;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteFile;
import org.cresthaul.units.InputRejected;

/** The JSON API; {@code openapi.json} describes it. */
final class Api {
    private static final String JSON = "application/json";

    private final Samples samples;
    private final Optional<Tiles> tiles;
    private final WorkGate gate;

    Api(Samples samples, Optional<Tiles> tiles, WorkGate gate) {
        this.samples = samples;
        this.tiles = tiles;
        this.gate = gate;
    }

    List<Endpoint> endpoints() {
        return List.of(
                new Endpoint(HandlerType.GET, "/api/version", this::version),
                new Endpoint(HandlerType.GET, "/api/settings", this::settings),
                new Endpoint(HandlerType.GET, "/api/samples", this::samples),
                new Endpoint(HandlerType.GET, "/api/samples/routes/{id}", ctx -> sample(ctx, samples.routes())),
                new Endpoint(HandlerType.GET, "/api/samples/rigs/{id}", ctx -> sample(ctx, samples.rigs())),
                new Endpoint(HandlerType.POST, "/api/route", this::route),
                new Endpoint(HandlerType.POST, "/api/check", this::check),
                new Endpoint(HandlerType.POST, "/api/passage", this::passage),
                new Endpoint(HandlerType.POST, "/api/corner", this::corner),
                new Endpoint(HandlerType.POST, "/api/loads", this::loads),
                new Endpoint(HandlerType.POST, "/api/plan", this::plan),
                new Endpoint(HandlerType.POST, "/api/comparison", this::comparison),
                new Endpoint(HandlerType.POST, "/api/runsheet", ctx -> paper(ctx, PaperRequest::runSheet)),
                new Endpoint(HandlerType.POST, "/api/statement", ctx -> paper(ctx, PaperRequest::statement)),
                new Endpoint(HandlerType.GET, "/openapi.json", this::description));
    }

    /** @param version of the program */
    private record VersionAnswer(String version) {}

    /** @param tiles null when no base map is set up */
    private record SettingsAnswer(Tiles tiles) {}

    private record SamplesAnswer(List<SampleEntry> routes, List<SampleEntry> rigs) {}

    private record SampleEntry(String id, String name) {
        static List<SampleEntry> of(List<Sample> samples) {
            return samples.stream().map(s -> new SampleEntry(s.id(), s.name())).toList();
        }
    }

    private void version(Context ctx) {
        answer(ctx, new VersionAnswer(Version.NUMBER));
    }

    private void settings(Context ctx) {
        answer(ctx, new SettingsAnswer(tiles.orElse(null)));
    }

    private void samples(Context ctx) {
        answer(ctx, new SamplesAnswer(SampleEntry.of(samples.routes()), SampleEntry.of(samples.rigs())));
    }

    private void sample(Context ctx, List<Sample> among) {
        Sample sample = among.stream()
                .filter(s -> s.id().equals(ctx.pathParam("id")))
                .findFirst()
                .orElseThrow(() -> new Refusal(ProblemKind.NOT_FOUND, "See /api/samples for what there is."));
        ctx.contentType(JSON).result(sample.document());
    }

    private void route(Context ctx) throws Exception {
        byte[] body = RequestBody.json(ctx);
        answer(ctx, gate.run(() -> RouteView.of(routeOf(body))));
    }

    private static Route routeOf(byte[] body) {
        try {
            return RouteFile.parse(body);
        } catch (InputRejected rejected) {
            throw Refusal.of(rejected.problems());
        }
    }

    private void check(Context ctx) throws Exception {
        byte[] body = RequestBody.json(ctx);
        answer(ctx, gate.run(() -> {
            CheckRequest asked = CheckRequest.read(body).requireBoundedWork();
            return RouteCheck.check(asked.route(), asked.rig(), asked.stance(), asked.margins(), asked.inputs());
        }));
    }

    private void passage(Context ctx) throws Exception {
        byte[] body = RequestBody.json(ctx);
        answer(ctx, gate.run(() -> {
            CheckRequest.With<PassageRequest> asked = CheckRequest.read(body, PassageRequest::read);
            return asked.more().of(asked.check());
        }));
    }

    private void corner(Context ctx) throws Exception {
        byte[] body = RequestBody.json(ctx);
        answer(ctx, gate.run(() -> {
            CheckRequest.With<CornerRequest> asked = CheckRequest.read(body, CornerRequest::read);
            return asked.more().of(asked.check());
        }));
    }

    private void loads(Context ctx) throws Exception {
        byte[] body = RequestBody.json(ctx);
        answer(ctx, gate.run(() -> {
            CheckRequest.With<LoadsRequest> asked = CheckRequest.read(body, LoadsRequest::read);
            return asked.more().of(asked.check());
        }));
    }

    private void plan(Context ctx) throws Exception {
        byte[] body = RequestBody.json(ctx);
        answer(ctx, gate.run(() -> {
            CheckRequest.With<PlanRequest> asked = CheckRequest.read(body, PlanRequest::read);
            return asked.more().of(asked.check().requireBoundedWork()).plan();
        }));
    }

    private void paper(Context ctx, BiFunction<PaperRequest, CheckRequest, byte[]> maker) throws Exception {
        byte[] body = RequestBody.json(ctx);
        gate.run(() -> {
            CheckRequest.With<PaperRequest> asked = CheckRequest.read(body, PaperRequest::read);
            byte[] made = maker.apply(asked.more(), asked.check().requireBoundedWork());
            ctx.contentType(asked.more().form().contentType).result(made);
            return made;
        });
    }

    private void comparison(Context ctx) throws Exception {
        byte[] body = RequestBody.json(ctx);
        answer(ctx, gate.run(() -> {
            CheckRequest.With<PlanRequest> asked = CheckRequest.read(body, PlanRequest::read);
            return asked.more().comparison(asked.check().requireBoundedWork());
        }));
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
