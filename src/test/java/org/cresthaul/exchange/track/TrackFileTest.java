package org.cresthaul.exchange.track;

import static org.cresthaul.exchange.track.TrackTexts.utf8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every format gives the same three points; every file that is none is refused with the advice it needs. */
class TrackFileTest {
    private static final List<LonLat> LINE = List.of(new LonLat(0, 0), new LonLat(0.001, 0), new LonLat(0.002, 0));

    private static List<LonLat> line(TrackContent content) {
        return content.legs().stream()
                .flatMap(l -> l.parts().stream())
                .flatMap(List::stream)
                .map(TrackPoint::at)
                .toList();
    }

    private static String codeOf(byte[] document) {
        InputRejected refused = assertThrows(InputRejected.class, () -> TrackFile.parse(document, "file"));
        assertEquals(1, refused.problems().size());
        return refused.problems().get(0).code();
    }

    @Test
    void everyFormatGivesTheSameLine() throws Exception {
        int read = 0;
        for (byte[] document : TrackTexts.each()) {
            TrackContent content = TrackFile.parse(document, "file");
            assertEquals(LINE, line(content), content.format());
            boolean csv = content.format().equals("CSV");
            assertEquals(csv ? "" : "Quarry to mill", content.name());
            assertEquals(csv ? "" : "County road", content.legs().get(0).name());
            assertEquals(csv ? 0 : 1, content.places().size());
            if (!csv) {
                assertEquals("Gate", content.places().get(0).name());
                assertEquals(new LonLat(0.001, 0.00001), content.places().get(0).at());
            }
            read++;
        }
        assertEquals(5, read);
    }

    @Test
    void readsTimesSegmentsAndTheOlderFormat() throws Exception {
        TrackContent content = TrackFile.parse(utf8("""
                <gpx version="1.0" xmlns="http://www.topografix.com/GPX/1/0"><name>Old</name><trk>
                <trkseg><trkpt lat="1" lon="2"><time>1970-01-01T00:01:00Z</time></trkpt></trkseg>
                <trkseg><trkpt lat="1" lon="3"><time>1970-01-01T01:01:01+01:00</time></trkpt></trkseg>
                </trk></gpx>"""), "old.gpx");

        assertEquals("GPX 1.0", content.format());
        List<List<TrackPoint>> parts = content.legs().get(0).parts();
        assertEquals(2, parts.size());
        assertEquals(60, parts.get(0).get(0).timeS());
        assertEquals(61, parts.get(1).get(0).timeS());
        assertEquals(3, parts.get(1).get(0).line());
    }

    @Test
    void leavesOutAPointThatIsNoneAndNamesItsLine() throws Exception {
        StringBuilder points = new StringBuilder("<gpx version='1.1'><trk><trkseg>\n");
        for (int i = 0; i < 20; i++) {
            points.append("<trkpt lat='0' lon='")
                    .append(i == 12 ? "oops" : "0.00" + i)
                    .append("'/>\n");
        }
        TrackContent content = TrackFile.parse(utf8(points + "</trkseg></trk></gpx>"), "t.gpx");

        assertEquals(19, content.points());
        TrackNote note = content.notes().get(0);
        assertEquals("no-position", note.code());
        assertEquals(14, note.line());
        assertTrue(note.message().contains("oops"), note.message());
    }

    static Stream<Arguments> others() {
        return Stream.of(
                Arguments.of("document-type", utf8("<!DOCTYPE gpx [<!ENTITY a 'b'>]><gpx><trk/></gpx>")),
                Arguments.of(
                        "document-type", utf8("<!DOCTYPE gpx SYSTEM 'file:///nowhere'><gpx version='1.1'>&a;</gpx>")),
                Arguments.of("document-type", utf8("<gpx><trk>&nothing;</trk></gpx>")),
                Arguments.of("not-xml", utf8(TrackTexts.GPX.substring(0, 300))),
                Arguments.of("too-deep", utf8("<gpx>" + "<a>".repeat(100) + "</a>".repeat(100) + "</gpx>")),
                Arguments.of("other-xml", utf8("<html><body/></html>")),
                Arguments.of("map-extract", utf8("<osm version='0.6'><node id='1' lat='0' lon='0'/></osm>")),
                Arguments.of("picture", new byte[] {(byte) 0x89, 'P', 'N', 'G', 1, 2, 3}),
                Arguments.of("pdf", utf8("%PDF-1.7")),
                Arguments.of("packed", new byte[] {0x1F, (byte) 0x8B, 8, 0, 0}),
                Arguments.of("empty", new byte[0]),
                Arguments.of("empty", utf8("  \n ")),
                Arguments.of("no-heading", utf8("11.5,50.0\n11.6,50.1\n")),
                Arguments.of("unknown-format", new byte[] {7, 1, 2, 3, 4}),
                Arguments.of("office-document", TrackTexts.zip("[Content_Types].xml", "<a/>", "xl/x.xml", "<a/>")),
                Arguments.of("no-kml", TrackTexts.zip("readme.txt", "nothing")),
                Arguments.of("path-outside", TrackTexts.zip("../../doc.kml", TrackTexts.KML)),
                Arguments.of("path-outside", TrackTexts.zip("/etc/doc.kml", TrackTexts.KML)),
                Arguments.of("not-zip", new byte[] {'P', 'K', 3, 4, 9, 9, 9}),
                Arguments.of("crs", utf8("""
                        {"type": "LineString", "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:LOCAL::7"}},
                         "coordinates": [[4500000, 5500000], [4500010, 5500000]]}""")),
                Arguments.of("not-geojson", utf8("{\"a\": 1}")),
                Arguments.of("other-file", utf8("{\"cresthaul\": \"rig/1\"}")),
                Arguments.of("no-position", utf8("lat,lon\n93.1,44.6\n93.2,44.6\n")),
                Arguments.of("not-json", utf8("{\"type\": \"LineString\", \"coordinates\": [[0, 0], [1")));
    }

    @ParameterizedTest(name = "{index} {0}")
    @MethodSource("others")
    void refusesWhatIsNoTrackWithItsOwnAdvice(String code, byte[] document) {
        assertEquals(code, codeOf(document));
    }

    @Test
    void readsWhatOtherEncodingsSay() throws Exception {
        String text = TrackTexts.GPX.replace("County road", "Stra\u00dfe").replace("UTF-8", "ISO-8859-1");
        assertEquals(
                "Stra\u00dfe",
                TrackFile.parse(text.getBytes(StandardCharsets.ISO_8859_1), "f")
                        .legs()
                        .get(0)
                        .name());
        assertEquals(
                "Stra\u00dfe",
                TrackFile.parse(text.replace(" encoding=\"ISO-8859-1\"", "").getBytes(StandardCharsets.UTF_16), "f")
                        .legs()
                        .get(0)
                        .name());
    }

    @Test
    void takesTheLegsOfARouteFileAndNotItsHazards() throws Exception {
        TrackContent content = TrackFile.parse(utf8("""
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Ours", "features": [
                  {"type": "Feature", "properties": {"route": "Leg"},
                   "geometry": {"type": "LineString", "coordinates": [[0, 0], [0.001, 0], [0.002, 0]]}},
                  {"type": "Feature", "properties": {"hazard": "dip", "id": "H1", "name": "Ford"},
                   "geometry": {"type": "Point", "coordinates": [0.001, 0]}}]}"""), "ours");

        assertEquals(LINE, line(content));
        assertEquals("Leg", content.legs().get(0).name());
        assertEquals(List.of(), content.places());
    }

    /** A day has 86,400 s, and 2000-01-01 is day 10,957 (POSIX.1, seconds since the epoch). */
    @ParameterizedTest
    @CsvSource({
        "1970-01-02T00:00:01Z, 86401",
        "2000-01-01T00:00:00Z, 946684800",
        "2000-01-01T01:00:00+01:00, 946684800",
        "2000-01-01T00:00:00.500Z, 946684800.5",
        "2000-01-01T00:00:00, 946684800",
        "2000-13-01T00:00:00Z, NaN",
        "2000-02-31T00:00:00Z, NaN",
        "2000-01-01T24:00:00Z, NaN",
        "2000-01-01T00:0x:00Z, NaN",
        "yesterday at ten o'cl, NaN"
    })
    void readsTimes(String text, double seconds) {
        assertEquals(seconds, TrackTime.seconds(text));
    }

    /** Names that a route file would refuse, and a character that may not be cut in two. */
    @Test
    void takesNamesInOneLine() {
        assertEquals("a b c", PlainText.of(" a\u0000\u0085b\n\tc\u2028", 10));
        assertEquals("ab", PlainText.of("ab\ud83d\ude9a", 3));
        assertEquals("ab\ud83d\ude9a", PlainText.of("ab\ud83d\ude9a", 4));
    }

    @Test
    void saysThatLatitudeAndLongitudeAreExchanged() {
        InputRejected refused = assertThrows(
                InputRejected.class, () -> TrackFile.parse(utf8("lat,lon\n-93.1,44.6\n-93.2,44.6\n"), "t.csv"));
        assertTrue(refused.getMessage().contains("exchanged"), refused.getMessage());
    }

    /** 200 MB of zeros in 200 KB. */
    @Test
    void refusesAnArchiveThatSwells() {
        byte[] bomb = TrackTexts.zip("a.bin", "\0".repeat(100_000_000), "doc.kml", TrackTexts.KML);
        assertTrue(bomb.length < 200_000, bomb.length + " bytes");
        assertEquals("too-large", assertTimeoutPreemptively(Duration.ofSeconds(20), () -> codeOf(bomb)));
    }

    @Test
    void fetchesNothingThatAFilePointsTo() throws Exception {
        TrackContent content = TrackFile.parse(
                utf8(
                        TrackTexts.KML.replace(
                                "<Placemark><name>Gate",
                                "<NetworkLink><Link><href>http://127.0.0.1:9/x.kml</href></Link></NetworkLink><Placemark><name>Gate")),
                "t.kml");

        assertEquals(LINE, line(content));
        assertEquals("points-outward", content.notes().get(0).code());
    }

    /** Cut short and with bits turned over, every kind of file is read or refused, and nothing else happens. */
    @Test
    void damagedFilesAreReadOrRefused() {
        long seed = 20261129;
        SplittableRandom random = new SplittableRandom(seed);
        int refused = 0;
        int read = 0;
        for (byte[] sound : TrackTexts.each()) {
            for (int i = 0; i < 2000; i++) {
                byte[] damaged = Arrays.copyOf(sound, 1 + random.nextInt(sound.length));
                if (i % 4 > 0) {
                    damaged = sound.clone();
                    for (int k = random.nextInt(1, 8); k > 0; k--) {
                        damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
                    }
                }
                try {
                    TrackContent content = TrackFile.parse(damaged, "file");
                    assertTrue(content.points() <= 1000, content.points() + " points, seed " + seed);
                    read++;
                } catch (InputRejected e) {
                    refused++;
                }
            }
        }
        assertEquals(10_000, read + refused);
        assertTrue(refused > 3000 && read > 500, refused + " refused, " + read + " read");
    }
}
