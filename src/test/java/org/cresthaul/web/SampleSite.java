package org.cresthaul.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.cresthaul.server.Requests;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * The samples, served to every class of tests that looks at the page without changing how it is asked: the page asks
 * the same of the same files each time it is opened, and {@link RememberedAnswers} has each answered by the server
 * once.
 */
final class SampleSite implements BeforeAllCallback {
    private Running running;

    private static final class Running implements AutoCloseable {
        private final Samples samples = Samples.bundled();
        private final TestServer server = TestServer.remembering(samples);
        private final RememberedAnswers front;
        private final JsonNode report;

        Running() {
            try {
                front = new RememberedAnswers(server.url());
                report = TestServer.json(server.post("/api/check", Requests.check(route(), rig(), "")));
            } catch (IOException | InterruptedException e) {
                server.close();
                throw new IllegalStateException(e);
            }
        }

        private String route() {
            return new String(samples.routes().get(0).document(), StandardCharsets.UTF_8);
        }

        private String rig() {
            return new String(samples.rigs().get(0).document(), StandardCharsets.UTF_8);
        }

        @Override
        public void close() {
            front.close();
            server.close();
        }
    }

    /** Started by the first class, closed after the last. */
    @Override
    public void beforeAll(ExtensionContext context) {
        running = context.getRoot()
                .getStore(ExtensionContext.Namespace.GLOBAL)
                .getOrComputeIfAbsent(SampleSite.class, any -> new Running(), Running.class);
    }

    /** Where the page is. */
    String url() {
        return running.front.url();
    }

    /** The server behind it, to be asked directly. */
    TestServer server() {
        return running.server;
    }

    /** The files that the page opens first. */
    String route() {
        return running.route();
    }

    String rig() {
        return running.rig();
    }

    /** The check of them, asked of the server directly. */
    JsonNode report() {
        return running.report;
    }
}
