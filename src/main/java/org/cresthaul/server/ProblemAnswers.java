package org.cresthaul.server;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.cresthaul.store.StoreFailure;
import org.eclipse.jetty.http.HttpException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Turns every way in which a request can fail into problem details; nothing of the program's inside gets out. */
final class ProblemAnswers {
    private static final Logger LOG = LoggerFactory.getLogger(ProblemAnswers.class);
    private static final String INTERNAL = "Nothing was checked. The program's own terminal tells more.";

    private final List<Endpoint> endpoints;

    ProblemAnswers(List<Endpoint> endpoints) {
        this.endpoints = List.copyOf(endpoints);
    }

    void install(JavalinConfig config) {
        config.routes.exception(Refusal.class, (refusal, ctx) -> answer(ctx, refusal));
        config.routes.exception(StoreFailure.class, (e, ctx) -> answer(ctx, ofStore(e, ctx)));
        config.routes.exception(HttpResponseException.class, (e, ctx) -> answer(ctx, ofStatus(e.getStatus(), ctx)));
        config.routes.exception(Exception.class, (e, ctx) -> answer(ctx, unexpected(e, ctx)));
        config.router.javaLangErrorHandler((response, error) -> {
            boolean memory = error instanceof OutOfMemoryError;
            ProblemDetails details = memory
                    ? Refusal.memoryShort().details()
                    : ProblemDetails.of(ProblemKind.INTERNAL, INTERNAL, List.of());
            LOG.error("A request failed", error);
            try {
                response.setStatus(details.status());
                response.setContentType(ProblemDetails.MEDIA_TYPE);
                response.getOutputStream().write(JsonAnswer.bytes(details));
            } catch (IOException e) {
                LOG.warn("The caller was gone before the answer", e);
            }
        });
    }

    private static Refusal ofStore(StoreFailure e, Context ctx) {
        if (e.kind() == StoreFailure.Kind.UNREADABLE) {
            LOG.error("{} {}: the store failed", ctx.req().getMethod(), ctx.path(), e);
        } else {
            LOG.warn("{} {}: {}", ctx.req().getMethod(), ctx.path(), e.getMessage());
        }
        String rest = " Nothing of this was saved; what was saved before is as it was.";
        return switch (e.kind()) {
            case FULL -> new Refusal(ProblemKind.DISK_FULL, "The disk of the data folder is full." + rest);
            case NOT_WRITABLE -> new Refusal(ProblemKind.NOT_WRITABLE, "The data folder cannot be written." + rest);
            case BUSY ->
                new Refusal(
                        ProblemKind.NOT_WRITABLE,
                        "Another program holds the data folder." + rest,
                        List.of(),
                        Map.of("Retry-After", "5"));
            case UNREADABLE ->
                new Refusal(
                        ProblemKind.INTERNAL,
                        "The data folder holds something that cannot be read. Look at its backup.");
        };
    }

    private void answer(Context ctx, Refusal refusal) {
        refusal.headers().forEach(ctx::header);
        ctx.status(refusal.kind().status())
                .contentType(ProblemDetails.MEDIA_TYPE)
                .result(JsonAnswer.bytes(refusal.details()));
    }

    private Refusal ofStatus(int status, Context ctx) {
        Set<String> allowed = allowed(ctx.path());
        if ((status == 404 || status == 405)
                && !allowed.isEmpty()
                && !allowed.contains(ctx.req().getMethod())) {
            String methods = String.join(", ", allowed);
            return new Refusal(
                    ProblemKind.METHOD_NOT_ALLOWED, "It takes " + methods + ".", List.of(), Map.of("Allow", methods));
        }
        ProblemKind kind = status == 405 ? ProblemKind.NOT_FOUND : ProblemKind.ofStatus(status);
        String detail = kind == ProblemKind.NOT_FOUND
                ? "Start at / for the page, or see /openapi.json."
                : "The HTTP request itself was not in order.";
        return new Refusal(kind, detail);
    }

    private Refusal unexpected(Exception e, Context ctx) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof HttpException http && http.getCode() < 500) {
                return ofStatus(http.getCode(), ctx);
            }
        }
        LOG.error("{} {} failed", ctx.req().getMethod(), ctx.path(), e);
        return new Refusal(ProblemKind.INTERNAL, INTERNAL);
    }

    /** The methods that work at an address; none when nothing is there. */
    private Set<String> allowed(String path) {
        Set<String> methods = new TreeSet<>();
        for (Endpoint endpoint : endpoints) {
            if (endpoint.isAt(path)) {
                methods.add(endpoint.method().name());
            }
        }
        try {
            if (Pages.find(path).isPresent()) {
                methods.add(HandlerType.GET.name());
            }
        } catch (IOException e) {
            LOG.warn("{} could not be read", path, e);
        }
        if (methods.contains(HandlerType.GET.name())) {
            methods.add(HandlerType.HEAD.name());
        }
        return methods;
    }
}
