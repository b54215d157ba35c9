package org.cresthaul.server;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Optional;
import org.cresthaul.store.ProjectStore;

/**
 * How the server is set up.
 *
 * @param host address to listen on instead of the loopback; whoever reaches it may then use the server
 * @param port to listen on; 0 takes any free one
 * @param tiles a base map, when one is wanted
 * @param samples what the page offers to open
 * @param projects where projects are kept, when they are
 */
public record ServerOptions(
        Optional<String> host, int port, Optional<Tiles> tiles, Samples samples, Optional<ProjectStore> projects) {
    static final String LOOPBACK = "127.0.0.1";

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
