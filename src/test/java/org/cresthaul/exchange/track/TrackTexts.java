package org.cresthaul.exchange.track;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Small tracks in every format, all invented: three points on the equator, 0.001 degrees apart. */
public final class TrackTexts {
    private TrackTexts() {}

    public static final String GPX = """
            <?xml version="1.0" encoding="UTF-8"?>
            <gpx version="1.1" creator="hand" xmlns="http://www.topografix.com/GPX/1/1">
            <metadata><name>Quarry to mill</name></metadata>
            <wpt lat="0.00001" lon="0.001"><name>Gate</name></wpt>
            <trk><name>County road</name><trkseg>
            <trkpt lat="0" lon="0"><ele>3</ele></trkpt>
            <trkpt lat="0" lon="0.001"/>
            <trkpt lat="0" lon="0.002"/>
            </trkseg></trk>
            </gpx>
            """;

    public static final String KML = """
            <kml xmlns="http://www.opengis.net/kml/2.2"><Document><name>Quarry to mill</name>
            <Placemark><name>Gate</name><Point><coordinates>0.001,0.00001,0</coordinates></Point></Placemark>
            <Placemark><name>County road</name><LineString><coordinates>
              0,0,0 0.001,0,0
              0.002,0
            </coordinates></LineString></Placemark>
            </Document></kml>
            """;

    public static final String GEOJSON = """
            {"type": "FeatureCollection", "name": "Quarry to mill", "features": [
              {"type": "feature", "properties": {"name": "Gate"}, "geometry": {"type": "Point", "coordinates": [0.001, 0.00001]}},
              {"type": "Feature", "properties": {"name": "County road"},
               "geometry": {"type": "LINESTRING", "coordinates": [[0, 0], [0.001, 0, 12.5], [0.002, 0]]}}]}
            """;

    public static final String CSV = """
            Name;Latitude;Longitude
            a;0;0
            b;0,0;0,001
            c;0;0,002
            """;

    public static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** An archive of files by name and content. */
    public static byte[] zip(String... namesAndTexts) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (int i = 0; i < namesAndTexts.length; i += 2) {
                zip.putNextEntry(new ZipEntry(namesAndTexts[i]));
                zip.write(utf8(namesAndTexts[i + 1]));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    public static byte[] kmz() {
        return zip("doc.kml", KML, "files/icon.txt", "no picture");
    }

    public static List<byte[]> each() {
        return List.of(utf8(GPX), utf8(KML), utf8(GEOJSON), utf8(CSV), kmz());
    }
}
