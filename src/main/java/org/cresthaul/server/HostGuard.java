package org.cresthaul.server;

import io.javalin.http.Context;
import java.util.Locale;
import java.util.Set;

/**
 * Answers only to the names of this machine's loopback, so that a page from elsewhere cannot reach the server through a
 * host name of its own that it points here (DNS rebinding).
 */
final class HostGuard {
    private static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "[::1]");

    private final boolean open;

    /** @param open whether the server can be reached from elsewhere; then every name is answered to */
    HostGuard(boolean open) {
        this.open = open;
    }

    void require(Context ctx) {
        String host = ctx.header("Host");
        if (!open && (host == null || !LOOPBACK.contains(withoutPort(host.toLowerCase(Locale.ROOT))))) {
            throw new Refusal(ProblemKind.WRONG_HOST, "Open it as http://127.0.0.1 or http://localhost with its port.");
        }
    }

    private static String withoutPort(String host) {
        return host.replaceFirst(":\\d{1,5}$", "");
    }
}
