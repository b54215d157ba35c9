package org.cresthaul.exchange.osm;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.zip.GZIPOutputStream;

/** A packed extract of nodes far from every line, so many that reading it takes seconds; it says nothing else. */
public final class LongExtract {
    private static final int NODES = 4_000_000;

    private LongExtract() {}

    /** As .osm.gz. */
    public static byte[] bytes() throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (OutputStream out = new BufferedOutputStream(new GZIPOutputStream(packed))) {
            out.write("<osm version='0.6'>\n".getBytes(UTF_8));
            long random = 1;
            for (int i = 1; i <= NODES; i++) {
                random = random * 6364136223846793005L + 1442695040888963407L;
                out.write(("<node id='" + i + "' lon='40." + (random >>> 40) + "' lat='40." + (random >>> 41) + "'/>\n")
                        .getBytes(UTF_8));
            }
            out.write("</osm>".getBytes(UTF_8));
        }
        return packed.toByteArray();
    }
}
