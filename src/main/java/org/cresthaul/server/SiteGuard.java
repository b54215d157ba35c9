package org.cresthaul.server;

import io.javalin.http.Context;
import java.util.Locale;
import java.util.Set;

/**
 * Lets the pages of other sites ask for nothing but reading: a browser says where a request comes from
 * ({@code Sec-Fetch-Site}, {@code Origin}), and a program that is no browser says neither.
 */
final class SiteGuard {
    private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");

    private SiteGuard() {}

    static void require(Context ctx) {
        if (READING.contains(ctx.req().getMethod())) {
            return;
        }
        String site = ctx.header("Sec-Fetch-Site");
        String origin = ctx.header("Origin");
        // A proxy in front may give another host name than the browser has; what the browser itself found comes first.
        boolean own = site != null
                ? site.equals("same-origin") || site.equals("none")
                : origin == null || isOwn(origin, ctx.header("Host"));
        if (!own) {
            throw new Refusal(ProblemKind.OTHER_SITE, "Open this server's own page for it.");
        }
    }

    /** Scheme aside, which a proxy in front may have changed. A page without an origin of its own says "null". */
    private static boolean isOwn(String origin, String host) {
        String lower = origin.toLowerCase(Locale.ROOT);
        return host != null
                && (lower.equals("http://" + host.toLowerCase(Locale.ROOT))
                        || lower.equals("https://" + host.toLowerCase(Locale.ROOT)));
    }
}
