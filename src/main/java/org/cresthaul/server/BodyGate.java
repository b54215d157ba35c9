package org.cresthaul.server;

import java.util.List;
import java.util.Map;

/**
 * Admits bodies before they are collected: so many at a time, and only as much as the memory will hold once they have
 * become documents. What is admitted is held until its request has been answered.
 */
final class BodyGate {
    /**
     * A document read takes up to this many times its bytes: 6 for a line, 14 for points (measured), and what is made
     * of it.
     */
    static final int TIMES = 20;

    private static final double SHARE_OF_HEAP = 0.6;

    private final int mostBodies;
    private final long mostBytes;
    private int bodies;
    private long bytes;

    /** What one request holds. For one thread; closed once. */
    final class Admitted implements AutoCloseable {
        private long held;

        /**
         * Asks for room for that many bytes of the body in all.
         *
         * @throws Refusal with status 503 when there is not so much
         */
        void require(long bodyBytes) {
            long more = bodyBytes * TIMES - held;
            if (more > 0) {
                reserve(more, held);
                held += more;
            }
        }

        @Override
        public void close() {
            release(held);
        }
    }

    BodyGate(int mostBodies, long mostBytes) {
        this.mostBodies = mostBodies;
        this.mostBytes = mostBytes;
    }

    static BodyGate usual() {
        return new BodyGate(24, (long) (SHARE_OF_HEAP * Runtime.getRuntime().maxMemory()));
    }

    /** @throws Refusal with status 503 when as many bodies are held already as may */
    synchronized Admitted admit() {
        if (bodies >= mostBodies) {
            throw new Refusal(
                    ProblemKind.BUSY,
                    "As many requests are being received and checked as may.",
                    List.of(),
                    Map.of("Retry-After", "5"));
        }
        bodies++;
        return new Admitted();
    }

    private synchronized void reserve(long more, long alreadyHeld) {
        // A request that nobody shares the memory with is tried, however large it is.
        boolean alone = bytes == alreadyHeld;
        if (bytes + more > mostBytes && !alone) {
            throw Refusal.memoryShort();
        }
        bytes += more;
    }

    private synchronized void release(long held) {
        bytes -= held;
        bodies--;
    }

    synchronized boolean takesMore() {
        return bodies < mostBodies && bytes < mostBytes;
    }
}
