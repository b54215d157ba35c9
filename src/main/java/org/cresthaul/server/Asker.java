package org.cresthaul.server;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.io.SocketChannelEndPoint;

/** Who waits for an answer, and whether they still do. */
interface Asker {
    /** Somebody of whom it cannot be told; taken to wait. */
    Asker UNKNOWN = () -> false;

    /** Whether the connection was closed since the request was received whole. For one thread at a time. */
    boolean isGone();

    /** The other end of a request whose body has been read to its end. */
    static Asker of(HttpServletRequest request) {
        EndPoint end = ServletContextRequest.getServletContextRequest(request)
                .getConnectionMetaData()
                .getConnection()
                .getEndPoint();
        return end instanceof SocketChannelEndPoint socket ? new Connection(socket.getChannel()) : UNKNOWN;
    }

    /**
     * A connection that nobody reads from while its request is handled: a server is told of its end only by reading.
     * Whoever sends another request before the answer has come loses its first byte here; the answer then closes the
     * connection, as {@link #hasSpoken} says.
     */
    final class Connection implements Asker {
        private final SocketChannel channel;
        private final ByteBuffer one = ByteBuffer.allocate(1);
        private volatile boolean spoken;

        Connection(SocketChannel channel) {
            this.channel = channel;
        }

        @Override
        public boolean isGone() {
            if (spoken) {
                return false;
            }
            try {
                one.clear();
                int read = channel.isBlocking() ? 0 : channel.read(one);
                spoken = read > 0;
                return read < 0;
            } catch (IOException closed) {
                return true;
            }
        }

        /** Whether something came that was not an end; the connection cannot be used for another request then. */
        boolean hasSpoken() {
            return spoken;
        }
    }
}
