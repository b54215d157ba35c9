package org.cresthaul.exchange.osm;

import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;

/**
 * An extract of OpenStreetMap on disk: XML, XML packed by gzip, or PBF, told by its content. It is read as a stream.
 */
final class MapFile {
    /** A map unpacks to ten or twenty times its size; what swells more is none. */
    private static final long MOST_SWELLING = 100;

    private static final int BUFFER = 256 * 1024;

    private final MapExtract extract;
    private final MapProgress progress;
    private int times;

    MapFile(MapExtract extract, MapProgress progress) {
        this.extract = extract;
        this.progress = progress;
    }

    String name() {
        return extract.name();
    }

    /** Reads it from beginning to end, or until the sink has read enough. */
    void read(MapSink sink) throws InputRejected {
        times++;
        Path path = extract.path();
        try (InputStream in =
                new BufferedInputStream(new Watched(Files.newInputStream(path), Files.size(path)), BUFFER)) {
            in.mark(16);
            byte[] head = in.readNBytes(16);
            in.reset();
            // What is refused says which of several extracts it is.
            readAs(head, in, sink);
        } catch (EnoughRead e) {
            // What comes behind is of no use to who reads.
        } catch (IOException e) {
            throw Refusals.of("unreadable", named("The map extract cannot be read."), "Check that it is whole.");
        } catch (InputRejected e) {
            throw new InputRejected(e.problems().stream()
                    .map(p -> new InputProblem(p.code(), named(p.message()), p.pointer(), p.remedy()))
                    .toList());
        }
    }

    private String named(String message) {
        return extract.name() + ": " + message;
    }

    private void readAs(byte[] head, InputStream in, MapSink sink) throws IOException, InputRejected {
        if (head.length > 1 && (head[0] & 0xFF) == 0x1F && (head[1] & 0xFF) == 0x8B) {
            long most = MOST_SWELLING * Files.size(extract.path()) + 1024 * 1024;
            unpacked(new Bounded(new GZIPInputStream(in, BUFFER), most), sink);
        } else if (head.length > 12 && head[0] == 0) {
            OsmPbf.read(in, sink);
        } else if (head.length > 0 && isXml(head)) {
            OsmXml.read(in, sink);
        } else {
            throw Refusals.of(
                    "not-a-map", "This is not an extract of OpenStreetMap.", "Give .osm, .osm.gz or .osm.pbf.");
        }
    }

    /** What reads may tell a stream that broke off from a damaged document, or not. */
    private static void unpacked(Bounded in, MapSink sink) throws InputRejected {
        try {
            OsmXml.read(in, sink);
        } catch (InputRejected e) {
            throw in.left >= 0
                    ? e
                    : Refusals.of(
                            "too-large",
                            "The map extract unpacks to more than " + MOST_SWELLING + " times its size.",
                            "Do not trust where it came from.");
        }
    }

    private static boolean isXml(byte[] head) {
        for (byte b : head) {
            if (b == '<') {
                return true;
            }
            boolean blank = b == ' ' || b == '\n' || b == '\r' || b == '\t' || (b & 0xFF) >= 0xBB || b == 0;
            if (!blank) {
                return false;
            }
        }
        return false;
    }

    /** Tells how far it has come, and ends where nobody waits any more. */
    private final class Watched extends FilterInputStream {
        private final StopSignal stop = StopSignal.current();
        private final long size;
        private long read;

        Watched(InputStream in, long size) {
            super(in);
            this.size = Math.max(1, size);
        }

        @Override
        public int read(byte[] bytes, int from, int length) throws IOException {
            stop.poll();
            int n = super.read(bytes, from, length);
            read += Math.max(0, n);
            progress.at(extract.name(), times, Math.min(1.0, (double) read / size));
            return n;
        }
    }

    private static final class Bounded extends FilterInputStream {
        private final StopSignal stop = StopSignal.current();
        private long left;

        Bounded(InputStream in, long most) {
            super(in);
            left = most;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] bytes, int from, int length) throws IOException {
            stop.poll();
            int n = super.read(bytes, from, length);
            left -= Math.max(0, n);
            if (left < 0) {
                throw new IOException("it swells");
            }
            return n;
        }
    }
}
