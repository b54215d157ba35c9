package org.cresthaul.server;

import java.nio.ByteBuffer;
import java.util.List;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/** What Jetty refuses before a request reaches the routes (a broken address, say), as problem details as well. */
final class JettyProblems extends ErrorHandler {
    private final AnswerHeaders headers;

    JettyProblems(AnswerHeaders headers) {
        this.headers = headers;
    }

    @Override
    public boolean errorPageForMethod(String method) {
        return true;
    }

    @Override
    protected void generateResponse(
            Request request, Response response, int code, String message, Throwable cause, Callback callback) {
        headers.all().forEach(response.getHeaders()::put);
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, ProblemDetails.MEDIA_TYPE);
        response.write(true, ByteBuffer.wrap(body(code)), callback);
    }

    private static byte[] body(int status) {
        ProblemKind kind = ProblemKind.ofStatus(status);
        ProblemDetails details = new ProblemDetails(
                kind.type(), kind.title(), status, "The HTTP request itself was not in order.", List.of());
        return JsonAnswer.bytes(details);
    }
}
