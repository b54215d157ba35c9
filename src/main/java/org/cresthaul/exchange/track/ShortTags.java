package org.cresthaul.exchange.track;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * Breaks XML of UTF-8 off in a tag longer than {@link #LONGEST}: a parser would make room for all of it. Text between
 * tags may be of any length. Only what stands behind the last {@code <} of what is read is looked at, so that it takes
 * no time; inside of a tag there is none. Not for sharing.
 */
final class ShortTags extends FilterInputStream {
    /** Most bytes of a tag with all its attributes. */
    static final int LONGEST = 64 * 1024;

    private static final byte TEXT = '>';
    private static final byte TAG = '<';

    /** Where the last byte read stands: in text, in a tag, or in the quotes of an attribute, by their sign. */
    private byte state = TEXT;

    private int length;

    ShortTags(InputStream in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] bytes, int from, int most) throws IOException {
        // Not more at once, so that no long tag passes between two reads.
        int n = super.read(bytes, from, Math.min(most, LONGEST));
        int at = from + n - 1;
        while (at >= from && bytes[at] != TAG) {
            at--;
        }
        for (int i = Math.max(at, from); i < from + n; i++) {
            follow(bytes[i]);
        }
        if (length > LONGEST) {
            throw new IOException("a tag longer than " + LONGEST + " bytes");
        }
        return n;
    }

    private void follow(byte c) {
        if (c == TAG) {
            state = TAG;
            length = 0;
        } else if (state == TAG && (c == '>' || c == '"' || c == '\'')) {
            state = c;
        } else if (state == c && c != TEXT) {
            state = TAG;
        }
        length = state == TEXT ? 0 : length + 1;
    }
}
