package org.cresthaul.exchange.track;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.cresthaul.units.InputRejected;

/** Reads a track in whatever of the known formats it is, told by its content, never by its name. */
public final class TrackFile {
    /** Longest file taken, bytes. */
    public static final int MOST_BYTES = 64 * 1024 * 1024;

    private TrackFile() {}

    /**
     * Reads a track.
     *
     * @param file its name, for messages
     * @throws InputRejected with what is wrong and what to do, when nothing can be made of it
     */
    public static TrackContent parse(byte[] document, String file) throws InputRejected {
        return parse(document, file, 0);
    }

    /**
     * As {@link #parse(byte[], String)}.
     *
     * @param crs code in the EPSG dataset of what CSV, and GeoJSON that does not say, is in; 0 or 4326 for longitude
     *     and latitude on WGS 84, which the other formats always are
     */
    public static TrackContent parse(byte[] document, String file, int crs) throws InputRejected {
        int plane = crs == 4326 ? 0 : crs;
        if (document.length > MOST_BYTES) {
            throw Refusals.of(
                    "too-large",
                    "The file is longer than " + MOST_BYTES / (1024 * 1024) + " MiB.",
                    "Thin the track, or cut it into legs.");
        }
        refuseOthers(document);
        if (startsWith(document, 'P', 'K', 3, 4)) {
            return xml(KmzArchive.document(document), file, true);
        }
        return switch (firstSign(document)) {
            case '<' -> xml(document, file, false);
            case '{', '[' -> GeoJsonLines.read(document, file, plane);
            case 0 -> throw Refusals.of("empty", "The file is empty.", "Export the track again.");
            default -> CsvPoints.read(document, file, plane);
        };
    }

    private static TrackContent xml(byte[] document, String file, boolean zipped) throws InputRejected {
        XmlPull xml = XmlPull.ofTrack(new ByteArrayInputStream(document));
        while (xml.next() && !xml.isStart()) {
            // up to the root
        }
        if (!xml.isStart()) {
            throw Refusals.of("not-xml", "The file has no element.", "Export the track again.");
        }
        return switch (xml.name()) {
            case "gpx" -> GpxReader.read(xml, file);
            case "kml" -> KmlReader.read(xml, file, zipped ? "KMZ" : "KML");
            case "osm" ->
                throw Refusals.of(
                        "map-extract",
                        "This is an extract of a map, not a track.",
                        "Give it as a map, beside a track.");
            default ->
                throw Refusals.of(
                        "other-xml",
                        "This XML is a <" + Gathering.plain(xml.name()) + ">, not a track.",
                        "Give GPX or KML.");
        };
    }

    /** Files that people hand in by mistake, each with its own advice. */
    private static void refuseOthers(byte[] document) throws InputRejected {
        if (startsWith(document, 0x89, 'P', 'N', 'G')
                || startsWith(document, 0xFF, 0xD8, 0xFF)
                || startsWith(document, 'G', 'I', 'F', '8')
                || startsWith(document, 'I', 'I', 42, 0)
                || startsWith(document, 'M', 'M', 0, 42)) {
            throw Refusals.of("picture", "This is a picture, not a track.", "Export the track as GPX, KML or GeoJSON.");
        }
        if (startsWith(document, '%', 'P', 'D', 'F')) {
            throw Refusals.of("pdf", "This is a PDF, not a track.", "Export the track as GPX, KML or GeoJSON.");
        }
        if (startsWith(document, 0x1F, 0x8B)) {
            throw Refusals.of("packed", "This file is packed (gzip).", "Unpack it first.");
        }
        if (startsWith(document, 0xD0, 0xCF, 0x11, 0xE0)) {
            throw Refusals.of(
                    "office-document",
                    "This is a document of an office program, not a track.",
                    "Save a sheet of points as CSV, with a heading that names longitude and latitude.");
        }
        if (document.length > 12
                && document[0] == 0
                && new String(document, 0, Math.min(32, document.length), StandardCharsets.ISO_8859_1)
                        .contains("OSMHeader")) {
            throw Refusals.of(
                    "map-extract", "This is an extract of a map, not a track.", "Give it as a map, beside a track.");
        }
    }

    private static boolean startsWith(byte[] document, int... signs) {
        if (document.length < signs.length) {
            return false;
        }
        for (int i = 0; i < signs.length; i++) {
            if ((document[i] & 0xFF) != signs[i]) {
                return false;
            }
        }
        return true;
    }

    /** The first that is no white space, behind a byte order mark and between the zero bytes of UTF-16; 0 for none. */
    private static int firstSign(byte[] document) {
        for (byte b : document) {
            int sign = b & 0xFF;
            if (sign != 0
                    && !Character.isWhitespace(sign)
                    && sign != 0xEF
                    && sign != 0xBB
                    && sign != 0xBF
                    && sign != 0xFE
                    && sign != 0xFF) {
                return sign;
            }
        }
        return 0;
    }
}
