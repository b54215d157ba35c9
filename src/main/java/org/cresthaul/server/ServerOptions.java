package org.cresthaul.server;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.cresthaul.store.ProjectStore;

/**
 * How the server is set up.
 *
 * @param host address to listen on instead of the loopback; whoever reaches it may then use the server
 * @param port to listen on; 0 takes any free one
 * @param tiles a base map, when one is wanted
 * @param samples what the page offers to open
 * @param projects where projects are kept, when they are
 * @param names host names that it answers to beside those of the address listened on
 */
public record ServerOptions(
        Optional<String> host,
        int port,
        Optional<Tiles> tiles,
        Samples samples,
        Optional<ProjectStore> projects,
        List<String> names) {
    static final String LOOPBACK = "127.0.0.1";

    /** A name or an address as it stands in an address of a page, without a port. */
    private static final Pattern NAME = Pattern.compile("[\\p{Alnum}.-]{1,253}|\\[?[\\p{XDigit}:.]{2,45}]?");

    public ServerOptions {
        names = List.copyOf(names);
        for (String name : names) {
            if (!NAME.matcher(name).matches()) {
                throw new IllegalArgumentException(
                        '"' + name + "\" is no host name; one is written as planner.example.org, without a port");
            }
        }
    }

    /** Answering to no other names. */
    public ServerOptions(
            Optional<String> host, int port, Optional<Tiles> tiles, Samples samples, Optional<ProjectStore> projects) {
        this(host, port, tiles, samples, projects, List.of());
    }

    /** Keeping nothing. */
    public ServerOptions(Optional<String> host, int port, Optional<Tiles> tiles, Samples samples) {
        this(host, port, tiles, samples, Optional.empty());
    }

    /** Whether only this machine can reach it, however the address was written. */
    public boolean isLoopback() {
        try {
            return InetAddress.getByName(address()).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
    }

    String address() {
        return host.orElse(LOOPBACK);
    }
}
