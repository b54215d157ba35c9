package org.cresthaul.fuzz;

/** A reader that fails on one word of three bytes: who guesses finds it once in 16 million, who is guided soon. */
public final class BrokenReaderFuzz {
    static final byte[] WORD = {'Q', (byte) 0xC3, 0x07};

    private BrokenReaderFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) {
        if (data.length > 2 && data[0] == WORD[0]) {
            if (data[1] == WORD[1]) {
                if (data[2] == WORD[2]) {
                    throw new IllegalStateException("broken on purpose");
                }
            }
        }
    }
}
