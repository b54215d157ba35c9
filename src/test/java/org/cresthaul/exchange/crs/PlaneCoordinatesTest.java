package org.cresthaul.exchange.crs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.cresthaul.exchange.track.TrackContent;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Coordinates of the EPSG dataset against published places and against projections written out here. */
class PlaneCoordinatesTest {
    private static final double MAJOR_M = 6_378_137;
    /** A degree of latitude at least, meters. */
    private static final double DEGREE_M = 110_500;
    /** WGS 84, and GRS 80 to ten digits. */
    private static final double FLATTENING = 1 / 298.257223563;

    private static double distanceM(LonLat a, double lon, double lat) {
        return Math.hypot(
                (a.lonDeg() - lon) * 111_400 * Math.cos(Math.toRadians(lat)), (a.latDeg() - lat) * (DEGREE_M + 1200));
    }

    private static InputProblem refusal(InputRejected e) {
        assertEquals(1, e.problems().size());
        return e.problems().get(0);
    }

    /**
     * The CN Tower, 43°38′33.24″N 79°23′13.7″W, is at 630084 m east, 4833438 m north in zone 17: the worked example of
     * the encyclopedia article "Universal Transverse Mercator coordinate system" (Wikipedia). Its figures are whole
     * meters and tenths of a second, 3 m.
     */
    @Test
    void utmIsWhereAPublishedExampleIs() throws Exception {
        PlaneCoordinates utm = PlaneCoordinates.of(32617);

        LonLat at = utm.at(630084, 4833438);

        assertTrue(distanceM(at, -(79 + 23 / 60.0 + 13.7 / 3600), 43 + 38 / 60.0 + 33.24 / 3600) < 4, at.toString());
        assertTrue(utm.told().contains("WGS 84 / UTM zone 17N"), utm.told());
        assertTrue(utm.told().endsWith("by its projection alone, accurate to 0.0 m."), utm.told());
    }

    /**
     * Ordnance Survey, test point TP28 of OSTN15 and OSGM15: E 651409.804, N 313177.450 on the National Grid is ETRS89
     * 52°39′28.8282″N 1°42′57.8663″E. A transformation without the grid is good for a few meters; nothing says better.
     */
    @Test
    void theNationalGridIsAsGoodAsItsTransformationWithoutTheGrid() throws Exception {
        PlaneCoordinates grid = PlaneCoordinates.of(27700);

        LonLat at = grid.at(651409.804, 313177.450);

        double offM = distanceM(at, 1 + 42 / 60.0 + 57.8663 / 3600, 52 + 39 / 60.0 + 28.8282 / 3600);
        assertTrue(offM < 5, offM + " m");
        assertTrue(grid.told().endsWith("accurate to 2.0 m."), grid.told());
    }

    /** L. Krüger, 1912, to the fourth power of the third flattening: good to a micrometer within a zone. */
    private static double[] transverseMercator(double lonDeg, double latDeg, double middleDeg) {
        double n = FLATTENING / (2 - FLATTENING);
        double a = MAJOR_M / (1 + n) * (1 + n * n / 4 + Math.pow(n, 4) / 64);
        double[] alpha = {
            n / 2 - 2 * n * n / 3 + 5 * n * n * n / 16 + 41 * Math.pow(n, 4) / 180,
            13 * n * n / 48 - 3 * n * n * n / 5 + 557 * Math.pow(n, 4) / 1440,
            61 * n * n * n / 240 - 103 * Math.pow(n, 4) / 140,
            49561 * Math.pow(n, 4) / 161280
        };
        double sin = Math.sin(Math.toRadians(latDeg));
        double e = 2 * Math.sqrt(n) / (1 + n);
        double t = Math.sinh(atanh(sin) - e * atanh(e * sin));
        double away = Math.toRadians(lonDeg - middleDeg);
        double xi = Math.atan(t / Math.cos(away));
        double eta = atanh(Math.sin(away) / Math.sqrt(1 + t * t));
        double x = eta;
        double y = xi;
        for (int j = 1; j <= 4; j++) {
            x += alpha[j - 1] * Math.cos(2 * j * xi) * Math.sinh(2 * j * eta);
            y += alpha[j - 1] * Math.sin(2 * j * xi) * Math.cosh(2 * j * eta);
        }
        return new double[] {500_000 + 0.9996 * a * x, 0.9996 * a * y};
    }

    private static double atanh(double x) {
        return 0.5 * Math.log((1 + x) / (1 - x));
    }

    @Test
    void utmIsTheSeriesWrittenOutHere() throws Exception {
        Random random = new Random(20261130);
        PlaneCoordinates utm = PlaneCoordinates.of(32615);
        for (int i = 0; i < 200; i++) {
            double lon = -93 + 6 * (random.nextDouble() - 0.5);
            double lat = 20 + 50 * random.nextDouble();
            double[] plane = transverseMercator(lon, lat, -93);

            LonLat at = utm.at(plane[0], plane[1]);

            assertTrue(distanceM(at, lon, lat) < 0.001, lon + " " + lat + " is " + at);
            double[] back = utm.from(new LonLat(lon, lat));
            assertEquals(plane[0], back[0], 0.001);
            assertEquals(plane[1], back[1], 0.001);
        }
        assertNull(utm.from(new LonLat(10, 45)), "where the zone is not used");
        assertNull(PlaneCoordinates.of(32615).from(new LonLat(-93, 45)), "before anything was asked");
    }

    /**
     * Lambert's conformal conic with two parallels, J. P. Snyder, Map Projections: A Working Manual, 1987, (15-1) to
     * (15-8), with the constants of the zone New York Long Island in NOAA Manual NOS NGS 5, 1989: parallels 41°02′ and
     * 40°40′, origin 40°10′ N 74°00′ W, 300,000 m east; on GRS 80; in survey feet of 1200/3937 m.
     */
    private static double[] longIslandFt(double lonDeg, double latDeg) {
        double first = Math.toRadians(40 + 40 / 60.0);
        double second = Math.toRadians(41 + 2 / 60.0);
        double n = Math.log(m(first) / m(second)) / Math.log(t(first) / t(second));
        double f = m(first) / (n * Math.pow(t(first), n));
        double rho = MAJOR_M * f * Math.pow(t(Math.toRadians(latDeg)), n);
        double origin = MAJOR_M * f * Math.pow(t(Math.toRadians(40 + 10 / 60.0)), n);
        double theta = n * Math.toRadians(lonDeg + 74);
        double foot = 1200.0 / 3937;
        return new double[] {(300_000 + rho * Math.sin(theta)) / foot, (origin - rho * Math.cos(theta)) / foot};
    }

    private static double eccentricity() {
        return Math.sqrt(FLATTENING * (2 - FLATTENING));
    }

    private static double m(double lat) {
        double e = eccentricity() * Math.sin(lat);
        return Math.cos(lat) / Math.sqrt(1 - e * e);
    }

    private static double t(double lat) {
        double e = eccentricity();
        double part = (1 - e * Math.sin(lat)) / (1 + e * Math.sin(lat));
        return Math.tan(Math.PI / 4 - lat / 2) / Math.pow(part, e / 2);
    }

    @Test
    void statePlaneFeetAreSnydersFormulasInSurveyFeet() throws Exception {
        Random random = new Random(20261130);
        PlaneCoordinates feet = PlaneCoordinates.of(2263);
        for (int i = 0; i < 200; i++) {
            double lon = -74 + 2 * random.nextDouble();
            double lat = 40.5 + random.nextDouble() * 0.8;
            double[] plane = longIslandFt(lon, lat);

            LonLat at = feet.at(plane[0], plane[1]);

            assertTrue(distanceM(at, lon, lat) < 0.001, lon + " " + lat + " is " + at);
        }
        assertTrue(feet.told().contains("first east, then north, in ftUS"), feet.told());
        assertTrue(feet.told().contains("NAD83 to WGS 84 (1), accurate to 4.0 m"), feet.told());
    }

    /** Its axes are north and east in the dataset; numbers still come with east first. */
    @Test
    void theOrderIsEastAndNorthWhateverTheDatasetsIs() throws Exception {
        LonLat at = PlaneCoordinates.of(31468).at(4_468_298, 5_534_000);

        assertTrue(Math.abs(at.lonDeg() - 11.56) < 0.02 && Math.abs(at.latDeg() - 49.94) < 0.02, at.toString());
        // And exchanged it is not where the system is used.
        assertNull(PlaneCoordinates.of(31468).at(5_534_000, 4_468_298));
        assertNull(PlaneCoordinates.of(2263).at(Double.NaN, 0));
        // Numbers of no place at all, found by fuzzing.
        assertNull(PlaneCoordinates.of(32615).at(4.9417645052252907E154, 4_984_944));
        assertNull(PlaneCoordinates.of(32615).at(500_000, Double.POSITIVE_INFINITY));
    }

    @ParameterizedTest
    @CsvSource({
        // 1927 without its grids: 7 m and worse in the dataset.
        "32039, 2000000, 500000, crs-accuracy",
        "99999, 0, 0, unknown-crs",
        // Geocentric; a height.
        "4978, 0, 0, unusable-crs",
        "5703, 0, 0, unusable-crs"
    })
    void refusesWhatIsNotGoodEnough(int code, double east, double north, String problem) {
        InputRejected refused = assertThrows(
                InputRejected.class, () -> PlaneCoordinates.of(code).at(east, north));

        assertEquals(problem, refusal(refused).code(), refused.getMessage());
    }

    @Test
    void codesAreReadAsTheyAreWritten() {
        assertEquals(2263, PlaneCoordinates.code("EPSG:2263"));
        assertEquals(25832, PlaneCoordinates.code(" urn:ogc:def:crs:EPSG::25832 "));
        assertEquals(25832, PlaneCoordinates.code("urn:ogc:def:crs:epsg:6.9:25832"));
        assertEquals(0, PlaneCoordinates.code("urn:ogc:def:crs:OGC:1.3:CRS84"));
        assertEquals(0, PlaneCoordinates.code("EPSG:1; drop"));
        assertEquals(0, PlaneCoordinates.code("2263 or so"));
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void tracksSayWhatWasDone() throws Exception {
        double[] from = longIslandFt(-73.9, 40.7);
        double[] to = longIslandFt(-73.89, 40.7);
        TrackContent csv = TrackFile.parse(
                utf8("northing,easting\n" + from[1] + "," + from[0] + "\n" + to[1] + "," + to[0] + "\n"),
                "drive.csv",
                2263);
        TrackContent json = TrackFile.parse(
                utf8("{\"type\":\"LineString\",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":"
                        + "\"urn:ogc:def:crs:EPSG::2263\"}},\"coordinates\":[[" + from[0] + "," + from[1] + "],["
                        + to[0] + "," + to[1] + "]]}"),
                "drive.json");
        for (TrackContent content : new TrackContent[] {csv, json}) {
            LonLat at = content.legs().get(0).parts().get(0).get(0).at();
            assertTrue(distanceM(at, -73.9, 40.7) < 0.001, at.toString());
            assertEquals("crs", content.notes().get(0).code());
            assertTrue(content.notes().get(0).message().startsWith("Read as EPSG:2263, NAD83 / New York Long Island"));
        }
    }

    @Test
    void aWrongCodeIsRefusedBecauseTheTrackLiesElsewhere() {
        double[] from = longIslandFt(-73.9, 40.7);
        InputRejected refused = assertThrows(
                InputRejected.class,
                () -> TrackFile.parse(utf8("x,y\n" + from[0] + "," + from[1] + "\n0,0\n"), "drive.csv", 25832));

        assertEquals("no-position", refusal(refused).code());
        assertTrue(
                refusal(refused).remedy().contains("EPSG:25832"),
                refusal(refused).remedy());
    }

    @Test
    void formatsThatAreAlwaysWgs84StaySo() throws Exception {
        TrackContent gpx = TrackFile.parse(
                utf8("<gpx version='1.1'><trk><trkseg><trkpt lat='44' lon='-93'/><trkpt lat='44' lon='-93.01'/>"
                        + "</trkseg></trk></gpx>"),
                "t.gpx",
                2263);

        assertEquals(-93, gpx.legs().get(0).parts().get(0).get(0).at().lonDeg());
        assertTrue(gpx.notes().isEmpty());
    }

    @Test
    void nothingIsLeftBehindInTheFolder() throws Exception {
        PlaneCoordinates.of(32633).at(500_000, 5_400_000);

        assertFalse(Files.exists(Path.of("derby.log")));
    }
}
