package org.cresthaul.exchange.track;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.cresthaul.units.InputRejected;

/**
 * Takes the document out of a KMZ, a zip archive: its first KML. Nothing is unpacked to a disk. An archive that swells
 * beyond {@link #MOST_BYTES}, or names a path outside itself, is refused.
 */
final class KmzArchive {
    /** Most bytes of everything in it, unpacked. */
    static final int MOST_BYTES = 64 * 1024 * 1024;

    private static final int MOST_ENTRIES = 1000;

    private KmzArchive() {}

    static byte[] document(byte[] archive) throws InputRejected {
        byte[] found = null;
        boolean office = false;
        long unpacked = 0;
        int entries = 0;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                String name = entry.getName().replace('\\', '/');
                if (++entries > MOST_ENTRIES) {
                    throw Refusals.of(
                            "too-many", "The archive has more than " + MOST_ENTRIES + " files.", "Keep its KML alone.");
                }
                if (name.startsWith("/") || name.matches("[A-Za-z]:.*") || ("/" + name + "/").contains("/../")) {
                    throw Refusals.of(
                            "path-outside",
                            "The archive names a file outside itself.",
                            "Export it again; do not trust where this one came from.");
                }
                office |= name.equals("[Content_Types].xml") || name.equals("content.xml");
                byte[] bytes = bytes(zip, MOST_BYTES - unpacked);
                unpacked += bytes.length;
                if (found == null && name.toLowerCase(Locale.ROOT).endsWith(".kml")) {
                    found = bytes;
                }
            }
        } catch (IOException | IllegalArgumentException e) {
            throw damaged();
        }
        if (entries == 0) {
            throw damaged();
        }
        if (found != null) {
            return found;
        }
        throw office
                ? Refusals.of(
                        "office-document",
                        "This is a document of an office program, not a track.",
                        "Save a sheet of points as CSV, with a heading that names longitude and latitude.")
                : Refusals.of("no-kml", "There is no KML in this archive.", "Unpack it and give the track in it.");
    }

    private static InputRejected damaged() {
        return Refusals.of(
                "not-zip", "The archive is damaged or cut short.", "Export it again, or give the KML in it.");
    }

    private static byte[] bytes(ZipInputStream zip, long most) throws IOException, InputRejected {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        byte[] buffer = new byte[64 * 1024];
        for (int n = zip.read(buffer); n >= 0; n = zip.read(buffer)) {
            if (all.size() + n > most) {
                throw Refusals.of(
                        "too-large",
                        "The archive unpacks to more than " + MOST_BYTES / (1024 * 1024) + " MiB.",
                        "Give the KML in it, without pictures.");
            }
            all.write(buffer, 0, n);
        }
        return all.toByteArray();
    }
}
