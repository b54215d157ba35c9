package org.cresthaul.server;

import io.javalin.http.Context;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Answers only under names that are listed, so that a page from elsewhere cannot reach the server through a host name
 * of its own that it points here (DNS rebinding). Listed are the names of the loopback, unless an address is listened
 * on that they do not lead to; the address listened on, and every address of this machine where it is all of them; and
 * what the options name.
 */
final class HostGuard {
    private static final List<String> LOOPBACK = List.of("127.0.0.1", "localhost", "::1");

    private final Set<String> names = new HashSet<>();
    private final String remedy;

    HostGuard(ServerOptions options) {
        InetAddress address = addressOf(options);
        boolean everywhere = address.isAnyLocalAddress();
        if (options.isLoopback() || everywhere) {
            LOOPBACK.forEach(this::list);
        }
        list(address.getHostAddress());
        if (everywhere) {
            listAddressesOfThisMachine();
        }
        options.host().ifPresent(this::list);
        options.names().forEach(this::list);
        // Which names are listed is not told: whoever is refused may be a page from elsewhere.
        remedy = options.isLoopback()
                ? "Open it as http://127.0.0.1 or http://localhost with its port."
                : "Open it under the address that it was started with, or start it with --host-name for this name.";
    }

    void require(Context ctx) {
        String host = ctx.header("Host");
        if (host == null || !names.contains(plain(host.replaceFirst(":\\d{1,5}$", "")))) {
            throw new Refusal(ProblemKind.WRONG_HOST, remedy);
        }
    }

    private static InetAddress addressOf(ServerOptions options) {
        try {
            return InetAddress.getByName(options.address());
        } catch (UnknownHostException e) {
            throw new IllegalArgumentException("no address to listen on: " + options.address(), e);
        }
    }

    private void listAddressesOfThisMachine() {
        try {
            NetworkInterface.networkInterfaces()
                    .flatMap(NetworkInterface::inetAddresses)
                    .forEach(address -> list(address.getHostAddress()));
        } catch (SocketException e) {
            // Then it is reached by the loopback and by what the options name.
            return;
        }
    }

    /** @param name a host name, or an address with or without brackets and a zone */
    private void list(String name) {
        boolean bare = name.indexOf(':') >= 0 && !name.startsWith("[");
        names.add(plain(bare ? "[" + name.replaceFirst("%.*$", "") + "]" : name));
    }

    /** Addresses of version 6 have several spellings; in brackets none is looked up as a name. */
    private static String plain(String host) {
        String lower = host.toLowerCase(Locale.ROOT);
        if (lower.startsWith("[")) {
            try {
                return InetAddress.getByName(lower).getHostAddress();
            } catch (UnknownHostException e) {
                return lower;
            }
        }
        return lower;
    }
}
