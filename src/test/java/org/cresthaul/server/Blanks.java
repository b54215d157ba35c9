package org.cresthaul.server;

import java.io.InputStream;
import java.util.Arrays;

/** White space up to a length, made as it is read; JSON may be led by any amount of it. */
public final class Blanks extends InputStream {
    private long left;

    public Blanks(long length) {
        left = length;
    }

    @Override
    public int read() {
        return left-- > 0 ? ' ' : -1;
    }

    @Override
    public int read(byte[] into, int from, int length) {
        if (left <= 0) {
            return -1;
        }
        int n = (int) Math.min(length, left);
        Arrays.fill(into, from, from + n, (byte) ' ');
        left -= n;
        return n;
    }
}
