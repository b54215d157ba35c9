package org.cresthaul.fuzz;

import java.util.random.RandomGenerator;

/**
 * Choices read off bytes, one or two for each, and zeros when they are used up: what a fuzzer changes is what is
 * chosen.
 */
final class ByteChoices implements RandomGenerator {
    private final byte[] data;
    private int at;

    ByteChoices(byte[] data) {
        this.data = data;
    }

    private int next() {
        return at < data.length ? data[at++] & 0xff : 0;
    }

    boolean isUsedUp() {
        return at >= data.length;
    }

    @Override
    public int nextInt() {
        return next() << 24 | next() << 16 | next() << 8 | next();
    }

    @Override
    public long nextLong() {
        return (long) nextInt() << 32 | nextInt() & 0xffffffffL;
    }

    @Override
    public int nextInt(int bound) {
        return (bound > 256 ? next() << 8 | next() : next()) % bound;
    }

    @Override
    public int nextInt(int origin, int bound) {
        return origin + nextInt(bound - origin);
    }
}
