package org.cresthaul.fuzz;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.units.InputRejected;

/**
 * KMZ: the first byte chooses the names of two entries, the rest is what is in them; or it is the archive itself. Read,
 * or refused with help.
 */
public final class KmzFuzz {
    private static final List<String> NAMES = List.of(
            "doc.kml", "other.KML", "files/photo.jpg", "../doc.kml", "/doc.kml", "a/b/c.kml", "C:\\doc.kml", "x");

    private KmzFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        if (data.length < 2) {
            return;
        }
        byte[] rest = Arrays.copyOfRange(data, 1, data.length);
        byte[] archive = data[0] == (byte) 255 ? rest : packed(data[0] & 0x7F, rest);
        try {
            TrackFile.parse(archive, "track");
        } catch (InputRejected e) {
            FuzzedDocument.requireHelp(e);
        }
    }

    private static byte[] packed(int choice, byte[] content) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            String first = NAMES.get(choice % NAMES.size());
            String second = NAMES.get(choice / NAMES.size() % NAMES.size());
            for (String name : first.equals(second) ? List.of(first) : List.of(first, second)) {
                zip.putNextEntry(new ZipEntry(name));
                zip.write(content);
                zip.closeEntry();
            }
        }
        return bytes.toByteArray();
    }
}
