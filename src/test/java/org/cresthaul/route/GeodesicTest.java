package org.cresthaul.route;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class GeodesicTest {
    @Test
    void measuresAQuarterMeridian() {
        // WGS 84 meridian quadrant, 10 001 965.729 m (from memory of its usual tables)
        assertEquals(10_001_965.729, new Geodesic().between(0, 0, 0, 90).distanceM(), 0.001);
    }

    @Test
    void measuresTheSurveyorsTestLine() {
        // Flinders Peak to Buninyong, the test line of the Australian geodetic manual on GRS 80, whose flattening
        // differs
        // from that of WGS 84 in the ninth digit: 54 972.271 m, 306° 52' 05.37" (from memory of that manual)
        Geodesic line = new Geodesic()
                .between(dms(144, 25, 29.52440), -dms(37, 57, 3.72030), dms(143, 55, 35.38390), -dms(37, 39, 10.15610));
        assertEquals(54_972.271, line.distanceM(), 0.001);
        assertEquals(dms(306, 52, 5.37) - 360, Math.toDegrees(line.azimuthRad()), 0.01 / 3600);
    }

    @Test
    void roughDistanceIsWithinSixTenthsOfAPercent() {
        double[][] ends = {
            {0, 0, 0.1, 0}, {10, 45, 10, 45.2}, {-93, 44.6, -92.8, 44.7}, {179.95, 60, -179.95, 60}, {0, 84, 3, 84.5}
        };
        for (double[] e : ends) {
            double exactM = new Geodesic().between(e[0], e[1], e[2], e[3]).distanceM();
            assertEquals(exactM, Geodesic.roughM(e[0], e[1], e[2], e[3]), 0.006 * exactM);
        }
    }

    /** A route measured before must read the same now, to the last bit: its report has a hash. */
    @Test
    void answersAsWhenGeoToolsDid() throws IOException {
        List<String> lines;
        try (InputStream in = GeodesicTest.class.getResourceAsStream("geodesics-before.txt")) {
            lines = new String(in.readAllBytes(), StandardCharsets.US_ASCII)
                    .lines()
                    .filter(l -> !l.startsWith("#"))
                    .toList();
        }
        assertTrue(lines.size() > 300, "cases: " + lines.size());
        for (String line : lines) {
            double[] n =
                    Stream.of(line.split(" ")).mapToDouble(Double::parseDouble).toArray();
            Geodesic between = new Geodesic().between(n[0], n[1], n[2], n[3]);
            LonLat reached = new Geodesic().from(new LonLat(n[0], n[1]), n[4], n[5]);
            double[] now = {between.distanceM(), between.azimuthRad(), reached.lonDeg(), reached.latDeg()};
            assertArrayEquals(Arrays.copyOfRange(n, 6, 10), now, line);
        }
    }

    private static double dms(double degrees, double minutes, double seconds) {
        return degrees + minutes / 60 + seconds / 3600;
    }
}
